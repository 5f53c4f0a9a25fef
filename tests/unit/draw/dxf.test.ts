import { describe, expect, it } from "vitest";
import { panelDxf } from "../../../language/draw/dxf.ts";
import { exampleBuild, examples } from "./example.ts";

interface Entity {
  readonly kind: string;
  readonly layer: string;
  readonly values: ReadonlyMap<number, readonly string[]>;
}

/** Reads pairs of group codes and values, and the entities among them with their vertices. */
function read(dxf: string): {
  readonly pairs: readonly (readonly [number, string])[];
  readonly entities: readonly Entity[];
} {
  const lines = dxf.split("\r\n");
  expect(lines.pop()).toBe("");
  expect(lines.length % 2).toBe(0);
  const pairs = Array.from({ length: lines.length / 2 }, (_, index) => {
    expect(lines[2 * index]).toMatch(/^\s*\d+$/);
    return [Number(lines[2 * index]), lines[2 * index + 1]!] as const;
  });
  const start = pairs.findIndex(([code, value]) => code === 2 && value === "ENTITIES");
  const groups: (readonly [number, string])[][] = [];
  for (const pair of pairs.slice(start + 1)) {
    if (pair[0] === 0) groups.push([]);
    groups.at(-1)?.push(pair);
  }
  const entities = groups.map((group): Entity => {
    const values = new Map<number, string[]>();
    for (const [code, value] of group) values.set(code, [...(values.get(code) ?? []), value]);
    return { kind: group[0]![1], layer: values.get(8)?.[0] ?? "", values };
  });
  return { pairs, entities };
}

function corners(entities: readonly Entity[], layer: string): readonly (readonly [number, number])[] {
  return entities
    .filter((entity) => entity.kind === "VERTEX" && entity.layer === layer)
    .map(({ values }) => [Number(values.get(10)![0]), Number(values.get(20)![0])] as const);
}

const part = (file: string, id: string) => exampleBuild(file).derivation.model.parts.find((one) => one.id === id)!;

describe("a panel as DXF", () => {
  // By hand: sides 350 by 146.x mm; the bottom's groove is 5.9 wide and lies 13 from the lower edge; rabbets of 11.8.
  it("has outline, groove and rabbets in millimetres where they belong", () => {
    const side = part("seed-store.scant", "box seed-1/side");
    const { entities } = read(panelDxf(side, "H"));
    const outline = corners(entities, "OUTLINE");
    expect(outline[0]).toEqual([0, 0]);
    expect(outline[2]![0]).toBe(350);
    const groove = corners(entities, "GROOVE_6");
    expect(groove.map(([, y]) => y)).toEqual([13, 13, 18.9, 18.9]);
    const rabbets = corners(entities, "RABBET_6").map(([x]) => x);
    expect(rabbets).toEqual([0, 11.8, 11.8, 0, 338.2, 350, 350, 338.2]);
  });

  it("has the notch of a side cut out of its outline", () => {
    const side = part("print-room.scant", "case chest/side");
    const outline = corners(read(panelDxf(side, "C")).entities, "OUTLINE");
    // 4 in up and 3 in back from the front lower corner.
    expect(outline).toHaveLength(6);
    expect(outline[0]).toEqual([101.6, 0]);
    expect(outline.at(-1)).toEqual([101.6, 76.2]);
    expect(outline.at(-2)).toEqual([0, 76.2]);
  });

  it("has cups as circles of their width, so far from the edge", () => {
    const slab = part("seed-store.scant", "door jars/slab");
    const circles = read(panelDxf(slab, "C")).entities.filter((entity) => entity.kind === "CIRCLE");
    expect(circles.map(({ values }) => values.get(40)![0])).toEqual(["17.5", "17.5"]);
    expect(circles.map(({ values }) => Number(values.get(10)![0]))[0]).toBeCloseTo(76.2, 6);
  });

  it.each(examples)("is release 12, ASCII, with every layer declared and nothing beyond its outline: %s", (name) => {
    for (const one of exampleBuild(name).derivation.model.parts.filter((panel) => panel.stockKind === "sheet")) {
      const dxf = panelDxf(one, "Ä\r\n0\r\nEOF");
      expect([...dxf].every((letter) => letter.charCodeAt(0) < 0x80)).toBe(true);
      const { pairs, entities } = read(dxf);
      expect(pairs.find(([code]) => code === 1)![1]).toBe("AC1009");
      expect(pairs.filter(([code, value]) => code === 0 && value === "EOF")).toHaveLength(1);
      const tables = pairs
        .filter(([code], index) => code === 2 && pairs[index - 1]![1] === "LAYER")
        .map(([, value]) => value);
      for (const { layer } of entities.filter((entity) => entity.layer !== "")) expect(tables).toContain(layer);
      const outline = corners(entities, "OUTLINE");
      const [right, top] = [Math.max(...outline.map(([x]) => x)), Math.max(...outline.map(([, y]) => y))];
      for (const entity of entities.filter(({ kind }) => kind === "VERTEX")) {
        const [x, y] = [Number(entity.values.get(10)![0]), Number(entity.values.get(20)![0])];
        expect(-1e-6 < x && x < right + 1e-6 && -1e-6 < y && y < top + 1e-6).toBe(true);
      }
    }
  });
});
