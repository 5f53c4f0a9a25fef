import { describe, expect, it } from "vitest";
import { awsSizes, frameAndPanel, frameRules, navySizes } from "../../language/published/casework.ts";
import { gaps, panelGrowthPerFoot, panelPractice } from "../../language/published/gaps.ts";
import {
  cupCentre,
  cupHinge,
  hingeCount,
  hingeOverlay,
  plateHeight,
  system32,
  systemCupCentre,
  systemFaceHeight,
  systemHole,
} from "../../language/published/hinges.ts";
import { type Fraction, readFraction, type ShopLength } from "../../language/published/lengths.ts";
import {
  sideMount,
  underMount,
  underMountDeduction,
  underMountRows,
  underMountWidth,
} from "../../language/published/slides.ts";

const exact = (text: string): Fraction => readFraction(text)!;
const exacts = (table: Readonly<Record<string, { readonly value: ShopLength }>>) =>
  Object.fromEntries(Object.entries(table).map(([name, { value }]) => [name, value.exact]));

describe("cup hinges (common practice, no source)", () => {
  it.each([
    [3, "20.5"],
    [5, "22.5"],
    [8, "25.5"],
  ])("bored %d mm in, the cup's centre is at %s mm", (boring, centre) => {
    expect(cupCentre([boring, 1])).toEqual(exact(centre));
  });

  it("35 mm cup, 13 deep, 8 mm screw holes 45 apart and 9.5 behind, 3 to 8 mm from the edge", () => {
    expect(Object.values(cupHinge).map(({ value }) => value.decimal)).toEqual([35, 13, 45, 9.5, 8, 3, 8]);
    expect(cupCentre([Number.MAX_SAFE_INTEGER, 3])).toBeUndefined();
  });

  it("overlay = fixed + boring - plate; plate = boring + K -+ lap: the two agree", () => {
    expect(hingeOverlay(13, 5, 2)).toBe(16);
    const plate = plateHeight("overlay", 5, 13, 16);
    expect(hingeOverlay(13, 5, plate)).toBe(16);
    expect(plateHeight("inset", 5, 13, 2)).toBe(20);
  });

  it.each([
    [30, 10, 2],
    [40, 14, 2],
    [48, 10, 3],
    [30, 20, 3],
    [60, 29, 3],
    [72, 20, 4],
    [40, 44, 4],
    [96, 20, 5],
    [50, 50, 5],
    [40, 15, 3],
  ])("a door %d in high of %d lb hangs on %i (chart labels as read, common practice)", (height, weight, count) => {
    expect(hingeCount(height, weight)).toMatchObject({ value: count, tag: "common practice" });
  });

  it("has no count beyond the chart or for bad input", () => {
    expect(hingeCount(101, 10)).toBeUndefined();
    expect(hingeCount(40, 61)).toBeUndefined();
    expect(hingeCount(-1, 10)).toBeUndefined();
    expect(hingeCount(40, Number.NaN)).toBeUndefined();
  });
});

describe("the 32 mm system (as transcribed)", () => {
  it("5 mm holes 32 mm apart, the front row 37 mm in", () => {
    expect(exacts(system32)).toEqual({ pitch: [32, 1], hole: [5, 1], frontRow: [37, 1] });
  });

  it.each([
    [4, 128, "5-1/16"],
    [8, 256, "10-1/16"],
    [15, 480, "18-7/8"],
    [20, 640, undefined],
    [27, 864, "34"],
    [28, 896, "35-1/4"],
  ])("hole %i is at %d mm (a trade table, to 1/16 in)", (n, mm, inch) => {
    expect(systemHole(n)).toBe(mm);
    if (inch === undefined) return;
    const [numerator, denominator] = exact(inch);
    expect(Math.round((systemHole(n)! / 25.4) * 16)).toBe((numerator / denominator) * 16);
  });

  it("faces are 32 n less the gap; cups lie midway between holes, so two holes 32 apart straddle them", () => {
    expect(systemFaceHeight(20, 3)).toBe(637);
    expect(systemCupCentre(3, "above", 3)).toBe(32 * 3 + 16 - 1.5);
    expect(systemCupCentre(3, "below", 3)).toBe(32 * 3 - 16 - 1.5);
    // The face starts half a gap above its first hole, so the cup's height over that hole is midway between two.
    expect(systemCupCentre(3, "above", 3)! + 1.5).toBe((systemHole(3)! + systemHole(4)!) / 2);
    expect(systemHole(1.5)).toBeUndefined();
    expect(systemFaceHeight(2, -1)).toBeUndefined();
    expect(systemCupCentre(-1, "above", 3)).toBeUndefined();
  });
});

describe("gaps", () => {
  it("inset 1/16 in on all four edges (Navy NAVEDTRA 14045 ch. 5, published)", () => {
    expect(gaps.inset).toMatchObject({ value: { exact: [1, 16] }, tag: "published" });
  });

  it("frameless 3 mm between and 1.5 beside; solid panels 1/8 a side in grooves 3/8 or 7/16 deep (common practice)", () => {
    expect(gaps.framelessBetween).toMatchObject({ value: { exact: [3, 1], unit: "mm" }, tag: "common practice" });
    expect(gaps.framelessSide).toMatchObject({ value: { exact: [3, 2], unit: "mm" }, tag: "common practice" });
    expect(panelPractice.solidFloat.value.exact).toEqual([1, 8]);
    expect(panelPractice.grooveDepth.value.exact).toEqual([3, 8]);
    expect(panelPractice.cutterGrooveDepth.value.exact).toEqual([7, 16]);
    expect(panelGrowthPerFoot.value.exact).toEqual([1, 8]);
  });

  it("marks the rest as remembered", () => {
    for (const gap of [gaps.insetRoomy, gaps.fullOverlayBetween, gaps.frameOverlay, panelPractice.plywoodPlay]) {
      expect(gap.tag).toBe("from memory");
    }
  });
});

describe("slides (common practice, no source)", () => {
  it("side-mounted: 12.7 mm thick in 12.9 to 13.2, 17/32 a side, 1/2 lower, 3/8 behind, 2 in steps", () => {
    expect(Object.values(sideMount).map(({ value }) => value.decimal)).toEqual([
      12.7,
      12.9,
      13.2,
      17 / 32,
      1 / 2,
      3 / 8,
      2,
    ]);
    // Two sides of 17/32 are the printed 1-1/16.
    expect(2 * sideMount.usualSide.value.decimal).toBe(1 + 1 / 16);
  });

  it("under-mounted: 21 mm a side to the inside, 42 in all, 13/16 least height, 3 in steps from 9 to 30", () => {
    expect(underMount.wallToInside.value.decimal * 2).toBe(underMount.insideDeduct.value.decimal);
    expect(underMount.insideDeduct.value.exact).toEqual([42, 1]);
    expect(underMount.leastHeightDeduct.value.exact).toEqual([13, 16]);
    expect([
      underMount.shortest.value.decimal,
      underMount.longest.value.decimal,
      underMount.step.value.decimal,
    ]).toEqual([9, 30, 3]);
    expect(underMount.recess.tag).toBe("from memory");
  });

  it.each([
    ["5/8", "3/8", "13/32"],
    ["1/2", "5/8", "21/32"],
    ["0.485", "21/32", "11/16"],
  ])("sides of %s in take %s, up to %s, off the opening", (side, deduct, atMost) => {
    const row = underMountDeduction(exact(side))!;
    expect([row.deduct.exact, row.atMost.exact]).toEqual([exact(deduct), exact(atMost)]);
  });

  it("sides of 15 mm take 7/16, up to 15/32", () => {
    const row = underMountRows.find(({ side }) => side.unit === "mm")!;
    expect([row.side.decimal, row.deduct.exact, row.atMost.exact]).toEqual([15, [7, 16], [15, 32]]);
    expect(underMountDeduction(exact("3/4"))).toBeUndefined();
  });

  it.each([
    ["15", "5/8", 14.5965, "14-5/8"],
    ["15", "1/2", 14.3465, "14-3/8"],
    ["15-3/4", "5/8", 15.3465, "15-3/8"],
  ])(
    "opening %s with sides %s: %d in by 42 mm, %s as printed, a 32nd apart at most (computed)",
    (opening, side, computed, printed) => {
      const width = underMountWidth(exact(opening), exact(side))!;
      expect(width.decimal).toBeCloseTo(computed, 4);
      const [numerator, denominator] = exact(printed);
      const rounding = numerator / denominator - width.decimal;
      expect(rounding).toBeGreaterThanOrEqual(0);
      expect(rounding).toBeLessThanOrEqual(1 / 32);
      // Exact: 42 mm is 210/127 in.
      expect(width.exact[1] % 127).toBe(0);
    },
  );

  it("gives nothing for an opening too narrow", () => {
    expect(underMountWidth([1, 8], [1, 8])).toBeUndefined();
  });
});

describe("frames and casework", () => {
  it("AWS 1st ed. pp. 271, 285 (published)", () => {
    expect(exacts(awsSizes)).toEqual({
      doorFrameThickness: [3, 4],
      doorFrameTolerance: [1, 32],
      midRailOver: [60, 1],
      overlaidFrameWidth: [7, 2],
      hardwareToGlass: [3, 8],
      faceFrameThickness: [3, 4],
      pullOutBoard: [3, 4],
      writingShelfOut: [15, 1],
      backWithoutStrip: [1, 2],
      anchorStripThickness: [1, 2],
      anchorStripWidth: [5, 2],
      thirdStripOver: [60, 1],
      toeShim: [1, 2],
    });
    expect(frameRules.stilesRunThrough.source).toContain("4.4.6.10.1.6");
  });

  it("Navy Builder manual NAVEDTRA 14045 ch. 5 (published)", () => {
    expect(exacts(navySizes)).toEqual({
      wallUnitDepth: [12, 1],
      wallUnitHeight: [30, 1],
      wallUnitOverRange: [18, 1],
      wallUnitOverSink: [22, 1],
      wallUnitOverRefrigerator: [15, 1],
      faceFrameThickness: [3, 4],
      faceFrameWidth: [3, 2],
      leastShelfSpacing: [3, 1],
      mostShelfSpacing: [12, 1],
      drawerFront: [3, 4],
      drawerSide: [1, 2],
      drawerBottom: [1, 4],
      smallDrawerBottom: [1, 8],
    });
  });

  it("a door 15 x 24, stiles and rails 2-1/4, g 3/8, f 1/8: rails 11-1/4, panel 11 x 20; g 7/16: rails 11-3/8 (geometry, computed)", () => {
    const door = { width: 15, height: 24, stile: 2.25, rail: 2.25, groove: 3 / 8, float: 1 / 8 };
    expect(frameAndPanel(door)).toEqual({ rail: 11.25, panelWidth: 11, panelHeight: 20 });
    expect(frameAndPanel({ ...door, groove: 7 / 16 })!.rail).toBe(11.375);
    expect(frameAndPanel({ ...door, groove: 0, float: 0 })!.rail).toBe(15 - 4.5);
    expect(frameAndPanel({ ...door, width: 4 })).toBeUndefined();
    expect(frameAndPanel({ ...door, width: Number.NaN })).toBeUndefined();
  });
});
