import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { oneRow } from "../../../language/plan/pack/one-row.ts";
import { packBars } from "../../../language/plan/pack/pack-bars.ts";
import { packSheets, startPacking } from "../../../language/plan/pack/pack-sheets.ts";
import { prepare } from "../../../language/plan/pack/prepare.ts";
import type { SheetPart, SheetProblem } from "../../../language/plan/pack/problem.ts";
import { checkSheetPlan } from "../../support/plan-checker.ts";

const part = (id: string, width: number, height: number, more: Partial<SheetPart> = {}): SheetPart => ({
  id,
  width,
  height,
  quantity: 1,
  turn: "fixed",
  ...more,
});

describe("parts that lie one behind the other", () => {
  const isRow = (parts: readonly SheetPart[], more: Partial<SheetProblem> = {}): boolean =>
    oneRow(prepare({ sheets: [{ id: "b", width: 8, height: 96, cost: 1 }], kerf: 1, trim: 0, parts, ...more })) !==
    undefined;

  test("are those of which no two go side by side, with the kerf between them", () => {
    expect(isRow([part("a", 4, 30), part("b", 8, 20)])).toBe(true);
    expect(isRow([part("a", 4, 30, { quantity: 2 }), part("b", 8, 20)])).toBe(true);
    expect(isRow([part("a", 3, 30, { quantity: 2 }), part("b", 8, 20)])).toBe(false);
    expect(isRow([part("a", 3, 30), part("b", 4, 20), part("c", 8, 10)])).toBe(false);
    expect(isRow([part("a", 3, 30), part("b", 4, 20)], { kerf: 2 })).toBe(true);
  });

  test("are none that may be turned, unless they are longer than the board is wide", () => {
    expect(isRow([part("a", 5, 8, { turn: "free" })])).toBe(false);
    expect(isRow([part("a", 5, 9, { turn: "free" })])).toBe(true);
  });

  test("go across every board that there is, and lie along either side", () => {
    const sheets = [
      { id: "b", width: 8, height: 96, cost: 1 },
      { id: "c", width: 6, height: 72, cost: 1 },
    ];
    const two = (width: number): readonly SheetPart[] => [part("a", width, 30, { quantity: 2 })];
    expect(isRow(two(7), { sheets })).toBe(false);
    expect(isRow(two(6), { sheets })).toBe(true);
    expect(isRow(two(7), { sheets: [sheets[0]!, { ...sheets[1]!, have: 0 }] })).toBe(true);
    expect(isRow([part("a", 30, 5)], { sheets: [{ id: "b", width: 96, height: 8, cost: 1 }] })).toBe(true);
  });

  test("are cut from the fewest boards, and proven: instances of the literature (Falkenauer 1996; Scholl, Klein and Jürgens 1997)", () => {
    const file = new URL("../../bench/data/bars-sample.json", import.meta.url);
    const read = JSON.parse(readFileSync(file, "utf8")) as
      | readonly Instance[]
      | { readonly instances: readonly Instance[] };
    const instances = "instances" in read ? read.instances : read;
    for (const { name, capacity, weights, optimum } of instances) {
      const plan = packSheets(
        {
          sheets: [{ id: "b", width: 3, height: capacity, cost: 7 }],
          kerf: 0,
          trim: 0,
          parts: weights.map((height, at) => part(`p${at}`, 2, height)),
        },
        { steps: 60_000 },
      );
      expect({ name, used: plan.sheetsUsed, proven: plan.proven }).toEqual({ name, used: optimum, proven: true });
    }
  });

  test("cost what lengths of bars cost, over several lengths and prices and with offcuts", () => {
    let proven = 0;
    fc.assert(
      fc.property(jobs, fc.boolean(), (job, lies) => {
        const problem = lies ? turnedOver(job) : job;
        const plan = packSheets(problem, { steps: 20_000 });
        expect(checkSheetPlan(problem, plan)).toEqual([]);
        const bars = packBars({
          kerf: job.kerf,
          trim: 0,
          stock: job.sheets.map(({ id, height, cost, offcut }) =>
            offcut === true ? { id, length: height, cost: 0, have: 1 } : { id, length: height, cost },
          ),
          parts: job.parts.map(({ id, height, quantity }) => ({ id, length: height, quantity })),
        });
        expect(plan.cost).toBeLessThanOrEqual(bars.cost);
        if (!bars.proven) return;
        proven++;
        expect({ cost: plan.cost, proven: plan.proven }).toEqual({ cost: bars.cost, proven: true });
      }),
      { numRuns: 40, seed: 2026 },
    );
    expect(proven).toBeGreaterThan(20);
  });

  test("are sought in short pieces of work", () => {
    const random = [...Array(90).keys()].map((at) => 200 + ((at * 7919) % 331));
    const packing = startPacking({
      sheets: [{ id: "b", width: 3, height: 1000, cost: 1 }],
      kerf: 3,
      trim: 0,
      parts: random.map((height, at) => part(`p${at}`, 3, height)),
    });
    let advanced = 0;
    while (!packing.advance(1) && advanced < 60_000) advanced++;
    expect(advanced).toBeGreaterThan(10);
    expect(packing.plan().proven).toBe(true);
  });
});

interface Instance {
  readonly name: string;
  readonly capacity: number;
  readonly weights: readonly number[];
  readonly optimum: number;
}

const board = fc.record({ height: fc.integer({ min: 60, max: 140 }), cost: fc.integer({ min: 5, max: 15 }) });

const jobs: fc.Arbitrary<SheetProblem> = fc
  .record({
    boards: fc.array(board, { minLength: 1, maxLength: 3 }),
    offcuts: fc.array(fc.integer({ min: 20, max: 90 }), { maxLength: 2 }),
    kerf: fc.integer({ min: 0, max: 2 }),
    lengths: fc.array(fc.tuple(fc.integer({ min: 8, max: 58 }), fc.integer({ min: 1, max: 4 })), {
      minLength: 1,
      maxLength: 6,
    }),
  })
  .map(({ boards, offcuts, kerf, lengths }) => ({
    sheets: [
      ...offcuts.map((height, at) => ({ id: `o${at}`, width: 6, height, cost: 0, offcut: true })),
      ...boards.map(({ height, cost }, at) => ({ id: `b${at}`, width: 6, height, cost })),
    ],
    kerf,
    trim: 0,
    parts: lengths.map(([height, quantity], at) => part(`p${at}`, 4, height, { quantity })),
  }));

/** The same lying on its side. */
function turnedOver(problem: SheetProblem): SheetProblem {
  const over = <T extends { readonly width: number; readonly height: number }>(one: T): T => ({
    ...one,
    width: one.height,
    height: one.width,
  });
  return { ...problem, sheets: problem.sheets.map(over), parts: problem.parts.map(over) };
}
