import type { Length } from "../core/length.ts";
import { add, compare, subtract, toText } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import type { CutNode, CutPlan, PlannedSheet } from "./cut-plan.ts";
import { grainLies } from "./problems.ts";
import { type CutShape, isShort, type Shop, shopOf, standsFor, type Tool, toolFor, weightOf } from "./tools.ts";

/** One cut, or several alike at one setting. */
export interface CutStep {
  readonly number: number;
  readonly sheet: string;
  readonly tool: Tool;
  /** `rip` runs along the grain of the sheet, `crosscut` across it. */
  readonly kind: "rip" | "crosscut" | "trim";
  /** From fence, stop or edge to the blade. */
  readonly setting: Length;
  /** The piece in hand as it comes to the saw. */
  readonly width: Length;
  readonly height: Length;
  readonly pounds: number;
  /** What the cut frees: marks of parts, or the size of a piece to be cut on. */
  readonly keeps: string;
  readonly falls: string;
  readonly fallsPounds: number;
  /** Over what one person handles alone here. */
  readonly heavy: boolean;
  /** So short along the fence that no hand belongs on it. */
  readonly short: boolean;
  readonly stands: readonly string[];
  /** Whether fence or stop has to be moved for it. */
  readonly newSetting: boolean;
}

/** How a cut runs: a piece is only ever cut across at the mitre saw, whichever way its grain runs. */
export function runOf({ tool, kind }: CutStep): CutStep["kind"] {
  return tool === "mitre saw" ? "crosscut" : kind;
}

/** A cut that can be made once the piece that it is made in is free. */
interface Pending {
  readonly sheet: PlannedSheet;
  readonly node: CutNode;
  readonly frees: readonly CutNode[];
  readonly shape: CutShape;
  readonly kept: CutNode;
  readonly rest: { readonly width: Length; readonly height: Length };
  readonly tool: Tool;
  readonly trim: boolean;
  /** Cuts of one key are made at one setting of one tool. */
  readonly settingKey: string;
  readonly area: number;
}

/**
 * The cuts of a plan in an order that one person can make: what is too heavy to lift is broken down on the floor first, then
 * cuts are gathered by setting. Two ways of choosing the next setting are tried; the one that moves fence and stops less often holds.
 */
export function stepsOf(context: Context, plan: CutPlan): readonly CutStep[] {
  return stepsOn(
    context,
    plan.stocks.map(({ sheets }) => sheets),
  );
}

/** The same for pieces of which those of one stock stand together. */
export function stepsOn(context: Context, stocks: readonly (readonly PlannedSheet[])[]): readonly CutStep[] {
  const shop = shopOf(context);
  const steps: CutStep[] = [];
  for (const sheets of stocks) {
    const orders = [mostServed, largestPiece].map((choose) => orderOf(shop, sheets, choose));
    const best = orders.reduce((least, order) => (settingsIn(order) < settingsIn(least) ? order : least));
    best.forEach((cut, index) => {
      const before = best[index - 1];
      const same = before?.settingKey === cut.settingKey;
      steps.push(stepOf(shop, cut, steps.length + 1, same ? "again" : "new"));
    });
  }
  return steps;
}

type Choose = (ready: readonly Pending[]) => Pending;

function orderOf(shop: Shop, sheets: readonly PlannedSheet[], choose: Choose): readonly Pending[] {
  const order: Pending[] = [];
  // In the order in which they came free; and again by their settings, since most cuts go on at the one before.
  const ready = new Set<Pending>();
  const alike = new Map<string, Set<Pending>>();
  const free = (cuts: readonly Pending[]): void => {
    for (const cut of cuts) {
      const same = alike.get(cut.settingKey) ?? new Set();
      alike.set(cut.settingKey, same.add(cut));
      ready.add(cut);
    }
  };
  free(sheets.flatMap((sheet) => cutsOf(shop, sheet, sheet.cuts)));
  while (0 < ready.size) {
    const [again] = alike.get(order.at(-1)?.settingKey ?? "") ?? [];
    const next = again ?? nextCut([...ready], choose);
    order.push(next);
    ready.delete(next);
    alike.get(next.settingKey)?.delete(next);
    free(followers(shop, next));
  }
  return order;
}

function settingsIn(order: readonly Pending[]): number {
  return order.filter((cut, index) => index === 0 || cut.settingKey !== order[index - 1]!.settingKey).length;
}

/** Where no cut is left at the same setting: the floor before the saws, the heaviest piece first; then as chosen. */
function nextCut(ready: readonly Pending[], choose: Choose): Pending {
  const floor = ready.filter((one) => one.tool === "track saw on the floor");
  return 0 < floor.length ? largestPiece(floor) : choose(ready);
}

function largestPiece(ready: readonly Pending[]): Pending {
  return ready.reduce((most, one) => (most.area < one.area ? one : most));
}

/** The setting that serves the most cuts that can be made now; among equals the largest. */
function mostServed(ready: readonly Pending[]): Pending {
  const counts = new Map<string, number>();
  for (const one of ready) counts.set(one.settingKey, (counts.get(one.settingKey) ?? 0) + 1);
  return ready.reduce((best, one) => {
    const [most, here] = [counts.get(best.settingKey)!, counts.get(one.settingKey)!];
    if (most !== here) return most < here ? one : best;
    return compare(best.shape.setting, one.shape.setting) < 0 ? one : best;
  });
}

function settingKeyOf(tool: Tool, { along, setting }: CutShape): string {
  return `${tool} ${tool === "mitre saw" ? "" : along} ${toText(setting)}`;
}

function areaOf({ width, height }: CutShape): number {
  return Number((width.n * height.n * 1000n) / (width.d * height.d));
}

/** A node is cut into its pieces one after the other; each cut leaves the rest for the next. */
function cutsOf(shop: Shop, sheet: PlannedSheet, node: CutNode): readonly Pending[] {
  if (node.content.kind !== "cut") return [];
  const { along, pieces } = node.content;
  const [first, ...rest] = pieces;
  if (first === undefined) return [];
  return [pendingFor(shop, sheet, node, along, first, rest)];
}

function pendingFor(
  shop: Shop,
  sheet: PlannedSheet,
  node: CutNode,
  along: "x" | "y",
  kept: CutNode,
  rest: readonly CutNode[],
): Pending {
  const setting = along === "x" ? kept.width : kept.height;
  const shape: CutShape = { width: node.width, height: node.height, along, setting };
  const left = restOf(node, along, kept, rest);
  const isLast = rest.length === 0;
  const tool = toolFor(shop, sheet.stock, shape);
  return {
    sheet,
    node,
    frees: isLast ? [kept] : [kept, left.node],
    shape,
    kept,
    rest: left,
    tool,
    trim: isLast,
    settingKey: settingKeyOf(tool, shape),
    area: areaOf(shape),
  };
}

/** What is left of a node when its first piece is off: the pieces that follow, still together. */
function restOf(node: CutNode, along: "x" | "y", kept: CutNode, rest: readonly CutNode[]) {
  const next = rest[0];
  const [width, height] =
    along === "x"
      ? [next === undefined ? subtract(node.width, kept.width) : subtract(add(node.x, node.width), next.x), node.height]
      : [
          node.width,
          next === undefined ? subtract(node.height, kept.height) : subtract(add(node.y, node.height), next.y),
        ];
  const remaining: CutNode = {
    x: next?.x ?? node.x,
    y: next?.y ?? node.y,
    width,
    height,
    content: rest.length === 1 && fills(next!, width, height) ? next!.content : { kind: "cut", along, pieces: rest },
  };
  return { width, height, node: remaining };
}

function fills(piece: CutNode, width: Length, height: Length): boolean {
  return compare(piece.width, width) === 0 && compare(piece.height, height) === 0;
}

function followers(shop: Shop, cut: Pending): readonly Pending[] {
  return cut.frees.flatMap((node) => cutsOf(shop, cut.sheet, node));
}

function stepOf(shop: Shop, cut: Pending, number: number, setting: "new" | "again"): CutStep {
  const { shape, sheet, kept, rest } = cut;
  const pounds = weightOf(shop, sheet.stock, shape.width, shape.height);
  return {
    number,
    sheet: sheet.name,
    tool: cut.tool,
    kind: (shape.along === "x") !== grainLies(sheet.stock) ? "rip" : "crosscut",
    setting: shape.setting,
    width: shape.width,
    height: shape.height,
    pounds,
    keeps: holds(kept),
    falls: cut.frees.length === 2 ? holds(cut.frees[1]!) : "waste",
    fallsPounds: weightOf(shop, sheet.stock, rest.width, rest.height),
    heavy: shop.lift < pounds,
    short: isShort(cut.tool, shape),
    stands: cut.tool === "table saw" ? standsFor(shop, shape) : [],
    newSetting: setting === "new",
  };
}

/** What a piece holds: a part's mark, the parts still in it, or nothing. */
function holds(node: CutNode): string {
  switch (node.content.kind) {
    case "part":
      return node.content.mark;
    case "left":
      return "left over";
    case "cut": {
      const marks = marksIn(node);
      return marks.length === 0 ? "left over" : `piece with ${marks.join(" ")}`;
    }
  }
}

function marksIn(node: CutNode): readonly string[] {
  if (node.content.kind === "part") return [node.content.mark];
  if (node.content.kind === "left") return [];
  return [...new Set(node.content.pieces.flatMap(marksIn))];
}
