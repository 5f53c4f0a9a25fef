import { describe, expect, it } from "vitest";
import {
  clothingStorageScope,
  drawerHeightAllowance,
  drawerVolume,
  fixedStorageVolume,
  storageExempt,
  storageThresholds,
} from "../../language/published/clothing-storage.ts";
import {
  awsTests,
  drawerClasses,
  drawerTest,
  hardwareGrades,
  kcmaTests,
  slideTestDrawer,
  testLoad,
  testLoadPsf,
  toeSpace,
} from "../../language/published/loads.ts";

const values = (table: Readonly<Record<string, { readonly value: unknown }>>) =>
  Object.fromEntries(Object.entries(table).map(([name, cited]) => [name, cited.value]));

describe("ANSI/KCMA A161.1 (as transcribed)", () => {
  it("15 psf on shelves, bottoms and drawers; 25 000 cycles to two thirds of the depth", () => {
    expect(testLoadPsf.value).toBe(15);
    // The standard prints 718 Pa beside it.
    expect(testLoadPsf.value * 47.880259).toBeCloseTo(718, 0);
    expect(values(drawerTest)).toEqual({ psf: 15, cycles: 25_000, opened: 2 / 3 });
  });

  it("a drawer of 15 x 20 in inside is tested with 31.25 lb (computed)", () => {
    expect(testLoad(15, 20)).toBe(31.25);
    expect(testLoad(-15, 20)).toBeUndefined();
  });

  it("impacts and joints; the wall cabinet keeps the lower of two figures that disagree", () => {
    expect(values(kcmaTests)).toMatchObject({
      shelfDays: 7,
      impactPounds: 3,
      drawerImpactInches: 8,
      drawerImpactDrops: 10,
      shelfImpactInches: 6,
      wallCabinetPounds: 500,
      frontJointWithRailPounds: 250,
      frontJointPounds: 200,
      doorImpactPounds: 10,
    });
    expect(kcmaTests.wallCabinetPounds.source).toContain("600");
    expect(kcmaTests.doorRackingPounds.tag).toBe("from memory");
  });

  it("toe space 2 in deep and 3 in high at least", () => {
    expect([toeSpace.value.deep.exact, toeSpace.value.high.exact]).toEqual([
      [2, 1],
      [3, 1],
    ]);
  });
});

describe("Architectural Woodwork Standards 1st ed. (published)", () => {
  it("App. B p. 584: drawers carry 50, 75, 100 lb still; 30, 50, 75 lb moving for 35 000, 50 000, 100 000 cycles", () => {
    expect(drawerClasses.map(({ still, moving, cycles }) => [still, moving, cycles])).toEqual([
      [50, 30, 35_000],
      [75, 50, 50_000],
      [100, 75, 100_000],
    ]);
    for (const row of drawerClasses) expect(row.tag).toBe("published");
  });

  it("pp. 373-374: door, impact, pull, rolling load and hinge cycles", () => {
    expect(values(awsTests)).toEqual({
      doorPounds: 200,
      doorPoundsAtInches: 12,
      doorImpactInchPounds: 240,
      doorImpactBagPounds: 20,
      pullPounds: 50,
      rollingRodPounds: 10,
      rollingInches: 13,
      rollingImpacts: 3,
      hingeCycles: 100_000,
    });
  });

  it("cl. 4.1.8.1 p. 259: BHMA Grade 2, shelf supports Grade 1; test drawer 22 deep, 18 wide or 24 from 125 lb", () => {
    expect(values(hardwareGrades)).toEqual({ hardware: 2, shelfSupports: 1 });
    const { deep, wide, wideFrom125 } = slideTestDrawer.value;
    expect([deep.decimal, wide.decimal, wideFrom125.decimal]).toEqual([22, 18, 24]);
  });
});

describe("clothing storage units, ASTM F2057-23 cl. 1.1 and CPSC guidance (published)", () => {
  it("comes in at 27 in, 30 lb and 3.2 cubic feet, all three and free-standing", () => {
    expect(values(storageThresholds)).toEqual({ height: 27, mass: 30, volume: 3.2 });
    // The same limits as printed in metric: 686 mm, 13.6 kg, 90.6 cubic decimetres.
    expect(27 * 25.4).toBeCloseTo(686, 0);
    expect(30 * 0.45359237).toBeCloseTo(13.6, 1);
    expect(3.2 * 28.316846592).toBeCloseTo(90.6, 1);
    const unit = { freestanding: true, height: 27, mass: 30, volume: 3.2 };
    expect(clothingStorageScope(unit)).toMatchObject({ inScope: true, tall: true, heavy: true, roomy: true });
    expect(clothingStorageScope({ ...unit, height: 26.9 })).toMatchObject({ inScope: false, tall: false });
    expect(clothingStorageScope({ ...unit, mass: 29.9 })).toMatchObject({ inScope: false, heavy: false });
    expect(clothingStorageScope({ ...unit, volume: 3.19 })).toMatchObject({ inScope: false, roomy: false });
    expect(clothingStorageScope({ ...unit, freestanding: false })!.inScope).toBe(false);
    expect(clothingStorageScope({ ...unit, mass: Number.NaN })).toBeUndefined();
  });

  it("cautions without claiming anything", () => {
    const caution = clothingStorageScope({ freestanding: true, height: 40, mass: 80, volume: 6 })!.caution.value;
    expect(caution).toContain("anchor");
    expect(caution).toContain("nothing here certifies");
  });

  it("a drawer 15 x 18 in with 6 in to the obstruction holds 0.918 cubic feet, four of them 3.672 (computed by CPSC's definition)", () => {
    const volume = drawerVolume({ toObstruction: 6, width: 15, depth: 18 })!;
    expect(volume).toBeCloseTo(0.918, 3);
    expect(4 * volume).toBeCloseTo(3.672, 3);
    expect(storageThresholds.volume.value).toBeLessThanOrEqual(4 * volume);
    expect(drawerHeightAllowance.value.exact).toEqual([1, 8]);
  });

  it("takes the mean of the shortest and longest depth, and half of a space that does not extend (CPSC)", () => {
    const even = drawerVolume({ toObstruction: 6, width: 15, depth: 18 })!;
    expect(drawerVolume({ toObstruction: 6, width: 15, depth: 16, longestDepth: 20 })).toBeCloseTo(even, 12);
    expect(fixedStorageVolume(12, 12, 12)).toBe(0.5);
    expect(drawerVolume({ toObstruction: 0.1, width: 15, depth: 18 })).toBe(0);
    expect(drawerVolume({ toObstruction: 6, width: -15, depth: 18 })).toBeUndefined();
    expect(fixedStorageVolume(Number.NaN, 1, 1)).toBeUndefined();
  });

  it("leaves out bookcases and built-in units among others (published)", () => {
    expect(storageExempt.value).toContain("bookcases");
    expect(storageExempt.value).toContain("built-in units");
  });
});
