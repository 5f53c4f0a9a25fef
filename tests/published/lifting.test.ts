import { describe, expect, it } from "vitest";
import {
  frequencyMultiplier,
  frequencyTable,
  type Lift,
  liftBounds,
  liftingIndex,
  loadConstant,
  recommendedWeight,
} from "../../language/published/lifting.ts";

const best: Lift = {
  unit: "in",
  reach: 10,
  height: 30,
  travel: 10,
  turn: 0,
  perMinute: 0.2,
  duration: "up to 1 h",
  grip: "good",
};
const metric: Lift = { ...best, unit: "cm", reach: 25, height: 75, travel: 25 };

describe("the lifting equation, NIOSH 94-110 (as transcribed)", () => {
  it("N1: in the best posture the limit is the load constant, 51 lb or 23 kg", () => {
    expect(recommendedWeight(best)!.weight).toBe(51);
    expect(recommendedWeight(metric)!.weight).toBe(23);
    expect([loadConstant.in.value, loadConstant.cm.value]).toEqual([51, 23]);
    expect(Object.values(recommendedWeight(best)!.multipliers)).toEqual([1, 1, 1, 1, 1, 1]);
    expect(recommendedWeight(best)!.tag).toBe("as transcribed");
  });

  it("multiplies as printed: 10/H, 1 - 0.0075 |V - 30|, 0.82 + 1.8/D, 1 - 0.0032 A", () => {
    const lift = { ...best, reach: 16, height: 44, travel: 20, turn: 45 };
    const { multipliers, weight } = recommendedWeight(lift)!;
    expect(multipliers.HM).toBeCloseTo(10 / 16, 12);
    expect(multipliers.VM).toBeCloseTo(1 - 0.0075 * 14, 12);
    expect(multipliers.DM).toBeCloseTo(0.82 + 1.8 / 20, 12);
    expect(multipliers.AM).toBeCloseTo(1 - 0.0032 * 45, 12);
    expect(weight).toBeCloseTo(51 * 0.625 * 0.895 * 0.91 * 0.856, 9);
  });

  it("multiplies as printed in metric: 25/H, 1 - 0.003 |V - 75|, 0.82 + 4.5/D", () => {
    const { multipliers } = recommendedWeight({ ...metric, reach: 50, height: 15, travel: 90 })!;
    expect(multipliers.HM).toBe(0.5);
    expect(multipliers.VM).toBeCloseTo(1 - 0.003 * 60, 12);
    expect(multipliers.DM).toBeCloseTo(0.82 + 4.5 / 90, 12);
  });

  it("takes reach under 10 in as 10 and travel under 10 as 10, never a multiplier above one", () => {
    expect(recommendedWeight({ ...best, reach: 0, travel: 0 })!.weight).toBe(51);
    expect(recommendedWeight({ ...metric, reach: 3, travel: 1 })!.weight).toBe(23);
  });

  it.each([
    [0.2, 1.0, 0.95, 0.85],
    [0.5, 0.97, 0.92, 0.81],
    [1, 0.94, 0.88, 0.75],
    [2, 0.91, 0.84, 0.65],
    [3, 0.88, 0.79, 0.55],
    [4, 0.84, 0.72, 0.45],
    [5, 0.8, 0.6, 0.35],
    [6, 0.75, 0.5, 0.27],
    [7, 0.7, 0.42, 0.22],
    [8, 0.6, 0.35, 0.18],
    [9, 0.52, 0.3, 0.15],
    [10, 0.45, 0.26, 0.13],
  ])("FM at %d a minute (table as transcribed, hands at 30 in)", (perMinute, oneHour, twoHours, eightHours) => {
    const at = (duration: Lift["duration"]) => frequencyMultiplier({ ...best, perMinute, duration });
    expect([at("up to 1 h"), at("up to 2 h"), at("up to 8 h")]).toEqual([oneHour, twoHours, eightHours]);
  });

  it("takes the next row for a frequency between rows, the first for less, and zero above ten", () => {
    expect(frequencyTable).toHaveLength(12);
    expect(frequencyMultiplier({ ...best, perMinute: 2.5 })).toBe(0.88);
    expect(frequencyMultiplier({ ...best, perMinute: 0 })).toBe(1);
    expect(frequencyMultiplier({ ...best, perMinute: 10.5 })).toBe(0);
  });

  it("marks grip and bounds as remembered, and lets neither raise the limit", () => {
    for (const grip of ["fair", "poor"] as const) {
      const limit = recommendedWeight({ ...best, height: 20, grip })!;
      expect(limit.tag).toBe("from memory");
      expect(limit.weight).toBeLessThan(recommendedWeight({ ...best, height: 20 })!.weight);
    }
    expect(liftBounds.in.tag).toBe("from memory");
    expect(recommendedWeight({ ...best, reach: 26 })!.weight).toBe(0);
    expect(recommendedWeight({ ...best, height: 71 })!.weight).toBe(0);
    expect(recommendedWeight({ ...best, turn: 180 })!.weight).toBe(0);
    expect(recommendedWeight({ ...best, travel: 80 })!.weight).toBe(0);
  });

  it("falls as any one thing gets worse", () => {
    for (const worse of [
      { reach: 20 },
      { height: 60 },
      { height: 5 },
      { travel: 40 },
      { turn: 60 },
      { perMinute: 5 },
    ]) {
      expect(recommendedWeight({ ...best, ...worse })!.weight).toBeLessThan(51);
    }
  });

  it("gives nothing for a negative or missing figure", () => {
    for (const bad of [
      { reach: -1 },
      { height: Number.NaN },
      { travel: Infinity },
      { turn: -5 },
      { perMinute: Number.NaN },
    ]) {
      expect(recommendedWeight({ ...best, ...bad })).toBeUndefined();
    }
  });

  it("LI is load over limit, and has no end at a limit of zero", () => {
    expect(liftingIndex(102, 51)).toBe(2);
    expect(liftingIndex(10, 0)).toBe(Infinity);
    expect(liftingIndex(-1, 51)).toBeUndefined();
    expect(liftingIndex(1, Number.NaN)).toBeUndefined();
  });
});
