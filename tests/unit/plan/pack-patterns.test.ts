import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { packSheets } from "../../../language/plan/pack/pack-sheets.ts";
import { marksAlong } from "../../../language/plan/pack/pattern-marks.ts";
import { pricePatterns } from "../../../language/plan/pack/pattern-price.ts";
import { relaxPatterns } from "../../../language/plan/pack/pattern-relax.ts";
import type { Kind } from "../../../language/plan/pack/pattern-values.ts";
import type { SheetPart, SheetProblem } from "../../../language/plan/pack/problem.ts";
import { LEAF, type Node } from "../../../language/plan/pack/tree.ts";
import { checkSheetPlan } from "../../support/plan-checker.ts";

describe("patterns of one sheet", () => {
  test("the dearest one found is the dearest one that straight cuts can make", () => {
    fc.assert(
      fc.property(tasks(), ({ kinds, demand, worth, sheet }) => {
        const { patterns, complete } = run(pricePatterns(kinds, demand, Float64Array.from(worth), sheet, 0));
        expect(complete).toBe(true);
        const worths = patterns.map((one) => sumOf(one.kinds, worth));
        expect(Math.max(0, ...worths)).toBeCloseTo(dearest(kinds, demand, worth, sheet), 9);
      }),
      { numRuns: 60 },
    );
  });

  test("so it is on a sheet so large that its marks stand at the sums of lengths, and no bound is below it", () => {
    fc.assert(
      fc.property(tasks(), fc.double({ min: 0, max: 1, noNaN: true }), ({ kinds, demand, worth, sheet }, share) => {
        const large = kinds.map(({ w, h, turns }) => ({ w: 37 * w, h: 37 * h, turns }));
        const [on, each] = [{ w: 37 * sheet.w + 5, h: 37 * sheet.h + 3 }, Float64Array.from(worth)];
        const best = dearest(kinds, demand, worth, sheet);
        const { patterns } = run(pricePatterns(large, demand, each, on, 0));
        expect(Math.max(0, ...patterns.map((one) => sumOf(one.kinds, worth)))).toBeCloseTo(best, 9);
        const least = share * best;
        const { most } = run(pricePatterns(large, demand, each, on, least));
        expect(Math.max(most, least)).toBeGreaterThanOrEqual(best - 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  test("every one found fits the sheet, holds no more than is wanted, and turns only what may turn", () => {
    fc.assert(
      fc.property(tasks(), ({ kinds, demand, worth, sheet }) => {
        for (const pattern of run(pricePatterns(kinds, demand, Float64Array.from(worth), sheet, 0)).patterns) {
          const tree = pattern.tree();
          expect(tree.w).toBeLessThanOrEqual(sheet.w);
          expect(tree.h).toBeLessThanOrEqual(sheet.h);
          const leaves = leavesOf(tree);
          expect(leaves.map((one) => one.item).sort()).toEqual([...pattern.kinds].sort());
          kinds.forEach((kind, at) => {
            const lying = leaves.filter((one) => one.item === at);
            expect(lying.length).toBeLessThanOrEqual(demand[at]!);
            for (const { w, h } of lying) {
              const upright = w === kind.w && h === kind.h;
              expect(upright || (kind.turns && w === kind.h && h === kind.w)).toBe(true);
            }
          });
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe("marks along a side", () => {
  test("stand at the sums of what may lie there, each so many times, where these are few", () => {
    // 30 twice and 40 once on 100: 0, 30, 40, 60, 70, 100.
    const lying = [
      { length: 30, times: 2 },
      { length: 40, times: 1 },
    ];
    const marks = marksAlong(100, lying, 50);
    expect([29, 30, 59, 69, 99, 100].map(marks.at)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(marks.last).toBe(5);
    const step = marks.last + 1;
    // 30 and 40 are 70; 40 and 40 are no sum of them. Of 100 less 30, 70 is left; of 100, half is 40.
    expect([marks.plus[1 * step + 2], marks.plus[2 * step + 2]]).toEqual([4, -1]);
    expect([marks.minus[5 * step + 1], marks.half[5]]).toEqual([4, 2]);
  });

  test("stand at equal distances where the sums are too many, and never round a length up", () => {
    const lying = Array.from({ length: 12 }, (_, at) => ({ length: 101 + 7 * at, times: 3 }));
    const marks = marksAlong(1_000, lying, 40);
    expect([marks.even, marks.last, marks.first]).toEqual([true, 40, 4]);
    for (const { length } of lying) expect((marks.at(length) * 1_000) / 40).toBeLessThanOrEqual(length);
  });
});

describe("the pattern relaxation", () => {
  test("never asks for more sheets than the pieces were cut from", () => {
    fc.assert(
      fc.property(cutSheets(), fc.boolean(), ({ sheets, pieces }, turns) => {
        const kinds = pieces.map(([w, h]) => ({ w, h, turns }));
        const demand = kinds.map(() => 1);
        const relaxed = run(
          relaxPatterns({ kinds, sheets: [{ w: 30, h: 20, cost: 1 }] }, demand, [Number.POSITIVE_INFINITY], []),
        );
        const { need, carries } = relaxed.proof ?? { need: 0, carries: [1] };
        expect(need).toBeLessThanOrEqual(sheets * carries[0]!);
        kinds.forEach((_, kind) => {
          const covered = relaxed.used.reduce(
            (sum, { pattern, amount }) => sum + amount * pattern.kinds.filter((one) => one === kind).length,
            0,
          );
          expect(covered).toBeGreaterThan(1 - 1e-3);
        });
      }),
      { numRuns: 25 },
    );
  });

  test("proves that straight cuts cannot make a pinwheel, which has the area of one sheet", () => {
    const problem: SheetProblem = {
      sheets: [{ id: "square", width: 8, height: 8, cost: 7 }],
      kerf: 0,
      trim: 0,
      parts: [part("blade", 5, 3, 4), part("hub", 2, 2, 1)],
    };
    const plan = packSheets(problem, { steps: 60_000 });
    expect(plan).toMatchObject({ sheetsUsed: 2, lowerBound: 2, costBound: 14, proven: true });
    expect(plan.reasons.at(-1)?.because).toContain("straight cuts");
    expect(checkSheetPlan(problem, plan)).toEqual([]);
  });

  test("proves over two sizes that the cheaper sheet cannot hold a pinwheel, and finds what is cheapest then", () => {
    const problem: SheetProblem = {
      sheets: [
        { id: "square", width: 8, height: 8, cost: 7 },
        { id: "strip", width: 5, height: 3, cost: 4 },
      ],
      kerf: 0,
      trim: 0,
      parts: [part("blade", 5, 3, 4), part("hub", 2, 2, 1)],
    };
    const plan = packSheets(problem, { steps: 12_000 });
    expect(plan).toMatchObject({ cost: 11, costBound: 11, proven: true });
    expect(plan.reasons.at(-1)?.because).toContain("straight cuts");
    expect(checkSheetPlan(problem, plan)).toEqual([]);
  });

  test("what it asks for is carried by the sheets of two sizes that the pieces were cut from", () => {
    const few = { sheets: 2, cuts: 5 };
    fc.assert(
      fc.property(cutSheets(undefined, few), cutSheets({ w: 18, h: 14 }, few), fc.boolean(), (large, small, turns) => {
        const kinds = [...large.pieces, ...small.pieces].map(([w, h]) => ({ w, h, turns }));
        const demand = kinds.map(() => 1);
        const sheets = [
          { w: 30, h: 20, cost: 1 },
          { w: 18, h: 14, cost: 0.5 },
        ];
        for (const have of [
          [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
          [Number.POSITIVE_INFINITY, small.sheets],
        ]) {
          const { proof } = run(relaxPatterns({ kinds, sheets }, demand, have, []));
          const { need, carries } = proof ?? { need: 0, carries: [1, 1] };
          expect(need).toBeLessThanOrEqual(large.sheets * carries[0]! + small.sheets * carries[1]!);
        }
      }),
      { numRuns: 15 },
    );
  });

  test("a plan over several sizes never costs less than trying everything does, and as much where it is proven", () => {
    let proven = 0;
    fc.assert(
      fc.property(smallJobs(), (problem) => {
        const least = leastCost(problem);
        const plan = packSheets(problem, { steps: 4_000 });
        expect(checkSheetPlan(problem, plan)).toEqual([]);
        expect(plan.costBound).toBeLessThanOrEqual(least * (1 + 1e-9));
        expect(plan.cost).toBeGreaterThanOrEqual(least);
        if (plan.proven && 0 < plan.cost) expect(plan.cost).toBe(least);
        if (plan.proven) proven++;
      }),
      { numRuns: 60, seed: 7 },
    );
    expect(proven).toBeGreaterThan(45);
  });

  test("finds the cuts again that made the pieces, also with a kerf", () => {
    fc.assert(
      fc.property(cutSheets(), ({ sheets, pieces }) => {
        const problem: SheetProblem = {
          sheets: [{ id: "ply", width: 29, height: 19, cost: 1 }],
          kerf: 1,
          trim: 0,
          parts: pieces.map(([w, h], at) => part(`p${at}`, w - 1, h - 1, 1)),
        };
        const plan = packSheets(problem, { steps: 12_000 });
        expect(packSheets(problem, { steps: 12_000 })).toEqual(plan);
        expect(checkSheetPlan(problem, plan)).toEqual([]);
        expect(plan.lowerBound).toBeLessThanOrEqual(sheets);
        expect(plan.sheetsUsed).toBeLessThanOrEqual(sheets + 1);
        const short = { ...problem, sheets: problem.sheets.map((one) => ({ ...one, have: 1 })) };
        expect(checkSheetPlan(short, packSheets(short, { steps: 12_000 }))).toEqual([]);
      }),
      { numRuns: 8 },
    );
  });

  test("is not made for a cheaper sheet that one of the pieces does not fit", () => {
    const problem: SheetProblem = {
      sheets: [
        { id: "short", width: 96, height: 5, cost: 4 },
        { id: "long", width: 120, height: 5, cost: 5 },
      ],
      kerf: 0,
      trim: 0,
      parts: [part("rail", 120, 3, 1)],
    };
    const plan = packSheets(problem, { steps: 12_000 });
    expect(plan.sheetsUsed).toBe(1);
    expect(checkSheetPlan(problem, plan)).toEqual([]);
    fc.assert(
      fc.property(cutSheets(), ({ pieces }) => {
        const mixed: SheetProblem = {
          sheets: [
            { id: "small", width: 20, height: 15, cost: 3 },
            { id: "large", width: 30, height: 20, cost: 7, have: 3 },
          ],
          kerf: 0,
          trim: 0,
          parts: pieces.map(([w, h], at) => part(`p${at}`, w, h, 1)),
        };
        expect(checkSheetPlan(mixed, packSheets(mixed, { steps: 6_000 }))).toEqual([]);
      }),
      { numRuns: 12 },
    );
  });
});

type PricingTask = {
  readonly kinds: readonly Kind[];
  readonly demand: readonly number[];
  readonly worth: readonly number[];
  readonly sheet: { readonly w: number; readonly h: number };
};

function tasks(): fc.Arbitrary<PricingTask> {
  const side = fc.integer({ min: 1, max: 9 });
  const kind = fc.record({ w: side, h: side, turns: fc.boolean() });
  return fc
    .array(fc.record({ kind, demand: fc.integer({ min: 0, max: 2 }), worth: fc.integer({ min: 0, max: 9 }) }), {
      minLength: 1,
      maxLength: 3,
    })
    .map((rows) => ({
      kinds: rows.map((row) => row.kind),
      demand: rows.map((row) => row.demand),
      worth: rows.map((row) => row.worth / 10),
      sheet: { w: 11, h: 9 },
    }));
}

/** Pieces of some sheets, cut with straight cuts until each is a piece; every side is 2 or more. */
function cutSheets(
  whole = { w: 30, h: 20 },
  most = { sheets: 3, cuts: 10 },
): fc.Arbitrary<{ sheets: number; pieces: [number, number][] }> {
  const cuts = fc.array(fc.tuple(fc.nat(), fc.nat(), fc.boolean()), { minLength: 3, maxLength: most.cuts });
  return fc.tuple(fc.integer({ min: 1, max: most.sheets }), cuts).map(([sheets, list]) => {
    const pieces: [number, number][] = Array.from({ length: sheets }, () => [whole.w, whole.h]);
    for (const [which, where, across] of list) {
      const at = which % pieces.length;
      const [w, h] = pieces[at]!;
      const length = across ? w : h;
      if (length < 4) continue;
      const cut = 2 + (where % (length - 3));
      pieces[at] = across ? [cut, h] : [w, cut];
      pieces.push(across ? [w - cut, h] : [w, h - cut]);
    }
    return { sheets, pieces };
  });
}

/** The most that straight cuts can free from a sheet, by trying every set of pieces and every cut between two of them. */
function dearest(
  kinds: readonly Kind[],
  demand: readonly number[],
  worth: readonly number[],
  sheet: PricingTask["sheet"],
): number {
  const all = kinds.flatMap((kind, at) => Array.from({ length: demand[at]! }, () => ({ ...kind, worth: worth[at]! })));
  const fits = cutFrom(all);
  let most = 0;
  for (let set = 1; set < 1 << all.length; set++) {
    const sum = all.reduce((total, one, at) => total + ((set >> at) & 1) * one.worth, 0);
    if (most < sum && fits(set, sheet.w, sheet.h)) most = sum;
  }
  return most;
}

/** Whether a set of pieces, a bit for each, can be cut from a piece of that size, by trying every cut between two of them. */
function cutFrom(all: readonly Kind[]): (set: number, w: number, h: number) => boolean {
  const known = new Map<string, boolean>();
  const fits = (set: number, w: number, h: number): boolean => {
    if (w <= 0 || h <= 0) return false;
    const key = `${set},${w},${h}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const answer = fitsAnew(set, w, h);
    known.set(key, answer);
    return answer;
  };
  const fitsAnew = (set: number, w: number, h: number): boolean => {
    if ((set & (set - 1)) === 0) {
      const one = all[Math.log2(set)]!;
      return (one.w <= w && one.h <= h) || (one.turns && one.h <= w && one.w <= h);
    }
    for (let part = (set - 1) & set; 0 < part; part = (part - 1) & set) {
      for (let cut = 1; cut < w; cut++) if (fits(part, cut, h) && fits(set ^ part, w - cut, h)) return true;
      for (let cut = 1; cut < h; cut++) if (fits(part, w, cut) && fits(set ^ part, w, h - cut)) return true;
    }
    return false;
  };
  return fits;
}

/** Up to six pieces, two sizes that are sold, and an offcut, of which there is one. */
function smallJobs(): fc.Arbitrary<SheetProblem> {
  const side = fc.integer({ min: 2, max: 6 });
  const parts = fc.array(fc.record({ width: side, height: side, turns: fc.boolean() }), { minLength: 3, maxLength: 6 });
  const cost = fc.integer({ min: 20, max: 60 });
  return fc.tuple(parts, cost, cost, fc.boolean()).map(([list, large, small, rack]) => ({
    sheets: [
      { id: "large", width: 10, height: 8, cost: large },
      { id: "small", width: 7, height: 6, cost: small },
      ...(rack ? [{ id: "rack", width: 6, height: 4, cost: 0, offcut: true }] : []),
    ],
    kerf: 0,
    trim: 0,
    parts: list.map(({ width, height, turns }, at) => ({ ...part(`p${at}`, width, height, 1), turn: turnOf(turns) })),
  }));
}

function turnOf(turns: boolean): SheetPart["turn"] {
  return turns ? "free" : "fixed";
}

/** The least that sheets cost from which all pieces can be cut, by trying every way to share them out. */
function leastCost({ sheets, parts }: SheetProblem): number {
  const fits = cutFrom(parts.map(({ width, height, turn }) => ({ w: width, h: height, turns: turn === "free" })));
  const whole = (1 << parts.length) - 1;
  const known = new Map<number, number>();
  const least = (set: number): number => {
    if (set === 0) return 0;
    const before = known.get(set);
    if (before !== undefined) return before;
    let cost = Number.POSITIVE_INFINITY;
    for (let one = set; 0 < one; one = (one - 1) & set) {
      for (const sheet of sheets) {
        if (sheet.offcut !== true && fits(one, sheet.width, sheet.height))
          cost = Math.min(cost, sheet.cost + least(set ^ one));
      }
    }
    known.set(set, cost);
    return cost;
  };
  let cost = least(whole);
  for (const rack of sheets.filter(({ offcut }) => offcut === true)) {
    for (let one = whole; 0 < one; one--) {
      if (fits(one, rack.width, rack.height)) cost = Math.min(cost, least(whole ^ one));
    }
  }
  return cost;
}

function sumOf(kinds: readonly number[], worth: readonly number[]): number {
  return kinds.reduce((sum, kind) => sum + worth[kind]!, 0);
}

function leavesOf(node: Node): Node[] {
  return node.along === LEAF ? [node] : node.kids.flatMap(leavesOf);
}

function part(id: string, width: number, height: number, quantity: number): SheetPart {
  return { id, width, height, quantity, turn: "free" };
}

function run<Answer>(steps: Generator<undefined, Answer>): Answer {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
