import { describe, expect, it } from "vitest";
import * as boardFeet from "../../language/published/board-feet.ts";
import * as casework from "../../language/published/casework.ts";
import { cite, isQuantity, weakest } from "../../language/published/cited.ts";
import * as clothing from "../../language/published/clothing-storage.ts";
import * as fasteners from "../../language/published/fasteners.ts";
import * as gaps from "../../language/published/gaps.ts";
import * as hinges from "../../language/published/hinges.ts";
import { addScaled, decimalOf, inches, readFraction, reduced, sameFraction } from "../../language/published/lengths.ts";
import * as lifting from "../../language/published/lifting.ts";
import * as loads from "../../language/published/loads.ts";
import * as lumber from "../../language/published/lumber.ts";
import * as moisture from "../../language/published/moisture.ts";
import * as panelStock from "../../language/published/panel-stock.ts";
import * as tolerances from "../../language/published/panel-tolerances.ts";
import * as panels from "../../language/published/panels.ts";
import * as pockets from "../../language/published/pocket-screws.ts";
import * as safety from "../../language/published/safety.ts";
import * as shelves from "../../language/published/shelves.ts";
import * as slides from "../../language/published/slides.ts";
import * as species from "../../language/published/species-table.ts";
import * as stiffness from "../../language/published/stiffness.ts";

const modules = {
  ...{ boardFeet, casework, clothing, fasteners, gaps, hinges, lifting, loads, lumber, moisture, panelStock },
  ...{ tolerances, panels, pockets, safety, shelves, slides, species, stiffness },
};
const tags = ["published", "as transcribed", "common practice", "from memory"];
type Row = { readonly [key: string]: unknown };

const rows = Object.entries(modules).flatMap(([name, module]) => walk(module, name));

describe("every table row says where it comes from", () => {
  const sourced = rows.filter(({ row }) => "tag" in row || "source" in row);

  it("has a tag and a source, and plain words in it", () => {
    expect(sourced.length).toBeGreaterThan(250);
    for (const { path, row } of sourced) {
      expect(tags, path).toContain(row.tag);
      expect(String(row.source).trim().length, path).toBeGreaterThan(8);
      expect(String(row.source), path).not.toMatch(/https?:|www\.|undefined/);
    }
  });

  it("says 'from memory' and 'common practice' exactly where the tag does", () => {
    for (const { path, row } of sourced) {
      expect(String(row.source).startsWith("from memory"), path).toBe(row.tag === "from memory");
      expect(String(row.source).startsWith("common practice"), path).toBe(row.tag === "common practice");
    }
  });
});

describe("every length of a table is exact", () => {
  const lengths = rows.filter(({ row }) => "exact" in row);

  it("is a pair of whole numbers in lowest terms beside its decimal", () => {
    expect(lengths.length).toBeGreaterThan(200);
    for (const { path, row } of lengths) {
      const [numerator, denominator] = row.exact as readonly [number, number];
      expect(Number.isSafeInteger(numerator) && Number.isSafeInteger(denominator) && 0 < denominator, path).toBe(true);
      expect(reduced(numerator, denominator), path).toEqual(row.exact);
      expect(row.decimal, path).toBe(numerator / denominator);
      expect(["in", "mm"], path).toContain(row.unit);
    }
  });
});

describe("cautions", () => {
  it("each has its own id, a sentence and something it gives way to", () => {
    expect(new Set(safety.cautions.map(({ id }) => id)).size).toBe(safety.cautions.length);
    for (const caution of safety.cautions) {
      expect(caution.text).toMatch(/^[A-Z].{20,}\.$/);
      expect(caution.defersTo).toMatch(/manual|codes|data sheet/);
    }
  });

  it("covers machines, dust, lifting, tip-over, hanging, electricity and gas", () => {
    const hazards = [
      ...([
        "table saw",
        "radial arm saw",
        "router and dado",
        "jointer",
        "planer",
        "any machine",
        "pneumatic nailer",
      ] as const),
      ...(["dust and finish", "lifting", "tip-over", "wall hanging", "electricity and gas"] as const),
    ];
    for (const hazard of hazards) expect(safety.cautionsFor(hazard).length, hazard).toBeGreaterThan(0);
  });

  it.each([
    ["saw-spreader", "1/2 in", "published"], // California Title 8 section 4296(i), (j)
    ["saw-hood", "1/4 in", "published"], // WAC 296-806-48012(4)(b)
    ["radial-guard", "3/8 in", "published"], // WAC 296-155-370(4)
    ["saw-guard", "hood", "as transcribed"], // 29 CFR 1910.213(c)
    ["dado-guard", "featherboards", "published"], // California Title 8 section 4296(a)
    ["jointer-depth", "1/16 in", "common practice"], // school shop rule
  ])("%s states %s, %s", (id, figure, tag) => {
    const caution = safety.cautions.find((one) => one.id === id)!;
    expect(caution.text).toContain(figure);
    expect(caution.tag).toBe(tag);
  });

  it("smallest stock: 12 in to joint, 1/4 in thick, hands 3 in off, push stick to 6 in (school shop rules, common practice)", () => {
    const { jointerLength, jointerThickness, planerThickness, handClearance, pushStickRip } = safety.smallestStock;
    const found = [jointerLength, jointerThickness, planerThickness, handClearance, pushStickRip].map(
      ({ value }) => value.exact,
    );
    expect(found).toEqual([
      [12, 1],
      [1, 4],
      [1, 4],
      [3, 1],
      [6, 1],
    ]);
  });
});

describe("small helpers", () => {
  it("reads shop fractions exactly", () => {
    expect(readFraction("13/16")).toEqual([13, 16]);
    expect(readFraction("1-1/16")).toEqual([17, 16]);
    expect(readFraction(" 1 1/16 ")).toEqual([17, 16]);
    expect(readFraction("0.719")).toEqual([719, 1000]);
    expect(readFraction("6/8")).toEqual([3, 4]);
    expect(readFraction("0")).toEqual([0, 1]);
    for (const bad of ["", "1/0", "three", "1//2", "-1", "1.", "1/2/3"]) expect(readFraction(bad), bad).toBeUndefined();
    expect(() => inches("scant")).toThrow("scant");
  });

  it("adds and compares without rounding", () => {
    expect(addScaled([1, 3], [2, 1], [1, 6])).toEqual([2, 3]);
    expect(addScaled([1, 3], [-1, 1], [1, 2])).toEqual([-1, 6]);
    expect(addScaled([1, Number.MAX_SAFE_INTEGER], [1, 2], [1, 3])).toBeUndefined();
    expect(sameFraction([2, 4], [1, 2])).toBe(true);
    expect(sameFraction([0, 0], [1, 2])).toBe(false);
    expect(decimalOf([1, 0])).toBeNaN();
    expect(reduced(1.5, 2)).toBeUndefined();
    expect(reduced(1, -2)).toBeUndefined();
  });

  it("a result claims no more than its weakest input", () => {
    expect(weakest(["published", "common practice", "as transcribed"])).toBe("common practice");
    expect(weakest([])).toBe("published");
    expect(cite(1, { tag: "published", source: "a book" })).toEqual({ value: 1, tag: "published", source: "a book" });
    expect([0, 1, -1, Number.NaN, Infinity].map(isQuantity)).toEqual([true, true, false, false, false]);
  });
});

function walk(value: unknown, path: string): { path: string; row: Row }[] {
  if (typeof value !== "object" || value === null) return [];
  const row = value as Row;
  const below = Object.entries(row).flatMap(([key, child]) => walk(child, `${path}.${key}`));
  return Array.isArray(value) ? below : [{ path, row }, ...below];
}
