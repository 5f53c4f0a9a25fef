import type { MatchedRow, PackFault, SheetPart, SheetProblem, SheetStock, Unplaced } from "./problem.ts";
import type { Blanks } from "./search.ts";

/** A sheet after trimming, grown by one kerf so that blanks grown likewise can be packed without one. */
export type Panel = {
  readonly stock: SheetStock;
  readonly w: number;
  readonly h: number;
  readonly have: number;
  readonly offcut: boolean;
  readonly cost: number;
};

/** What one blank holds: a part, or the parts of a matched row in their order. */
export type Held = { readonly parts: readonly SheetPart[]; readonly along: "x" | "y" };

/** A problem without kerf and trim, ready to search, and what had to be set aside. */
export type Prepared = {
  readonly panels: readonly Panel[];
  readonly blanks: Blanks;
  readonly held: readonly Held[];
  readonly unplaced: readonly Unplaced[];
  readonly faults: readonly PackFault[];
  readonly kerf: number;
  readonly trim: number;
};

/** Sizes above this are refused: areas stay exact in a double. */
const LARGEST = 60_000_000;
/** More pieces than this are refused in one go: it is far beyond a shop's job and would only look like a hang. */
const MOST_PIECES = 20_000;

/**
 * Checks a problem and takes kerf and trim out of it: with a kerf k, every part and every trimmed sheet grown by k packs
 * exactly as the originals do with k between them. Bad figures become faults and unplaced parts, never a throw.
 */
export function prepare(problem: SheetProblem): Prepared {
  const faults: PackFault[] = [];
  const kerf = allowance(problem.kerf, "kerf", faults);
  const trim = allowance(problem.trim, "trim", faults);
  const panels = problem.sheets.flatMap((stock) => panel(stock, kerf, trim, faults));
  const unplaced: Unplaced[] = [];
  const usable: SheetPart[] = [];
  let pieces = 0;
  for (const part of problem.parts) {
    const why =
      !isSize(part.width) || !isSize(part.height) ? "not a size" : isCount(part.quantity) ? undefined : "not a count";
    if (why === undefined && pieces + part.quantity <= MOST_PIECES) {
      pieces += part.quantity;
      usable.push(part);
      continue;
    }
    unplaced.push({ part: part.id, quantity: isCount(part.quantity) ? part.quantity : 0, why: why ?? "not a count" });
    faults.push({ id: part.id, why: faultOf(why) });
  }
  const held = hold(usable, problem.rows ?? []);
  const fitting: Held[] = [];
  for (const one of held) {
    const size = sizeOf(one, kerf);
    if (panels.some((to) => 0 < to.have && fits(size, to))) fitting.push(one);
    else {
      const why = panels.some((to) => fits(size, to)) ? "no stock left" : "larger than every sheet";
      for (const part of one.parts) addUnplaced(unplaced, part.id, why);
    }
  }
  return { panels, blanks: blanksOf(fitting, kerf), held: fitting, unplaced, faults, kerf, trim };
}

/** Adds one piece to the list of parts without a place, counting up where the part already stands there. */
export function addUnplaced(list: Unplaced[], part: string, why: Unplaced["why"]): void {
  const at = list.findIndex((entry) => entry.part === part && entry.why === why);
  if (at < 0) list.push({ part, quantity: 1, why });
  else list[at] = { part, quantity: list[at]!.quantity + 1, why };
}

function faultOf(why: Unplaced["why"] | undefined): string {
  if (why === "not a size") return "width and height must be whole numbers above zero";
  if (why === "not a count") return "the quantity must be a whole number, zero or more";
  return `more than ${MOST_PIECES} pieces in one job`;
}

function isSize(value: number): boolean {
  return Number.isInteger(value) && 0 < value && value <= LARGEST;
}

function isCount(value: number): boolean {
  return Number.isInteger(value) && 0 <= value;
}

function allowance(value: number, id: string, faults: PackFault[]): number {
  if (Number.isInteger(value) && 0 <= value && value <= LARGEST) return value;
  faults.push({ id, why: `the ${id} must be a whole number, zero or more; none is taken` });
  return 0;
}

/** Offcuts are not trimmed: their edges were sawn when they fell off. */
function panel(stock: SheetStock, kerf: number, trim: number, faults: PackFault[]): Panel[] {
  const offcut = stock.offcut === true;
  const edge = offcut ? 0 : trim;
  const have = stock.have ?? (offcut ? 1 : Number.POSITIVE_INFINITY);
  if (!isSize(stock.width) || !isSize(stock.height)) {
    faults.push({ id: stock.id, why: "width and height must be whole numbers above zero" });
    return [];
  }
  if (!(0 <= have)) {
    faults.push({ id: stock.id, why: "the number in stock must be zero or more" });
    return [];
  }
  const priced = Number.isFinite(stock.cost) && 0 <= stock.cost;
  if (!priced) faults.push({ id: stock.id, why: "the cost must be zero or more; zero is taken" });
  const w = stock.width - 2 * edge;
  const h = stock.height - 2 * edge;
  if (w <= 0 || h <= 0) {
    faults.push({ id: stock.id, why: "nothing is left of the sheet after trimming" });
    return [];
  }
  const cost = offcut || !priced ? 0 : stock.cost;
  return [{ stock, w: w + kerf, h: h + kerf, have: Math.floor(have), offcut, cost }];
}

function hold(parts: readonly SheetPart[], rows: readonly MatchedRow[]): Held[] {
  const held: Held[] = [];
  const seen = new Set<string>();
  for (const part of parts) {
    if (part.group === undefined) {
      for (let count = 0; count < part.quantity; count++) held.push({ parts: [part], along: "x" });
    } else if (!seen.has(part.group)) {
      seen.add(part.group);
      const members = parts.filter((other) => other.group === part.group);
      const inOrder = members.flatMap((member) => Array.from({ length: member.quantity }, () => member));
      const along = rows.find((row) => row.id === part.group)?.along ?? "x";
      if (0 < inOrder.length) held.push({ parts: inOrder, along });
    }
  }
  return held;
}

type Size = { readonly w: number; readonly h: number; readonly turns: boolean };

function sizeOf(held: Held, kerf: number): Size {
  let w = 0;
  let h = 0;
  for (const part of held.parts) {
    if (held.along === "x") {
      w += part.width + kerf;
      h = Math.max(h, part.height + kerf);
    } else {
      h += part.height + kerf;
      w = Math.max(w, part.width + kerf);
    }
  }
  return { w, h, turns: held.parts.every((part) => part.turn === "free") };
}

function fits(size: Size, panelSize: Panel): boolean {
  if (size.w <= panelSize.w && size.h <= panelSize.h) return true;
  return size.turns && size.h <= panelSize.w && size.w <= panelSize.h;
}

function blanksOf(held: readonly Held[], kerf: number): Blanks {
  const sizes = held.map((one) => sizeOf(one, kerf));
  const kinds = new Map<string, number>();
  const kindOf = ({ w, h, turns }: Size): number => {
    const key = `${w} ${h} ${turns}`;
    const kind = kinds.get(key) ?? kinds.size;
    kinds.set(key, kind);
    return kind;
  };
  return {
    count: sizes.length,
    w: Float64Array.from(sizes, (size) => size.w),
    h: Float64Array.from(sizes, (size) => size.h),
    area: Float64Array.from(sizes, (size) => size.w * size.h),
    turns: Uint8Array.from(sizes, (size) => (size.turns ? 1 : 0)),
    kind: Int32Array.from(sizes, kindOf),
  };
}
