import type { Length } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { multiply, toNumber, toText } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import type { Model, Stock } from "../derive/model.ts";
import { type Packing, startPacking } from "./pack/pack-sheets.ts";
import type { CutPiece, SheetPlan, UsedSheet } from "./pack/problem.ts";
import { type MarkedPart, type StockProblem, sheetsInRack, stockProblems } from "./problems.ts";
import type { Scale } from "./scale.ts";

/** One part where it lies on a sheet or board: inches from the left bottom corner, exact. */
export interface PlacedPart {
  readonly mark: string;
  readonly part: Part;
  /** How many such pieces are glued up side by side to make the part; 1 for a part of one piece. */
  readonly staves: number;
  readonly x: Length;
  readonly y: Length;
  readonly width: Length;
  readonly height: Length;
  readonly turned: boolean;
}

/** A piece as the saw leaves it: a part, something left over, or something that is cut on. */
export interface CutNode {
  readonly x: Length;
  readonly y: Length;
  readonly width: Length;
  readonly height: Length;
  readonly content:
    | { readonly kind: "part"; readonly mark: string; readonly part: Part }
    | { readonly kind: "left" }
    | { readonly kind: "cut"; readonly along: "x" | "y"; readonly pieces: readonly CutNode[] };
}

/** A sheet, board or offcut that is cut up. */
export interface PlannedSheet {
  readonly stock: Stock;
  /** `birch-18 1`, `maple 2`, `birch-18 offcut 1`: as it is marked on the stack. */
  readonly name: string;
  readonly offcut: boolean;
  readonly width: Length;
  readonly height: Length;
  readonly price: number | undefined;
  readonly placed: readonly PlacedPart[];
  readonly cuts: CutNode;
}

export interface StockPlan {
  readonly stock: Stock;
  readonly sheets: readonly PlannedSheet[];
  /** New sheets or boards, offcuts not counted. */
  readonly used: number;
  readonly lowerBound: number;
  /** Nothing less will do: the plan meets a bound on number or price. */
  readonly proven: boolean;
  readonly reason: string;
  readonly inRack: number;
  readonly cost: number | undefined;
  /** What has to be paid in any case, as far as that is known; missing where a price is. */
  readonly leastCost: number | undefined;
  readonly unplaced: readonly {
    readonly mark: string;
    readonly part: Part;
    readonly quantity: number;
    readonly why: string;
  }[];
}

export interface CutPlan {
  readonly stocks: readonly StockPlan[];
  /** Stocks that parts are cut from but whose size is not stated. */
  readonly unsized: readonly string[];
}

export interface PlanBudget {
  /** Rounds of search for each stock. The same rounds give the same plan. */
  readonly steps: number;
  readonly shouldStop?: () => boolean;
}

/** A cutting plan that is under way: good at once, better with more rounds. */
export interface Planning {
  /** Searches for so many rounds with each stock; true when nothing is left to find. */
  readonly advance: (rounds: number) => boolean;
  /** The best plan so far. */
  readonly plan: () => CutPlan;
  /** Counts up whenever a better plan has been found. */
  readonly version: () => number;
}

/** A search for plans of some stocks. What it finds can be read back against problems that ask for the same of it. */
export interface PlanSearch {
  /** Searches for so many rounds with each stock; true when nothing is left to find. */
  readonly advance: (rounds: number) => boolean;
  /** Counts up whenever a better plan has been found. */
  readonly version: () => number;
  /** The best so far of each stock, for problems that are those it was started with or have the same `planKey`. */
  readonly found: (context: Context, problems: readonly StockProblem[]) => readonly StockPlan[];
}

export function startSearch(problems: readonly StockProblem[]): PlanSearch {
  const packings = problems.map(({ problem }) => startPacking(problem));
  const done = new Set<Packing>();
  // Telling what was found tidies it up, which is work: once for each better plan, not for each look at it.
  const told = new Map<Packing, { readonly version: number; readonly plan: SheetPlan }>();
  const tell = (packing: Packing): SheetPlan => {
    const last = told.get(packing);
    if (last !== undefined && last.version === packing.version()) return last.plan;
    const plan = packing.finish();
    told.set(packing, { version: packing.version(), plan });
    return plan;
  };
  return {
    advance(rounds) {
      for (const packing of packings) if (!done.has(packing) && packing.advance(rounds)) done.add(packing);
      return done.size === packings.length;
    },
    version: () => packings.reduce((sum, packing) => sum + packing.version(), 0),
    found: (context, asked) =>
      packings.flatMap((packing, index) => {
        const problem = asked[index];
        return problem === undefined ? [] : [stockPlan(context, problem, tell(packing))];
      }),
  };
}

/** What a search rests on, as a text: two builds of which it is the same have the same plans, whatever else was written. */
export function planKey(problems: readonly StockProblem[]): string {
  return JSON.stringify(
    problems.map(({ stock, problem, sources, scale }) => [
      stock.name,
      toText(scale.length(1)),
      problem,
      [...sources].map(([id, { width, height }]) => [id, toText(width), toText(height)]),
    ]),
  );
}

/** Starts the cutting plan of a model, each stock by itself. Total: what cannot be placed is named with its reason. */
export function startPlan(context: Context, model: Model, rows: readonly MarkedPart[]): Planning {
  const problems = stockProblems(context, model, rows);
  const { advance, version, found } = startSearch(problems);
  return {
    advance,
    version,
    plan: () => ({ stocks: found(context, problems), unsized: unsizedIn(problems, rows) }),
  };
}

/** The stocks of parts that have no plan, since their size is not stated. */
export function unsizedIn(problems: readonly StockProblem[], rows: readonly MarkedPart[]): readonly string[] {
  const planned = new Set(problems.map(({ stock }) => stock.name));
  const wanted = new Set(rows.filter((row) => row.part.stockKind !== "edging").map((row) => row.part.stock));
  return [...wanted].filter((name) => !planned.has(name));
}

/** Rounds between two questions whether to stop. */
const stretch = 16;

/** The cutting plan within a budget: the same rounds give the same plan. */
export function cutPlan(context: Context, model: Model, rows: readonly MarkedPart[], budget: PlanBudget): CutPlan {
  const planning = startPlan(context, model, rows);
  for (let spent = 0; spent < budget.steps; spent += stretch) {
    if (budget.shouldStop?.() === true || planning.advance(Math.min(stretch, budget.steps - spent))) break;
  }
  return planning.plan();
}

export function stockPlan(context: Context, problem: StockProblem, plan: SheetPlan): StockPlan {
  const counts = { whole: 0, offcut: 0 };
  const sheets = plan.sheets.map((sheet) => plannedSheet(problem, sheet, counts));
  const priced = sheets.filter((sheet) => !sheet.offcut).map((sheet) => sheet.price);
  const inRack = sheetsInRack(context, problem.stock);
  const cost = priced.some((price) => price === undefined)
    ? undefined
    : priced.reduce((sum: number, price) => sum + (price ?? 0), 0);
  return {
    stock: problem.stock,
    sheets,
    used: plan.sheetsUsed,
    lowerBound: plan.lowerBound,
    proven: plan.proven,
    reason: plan.reasons.at(-1)?.because ?? "",
    inRack,
    cost,
    leastCost: cost === undefined ? undefined : plan.costBound,
    unplaced: plan.unplaced.map((one) => ({ ...problem.parts.get(one.part)!, quantity: one.quantity, why: one.why })),
  };
}

function plannedSheet(
  problem: StockProblem,
  sheet: UsedSheet,
  counts: { whole: number; offcut: number },
): PlannedSheet {
  const source = problem.sources.get(sheet.stock)!;
  const { length } = problem.scale;
  const number = source.offcut ? ++counts.offcut : ++counts.whole;
  const part = (id: string) => problem.parts.get(id)!;
  return {
    stock: problem.stock,
    name: source.offcut ? `${problem.stock.name} offcut ${number}` : `${problem.stock.name} ${number}`,
    offcut: source.offcut,
    width: source.width,
    height: source.height,
    price: source.price,
    placed: sheet.placed.map((one) => ({
      ...problem.parts.get(one.part)!,
      x: length(one.x),
      y: length(one.y),
      width: length(one.width),
      height: length(one.height),
      turned: one.turned,
    })),
    cuts: inLengths(sheet.cuts, problem.scale, part),
  };
}

/** The cuts of a packing, in lengths, with what each part is by the id that the packing knows it by. */
export function inLengths(
  piece: CutPiece,
  scale: Scale,
  partOf: (id: string) => { readonly mark: string; readonly part: Part },
): CutNode {
  const { length } = scale;
  const at = { x: length(piece.x), y: length(piece.y), width: length(piece.width), height: length(piece.height) };
  const { content } = piece;
  switch (content.kind) {
    case "part":
      return { ...at, content: { kind: "part", ...partOf(content.part) } };
    case "remainder":
      return { ...at, content: { kind: "left" } };
    case "cut": {
      const pieces = content.pieces.map((one) => inLengths(one, scale, partOf));
      return { ...at, content: { kind: "cut", along: content.along, pieces } };
    }
  }
}

/** What is left of a sheet, in square feet of its own size. */
export function areaOf(piece: { readonly width: Length; readonly height: Length }): number {
  return toNumber(multiply(piece.width, piece.height)) / 144;
}
