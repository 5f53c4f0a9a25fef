/**
 * A checker of cutting plans that shares no code with the packer. It reads only the problem and the plan, and tests the
 * placements and the tree of cuts separately, so that neither can vouch for the other.
 */
import type { BarPlan, BarProblem } from "../../language/plan/pack/bar-problem.ts";
import type {
  CutPiece,
  Placement,
  SheetPart,
  SheetPlan,
  SheetProblem,
  UsedSheet,
} from "../../language/plan/pack/problem.ts";

/** Everything wrong with a plan, one sentence each; an empty list means that the plan can be cut. */
export function checkSheetPlan(problem: SheetProblem, plan: SheetPlan): string[] {
  const wrong: string[] = [];
  plan.sheets.forEach((sheet, at) => {
    for (const fault of checkSheet(problem, sheet)) wrong.push(`sheet ${at + 1}: ${fault}`);
  });
  checkCounts(problem, plan, wrong);
  checkStock(problem, plan, wrong);
  checkTotals(problem, plan, wrong);
  checkRows(problem, plan, wrong);
  return wrong;
}

/** Everything wrong with one sheet: places, clearances, sizes, and both proofs that a saw can cut it. */
export function checkSheet(problem: SheetProblem, sheet: UsedSheet): string[] {
  const wrong: string[] = [];
  const stock = problem.sheets.find((one) => one.id === sheet.stock);
  if (stock === undefined) return [`no stock is called ${sheet.stock}`];
  if (stock.width !== sheet.width || stock.height !== sheet.height) wrong.push("the sheet is not of its stock's size");
  const edge = stock.offcut === true ? 0 : problem.trim;
  const inside = { x: edge, y: edge, width: stock.width - 2 * edge, height: stock.height - 2 * edge };
  for (const piece of sheet.placed) {
    if (!within(piece, inside)) wrong.push(`${piece.part} lies outside the sheet`);
    checkSize(problem, piece, wrong);
  }
  sheet.placed.forEach((a, at) => {
    for (const b of sheet.placed.slice(at + 1)) {
      if (!apart(a, b, problem.kerf)) wrong.push(`${a.part} and ${b.part} overlap or leave no room for the blade`);
    }
  });
  if (!cutsApart(sheet.placed, problem.kerf)) wrong.push("no straight cuts through the whole piece can free all parts");
  if (!sameBox(sheet.cuts, inside)) wrong.push("the tree of cuts does not begin with the trimmed sheet");
  const leaves: Placement[] = [];
  checkCuts(sheet.cuts, problem.kerf, leaves, wrong);
  const told = sheet.placed.map(textOf).sort().join("\n");
  if (leaves.map(textOf).sort().join("\n") !== told) wrong.push("the tree of cuts does not give the parts placed");
  return wrong;
}

type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

function within(inner: Box, outer: Box): boolean {
  if (inner.x < outer.x || inner.y < outer.y) return false;
  return inner.x + inner.width <= outer.x + outer.width && inner.y + inner.height <= outer.y + outer.height;
}

function sameBox(a: Box, b: Box): boolean {
  return a.x === b.x && a.y === b.y && a.width === b.width && a.height === b.height;
}

function textOf({ part, x, y, width, height, turned }: Placement): string {
  return [part, x, y, width, height, turned].join(" ");
}

function apart(a: Box, b: Box, kerf: number): boolean {
  if (a.x + a.width + kerf <= b.x || b.x + b.width + kerf <= a.x) return true;
  return a.y + a.height + kerf <= b.y || b.y + b.height + kerf <= a.y;
}

function checkSize(problem: SheetProblem, piece: Placement, wrong: string[]): void {
  const part = problem.parts.find((one) => one.id === piece.part);
  if (part === undefined) {
    wrong.push(`no part is called ${piece.part}`);
    return;
  }
  if (piece.turned && part.turn === "fixed") wrong.push(`${piece.part} is turned against its grain`);
  const width = piece.turned ? part.height : part.width;
  const height = piece.turned ? part.width : part.height;
  if (piece.width !== width || piece.height !== height) wrong.push(`${piece.part} is not of its size`);
}

/** Looks for a line clear of all parts by half a kerf on either side, and does the same with what lies on each side. */
function cutsApart(placed: readonly Box[], kerf: number): boolean {
  if (placed.length < 2) return true;
  for (const along of ["x", "y"] as const) {
    const start = (box: Box): number => (along === "x" ? box.x : box.y);
    const end = (box: Box): number => (along === "x" ? box.x + box.width : box.y + box.height);
    const sorted = placed.slice().sort((a, b) => start(a) - start(b));
    const groups: Box[][] = [];
    let reach = Number.NEGATIVE_INFINITY;
    for (const box of sorted) {
      if (groups.length === 0 || reach + kerf <= start(box)) groups.push([]);
      groups[groups.length - 1]!.push(box);
      reach = Math.max(reach, end(box));
    }
    if (1 < groups.length) return groups.every((group) => cutsApart(group, kerf));
  }
  return false;
}

/** Pieces of a cut follow each other one kerf apart across the whole piece; only less than a kerf may be lost at the end. */
function checkCuts(piece: CutPiece, kerf: number, leaves: Placement[], wrong: string[]): void {
  const { x, y, width, height, content } = piece;
  if (!(0 < width) || !(0 < height)) wrong.push(`a piece at ${x}, ${y} has no size`);
  if (content.kind === "part") leaves.push({ part: content.part, x, y, width, height, turned: content.turned });
  if (content.kind !== "cut") return;
  const sideways = content.along === "x";
  let next = sideways ? x : y;
  for (const inner of content.pieces) {
    const start = sideways ? inner.x : inner.y;
    const across = sideways ? inner.y === y && inner.height === height : inner.x === x && inner.width === width;
    if (start !== next || !across) wrong.push(`the piece at ${inner.x}, ${inner.y} is not what the cut leaves`);
    next = start + (sideways ? inner.width : inner.height) + kerf;
    checkCuts(inner, kerf, leaves, wrong);
  }
  const over = (sideways ? x + width : y + height) - (next - kerf);
  if (over < 0 || kerf < over) wrong.push(`the pieces cut at ${x}, ${y} do not add up`);
  if (content.pieces.length === 0) wrong.push(`a cut at ${x}, ${y} gives nothing`);
}

function checkCounts(problem: SheetProblem, plan: SheetPlan, wrong: string[]): void {
  for (const part of problem.parts) {
    if (!Number.isInteger(part.quantity) || part.quantity < 0) continue;
    const placed = plan.sheets.flatMap((sheet) => sheet.placed).filter((one) => one.part === part.id).length;
    const missing = plan.unplaced.filter((one) => one.part === part.id).reduce((sum, one) => sum + one.quantity, 0);
    if (placed + missing !== part.quantity)
      wrong.push(`${part.id}: ${placed} placed, ${missing} not, ${part.quantity} wanted`);
  }
}

function checkStock(problem: SheetProblem, plan: SheetPlan, wrong: string[]): void {
  for (const stock of problem.sheets) {
    const used = plan.sheets.filter((sheet) => sheet.stock === stock.id).length;
    const have = stock.have ?? (stock.offcut === true ? 1 : Number.POSITIVE_INFINITY);
    if (have < used) wrong.push(`${used} of ${stock.id} used, ${have} there`);
  }
}

function checkTotals(problem: SheetProblem, plan: SheetPlan, wrong: string[]): void {
  const fresh = plan.sheets.filter((sheet) => problem.sheets.find((one) => one.id === sheet.stock)?.offcut !== true);
  const cost = fresh.reduce((sum, sheet) => sum + (problem.sheets.find((one) => one.id === sheet.stock)?.cost ?? 0), 0);
  if (plan.sheetsUsed !== fresh.length) wrong.push(`${fresh.length} new sheets used, ${plan.sheetsUsed} said`);
  if (plan.offcutsUsed !== plan.sheets.length - fresh.length) wrong.push("the offcuts used are miscounted");
  if (1e-9 * (1 + cost) < Math.abs(plan.cost - cost)) wrong.push(`the sheets cost ${cost}, ${plan.cost} said`);
  const allPlaced = plan.unplaced.every((one) => one.why !== "no stock left");
  if (allPlaced && plan.sheetsUsed < plan.lowerBound)
    wrong.push("fewer sheets than the lower bound: the bound is false");
  if (allPlaced && plan.cost < plan.costBound * (1 - 1e-9))
    wrong.push("cheaper than the lower bound: the bound is false");
  if (plan.sheets.some((sheet) => sheet.placed.length === 0)) wrong.push("a sheet is used for nothing");
}

/** A matched row lies on one sheet, in its order, one kerf apart, along its direction (or the other one if all turned). */
function checkRows(problem: SheetProblem, plan: SheetPlan, wrong: string[]): void {
  const groups = new Set(problem.parts.flatMap((part) => (part.group === undefined ? [] : [part.group])));
  for (const group of groups) {
    const members = problem.parts.filter((part) => part.group === group);
    const ids = new Set(members.map((part) => part.id));
    const sheets = plan.sheets.filter((sheet) => sheet.placed.some((one) => ids.has(one.part)));
    if (1 < sheets.length) wrong.push(`row ${group} is spread over ${sheets.length} sheets`);
    const placed = sheets[0]?.placed.filter((one) => ids.has(one.part)) ?? [];
    if (0 < placed.length && sheets.length === 1) checkRow(problem, group, members, placed, wrong);
  }
}

function checkRow(
  problem: SheetProblem,
  group: string,
  members: readonly SheetPart[],
  placed: readonly Placement[],
  wrong: string[],
): void {
  const stated = problem.rows?.find((row) => row.id === group)?.along ?? "x";
  const turned = placed[0]!.turned;
  if (placed.some((one) => one.turned !== turned)) wrong.push(`row ${group} is turned in part`);
  const sideways = (stated === "x") !== turned;
  const row = placed.slice().sort((a, b) => (sideways ? a.x - b.x : a.y - b.y));
  const wanted = members.flatMap((part) => Array.from({ length: part.quantity }, () => part.id));
  if (row.map((one) => one.part).join() !== wanted.join()) wrong.push(`row ${group} is not in its order`);
  for (let at = 1; at < row.length; at++) {
    const before = row[at - 1]!;
    const here = row[at]!;
    const gap = sideways ? here.x - before.x - before.width : here.y - before.y - before.height;
    const level = sideways ? here.y === before.y : here.x === before.x;
    if (gap !== problem.kerf || !level) wrong.push(`row ${group} is not cut from one strip`);
  }
}

/** Everything wrong with a plan for bars: places, blade, counts, stock and sums. */
export function checkBarPlan(problem: BarProblem, plan: BarPlan): string[] {
  const wrong: string[] = [];
  plan.bars.forEach((bar, number) => {
    const stock = problem.stock.find((one) => one.id === bar.stock);
    if (stock === undefined || stock.length !== bar.length) wrong.push(`bar ${number + 1} is not of its stock`);
    const pieces = bar.pieces.slice().sort((a, b) => a.at - b.at);
    let free = problem.trim;
    for (const piece of pieces) {
      if (piece.at < free) wrong.push(`bar ${number + 1}: ${piece.part} overlaps or leaves no room for the blade`);
      if (piece.length !== problem.parts.find((one) => one.id === piece.part)?.length)
        wrong.push(`${piece.part} is not of its length`);
      free = piece.at + piece.length + problem.kerf;
      if (bar.length - problem.trim < piece.at + piece.length)
        wrong.push(`bar ${number + 1}: ${piece.part} is past its end`);
    }
    if (pieces.length === 0) wrong.push(`bar ${number + 1} is used for nothing`);
  });
  for (const part of problem.parts) {
    if (!Number.isInteger(part.quantity) || part.quantity < 0) continue;
    const placed = plan.bars.flatMap((bar) => bar.pieces).filter((one) => one.part === part.id).length;
    const missing = plan.unplaced.filter((one) => one.part === part.id).reduce((sum, one) => sum + one.quantity, 0);
    if (placed + missing !== part.quantity)
      wrong.push(`${part.id}: ${placed} placed, ${missing} not, ${part.quantity} wanted`);
  }
  for (const stock of problem.stock) {
    const used = plan.bars.filter((bar) => bar.stock === stock.id).length;
    if ((stock.have ?? Number.POSITIVE_INFINITY) < used) wrong.push(`${used} of ${stock.id} used, ${stock.have} there`);
  }
  const cost = plan.bars.reduce((sum, bar) => sum + (problem.stock.find((one) => one.id === bar.stock)?.cost ?? 0), 0);
  if (1e-9 * (1 + cost) < Math.abs(cost - plan.cost)) wrong.push(`the bars cost ${cost}, ${plan.cost} said`);
  if (plan.barsUsed !== plan.bars.length) wrong.push(`${plan.bars.length} bars used, ${plan.barsUsed} said`);
  if (plan.barsUsed < plan.lowerBound || plan.cost < plan.costBound * (1 - 1e-9))
    wrong.push("the lower bound is false");
  return wrong;
}
