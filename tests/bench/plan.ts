/**
 * Packs every instance of a file and prints the totals beside the published ones:
 * `npm run bench:plan -- [FILE] [--turn|--fixed] [--seconds N] [--limit K] [--verbose] [--processor]`, the last for seconds
 * of processor time.
 */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { type Packing, startPacking } from "../../language/plan/pack/pack-sheets.ts";
import type { SheetProblem } from "../../language/plan/pack/problem.ts";
import { checkSheetPlan } from "../support/plan-checker.ts";

type Instance = {
  readonly name: string;
  readonly class: number;
  readonly width: number;
  readonly height: number;
  readonly items: readonly (readonly [number, number])[];
  readonly lowerBoundFixed: number;
  readonly lowerBoundTurned: number;
  readonly bestFixedGuillotine: number;
  readonly bestTurnedGuillotine: number;
};

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    turn: { type: "boolean" },
    fixed: { type: "boolean" },
    verbose: { type: "boolean" },
    seconds: { type: "string" },
    limit: { type: "string" },
    seed: { type: "string" },
    processor: { type: "boolean" },
  },
});

const file = positionals[0] ?? new URL("data/sheets-sample.json", import.meta.url);
/** Rounds between two looks at the clock. */
const ROUNDS = 64;
const seconds = Number(values.seconds ?? 2);
const content = JSON.parse(readFileSync(file, "utf8")) as Instance[] | { readonly instances: Instance[] };
const everything = Array.isArray(content) ? content : content.instances;
const instances = everything.slice(0, Number(values.limit ?? everything.length));
const ways =
  values.fixed === true ? [values.turn === true ? "both" : "fixed"] : [values.turn === true ? "turn" : "both"];
for (const way of ways[0] === "both" ? (["turn", "fixed"] as const) : (ways as ("turn" | "fixed")[])) run(way);

function run(way: "turn" | "fixed"): void {
  const began = performance.now();
  const sum = { sheets: 0, bound: 0, published: 0, publishedBound: 0, proven: 0, wrong: 0, slowest: 0, firstAnswer: 0 };
  for (const instance of instances) {
    const problem = problemOf(instance, way);
    const start = performance.now();
    const begin = clock();
    const packing = startPacking(problem, Number(values.seed ?? 1));
    packing.plan();
    sum.firstAnswer = Math.max(sum.firstAnswer, performance.now() - start);
    advanceFor(packing, begin + seconds * 1000);
    const spent = performance.now() - start;
    const plan = packing.plan();
    const wrong = checkSheetPlan(problem, plan);
    const best = way === "turn" ? instance.bestTurnedGuillotine : instance.bestFixedGuillotine;
    const bound = way === "turn" ? instance.lowerBoundTurned : instance.lowerBoundFixed;
    sum.sheets += plan.sheetsUsed;
    sum.bound += plan.lowerBound;
    sum.published += best;
    sum.publishedBound += bound;
    sum.proven += plan.proven ? 1 : 0;
    sum.wrong += wrong.length;
    sum.slowest = Math.max(sum.slowest, spent);
    const remarkable = plan.sheetsUsed !== best || plan.lowerBound !== bound || 0 < wrong.length;
    if (values.verbose === true && remarkable) {
      const published = `published ${best}, bound ${bound}`;
      console.log(`${instance.name}: ${plan.sheetsUsed} sheets, bound ${plan.lowerBound} (${published})`, ...wrong);
    }
  }
  const share = ((100 * sum.proven) / instances.length).toFixed(1);
  console.log(
    `${way === "turn" ? "pieces may turn" : "pieces keep their direction"}, ${instances.length} instances, ${seconds} s each at most`,
  );
  console.log(`  sheets ${sum.sheets} (best known three-stage guillotine ${sum.published})`);
  console.log(`  lower bound ${sum.bound} (with the data ${sum.publishedBound}), proven ${sum.proven} (${share} %)`);
  console.log(
    `  time ${((performance.now() - began) / 1000).toFixed(1)} s, slowest ${sum.slowest.toFixed(0)} ms, slowest first answer ${sum.firstAnswer.toFixed(0)} ms`,
  );
  console.log(`  checker: ${sum.wrong === 0 ? "every plan passes" : `${sum.wrong} faults`}`);
  if (sum.wrong !== 0) process.exitCode = 1;
}

function advanceFor(packing: Packing, end: number): void {
  while (clock() < end) if (packing.advance(ROUNDS)) return;
}

/** Milliseconds of wall or of processor time; the latter does not mind what else the machine does. */
function clock(): number {
  return values.processor === true ? process.cpuUsage().user / 1000 : performance.now();
}

function problemOf(instance: Instance, way: "turn" | "fixed"): SheetProblem {
  const turn = way === "turn" ? "free" : "fixed";
  return {
    sheets: [{ id: "sheet", width: instance.width, height: instance.height, cost: 1 }],
    kerf: 0,
    trim: 0,
    parts: instance.items.map(([width, height], at) => ({ id: `p${at}`, width, height, quantity: 1, turn })),
  };
}
