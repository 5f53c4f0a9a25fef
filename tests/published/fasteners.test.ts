import { describe, expect, it } from "vitest";
import {
  findGauge,
  lateralNewtons,
  nailWithdrawalNewtons,
  pilotHole,
  rootDiameter,
  rootShare,
  screwGauges,
  shankByFormula,
  withdrawalNewtons,
  withdrawalPounds,
} from "../../language/published/fasteners.ts";
import { readFraction } from "../../language/published/lengths.ts";
import {
  pocketAngle,
  pocketScrew,
  pocketScrewRows,
  pocketScrewSource,
  pocketSpacing,
} from "../../language/published/pocket-screws.ts";
import { findSpecies } from "../../language/published/species.ts";

describe("screws", () => {
  it.each([
    [4, 2.84],
    [5, 3.18],
    [6, 3.51],
    [7, 3.84],
    [8, 4.17],
    [9, 4.5],
    [10, 4.83],
    [12, 5.49],
    [14, 6.15],
  ])("#%i has a shank of %d mm (Wood Handbook Table 8-9, as transcribed)", (gauge, shank) => {
    expect(findGauge(gauge)!.shank).toMatchObject({ decimal: shank, unit: "mm" });
    // The remembered formula comes out at each entry, which is why it may fill a gap; it is no oracle itself.
    expect(shankByFormula(gauge)!.tag).toBe("from memory");
    expect(Math.abs(shankByFormula(gauge)!.value * 25.4 - shank)).toBeLessThan(0.01);
  });

  it.each([
    [4, 0.075],
    [6, 0.094],
    [8, 0.112],
    [10, 0.13],
    [12, 0.148],
    [14, 0.165],
  ])("#%i has a root of %d in (screw chart, common practice)", (gauge, root) => {
    expect(rootDiameter(gauge)).toMatchObject({ value: root, tag: "common practice" });
  });

  it("roots average about two thirds of the shank (Wood Handbook FPL-GTR-190 p. 8-10, published)", () => {
    const printed = screwGauges.filter((screw) => screw.root !== undefined);
    const mean =
      printed.reduce((sum, { root, shank }) => sum + (root!.decimal * 25.4) / shank.decimal, 0) / printed.length;
    expect(Math.abs(mean - rootShare.value)).toBeLessThan(0.03);
    expect(rootDiameter(7)).toMatchObject({ value: (3.84 / 25.4) * (2 / 3), tag: "published" });
    expect(rootDiameter(3)).toBeUndefined();
  });

  it.each([
    [6, "1/16", "5/64"],
    [8, "5/64", "3/32"],
    [10, "3/32", "7/64"],
    [12, "7/64", "1/8"],
  ])(
    "#%i is bored %s and %s as printed (common practice), about 70 and 90 %% of the root (Wood Handbook)",
    (gauge, soft, hard) => {
      const row = findGauge(gauge)!;
      expect([row.softwoodDrill!.exact, row.hardwoodDrill!.exact]).toEqual([readFraction(soft), readFraction(hard)]);
      expect(pilotHole(gauge, "softwood")!.value).toBeCloseTo(0.7 * row.root!.decimal, 12);
      expect(pilotHole(gauge, "hardwood")!.value).toBeCloseTo(0.9 * row.root!.decimal, 12);
      expect(Math.abs(pilotHole(gauge, "softwood")!.value - row.softwoodDrill!.decimal)).toBeLessThan(1 / 64);
      expect(Math.abs(pilotHole(gauge, "hardwood")!.value - row.hardwoodDrill!.decimal)).toBeLessThan(1 / 64);
    },
  );
});

describe("holding", () => {
  it("#8 in sugar maple with 25.4 mm of thread: 4551 N, 1023 lbf (computed by Wood Handbook Eq. 8-10)", () => {
    const gravity = findSpecies("sugar maple")!.specificGravity!.value;
    const shank = findGauge(8)!.shank.decimal;
    expect(withdrawalNewtons(gravity, shank, 25.4)).toBeCloseTo(4551, -0.3);
    expect(withdrawalPounds(gravity, shank / 25.4, 1)).toBeCloseTo(1023, -0.3);
  });

  it("side load by Eq. 8-13: K 23.17, 31.99, 44.13 by gravity (as transcribed)", () => {
    expect(lateralNewtons(0.42, 4)).toBeCloseTo(23.17 * 16, 9);
    expect(lateralNewtons(0.5, 4)).toBeCloseTo(31.99 * 16, 9);
    expect(lateralNewtons(0.63, 4)).toBeCloseTo(44.13 * 16, 9);
    expect(lateralNewtons(0.3, 4)).toBeUndefined();
  });

  it("nails by Eq. 8-1: 54.12 G^2.5 D L (as transcribed)", () => {
    expect(nailWithdrawalNewtons(0.25, 2, 10)).toBeCloseTo(54.12 * 0.03125 * 20, 9);
    expect(nailWithdrawalNewtons(-0.25, 2, 10)).toBeUndefined();
    expect(withdrawalNewtons(0.5, Number.NaN, 10)).toBeUndefined();
    expect(pilotHole(3, "hardwood")).toBeUndefined();
  });
});

describe("pocket screws (common practice, no source)", () => {
  it.each([
    [1 / 2, 1 / 2, "1"],
    [3 / 4, 3 / 4, "1-1/4"],
    [3 / 4, 1, "1-1/2"],
    [3 / 4, 1.25, "1-1/2"],
    [1.5, 1.5, "2-1/2"],
  ])("%d into %d takes %s in", (pocketed, into, screw) => {
    expect(pocketScrew(pocketed, into)!.value.exact).toEqual(readFraction(screw));
    expect(pocketScrew(pocketed, into)!.tag).toBe("common practice");
  });

  it("goes by measured stock: 45/64 into 13/16 is a 3/4 joint", () => {
    expect(pocketScrew(45 / 64, 13 / 16)!.value.decimal).toBe(1.25);
    expect(pocketScrew(15 / 32, 15 / 32)!.value.decimal).toBe(1);
  });

  it("has no screw for stock off the chart, nor for a thin second piece that it would come through", () => {
    expect(pocketScrew(1 / 4, 3 / 4)).toBeUndefined();
    expect(pocketScrew(3 / 4, 1 / 2)).toBeUndefined();
    expect(pocketScrew(3, 3)).toBeUndefined();
    expect(pocketScrew(Number.NaN, 3 / 4)).toBeUndefined();
    expect(pocketScrewRows).toHaveLength(4);
    expect(pocketScrewSource.tag).toBe("common practice");
  });

  it("bores at 15 degrees; spacing is remembered", () => {
    expect(pocketAngle).toMatchObject({ value: 15, tag: "common practice" });
    expect(pocketSpacing.apart.tag).toBe("from memory");
  });
});
