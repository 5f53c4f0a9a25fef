import { describe, expect, it } from "vitest";
import {
  boardFeet,
  boardsAcross,
  hardwoodTally,
  inTwelfths,
  surfaceMeasure,
  takeOffWaste,
  woodDensity,
  woodPoundsPerCubicFoot,
} from "../../language/published/board-feet.ts";
import { readFraction } from "../../language/published/lengths.ts";
import {
  hardwoodGrades,
  hardwoodSource,
  hardwoodThickness,
  softwoodSource,
  softwoodThickness,
  softwoodWidth,
} from "../../language/published/lumber.ts";
import { findSpecies } from "../../language/published/species.ts";

const exact = (text: string) => readFraction(text)!;

describe("PS 20 sizes (as transcribed), dry and green", () => {
  it.each([
    ["3/8", "5/16", "11/32"],
    ["1/2", "7/16", "15/32"],
    ["5/8", "9/16", "19/32"],
    ["3/4", "5/8", "11/16"],
    ["1", "3/4", "25/32"],
    ["1-1/4", "1", "1-1/32"],
    ["1-1/2", "1-1/4", "1-9/32"],
    ["2", "1-1/2", "1-9/16"],
    ["2-1/2", "2", "2-1/16"],
    ["3", "2-1/2", "2-9/16"],
    ["3-1/2", "3", "3-1/16"],
    ["4", "3-1/2", "3-9/16"],
  ])("%s thick", (nominal, dry, green) => {
    const size = softwoodThickness(exact(nominal))!;
    expect([size.dry.exact, size.green.exact]).toEqual([exact(dry), exact(green)]);
  });

  it.each([
    ["2", "1-1/2", "1-9/16"],
    ["3", "2-1/2", "2-9/16"],
    ["4", "3-1/2", "3-9/16"],
    ["5", "4-1/2", "4-5/8"],
    ["6", "5-1/2", "5-5/8"],
    ["7", "6-1/2", "6-5/8"],
    ["8", "7-1/4", "7-1/2"],
    ["9", "8-1/4", "8-1/2"],
    ["10", "9-1/4", "9-1/2"],
    ["11", "10-1/4", "10-1/2"],
    ["12", "11-1/4", "11-1/2"],
    ["14", "13-1/4", "13-1/2"],
    ["16", "15-1/4", "15-1/2"],
  ])("%s wide", (nominal, dry, green) => {
    const size = softwoodWidth(exact(nominal))!;
    expect([size.dry.exact, size.green.exact]).toEqual([exact(dry), exact(green)]);
    // The rule printed beside the table: 1/2 in off up to 7, 3/4 off from 8.
    expect(size.nominal.decimal - size.dry.decimal).toBe(size.nominal.decimal < 8 ? 0.5 : 0.75);
  });

  it("has no size between the rows", () => {
    expect(softwoodSource.tag).toBe("as transcribed");
    expect(softwoodThickness(exact("7/8"))).toBeUndefined();
    expect(softwoodWidth(exact("13"))).toBeUndefined();
  });
});

describe("hardwood thickness (as transcribed, two sources agree): rough, S1S, S2S", () => {
  it.each([
    ["1/2", undefined, "3/8", "5/16"],
    ["5/8", undefined, "1/2", "7/16"],
    ["3/4", undefined, "5/8", "9/16"],
    ["1", "4/4", "7/8", "13/16"],
    ["1-1/4", "5/4", "1-1/8", "1-1/16"],
    ["1-1/2", "6/4", "1-3/8", "1-5/16"],
    ["2", "8/4", "1-13/16", "1-3/4"],
    ["3", "12/4", "2-13/16", "2-3/4"],
    ["4", "16/4", "3-13/16", "3-3/4"],
  ])("%s", (rough, quarters, oneSide, twoSides) => {
    const row = hardwoodThickness(exact(rough))!;
    expect(row.quarters).toBe(quarters);
    expect([row.oneSide!.exact, row.twoSides!.exact]).toEqual([exact(oneSide), exact(twoSides)]);
    if (quarters !== undefined) expect(hardwoodThickness(exact(quarters))).toBe(row);
  });

  it.each([
    ["3/8", "3/16"],
    ["1-3/4", "1-1/2"],
    ["3-1/2", "3-1/4"],
  ])("%s has the single figure %s", (rough, only) => {
    expect(hardwoodThickness(exact(rough))).toMatchObject({ only: { exact: exact(only) } });
    expect(hardwoodThickness(exact(rough))!.twoSides).toBeUndefined();
  });

  it("grades: FAS 6 in wide, 8 to 16 ft, 83.3 % clear; No. 1 Common 3 in, 66.6 % (same page)", () => {
    expect(hardwoodSource.tag).toBe("as transcribed");
    expect(hardwoodGrades[0]).toMatchObject({
      grade: "FAS",
      leastWidth: { exact: [6, 1] },
      lengths: { from: 8, to: 16 },
      clear: 83.3,
    });
    expect(hardwoodGrades[1]).toMatchObject({ grade: "No. 1 Common", leastWidth: { exact: [3, 1] }, clear: 66.6 });
  });
});

describe("board feet", () => {
  it("B1: 14 pieces of 1 x 4, 8 ft: 37 1/3 (Army EN5155, published)", () => {
    const feet = 14 * boardFeet(1, 4, 96)!;
    expect(feet).toBeCloseTo(37 + 1 / 3, 12);
    expect(inTwelfths(feet)).toBe("37 4/12");
  });

  it("B2: 1 x 10 in x 10 ft: 8 4/12 (Navy NAVEDTRA 14044, published)", () => {
    expect(boardFeet(1, 10, 120)).toBeCloseTo(8.33, 2);
    expect(inTwelfths(boardFeet(1, 10, 120)!)).toBe("8 4/12");
  });

  it.each([
    ["B4: 2 x 4, 14 ft (Navy problem; result computed)", 2, 4, 168, 9 + 1 / 3],
    ["B6: 1 x 9 x 96 in (common practice)", 1, 9, 96, 6],
    ["B8: 5/4 x 6 x 72 in (problem transcribed; result computed)", 5 / 4, 6, 72, 3.75],
    ["B11: 1 x 3, 8 ft (common practice)", 1, 3, 96, 2],
    ["B11: 1 x 4, 6 ft (common practice)", 1, 4, 72, 2],
    ["one board foot: 1 ft x 1 ft x 1 in (Navy, published)", 1, 12, 12, 1],
  ])("%s", (_name, thickness, width, length, feet) => {
    expect(boardFeet(thickness, width, length)).toBeCloseTo(feet, 12);
  });

  it("B9: 2 x 4 x 8 ft is 5.3 (common practice)", () => {
    expect(boardFeet(2, 4, 96)).toBeCloseTo(5.3, 1);
  });

  it("counts under 1 in as 1 in (Navy NAVEDTRA 14044, published)", () => {
    expect(boardFeet(3 / 4, 12, 12)).toBe(1);
    expect(boardFeet(1 / 2, 9, 96)).toBe(boardFeet(1, 9, 96));
  });

  it("writes twelfths, never a decimal (Army EN5155 p. 1-28), carrying a full twelve", () => {
    expect(inTwelfths(5 / 12)).toBe("5/12");
    expect(inTwelfths(2.9999)).toBe("3");
    expect(inTwelfths(0)).toBe("0");
    expect(inTwelfths(-1)).toBeUndefined();
  });

  it("gives nothing for a missing size", () => {
    expect(boardFeet(1, -4, 96)).toBeUndefined();
    expect(boardFeet(Number.NaN, 4, 96)).toBeUndefined();
  });
});

describe("hardwood tally (common practice, no source)", () => {
  it("takes whole feet, rounds the surface measure, then multiplies by the thickness", () => {
    // 9 ft 7 in of 7-1/2 in: 9 x 7.5 / 12 = 5.625, so 6; in 5/4 that is 7.5.
    expect(surfaceMeasure(7.5, 9 + 7 / 12)).toBe(6);
    expect(hardwoodTally([{ thickness: 1.25, width: 7.5, feet: 9 + 7 / 12 }])).toBe(7.5);
  });

  it("sums the surface measures of a bundle first", () => {
    const boards = [
      { thickness: 1.5, width: 7.5, feet: 9.5 },
      { thickness: 1.5, width: 6, feet: 8.2 },
    ];
    expect(hardwoodTally(boards)).toBe((6 + 4) * 1.5);
    expect(hardwoodTally([])).toBe(0);
    expect(hardwoodTally([...boards, { thickness: 1, width: 6, feet: 8 }])).toBeUndefined();
    expect(hardwoodTally([{ thickness: 1, width: -6, feet: 8 }])).toBeUndefined();
  });
});

describe("take-off", () => {
  it("adds 20 % to boards of 1 in and under, 10 % from 2 in (Army course, as transcribed)", () => {
    expect([takeOffWaste.boards.value, takeOffWaste.dimension.value]).toEqual([0.2, 0.1]);
  });

  it("106 in of 5-1/2 in boards with 15 % waste: 23 boards (Army EN01136, published)", () => {
    expect(boardsAcross(106, 5.5, 0.15)).toBe(23);
    expect(boardsAcross(106, 5.5, 1)).toBeUndefined();
  });
});

describe("density at 12 %, Wood Handbook Eq. 4-14 (computed, water at 62.4 lb a cubic foot): kg/m3, lb/ft3, lb a board foot", () => {
  it.each([
    ["sugar maple", 706, 44.0, 3.67],
    ["northern red oak", 706, 44.0, 3.67],
    ["white oak", 762, 47.5, 3.96],
    ["cherry", 560, 34.9, 2.91],
    ["walnut", 616, 38.4, 3.2],
    ["poplar", 470, 29.4, 2.45],
    ["yellow birch", 694, 43.3, 3.61],
    ["beech", 717, 44.7, 3.73],
    ["white ash", 672, 41.9, 3.49],
  ])("%s", (name, metric, cubicFoot, each) => {
    const gravity = findSpecies(name)!.specificGravity!.value;
    expect(woodDensity(gravity, 12)).toBeCloseTo(metric, -0.3);
    expect(woodPoundsPerCubicFoot(gravity, 12)).toBeCloseTo(cubicFoot, 1);
    expect(woodPoundsPerCubicFoot(gravity, 12)! / 12).toBeCloseTo(each, 2);
  });

  it("gives nothing for bad input", () => {
    expect(woodDensity(-1, 12)).toBeUndefined();
    expect(woodPoundsPerCubicFoot(0.5, Number.NaN)).toBeUndefined();
  });
});
