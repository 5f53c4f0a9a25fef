/**
 * Packs the same instances, without kerf and with pieces that may turn, by the general packing libraries of npm and by
 * ours, in one run: `npm run bench:packers -- [FILE] [--limit K] [--seconds N]`. Theirs may leave patterns that no saw
 * can cut (pieces that lock each other); ours are cut from edge to edge, which asks for as many sheets or more.
 */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { pack2D } from "binpackingjs/2d";
import { startPacking } from "../../language/plan/pack/pack-sheets.ts";
import { checkSheetPlan } from "../support/plan-checker.ts";

/** What is used of maxrects-packer, whose package names a main file that node cannot load, with types that name others. */
interface MaxRects {
  readonly PACKING_LOGIC: { readonly MAX_AREA: number; readonly MAX_EDGE: number };
  readonly MaxRectsPacker: new (
    width: number,
    height: number,
    padding: number,
    options: object,
  ) => {
    readonly bins: readonly { readonly rects: readonly unknown[] }[];
    addArray(rects: readonly object[]): void;
  };
}

const moduleOfMaxRects: string = "maxrects-packer/dist/maxrects-packer.mjs";
const maxrects = (await import(moduleOfMaxRects)) as MaxRects;

interface Instance {
  readonly width: number;
  readonly height: number;
  readonly items: readonly (readonly [number, number])[];
  readonly lowerBoundTurned: number;
  readonly bestTurnedGuillotine: number;
}

/** Sheets used; every piece of the instance is on one of them, or it throws. */
type Packer = (instance: Instance) => number;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { limit: { type: "string" }, seconds: { type: "string" } },
});
const file = positionals[0] ?? new URL("data/sheets-sample.json", import.meta.url);
const content = JSON.parse(readFileSync(file, "utf8")) as Instance[] | { readonly instances: Instance[] };
const everything = Array.isArray(content) ? content : content.instances;
const instances = everything.slice(0, Number(values.limit ?? everything.length));
const seconds = Number(values.seconds ?? 0.2);

const longestFirst = (a: readonly number[], b: readonly number[]): number =>
  Math.max(...b) - Math.max(...a) || b[0]! * b[1]! - a[0]! * a[1]!;

const packers: readonly (readonly [string, Packer])[] = [
  ["maxrects-packer 2.7.4, longest edge", (one) => maxRects(one, maxrects.PACKING_LOGIC.MAX_EDGE)],
  ["maxrects-packer 2.7.4, largest area", (one) => maxRects(one, maxrects.PACKING_LOGIC.MAX_AREA)],
  ["binpackingjs 4.1.0, as given", (one) => binPacking(one, one.items)],
  ["binpackingjs 4.1.0, longest edge first", (one) => binPacking(one, [...one.items].sort(longestFirst))],
  ["Scantling, first answer", (one) => ours(one, 0)],
  [`Scantling, at most ${seconds} s`, (one) => ours(one, seconds)],
];
const all = (of: (one: Instance) => number): number => instances.reduce((sum, one) => sum + of(one), 0);
console.log(`${instances.length} instances, pieces may turn, no kerf`);
for (const [name, packer] of packers) {
  const began = performance.now();
  const sheets = all(packer);
  const each = (performance.now() - began) / instances.length;
  console.log(`  ${name.padEnd(40)} ${String(sheets).padStart(5)} sheets  ${each.toFixed(1).padStart(7)} ms each`);
}
console.log(`  ${"best known, three stages".padEnd(40)} ${String(all((one) => one.bestTurnedGuillotine)).padStart(5)}`);
console.log(
  `  ${"lower bound given with the data".padEnd(40)} ${String(all((one) => one.lowerBoundTurned)).padStart(5)}`,
);

function maxRects({ width, height, items }: Instance, logic: number): number {
  const options = { smart: false, pot: false, square: false, allowRotation: true, border: 0, logic };
  const packer = new maxrects.MaxRectsPacker(width, height, 0, options);
  packer.addArray(items.map(([w, h]) => ({ width: w, height: h, x: 0, y: 0 })));
  return counted(
    packer.bins.map((bin) => bin.rects.length),
    items.length,
  );
}

function binPacking({ width, height }: Instance, items: Instance["items"]): number {
  const { packedBins } = pack2D({
    bins: items.map(() => ({ width, height })),
    boxes: items.map(([w, h]) => ({ width: w, height: h })),
  });
  const used = packedBins.map(({ boxes }) => boxes.length).filter((count) => 0 < count);
  return counted(used, items.length);
}

function ours({ width, height, items }: Instance, budget: number): number {
  const problem = {
    sheets: [{ id: "sheet", width, height, cost: 1 }],
    kerf: 0,
    trim: 0,
    parts: items.map(([w, h], at) => ({ id: `p${at}`, width: w, height: h, quantity: 1, turn: "free" as const })),
  };
  const end = performance.now() + budget * 1000;
  const packing = startPacking(problem, 1);
  while (performance.now() < end) if (packing.advance(16)) break;
  const plan = packing.plan();
  const [fault] = checkSheetPlan(problem, plan);
  if (fault !== undefined) throw new Error(fault);
  return plan.sheetsUsed;
}

function counted(perSheet: readonly number[], items: number): number {
  const placed = perSheet.reduce((sum, count) => sum + count, 0);
  if (placed !== items) throw new Error(`${items - placed} pieces have no place`);
  return perSheet.length;
}
