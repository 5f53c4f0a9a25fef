import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { BarPlan, BarProblem } from "../../../language/plan/pack/bar-problem.ts";
import { packBars } from "../../../language/plan/pack/pack-bars.ts";
import { checkBarPlan } from "../../support/plan-checker.ts";

const bar = { id: "eight", length: 96, cost: 10 };

describe("packing bars", () => {
  test("counts the kerf between pieces and not after the last", () => {
    expect(packed({ parts: [{ id: "a", length: 48, quantity: 2 }] }).barsUsed).toBe(1);
    expect(packed({ kerf: 1, parts: [{ id: "a", length: 48, quantity: 2 }] }).barsUsed).toBe(2);
    expect(packed({ kerf: 2, parts: [{ id: "a", length: 47, quantity: 2 }] }).barsUsed).toBe(1);
    expect(packed({ trim: 1, parts: [{ id: "a", length: 47, quantity: 2 }] }).bars[0]?.pieces[0]?.at).toBe(1);
  });

  test("finds the perfect fit that taking the longest first misses", () => {
    const parts = [44, 24, 24, 22, 21, 17, 8, 8, 6, 6].map((length, at) => ({ id: `p${at}`, length, quantity: 1 }));
    const plan = packed({ stock: [{ ...bar, length: 61 }], parts });
    expect(plan).toMatchObject({ barsUsed: 3, lowerBound: 3, proven: true });
  });

  test("buys the cheapest mix of lengths", () => {
    const stock = [bar, { id: "ten", length: 120, cost: 12 }];
    const plan = packed({
      stock,
      parts: [
        { id: "a", length: 60, quantity: 2 },
        { id: "b", length: 48, quantity: 2 },
      ],
    });
    expect(plan.bars.map((one) => one.stock).sort()).toEqual(["eight", "ten"]);
    expect(plan).toMatchObject({ cost: 22, costBound: 22, proven: true });
  });

  test("keeps to the stock there is and reports the rest", () => {
    const plan = packed({ stock: [{ ...bar, have: 1 }], parts: [{ id: "a", length: 40, quantity: 3 }] });
    expect(plan).toMatchObject({
      barsUsed: 1,
      proven: false,
      unplaced: [{ part: "a", quantity: 1, why: "no stock left" }],
    });
  });

  test("reports what is no length, no count and too long, and packs the rest", () => {
    const parts = [
      { id: "nan", length: Number.NaN, quantity: 1 },
      { id: "half", length: 1.5, quantity: 1 },
      { id: "less", length: 5, quantity: -1 },
      { id: "long", length: 97, quantity: 2 },
      { id: "good", length: 96, quantity: 1 },
    ];
    const plan = packed({ parts });
    expect(plan.unplaced.map((one) => one.part)).toEqual(["nan", "half", "less", "long"]);
    expect(plan.faults.map((fault) => fault.id)).toEqual(["nan", "half", "less"]);
    expect(plan.barsUsed).toBe(1);
  });

  test("answers nothing for nothing", () => {
    expect(packed({ parts: [] })).toMatchObject({ bars: [], cost: 0, proven: true });
    expect(packed({ stock: [], parts: [{ id: "a", length: 1, quantity: 1 }] }).unplaced.length).toBe(1);
  });

  test("every plan passes the checker, is the same again, and no cheaper one exists where few parts allow to try all", () => {
    fc.assert(
      fc.property(problems(), (problem) => {
        const plan = packBars(problem);
        expect(checkBarPlan(problem, plan)).toEqual([]);
        expect(packBars(problem)).toEqual(plan);
        if (plan.unplaced.length === 0 && plan.proven) expect(plan.cost).toBe(cheapest(problem));
      }),
      { numRuns: 200 },
    );
  });
});

describe("the checker of bars", () => {
  const problem: BarProblem = {
    stock: [{ ...bar, have: 1 }],
    kerf: 1,
    trim: 0,
    parts: [{ id: "a", length: 40, quantity: 2 }],
  };
  const plan = packBars(problem);
  const [first] = plan.bars;

  test("finds pieces that overlap, end past the bar, are of another length or missing", () => {
    expect(first?.pieces.length).toBe(2);
    const shifted = (at: number): BarPlan => ({
      ...plan,
      bars: [{ ...first!, pieces: [first!.pieces[0]!, { ...first!.pieces[1]!, at }] }],
    });
    expect(checkBarPlan(problem, shifted(40)).join()).toContain("leaves no room for the blade");
    expect(checkBarPlan(problem, shifted(57)).join()).toContain("past its end");
    const short = { ...plan, bars: [{ ...first!, pieces: [{ ...first!.pieces[0]!, length: 39 }] }] };
    expect(checkBarPlan(problem, short).join()).toContain("not of its length");
    expect(checkBarPlan(problem, short).join()).toContain("1 placed, 0 not, 2 wanted");
  });

  test("finds false sums, a false bound and too many bars", () => {
    expect(checkBarPlan(problem, { ...plan, cost: 9 }).join()).toContain("9 said");
    expect(checkBarPlan(problem, { ...plan, barsUsed: 2 }).join()).toContain("2 said");
    expect(checkBarPlan(problem, { ...plan, lowerBound: 2 }).join()).toContain("bound is false");
    expect(checkBarPlan(problem, { ...plan, bars: [first!, first!] }).join()).toContain("2 of eight used, 1 there");
  });
});

function packed(change: Partial<BarProblem>): BarPlan {
  const problem = { stock: [bar], kerf: 0, trim: 0, parts: [], ...change };
  const plan = packBars(problem);
  expect(checkBarPlan(problem, plan)).toEqual([]);
  return plan;
}

/** The least cost by trying every way to deal the pieces onto bars: an oracle for a handful of pieces. */
function cheapest(problem: BarProblem): number {
  const pieces = problem.parts.flatMap((part) =>
    Array.from({ length: part.quantity }, () => part.length + problem.kerf),
  );
  let best = Number.POSITIVE_INFINITY;
  const used = problem.stock.map(() => 0);
  const visit = (at: number, bars: { stock: number; room: number }[], cost: number): void => {
    if (best <= cost) return;
    const length = pieces[at];
    if (length === undefined) {
      best = cost;
      return;
    }
    bars.forEach((one, index) => {
      if (one.room < length) return;
      visit(at + 1, bars.with(index, { ...one, room: one.room - length }), cost);
    });
    problem.stock.forEach((stock, number) => {
      const room = stock.length - 2 * problem.trim + problem.kerf - length;
      if (room < 0 || (stock.have ?? 99) <= used[number]!) return;
      used[number]!++;
      visit(at + 1, [...bars, { stock: number, room }], cost + stock.cost);
      used[number]!--;
    });
  };
  visit(0, [], 0);
  return best;
}

function problems(): fc.Arbitrary<BarProblem> {
  const stock = fc.record({
    length: fc.integer({ min: 20, max: 50 }),
    cost: fc.integer({ min: 1, max: 9 }),
    have: fc.option(fc.integer({ min: 0, max: 5 }), { nil: undefined }),
  });
  const part = fc.record({ length: fc.integer({ min: 5, max: 30 }), quantity: fc.integer({ min: 0, max: 2 }) });
  return fc.record({
    stock: fc
      .array(stock, { minLength: 1, maxLength: 3 })
      .map((all) => all.map((one, at) => ({ id: `s${at}`, ...one }))),
    kerf: fc.integer({ min: 0, max: 2 }),
    trim: fc.integer({ min: 0, max: 2 }),
    parts: fc.array(part, { maxLength: 4 }).map((all) => all.map((one, at) => ({ id: `p${at}`, ...one }))),
  });
}
