import { describe, expect, it } from "vitest";
import { atOnce } from "../../../language/core/stepwise.ts";
import { boundsOf, textBounds } from "../../../language/draw/bounds.ts";
import type { Drawing, Group, Item, Line, Text } from "../../../language/draw/display-list.ts";
import { explodedSteps, isExploded } from "../../../language/draw/exploded.ts";
import type { Build } from "../../../language/service.ts";
import { place } from "../../../language/solid/place.ts";
import { buildOf, deskOf, exampleBuild, examples } from "./example.ts";

function viewsOf(build: Build): readonly Drawing[] {
  const { context, model } = build.derivation;
  return atOnce(explodedSteps(deskOf(build), place(context, model)));
}

const groupsOf = ({ items }: Drawing): readonly Group[] => items.filter((item) => item.kind === "group");
const textsOf = ({ items }: Drawing): readonly Text[] => items.filter((item) => item.kind === "text");
const linesOf = (items: readonly Item[]): readonly Line[] => items.filter((item) => item.kind === "line");
const rowsOf = (drawing: Drawing): readonly (readonly string[])[] => drawing.equivalent.rows;

describe("exploded views", () => {
  it("show the parts of a case, what goes into it, and each box and framed front that differs", () => {
    const ids = viewsOf(exampleBuild("print-room.scant")).map(({ id }) => id);
    expect(ids).toEqual([
      "case chest/exploded",
      "case chest/exploded-contents",
      "box plan-1/exploded",
      "box inks/exploded",
      "front inks/exploded",
      "front plan-1/exploded",
      "door rollers/exploded",
    ]);
  });

  it.each(examples)("hold every piece that is not wholly behind others, each with where it is written: %s", (name) => {
    const build = exampleBuild(name);
    const { context, model } = build.derivation;
    const views = viewsOf(build);
    const drawn = new Map(views.flatMap(groupsOf).map((group) => [group.id, group] as const));
    const listed = new Set(views.flatMap(rowsOf).map((row) => row[0]));
    const { solids } = place(context, model);
    expect(solids.length).toBeGreaterThan(20);
    for (const { part } of solids) {
      const group = drawn.get(part.id);
      // Of boxes that are alike one is shown apart; of the others some pieces may be behind their fronts.
      if (group === undefined) expect(listed).toContain(part.of);
      else expect(group.target).toEqual(part.source);
      if (/^(case|opening) /.test(part.of)) expect(group).toBeDefined();
    }
    for (const group of drawn.values()) expect(boundsOf(group.items)).toBeDefined();
  });

  it.each(examples)("letter each piece that is seen as in the cut list, no label over another: %s", (name) => {
    const build = exampleBuild(name);
    const marks = new Set(deskOf(build).marks.values());
    for (const drawing of viewsOf(build)) {
      const labels = textsOf(drawing);
      expect(labels.length).toBeGreaterThan(2);
      for (const { text } of labels)
        expect(text.split(" + ").every((one) => marks.has(one)) || /^(box|front|door) /.test(text)).toBe(true);
      const boxes = labels.map(textBounds);
      for (const [index, a] of boxes.entries())
        for (const b of boxes.slice(index + 1))
          expect(a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top).toBe(true);
    }
    for (const drawing of viewsOf(build).filter(({ id }) => /^(box|front|door) /.test(id)))
      expect(textsOf(drawing)).toHaveLength(groupsOf(drawing).length);
  });

  it.each(examples)("have lines along the three axes alone, but for those that lead to labels: %s", (name) => {
    for (const drawing of viewsOf(exampleBuild(name))) {
      const own = groupsOf(drawing).flatMap(({ items }) => linesOf(items));
      const led = linesOf(drawing.items).filter(({ stroke }) => stroke === "chain");
      expect(own.length).toBeGreaterThan(20);
      expect(led.length).toBeGreaterThan(1);
      for (const { from, to } of [...own, ...led]) {
        const degrees = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
        expect(Math.abs(degrees / 30 - Math.round(degrees / 30))).toBeLessThan(1e-3);
        expect([1, 3, 5]).toContain(Math.abs(Math.round(degrees / 30)));
      }
    }
  });

  it("move what is put on along the way it is put on, the table says so", () => {
    const [parts, contents] = viewsOf(exampleBuild("seed-store.scant"));
    const moved = (drawing: Drawing, what: string): readonly string[] =>
      rowsOf(drawing)
        .filter((row) => row[1] === what)
        .map((row) => row[4]!);
    expect(moved(parts!, "side")).toEqual(["to the left", "to the right"]);
    expect(moved(parts!, "top")).toEqual(["up"]);
    expect(moved(parts!, "bottom")).toEqual(["down"]);
    expect(moved(parts!, "back")).toEqual(["to the rear"]);
    expect(moved(parts!, "partition")).toEqual(["stays"]);
    expect(moved(contents!, "shelf")).toEqual(["to the front"]);
    for (const way of moved(contents!, "slab")) expect(way).toBe("to the front");
  });

  it("say what each piece meets", () => {
    const build = exampleBuild("seed-store.scant");
    const [parts] = viewsOf(build);
    const side = [...deskOf(build).marks].find(([part]) => part.id === "case store/side")![1];
    const back = rowsOf(parts!).find((row) => row[1] === "back")!;
    expect(back[5]!.split(", ")).toContain(side);
  });

  // Worked by hand: at 1 : 10 a side 720 mm high is drawn 72 mm high, and no move or axis makes that other.
  it("are to scale along each axis", () => {
    const [parts] = viewsOf(exampleBuild("seed-store.scant"));
    expect(parts!.scale).toBe("1 : 10");
    const side = groupsOf(parts!).find(({ id }) => id === "case store/side#2")!;
    const upright = linesOf(side.items).filter(({ weight, from, to }) => weight === "medium" && from.x === to.x);
    expect(Math.max(...upright.map(({ from, to }) => Math.abs(from.y - to.y)))).toBeCloseTo(72, 2);
  });

  it("look at what stands in a rear face from the rear", () => {
    const views = viewsOf(buildOf(island));
    expect(views.map(({ id }) => id)).toContain("case island/exploded-contents-rear");
    const rear = views.find(({ id }) => id === "case island/exploded-contents-rear")!;
    expect(rowsOf(rear).map((row) => row[0])).toContain("box narrow");
    const front = views.find(({ id }) => id === "case island/exploded-contents")!;
    expect(rowsOf(front).map((row) => row[0])).not.toContain("box narrow");
    // The box comes towards the eye: its front is not hidden.
    const box = groupsOf(rear).find(({ id }) => id === "box narrow/front")!;
    expect(boundsOf(box.items)).toBeDefined();
  });

  it("are nothing for nothing, and for half a file what it says", () => {
    expect(viewsOf(buildOf(""))).toEqual([]);
    for (let long = 40; long < island.length; long += 60)
      expect(() => viewsOf(buildOf(island.slice(0, long)))).not.toThrow();
  });

  it("are told from other drawings by their ids", () => {
    expect(viewsOf(exampleBuild("sewing-room.scant")).every(isExploded)).toBe(true);
    expect(isExploded({ ...viewsOf(exampleBuild("seed-store.scant"))[0]!, id: "case store/front" })).toBe(false);
  });
});

/** A case with openings on both faces. */
const island = `project "Island"
inches
sheet ply-18 { measures 45/64 size 48 x 96 }
sheet ply-12 { measures 15/32 size 48 x 96 }
board maple { thick 3/4 }
slides runner { mount side lengths 10 to 28 by 2 }
case island {
  wide 40 high 30 deep 30
  panels ply-18
  frame maple { stiles 2 rails 2 opening front-1 }
  rear { frame maple { stiles 2 rails 2 across { opening narrow 10  stile  opening broad rest } } }
}
box for narrow { sides ply-18 bottom ply-12 under corners screws slides runner 10 deep 10 }
front for narrow { overlay 1/2 slab ply-18 }
door for front-1 { overlay 1/2 slab ply-18 pair hinged left }
`;
