/**
 * Packs jobs made up by chance over sheets and boards of several sizes and prices, with offcuts in the rack, and prints
 * what they cost beside the bounds: `npm run bench:sizes -- [--jobs N] [--from N] [--seconds S | --rounds N] [--verbose]`.
 * Nothing is published for such jobs as a saw cuts them; so the same jobs serve to compare one state of the program with another.
 */
import { parseArgs } from "node:util";
import { type Packing, startPacking } from "../../language/plan/pack/pack-sheets.ts";
import type { SheetPart, SheetProblem, SheetStock } from "../../language/plan/pack/problem.ts";
import { type Random, seededRandom } from "../../language/plan/pack/random.ts";
import { checkSheetPlan } from "../support/plan-checker.ts";

const { values } = parseArgs({
  options: {
    jobs: { type: "string" },
    from: { type: "string" },
    seconds: { type: "string" },
    rounds: { type: "string" },
    verbose: { type: "boolean" },
  },
});

/** Rounds between two looks at the clock. */
const ROUNDS = 64;
const from = Number(values.from ?? 1);
const jobs = Number(values.jobs ?? 40);
const kinds = [
  { name: "sheets of several sizes", make: sheetJob },
  { name: "one size and offcuts", make: offcutJob },
  { name: "boards of several widths and lengths", make: boardJob },
];
for (const { name, make } of kinds) run(name, make);

function run(name: string, make: (random: Random) => SheetProblem): void {
  const sum = { cost: 0, bound: 0, over: 0, proven: 0, wrong: 0, time: 0, slowest: 0 };
  for (let job = from; job < from + jobs; job++) {
    const problem = make(seededRandom(job * 7919));
    const began = process.cpuUsage().user;
    const packing = startPacking(problem);
    advance(packing, began);
    const plan = packing.plan();
    const spent = (process.cpuUsage().user - began) / 1000;
    const wrong = checkSheetPlan(problem, plan);
    sum.cost += plan.cost;
    sum.bound += plan.costBound;
    sum.over += plan.cost === 0 ? 0 : (100 * (plan.cost - plan.costBound)) / plan.cost;
    sum.proven += plan.proven ? 1 : 0;
    sum.wrong += wrong.length;
    sum.time += spent;
    sum.slowest = Math.max(sum.slowest, spent);
    if (values.verbose === true || 0 < wrong.length) {
      const pieces = problem.parts.reduce((all, part) => all + part.quantity, 0);
      const said = `${pieces} pieces, cost ${plan.cost.toFixed(2)}, bound ${plan.costBound.toFixed(2)}`;
      console.log(`  ${job}: ${said}, ${plan.proven ? "proven" : "open"}, ${spent.toFixed(0)} ms`, ...wrong);
    }
  }
  console.log(`${name}, ${jobs} jobs:`);
  console.log(
    `  cost ${sum.cost.toFixed(2)}, bound ${sum.bound.toFixed(2)}, apart ${(sum.over / jobs).toFixed(2)} % on the mean`,
  );
  console.log(
    `  proven ${sum.proven} of ${jobs}, ${(sum.time / jobs).toFixed(0)} ms of processor each, slowest ${sum.slowest.toFixed(0)} ms`,
  );
  console.log(`  checker: ${sum.wrong === 0 ? "every plan passes" : `${sum.wrong} faults`}`);
  if (sum.wrong !== 0) process.exitCode = 1;
}

function advance(packing: Packing, began: number): void {
  if (values.rounds !== undefined) {
    for (let spent = 0; spent < Number(values.rounds); spent += 16) if (packing.advance(16)) return;
    return;
  }
  const end = began + Number(values.seconds ?? 2) * 1e6;
  while (process.cpuUsage().user < end) if (packing.advance(ROUNDS)) return;
}

function sheetJob(random: Random): SheetProblem {
  const sold = shuffled(random, [
    [1220, 2440],
    [1525, 1525],
    [1220, 1220],
    [610, 1220],
    [1525, 3050],
  ] as const);
  const sheets = sold
    .slice(0, 2 + random.below(3))
    .map(([width, height], at) => sheet(random, `s${at}`, width, height));
  return { sheets, kerf: 3, trim: 6, parts: panels(random, sheets, 10 + random.below(40)) };
}

function offcutJob(random: Random): SheetProblem {
  const whole = sheet(random, "whole", 1220, 2440);
  const offcuts = Array.from({ length: 1 + random.below(3) }, (_, at): SheetStock => {
    return { id: `o${at}`, width: 300 + random.below(900), height: 500 + random.below(1500), cost: 0, offcut: true };
  });
  return { sheets: [whole, ...offcuts], kerf: 3, trim: 6, parts: panels(random, [whole], 10 + random.below(40)) };
}

function boardJob(random: Random): SheetProblem {
  const wide = shuffled(random, [90, 140, 190, 240]).slice(0, 2 + random.below(2));
  const long = shuffled(random, [1800, 2400, 3000, 3600]).slice(0, 2);
  const each = 3 + random.unit();
  const sheets = wide.flatMap((width) =>
    long.map((height): SheetStock => {
      // Wide and long boards cost more for their size.
      const dearer = 1 + 0.1 * random.unit() + width / 2400;
      return { id: `${width} x ${height}`, width, height, cost: price((each * dearer * width * height) / 92_903) };
    }),
  );
  const widest = Math.max(...wide);
  const longest = Math.max(...long);
  const ripped = [38, 45, 57, 70, 95, 130].filter((width) => width <= widest);
  const parts = Array.from({ length: 4 + random.below(9) }, (_, at): SheetPart => {
    const height = Math.min(longest, 150 + random.below(1100));
    return {
      id: `p${at}`,
      width: ripped[random.below(ripped.length)]!,
      height,
      quantity: 1 + random.below(4),
      turn: "fixed",
    };
  });
  return { sheets, kerf: 3, trim: 0, parts };
}

function sheet(random: Random, id: string, width: number, height: number): SheetStock {
  const each = 18 * (0.85 + 0.3 * random.unit());
  return { id, width, height, cost: price((each * width * height) / 1_000_000) };
}

/** Panels of a job, two or four of most, none too large for the sheets; half of the jobs have no grain to keep to. */
function panels(random: Random, sheets: readonly SheetStock[], pieces: number): SheetPart[] {
  const widest = Math.max(...sheets.map((one) => one.width)) - 12;
  const longest = Math.max(...sheets.map((one) => one.height)) - 12;
  const turn = random.unit() < 0.5 ? "free" : "fixed";
  const parts: SheetPart[] = [];
  for (let left = pieces; 0 < left; ) {
    const quantity = Math.min(left, [1, 2, 2, 4][random.below(4)]!);
    const small = random.unit() < 0.4;
    const width = Math.min(widest, small ? 60 + random.below(200) : 200 + random.below(500));
    const height = Math.min(longest, small ? 150 + random.below(500) : 300 + random.below(1200));
    parts.push({ id: `p${parts.length}`, width, height, quantity, turn });
    left -= quantity;
  }
  return parts;
}

function price(amount: number): number {
  return Math.round(100 * amount) / 100;
}

function shuffled<Kind>(random: Random, all: readonly Kind[]): Kind[] {
  const keyed = all.map((one) => ({ one, key: random.unit() }));
  return keyed.sort((a, b) => a.key - b.key).map(({ one }) => one);
}
