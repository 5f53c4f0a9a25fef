import { describe, expect, it } from "vitest";
import { toMillimetres } from "../../../language/core/length.ts";
import { toNumber } from "../../../language/core/rational.ts";
import { boundsOf } from "../../../language/draw/bounds.ts";
import { extentOf } from "../../../language/draw/desk.ts";
import type { Group, Item } from "../../../language/draw/display-list.ts";
import { drawingsOf } from "../../../language/draw/drawings.ts";
import { textWidth } from "../../../language/draw/letters.ts";
import { scenesOf } from "../../../language/draw/place/scene.ts";
import { longOf } from "../../../language/draw/place/solid.ts";
import { sheetPlanDrawing } from "../../../language/draw/sheet-plan.ts";
import { paperDesk } from "../../../language/papers/desk.ts";
import { buildOf, deskOf, exampleBuild, examples } from "./example.ts";

const groups = (items: readonly Item[]): readonly Group[] =>
  items.flatMap((item) => (item.kind === "group" ? [item, ...groups(item.items)] : []));

describe("the drawings of a build", () => {
  it.each(examples)("have unique ids, a scale, room for all their items and a text that says the same: %s", (name) => {
    const drawings = drawingsOf(deskOf(exampleBuild(name)));
    expect(new Set(drawings.map((drawing) => drawing.id)).size).toBe(drawings.length);
    for (const drawing of drawings) {
      const bounds = boundsOf(drawing.items)!;
      expect(bounds.left).toBeGreaterThan(-1e-6);
      expect(bounds.top).toBeGreaterThan(-1e-6);
      expect(bounds.right).toBeLessThan(drawing.wide + 1e-6);
      expect(bounds.bottom).toBeLessThan(drawing.high + 1e-6);
      expect(drawing.scale).toMatch(/^1 : \d+$/);
      for (const row of drawing.equivalent.rows) expect(row).toHaveLength(drawing.equivalent.columns.length);
      const ids = groups(drawing.items).map((group) => group.id);
      expect(new Set(ids).size).toBe(ids.length);
    }
  });

  it.each(examples)("show every opening, box and front: %s", (name) => {
    const build = exampleBuild(name);
    const { model } = build.derivation;
    const ids = new Set(drawingsOf(deskOf(build)).flatMap((drawing) => groups(drawing.items).map((group) => group.id)));
    for (const opening of model.openings) expect(ids).toContain(`opening ${opening.name.text}`);
    for (const front of model.fronts) expect(ids).toContain(front.of);
    for (const box of model.boxes) expect(ids).toContain(`${box.of}/side`);
  });

  it("are to scale: a case 48 in wide at 1 : 10 is 121.92 mm on paper", () => {
    const drawing = drawingsOf(deskOf(exampleBuild("print-room.scant"))).find((one) => one.id === "case chest/front")!;
    expect(drawing.scale).toBe("1 : 10");
    const members = groups(drawing.items).filter((group) => group.id.startsWith("case chest/stile"));
    const bounds = boundsOf(members)!;
    expect(bounds.right - bounds.left).toBeCloseTo((48 * 25.4) / 10, 6);
    expect(bounds.bottom - bounds.top).toBeCloseTo((30.5 * 25.4) / 10, 6);
  });

  it("are made anew the same", () => {
    const make = () => drawingsOf(deskOf(exampleBuild("print-room.scant")));
    expect(JSON.stringify(make())).toBe(JSON.stringify(make()));
  });

  it("stand for what half a file says, and for nothing at all", () => {
    expect(drawingsOf(deskOf(buildOf("")))).toEqual([]);
    const bare = drawingsOf(deskOf(buildOf("inches\nopening nook { wide 20 high 8 }\n")));
    expect(bare.map((drawing) => drawing.id)).toContain("opening nook/front");
    for (const step of [60, 200, 500, 900, 1300, 1700]) {
      const text = `${whole.slice(0, step)}`;
      expect(() => drawingsOf(deskOf(buildOf(text)))).not.toThrow();
    }
  });

  it("turn a rear face round", () => {
    const drawings = drawingsOf(deskOf(buildOf(whole)));
    const rear = drawings.find((drawing) => drawing.id === "case island/rear")!;
    const [narrow, broad] = ["narrow", "broad"].map(
      (name) => boundsOf([groups(rear.items).find((group) => group.id === `opening ${name}`)!])!,
    );
    // Laid out from left to right as one stands before it.
    expect(narrow!.right).toBeLessThan(broad!.left);
  });
});

/** A case with openings on both faces. */
const whole = `project "Island"
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

describe("pieces in their places", () => {
  it.each(examples)("stand inside their openings, slides filling what is left at their sides: %s", (name) => {
    const { context, model } = exampleBuild(name).derivation;
    for (const scene of scenesOf(context, model)) {
      for (const box of scene.boxes) {
        const solids = scene.solids.filter((solid) => solid.of === box.of);
        const body = extentOf(
          solids.filter((solid) => solid.role === "box"),
          "x",
        );
        expect(longOf(body)).toEqual(box.wide.value);
        if ((box.slides.block.mount?.value ?? "side") !== "side") continue;
        const slides = solids.filter((solid) => solid.role === "slide");
        expect(slides).toHaveLength(2);
        for (const slide of slides) {
          expect(toNumber(toMillimetres(longOf(slide.place.x)))).toBeCloseTo(
            toNumber(toMillimetres(box.slides.clearance.value)),
            9,
          );
        }
      }
    }
  });

  it("of a case come to its outside sizes", () => {
    const { context, model } = exampleBuild("print-room.scant").derivation;
    const [scene] = scenesOf(context, model);
    const shell = scene!.solids.filter((solid) => solid.role === "case" || solid.role === "frame");
    const home = scene!.case!;
    expect(longOf(extentOf(shell, "x"))).toEqual(home.wide.value);
    expect(longOf(extentOf(shell, "y"))).toEqual(home.high.value);
    expect(longOf(extentOf(shell, "z"))).toEqual(home.deep.value);
  });

  it("are as many as the parts list counts", () => {
    const { context, model } = exampleBuild("print-room.scant").derivation;
    const placed = new Map<string, number>();
    for (const { part } of scenesOf(context, model).flatMap((scene) => scene.solids)) {
      if (part !== undefined) placed.set(part.id, (placed.get(part.id) ?? 0) + 1);
    }
    const counted = new Map<string, number>();
    for (const part of model.parts) counted.set(part.id, (counted.get(part.id) ?? 0) + part.quantity);
    expect([...placed].sort()).toEqual([...counted].sort());
  });
});

it("the grain on the drawing of a sheet runs as the sheet says, upright or lying", () => {
  const along = (grain: string, size: string) => {
    const build = buildOf(`inches sheet ply { measures 3/4  size ${size}  grain ${grain} }
      part one { from ply  long 20  wide 10 }`);
    const plan = build.plan({ steps: 10 });
    const desk = paperDesk(build, plan);
    const drawing = sheetPlanDrawing(desk, plan.stocks[0]!.sheets[0]!)!;
    const flat = (items: readonly Item[]): readonly Item[] =>
      items.flatMap((item) => (item.kind === "group" ? flat(item.items) : [item]));
    return flat(drawing.items).flatMap((item) => (item.kind === "area" && item.hatch === "grain" ? [item.along] : []));
  };
  const [flat, up] = [
    { x: 1, y: 0 },
    { x: 0, y: 1 },
  ];
  // A sheet that is longer than it is wide is drawn lying.
  expect([along("long", "48 x 96"), along("across", "48 x 96")]).toEqual([[flat], [up]]);
  expect([along("long", "60 x 48"), along("across", "60 x 48")]).toEqual([[up], [flat]]);
});

it("a strip too low for its size under its letter has it beside it, where that has room, and neither runs into the other", () => {
  const build = buildOf(`inches sheet ply { measures 3/4  size 48 x 96 }
    part long-one { from ply  long 80  wide 4 1/2 }
    part short-one { from ply  long 9  wide 4 }`);
  const plan = build.plan({ steps: 10 });
  const drawing = sheetPlanDrawing(paperDesk(build, plan), plan.stocks[0]!.sheets[0]!)!;
  const words = drawing.items.flatMap((item) =>
    item.kind === "group" ? [item.items.flatMap((one) => (one.kind === "text" ? [one] : []))] : [],
  );
  const texts = words.map((all) => all.map((one) => one.text));
  expect(texts).toContainEqual(["A", "80 × 4 1/2"]);
  expect(texts).toContainEqual(["B"]);
  const [letter, size] = words.find((all) => all.length === 2)!;
  const half = (one: typeof letter): number => textWidth(one!.text, one!.size, one!.face) / 2;
  expect(size!.at.x - letter!.at.x).toBeGreaterThan(1.3 * (half(letter) + half(size)));
});
