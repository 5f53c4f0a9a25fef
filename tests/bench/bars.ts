/**
 * Packs every one-dimensional instance of a file and compares with the proven optima:
 * `npm run bench:bars -- [FILE] [--limit K] [--verbose]`.
 */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { packBars } from "../../language/plan/pack/pack-bars.ts";
import { checkBarPlan } from "../support/plan-checker.ts";

type Instance = {
  readonly name: string;
  readonly set: string;
  readonly capacity: number;
  readonly weights: readonly number[];
  readonly optimum: number;
};

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { verbose: { type: "boolean" }, limit: { type: "string" } },
});
const file = positionals[0] ?? new URL("data/bars-sample.json", import.meta.url);
const content = JSON.parse(readFileSync(file, "utf8")) as Instance[] | { readonly instances: Instance[] };
const everything = Array.isArray(content) ? content : content.instances;
const instances = everything.slice(0, Number(values.limit ?? everything.length));
const sum = { bars: 0, bound: 0, optimum: 0, proven: 0, wrong: 0, slowest: 0, time: 0, slowestCpu: 0 };
for (const { name, capacity, weights, optimum } of instances) {
  const problem = {
    stock: [{ id: "bar", length: capacity, cost: 1 }],
    kerf: 0,
    trim: 0,
    parts: weights.map((length, at) => ({ id: `p${at}`, length, quantity: 1 })),
  };
  const began = performance.now();
  const cpu = process.cpuUsage();
  const plan = packBars(problem);
  const spent = performance.now() - began;
  const { user, system } = process.cpuUsage(cpu);
  const wrong = checkBarPlan(problem, plan);
  sum.bars += plan.barsUsed;
  sum.bound += plan.lowerBound;
  sum.optimum += optimum;
  sum.proven += plan.proven ? 1 : 0;
  sum.wrong += wrong.length;
  sum.time += spent;
  sum.slowest = Math.max(sum.slowest, spent);
  sum.slowestCpu = Math.max(sum.slowestCpu, (user + system) / 1000);
  if (values.verbose === true && (!plan.proven || plan.barsUsed !== optimum || 300 < spent || 0 < wrong.length)) {
    console.log(
      `${name}: ${plan.barsUsed} bars, bound ${plan.lowerBound}, optimum ${optimum}, ${spent.toFixed(0)} ms`,
      ...wrong,
    );
  }
}
console.log(
  `${instances.length} instances: bars ${sum.bars} (proven optimum ${sum.optimum}), lower bound ${sum.bound}`,
);
console.log(
  `  proven here ${sum.proven} of ${instances.length}, time ${(sum.time / 1000).toFixed(1)} s, slowest ${sum.slowest.toFixed(0)} ms by the clock, ${sum.slowestCpu.toFixed(0)} ms of processor`,
);
console.log(`  checker: ${sum.wrong === 0 ? "every plan passes" : `${sum.wrong} faults`}`);
if (sum.wrong !== 0 || sum.bars !== sum.optimum) process.exitCode = 1;
