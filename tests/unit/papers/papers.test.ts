import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { showText } from "../../../language/core/length.ts";
import { ratio, toNumber } from "../../../language/core/rational.ts";
import { boundsOf } from "../../../language/draw/bounds.ts";
import type { Item, Text } from "../../../language/draw/display-list.ts";
import { line } from "../../../language/draw/display-list.ts";
import { sticksFor } from "../../../language/draw/drawings.ts";
import { textWidth } from "../../../language/draw/letters.ts";
import { assemblyOrder } from "../../../language/papers/assembly/order.ts";
import type { Task } from "../../../language/papers/assembly/task.ts";
import { inWorkingOrder } from "../../../language/papers/assembly/task.ts";
import type { PaperDesk } from "../../../language/papers/desk.ts";
import { paperDesk } from "../../../language/papers/desk.ts";
import { labelPapers } from "../../../language/papers/labels.ts";
import { packetPapers } from "../../../language/papers/packet.ts";
import type { Block } from "../../../language/papers/page.ts";
import { paperSizes } from "../../../language/papers/page.ts";
import { qrItems, qrSymbol } from "../../../language/papers/qr.ts";
import { cutterSettings, sawSettings } from "../../../language/papers/settings.ts";
import { stickPapers, tilesOf } from "../../../language/papers/stick-pages.ts";
import { buildOf, exampleBuild, examples } from "../draw/example.ts";

function deskFor(name: string): PaperDesk {
  const build = exampleBuild(name);
  return paperDesk(build, build.plan({ steps: 20 }));
}

const itemsOf = (block: Block): readonly Item[] => [...block.items, ...block.blocks.flatMap(itemsOf)];
const textsOf = (items: readonly Item[]): readonly Text[] =>
  items.flatMap((item) => (item.kind === "group" ? textsOf(item.items) : item.kind === "text" ? [item] : []));

/** Bounds allow for wider letters than the embedded ones, which are what papers are printed in. */
function boundsAsPrinted(items: readonly Item[]) {
  const flat = (all: readonly Item[]): readonly Item[] =>
    all.flatMap((item) => (item.kind === "group" ? flat(item.items) : [item]));
  return boundsOf(
    flat(items).map((item) => {
      if (item.kind !== "text") return item;
      const wide = textWidth(item.text, item.size, item.face);
      const before = item.anchor === "start" ? 0 : item.anchor === "middle" ? wide / 2 : wide;
      const { x, y } = item.at;
      return item.turn === "level"
        ? line({ x: x - before, y: y - item.size }, { x: x - before + wide, y })
        : line({ x: x - item.size, y: y + before }, { x, y: y + before - wide });
    }),
  );
}

describe("pages", () => {
  it.each(examples)("hold everything inside their edges, and no heading last: %s", (name) => {
    const desk = deskFor(name);
    for (const size of Object.values(paperSizes)) {
      for (const papers of [
        packetPapers(desk, size),
        stickPapers(desk, sticksFor(desk), size),
        labelPapers(desk, size),
      ]) {
        expect(papers.pages.length).toBeGreaterThan(0);
        for (const page of papers.pages.map((make) => make())) {
          for (const block of page.blocks) {
            const bounds = boundsAsPrinted(itemsOf(block));
            if (bounds === undefined) continue;
            expect(bounds.left).toBeGreaterThan(0);
            expect(bounds.top).toBeGreaterThan(0);
            expect(bounds.right).toBeLessThan(page.wide);
            expect(bounds.bottom).toBeLessThan(page.high);
          }
          expect(page.blocks.at(-1)?.role).not.toMatch(/^H/);
        }
      }
    }
  });

  it("list every part with a box to tick for each piece", () => {
    const desk = deskFor("print-room.scant");
    const papers = packetPapers(desk, paperSizes.Letter);
    const rows = papers.pages.flatMap((page) => page().blocks).filter((block) => block.within?.startsWith("cut "));
    const cells = rows.flatMap((row) => row.blocks).filter((cell) => cell.alt?.endsWith(" to cut"));
    const pieces = desk.model.parts.reduce((sum, part) => sum + part.quantity, 0);
    expect(cells.reduce((sum, cell) => sum + Number.parseInt(cell.alt!, 10), 0)).toBe(pieces);
    expect(cells.reduce((sum, cell) => sum + cell.items.length, 0)).toBe(pieces);
  });

  it("say first that a file with errors is not to be cut from", () => {
    const build = buildOf('project "Half"\ninches\nopening nook { wide 20 high 8 }\nbox for nook { }\n');
    const papers = packetPapers(paperDesk(build, undefined), paperSizes.A4);
    const words = textsOf(papers.pages[0]!().blocks.flatMap(itemsOf)).map((item) => item.text);
    expect(words.join(" ")).toContain("Do not cut yet");
  });

  it("are made of nothing without failing", () => {
    const build = buildOf("");
    const desk = paperDesk(build, undefined);
    expect(packetPapers(desk, paperSizes.A4).pages).toHaveLength(1);
    expect(labelPapers(desk, paperSizes.A4).pages).toHaveLength(0);
    expect(stickPapers(desk, sticksFor(desk), paperSizes.A4).pages).toHaveLength(0);
  });

  it("carry the cautions for the work that they ask for, with the saw's first", () => {
    const papers = packetPapers(deskFor("print-room.scant"), paperSizes.Letter);
    const words = textsOf(papers.pages.slice(0, 3).flatMap((page) => page().blocks.flatMap(itemsOf))).map(
      (one) => one.text,
    );
    for (const head of ["Table saw", "Router and dado", "Lifting", "Tip-over"]) expect(words).toContain(head);
    expect(words.join(" ")).toContain("nothing here certifies anything");
  });
});

describe("story sticks", () => {
  // Worked by hand from the example: kick 4 + rail 1 1/2; four openings of 5 3/4 with rails of 1 1/2 between them; a
  // box stands 1/4 above the floor and is 5 1/4 high, so its slide's middle lies 2 7/8 up.
  it("have the running sizes of the openings and of the slides' middles", () => {
    const desk = deskFor("print-room.scant");
    const stick = sticksFor(desk).find((one) => one.title.endsWith("heights at plan-1 to plan-4"))!;
    const at = (what: string): string =>
      showText(stick.marks.find((mark) => mark.what.includes(what))!.at, desk.context.reading);
    expect(at("plan-4 floor")).toBe("5 1/2");
    expect(at("plan-4 head")).toBe("11 1/4");
    expect(at("plan-3 floor")).toBe("12 3/4");
    expect(at("plan-1 head")).toBe("33");
    expect(at("plan-4 slide, middle")).toBe("8 3/8");
    expect(at("plan-1 slide, middle")).toBe("30 1/8");
    expect(stick.marks[0]).toMatchObject({ at: ratio(0), what: ["standing floor"] });
  });

  it("are cut into sheets that overlap and leave nothing out", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 4000, noNaN: true }), (long) => {
        const tiles = tilesOf(long, 250);
        expect(tiles[0]!.from).toBe(0);
        expect(tiles.at(-1)!.to).toBe(long);
        tiles.slice(1).forEach((tile, index) => {
          expect(tiles[index]!.to - tile.from).toBeCloseTo(10, 9);
        });
        for (const tile of tiles) expect(tile.to - tile.from).toBeLessThan(250.001);
      }),
    );
  });
});

describe("settings", () => {
  it.each(examples)("serve every part once at the fence and once at the stop, largest first: %s", (name) => {
    const desk = deskFor(name);
    const settings = sawSettings(desk);
    for (const what of ["fence", "stop"]) {
      const mine = settings.filter((setting) => setting.what === what);
      expect(mine.flatMap((setting) => setting.parts)).toHaveLength(desk.model.parts.length);
      for (const batch of desk.batches) {
        const sizes = mine.filter((setting) => setting.stock === batch.stock).map((setting) => toNumber(setting.size));
        expect(sizes).toEqual([...new Set(sizes)].sort((a, b) => b - a));
      }
    }
  });

  it("give groove, rabbet and tongue with their parts", () => {
    const desk = deskFor("print-room.scant");
    const kinds = cutterSettings(desk).map(({ machining }) => machining.kind);
    expect(new Set(kinds)).toEqual(new Set(["groove", "rabbet", "tongue", "cup"]));
    const groove = cutterSettings(desk).find(({ machining }) => machining.where.includes("front face marked"))!;
    expect(new Set(groove.parts.map((part) => part.name))).toEqual(new Set(["stile", "rail"]));
    // The panel is 15/32 and the cutter 1/4: the groove lies 7/32 from the back.
    expect(groove.machining.from!.value).toEqual(ratio(7, 32));
  });
});

describe("assembly order", () => {
  it.each(examples)("has everything in place before what needs it: %s", (name) => {
    const desk = deskFor(name);
    const tasks = assemblyOrder(desk.model, desk.marks);
    const places = new Map(tasks.map((task, index) => [task.id, index]));
    expect(places.size).toBe(tasks.length);
    for (const [index, task] of tasks.entries()) {
      for (const need of task.needs) expect(places.get(need) ?? -1).toBeLessThan(index);
      if (task.kind === "clamps off") expect(tasks.slice(0, index).some((one) => one.kind === "glue")).toBe(true);
    }
  });

  it("fits dry before it glues, closes a panel in, mounts before it hangs, and puts a front on a box that hangs", () => {
    const desk = deskFor("print-room.scant");
    const ids = assemblyOrder(desk.model, desk.marks).map((task) => task.id);
    const comes = (a: string, b: string): void => {
      expect(ids, a).toContain(a);
      expect(ids.indexOf(a), `${a} before ${b}`).toBeLessThan(ids.indexOf(b));
    };
    comes("case chest/frame dry", "case chest/frame glue");
    comes("case chest/shell back", "case chest/shell");
    comes("case chest/framed", "mounts chest");
    comes("mounts chest", "slides chest");
    comes("slides chest", "box plan-1/hung");
    comes("box plan-1/bottom", "box plan-1/hung");
    comes("box plan-1/hung", "front plan-1/hung");
    const front = assemblyOrder(desk.model, desk.marks).find((task) => task.id === "front plan-1/glue")!;
    expect(front.words).toMatch(/panel \w+ goes in before the last stile/);
  });

  it("puts a bottom in a groove before the last side, and a back in a groove before the second side", () => {
    const desk = deskFor("seed-store.scant");
    const words = new Map(assemblyOrder(desk.model, desk.marks).map((task) => [task.id, task.words]));
    expect(words.get("box seed-1/glue")).toMatch(/slide the bottom \w+ in dry, then glue the other side/);
    expect(words.get("case store/shell glue")).toMatch(/back \w+ goes into its grooves before the second side/);
  });

  it("never loses a task and always obeys needs that can be obeyed", () => {
    const arbitrary = fc.array(fc.array(fc.nat(11), { maxLength: 4 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(arbitrary, (needs) => {
        const task = (index: number, of: readonly number[]): Task => ({
          id: `t${index}`,
          of: "",
          kind: "fix",
          words: "",
          needs: of.map((one) => `t${one}`),
        });
        const any = needs.map((of, index) => task(index, of));
        expect(
          inWorkingOrder(any)
            .map((one) => one.id)
            .sort(),
        ).toEqual(any.map((one) => one.id).sort());
        // Only needs that point back: no circles.
        const sound = needs
          .map((of, index) =>
            task(
              index,
              of.filter((one) => one < index),
            ),
          )
          .reverse();
        const ordered = inWorkingOrder(sound).map((one) => one.id);
        for (const one of sound) {
          for (const need of one.needs) expect(ordered.indexOf(need)).toBeLessThan(ordered.indexOf(one.id));
        }
      }),
    );
  });
});

describe("labels", () => {
  it.each(examples)("are as many as there are pieces: %s", (name) => {
    const desk = deskFor(name);
    const pieces = desk.model.parts.reduce((sum, part) => sum + part.quantity, 0);
    for (const size of Object.values(paperSizes)) {
      const blocks = labelPapers(desk, size).pages.flatMap((page) => page().blocks);
      expect(blocks).toHaveLength(pieces);
    }
  });

  it("carry a QR symbol with its three finder patterns, dark and light as they must be", () => {
    const items = qrItems(qrSymbol("Print room / H")!, { x: 0, y: 0 }, 21);
    const dark = (x: number, y: number): boolean =>
      items.some((item) => {
        const { left, right, top, bottom } = boundsOf([item])!;
        return left <= x && x < right && top <= y && y < bottom;
      });
    // Version 1 has 21 modules a side, each here 1 mm; a finder is 7 wide: dark, light, three dark, light, dark.
    for (const [x, y] of [
      [0, 0],
      [14, 0],
      [0, 14],
    ] as const) {
      const row = Array.from({ length: 7 }, (_, index) => dark(x + index + 0.5, y + 3.5));
      expect(row).toEqual([true, false, true, true, true, false, true]);
    }
  });

  it("do without a symbol where the text is longer than one holds, and take any letters", () => {
    expect(qrSymbol("x".repeat(4000))).toBeUndefined();
    expect(qrSymbol("шкаф \ud800 書")!.bars.length).toBeGreaterThan(10);
  });
});
