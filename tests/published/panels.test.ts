import { describe, expect, it } from "vitest";
import { type Fraction, readFraction } from "../../language/published/lengths.ts";
import {
  faceWeight,
  formworkWeights,
  panelStock,
  pieceWeight,
  sheetsByArea,
} from "../../language/published/panel-stock.ts";
import {
  allowedOutOfSquare,
  en315Moisture,
  en324,
  mdfExpansion,
  sheetSize,
  squarenessPerFoot,
  straightness,
} from "../../language/published/panel-tolerances.ts";
import {
  findCategory,
  labelRange,
  metricLabelRange,
  ps1Categories,
  ps1Source,
} from "../../language/published/panels.ts";

const inch = (text: string): Fraction => readFraction(text)!;

// PS 1, unsanded, touch-sanded and overlaid: category, least in (mm), most in (mm), marked in; as transcribed by the panel association.
const ps1: readonly (readonly [string, number, number, number, number, number])[] = [
  ["1/4", 0.219, 5.56, 0.281, 7.14, 0.225],
  ["11/32", 0.313, 7.94, 0.375, 9.53, 0.322],
  ["3/8", 0.344, 8.73, 0.406, 10.32, 0.354],
  ["7/16", 0.406, 10.32, 0.469, 11.91, 0.418],
  ["15/32", 0.438, 11.11, 0.5, 12.7, 0.451],
  ["1/2", 0.469, 11.91, 0.531, 13.49, 0.483],
  ["19/32", 0.563, 14.29, 0.625, 15.88, 0.578],
  ["5/8", 0.594, 15.08, 0.656, 16.67, 0.609],
  ["23/32", 0.688, 17.46, 0.75, 19.05, 0.703],
  ["3/4", 0.719, 18.26, 0.781, 19.84, 0.734],
  ["13/16", 0.781, 19.84, 0.844, 21.43, 0.788],
  ["7/8", 0.831, 21.11, 0.919, 23.34, 0.849],
  ["1", 0.95, 24.13, 1.05, 26.67, 0.97],
  ["1-1/8", 1.069, 27.15, 1.181, 30.0, 1.091],
  ["1-1/4", 1.188, 30.16, 1.313, 33.34, 1.213],
];

describe("PS 1 categories (as transcribed)", () => {
  it.each(ps1)("%s", (name, least, leastMm, most, mostMm, marked) => {
    const row = findCategory(inch(name))!;
    expect([row.least.decimal, row.most.decimal, row.marked.decimal]).toEqual([least, most, marked]);
    // The millimetre column is rounded on its own from the exact size, so it agrees to 0.02 mm.
    expect(Math.abs(row.least.decimal * 25.4 - leastMm)).toBeLessThan(0.02);
    expect(Math.abs(row.most.decimal * 25.4 - mostMm)).toBeLessThan(0.02);
  });

  it("follows the rule printed beside it: 1/32 in either way up to 13/16, 5 % above", () => {
    expect(ps1Categories).toHaveLength(15);
    expect(ps1Source.tag).toBe("as transcribed");
    for (const { category, least, most } of ps1Categories) {
      const allowed = category.decimal <= 13 / 16 ? 1 / 32 : category.decimal * 0.05;
      expect(Math.abs(category.decimal - allowed - least.decimal)).toBeLessThan(0.00051);
      expect(Math.abs(category.decimal + allowed - most.decimal)).toBeLessThan(0.00051);
    }
  });

  it("finds a category whatever the terms of its fraction, and none for 9/16", () => {
    expect(findCategory([24, 32])).toBe(findCategory([3, 4]));
    expect(findCategory(inch("9/16"))).toBeUndefined();
  });
});

describe("what a label means", () => {
  it("23/32 by PS 1 is 0.688 to 0.750, exactly", () => {
    const range = labelRange([23, 32], "PS 1 plywood")!;
    expect(range).toMatchObject({ tag: "as transcribed", least: { exact: [86, 125] }, most: { exact: [3, 4] } });
  });

  it("an everyday 3/4 may be the 23/32 category: 0.688 to 0.781 (common practice, no source)", () => {
    const range = labelRange([3, 4], "plywood")!;
    expect(range.tag).toBe("common practice");
    expect([range.least.decimal, range.most.decimal]).toEqual([0.688, 0.781]);
    expect(labelRange([1, 4], "plywood")).toMatchObject({
      tag: "as transcribed",
      least: { decimal: 0.219 },
      most: { decimal: 0.281 },
    });
  });

  it.each([
    ["3/8", "11/32"],
    ["1/2", "15/32"],
    ["5/8", "19/32"],
    ["3/4", "23/32"],
  ])("an everyday %s reaches down to %s (common practice, no source)", (label, lower) => {
    const range = labelRange(inch(label), "plywood")!;
    expect(range.least).toEqual(findCategory(inch(lower))!.least);
    expect(range.most).toEqual(findCategory(inch(label))!.most);
  });

  it("sanded PS 1 is within 1/64 in up to 3/4, 3 % above (PS 1-19 as described)", () => {
    const range = labelRange([1, 2], "PS 1 sanded plywood")!;
    expect([range.least.exact, range.most.exact]).toEqual([
      [31, 64],
      [33, 64],
    ]);
    expect(labelRange([3, 4], "PS 1 sanded plywood")!.least.exact).toEqual([47, 64]);
    const thick = labelRange([1, 1], "PS 1 sanded plywood")!;
    expect([thick.least.exact, thick.most.exact]).toEqual([
      [97, 100],
      [103, 100],
    ]);
  });

  it("MDF is within 0.010 in, average and variance together (ANSI A208.2 Table 2 as transcribed; sign as read)", () => {
    expect(labelRange([3, 4], "MDF")).toMatchObject({
      least: { exact: [37, 50] },
      most: { exact: [19, 25] },
      tag: "as transcribed",
    });
  });

  it("marks HP-1, A208.1 and EN 315 figures as remembered", () => {
    expect(labelRange([3, 4], "hardwood plywood")!.tag).toBe("from memory");
    expect(labelRange([3, 4], "particleboard")!.tag).toBe("from memory");
    expect(metricLabelRange([18, 1], "sanded")!.tag).toBe("from memory");
    expect(metricLabelRange([18, 1], "sanded")!.most.decimal).toBeLessThan(
      metricLabelRange([18, 1], "unsanded")!.most.decimal,
    );
    expect(metricLabelRange([18, 1], "sanded")!.least.unit).toBe("mm");
  });

  it("brackets its own label, and gives nothing for a label without meaning", () => {
    for (const kind of [
      "plywood",
      "PS 1 plywood",
      "PS 1 sanded plywood",
      "hardwood plywood",
      "MDF",
      "particleboard",
    ] as const) {
      const range = labelRange([1, 2], kind)!;
      expect(range.least.decimal).toBeLessThan(0.5);
      expect(range.most.decimal).toBeGreaterThanOrEqual(0.5);
      expect(labelRange([0, 1], kind)).toBeUndefined();
      expect(labelRange([-1, 2], kind)).toBeUndefined();
      expect(labelRange([1, 0], kind)).toBeUndefined();
    }
    expect(labelRange([9, 16], "PS 1 plywood")).toBeUndefined();
    expect(metricLabelRange([1, 4], "sanded")).toBeUndefined();
  });
});

describe("other tolerances (as transcribed)", () => {
  it("PS 1-19: length and width +0 -1/16; 1/64 a foot out of square, 1/8 for 8 ft; edges within 1/16", () => {
    expect(sheetSize["PS 1 plywood"].value.over.exact).toEqual([0, 1]);
    expect(sheetSize["PS 1 plywood"].value.under.exact).toEqual([1, 16]);
    expect(squarenessPerFoot.value.exact).toEqual([1, 64]);
    expect(allowedOutOfSquare(8)).toEqual([1, 8]);
    expect(allowedOutOfSquare(0)).toBeUndefined();
    expect(straightness.value.exact).toEqual([1, 16]);
  });

  it("MDF over 2 ft: 0.080 in (2.0 mm) in length and width, expansion at most 0.33 % (ANSI A208.2)", () => {
    expect(sheetSize.MDF.value.under.exact).toEqual([2, 25]);
    expect(sheetSize.MDF.value.under.decimal * 25.4).toBeCloseTo(2.0, 1);
    expect(mdfExpansion.value).toBe(0.0033);
  });

  it("EN 324: mean of 8 readings, 50 mm in, to 0.1 mm, sizes to 1 mm, square to 0.5 mm/m; EN 315 at 10 +-2 %", () => {
    expect(en324.value.readings).toBe(8);
    expect(en324.value.inset.decimal).toBe(50);
    expect(en324.value.thicknessTo.exact).toEqual([1, 10]);
    expect(en324.value.sizeTo.exact).toEqual([1, 1]);
    expect(en324.value.squarenessPerMetre.exact).toEqual([1, 2]);
    expect(en315Moisture.value).toEqual({ middle: 10, spread: 2 });
  });

  it("marks remembered sheet sizes", () => {
    for (const kind of ["hardwood plywood", "particleboard", "EN 315 plywood"] as const)
      expect(sheetSize[kind].tag).toBe("from memory");
  });
});

describe("weight", () => {
  it.each([
    [1 / 2, 1.5, 48.0],
    [5 / 8, 1.8, 57.6],
    [3 / 4, 2.2, 70.4],
    [7 / 8, 2.6, 83.2],
    [1, 3.0, 96.0],
    [9 / 8, 3.3, 105.6],
  ])(
    "%d in plywood is %d lb a square foot, %d lb a 4 x 8 sheet (formwork table, common practice)",
    (thickness, each, sheet) => {
      const found = formworkWeights.find(([size]) => size === thickness)![1];
      expect(found.value).toBe(each);
      expect(faceWeight(96, 48, found.value)).toBeCloseTo(sheet, 9);
      // The rule of thumb, 3 lb a square foot for each inch, comes within 5 % of the table.
      const thumb = pieceWeight(96, 48, thickness, panelStock["softwood plywood"].density.value)!;
      expect(Math.abs(thumb / sheet - 1)).toBeLessThan(0.05);
    },
  );

  it("hardwood plywood, 1/2 in: 45 lb a sheet (common practice, low quality)", () => {
    expect(pieceWeight(96, 48, 1 / 2, panelStock["hardwood plywood"].density.value)).toBeCloseTo(45, 9);
  });

  it("has AWS's 950 000 psi for veneer-core Douglas-fir plywood (p. 279), and marks remembered stock", () => {
    expect(panelStock["softwood plywood"].modulus).toMatchObject({ value: 950_000, tag: "published" });
    for (const material of ["MDF", "particleboard"] as const) {
      expect([panelStock[material].density.tag, panelStock[material].modulus.tag]).toEqual([
        "from memory",
        "from memory",
      ]);
    }
  });

  it("gives nothing for bad input", () => {
    expect(pieceWeight(-1, 1, 1, 1)).toBeUndefined();
    expect(pieceWeight(1, 1, 1, Number.NaN)).toBeUndefined();
    expect(faceWeight(1, Infinity, 1)).toBeUndefined();
  });
});

describe("sheets by area (as transcribed from a general page)", () => {
  it("12 x 20 ft and 10 % waste ask for 9 sheets, 800 square feet for 25", () => {
    expect(sheetsByArea(240, 32, 0.1)).toBe(9);
    expect(sheetsByArea(800, 32, 0)).toBe(25);
    expect(sheetsByArea(320, 32, 0.1)).toBe(11);
    expect(sheetsByArea(320, 0, 0.1)).toBeUndefined();
  });
});
