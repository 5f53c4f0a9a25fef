import type { Lengths } from "./bar-lp.ts";
import type { BarProblem, BarStock } from "./bar-problem.ts";
import { addUnplaced } from "./prepare.ts";
import type { PackFault, Unplaced } from "./problem.ts";

/** A bar problem without kerf and trim: equal lengths gathered, with the parts each stands for. */
export type PreparedBars = {
  readonly task: Lengths;
  /** For each length, the part of each of its pieces. */
  readonly members: readonly (readonly string[])[];
  readonly stockOf: readonly BarStock[];
  readonly unplaced: readonly Unplaced[];
  readonly faults: readonly PackFault[];
  readonly kerf: number;
  readonly trim: number;
};

const LARGEST = 1_000_000_000;
const MOST_PIECES = 20_000;

/** Checks a bar problem and grows every length by one kerf; bad figures become faults, parts too long are unplaced. */
export function prepareBars(problem: BarProblem): PreparedBars {
  const faults: PackFault[] = [];
  const unplaced: Unplaced[] = [];
  const kerf = allowance(problem.kerf, "kerf", faults);
  const trim = allowance(problem.trim, "trim", faults);
  const stockOf = problem.stock.filter((stock) => usable(stock, trim, faults));
  const stocks = stockOf.map((stock) => ({
    length: stock.length - 2 * trim + kerf,
    cost: Number.isFinite(stock.cost) && 0 <= stock.cost ? stock.cost : 0,
    have: Math.floor(stock.have ?? Number.POSITIVE_INFINITY),
  }));
  const longest = stocks.reduce((most, stock) => Math.max(most, stock.length), 0);
  const there = stocks.reduce((most, stock) => (0 < stock.have ? Math.max(most, stock.length) : most), 0);
  const gathered = new Map<number, string[]>();
  let pieces = 0;
  for (const part of problem.parts) {
    const counts = Number.isInteger(part.quantity) && 0 <= part.quantity;
    if (!isLength(part.length) || !counts || MOST_PIECES < pieces + part.quantity) {
      const why = isLength(part.length) ? "not a count" : "not a size";
      faults.push({
        id: part.id,
        why: why === "not a size" ? "the length must be a whole number above zero" : countFault(counts),
      });
      unplaced.push({ part: part.id, quantity: counts ? part.quantity : 0, why });
      continue;
    }
    pieces += part.quantity;
    const length = part.length + kerf;
    const list = gathered.get(length) ?? [];
    for (let count = 0; count < part.quantity; count++) {
      if (length <= there) list.push(part.id);
      else addUnplaced(unplaced, part.id, length <= longest ? "no stock left" : "larger than every sheet");
    }
    if (0 < list.length) gathered.set(length, list);
  }
  const lengths = [...gathered.keys()].sort((a, b) => b - a);
  const members = lengths.map((length) => gathered.get(length)!);
  const task = { lengths, demand: members.map((list) => list.length), stocks };
  return { task, members, stockOf, unplaced, faults, kerf, trim };
}

function countFault(counts: boolean): string {
  return counts ? `more than ${MOST_PIECES} pieces in one job` : "the quantity must be a whole number, zero or more";
}

function isLength(value: number): boolean {
  return Number.isInteger(value) && 0 < value && value <= LARGEST;
}

function allowance(value: number, id: string, faults: PackFault[]): number {
  if (Number.isInteger(value) && 0 <= value && value <= LARGEST) return value;
  faults.push({ id, why: `the ${id} must be a whole number, zero or more; none is taken` });
  return 0;
}

function usable(stock: BarStock, trim: number, faults: PackFault[]): boolean {
  const fault = (why: string): boolean => {
    faults.push({ id: stock.id, why });
    return false;
  };
  if (!isLength(stock.length)) return fault("the length must be a whole number above zero");
  if (stock.length <= 2 * trim) return fault("nothing is left of the bar after trimming");
  if (stock.have !== undefined && !(0 <= stock.have)) return fault("the number in stock must be zero or more");
  if (!(Number.isFinite(stock.cost) && 0 <= stock.cost)) fault("the cost must be zero or more; zero is taken");
  return true;
}
