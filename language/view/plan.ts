import { titleOf } from "../core/file-name.ts";
import type { Length } from "../core/length.ts";
import { exactText, showText, toMillimetres, withUnit } from "../core/length.ts";
import { isPositive, toNumber, toText, zero } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import { sayWeight } from "../fit/check.ts";
import type { CutNode, CutPlan, PlannedSheet, StockPlan } from "../plan/cut-plan.ts";
import type { KeptOffcut } from "../plan/keep.ts";
import { keptOffcuts, newOffcuts } from "../plan/keep.ts";
import { trimOf } from "../plan/problems.ts";
import type { CutStep } from "../plan/steps.ts";
import { runOf, stepsOf } from "../plan/steps.ts";
import { shopOf } from "../plan/tools.ts";
import { cautions, cautionsFor } from "../published/safety.ts";
import type { ListSize, PlanCut, PlanDocument, PlanSheet, PlanStep, PlanStock } from "./types.ts";
import { wrap } from "./wrap.ts";

/** The cutting plan for programs. */
export function planDocument(context: Context, plan: CutPlan): PlanDocument {
  const of = (kind: "sheet" | "board") => plan.stocks.filter((one) => one.stock.kind === kind);
  const sheets = of("sheet");
  const steps = stepsOf(context, plan);
  return {
    schema: "scantling/plan/1",
    project: titleOf(context.design),
    units: context.units,
    sheets: sheets.flatMap((one) => one.sheets.map((sheet) => planSheet(context, sheet))),
    boards: of("board").flatMap((one) => one.sheets.map((sheet) => planSheet(context, sheet))),
    sheetsUsed: sheets.reduce((sum, one) => sum + one.used, 0),
    lowerBound: sheets.reduce((sum, one) => sum + one.lowerBound, 0),
    proven: sheets.every((one) => one.proven),
    stocks: plan.stocks.map((one) => planStock(context, one)),
    unsized: plan.unsized,
    steps: steps.map((step) => planStep(context, step)),
    keep: newOffcuts(context, plan).map((one) => one.line),
    cautions: cautionTexts(steps),
  };
}

function planStock(context: Context, one: StockPlan): PlanStock {
  return {
    stock: one.stock.name,
    kind: one.stock.kind === "board" ? "board" : "sheet",
    used: one.used,
    lowerBound: one.lowerBound,
    proven: one.proven,
    inRack: one.inRack,
    buy: Math.max(0, one.used - one.inRack),
    ...(one.cost === undefined ? {} : { cost: Math.round(one.cost * 100) / 100 }),
    unplaced: one.unplaced.map((left) => ({
      mark: left.mark,
      part: `${left.part.name} · ${left.part.of}`,
      quantity: left.quantity,
      length: showText(left.part.length.value, context.reading),
      width: showText(left.part.width.value, context.reading),
      why: left.why,
    })),
  };
}

function planSheet(context: Context, sheet: PlannedSheet): PlanSheet {
  return {
    name: sheet.name,
    stock: sheet.stock.name,
    offcut: sheet.offcut,
    width: toNumber(sheet.width),
    height: toNumber(sheet.height),
    placed: sheet.placed.map((one) => ({
      part: one.part.id,
      mark: one.mark,
      x: tidy(one.x),
      y: tidy(one.y),
      width: tidy(one.width),
      height: tidy(one.height),
      turned: one.turned,
    })),
    cuts: cutsOf(context, sheet.cuts),
  };
}

function cutsOf(context: Context, node: CutNode): readonly PlanCut[] {
  return node.content.kind === "cut"
    ? node.content.pieces.map((piece) =>
        planCut(context, piece, node.content.kind === "cut" ? node.content.along : "x"),
      )
    : [];
}

function planCut(context: Context, piece: CutNode, along: "x" | "y"): PlanCut {
  return {
    along,
    at: sizeOf(context, along === "x" ? piece.width : piece.height),
    gives: piece.content.kind === "part" ? piece.content.mark : piece.content.kind === "left" ? "left over" : "piece",
    cuts: cutsOf(context, piece),
  };
}

function planStep(context: Context, step: CutStep): PlanStep {
  return {
    number: step.number,
    sheet: step.sheet,
    tool: step.tool,
    kind: step.kind,
    setting: sizeOf(context, step.setting),
    newSetting: step.newSetting,
    from: { width: sizeOf(context, step.width), height: sizeOf(context, step.height), pounds: round(step.pounds) },
    keeps: step.keeps,
    falls: step.falls,
    fallsPounds: round(step.fallsPounds),
    heavy: step.heavy,
    short: step.short,
    stands: step.stands,
  };
}

function sizeOf(context: Context, length: Length): ListSize {
  return {
    exact: toText(length),
    inches: tidy(length),
    mm: round(toNumber(toMillimetres(length)), 4),
    shop: showText(length, context.reading),
  };
}

function tidy(length: Length): number {
  return round(toNumber(length), 8);
}

function round(value: number, places = 1): number {
  const scale = 10 ** places;
  return Math.round(value * scale) / scale;
}

/** The usual cautions for these cuts; none where nothing is cut. */
export function cautionTexts(steps: readonly CutStep[]): readonly string[] {
  if (steps.length === 0) return [];
  const short = steps.some((step) => step.short) ? cautions.filter(({ id }) => id === "small-stock") : [];
  return [...cautionsFor("table saw"), ...short, ...cautionsFor("lifting")].map((caution) => caution.text);
}

/** The cutting plan for a terminal: never wider than 80 columns. */
export function planText(context: Context, plan: CutPlan): string {
  const lines = [...wrap(`Cutting plan: ${titleOf(context.design)}`, 80), ""];
  for (const one of plan.stocks) lines.push(...stockLines(context, one), "");
  for (const name of plan.unsized)
    lines.push(
      ...wrap(
        `${name}: its size is not stated, so it cannot be laid out. Write size 48 x 96, or wide and long for boards.`,
        80,
      ),
      "",
    );
  const steps = stepsOf(context, plan);
  const trimmed = trimWords(context, plan).flatMap(indented);
  if (0 < steps.length)
    lines.push("Cuts, in order", ...trimmed, ...steps.flatMap((step) => stepLines(context, step)), "");
  const keep = keptOffcuts(context, plan);
  if (0 < keep.length) lines.push("Worth keeping", ...keep.flatMap((one: KeptOffcut) => indented(keptText(one))), "");
  if (steps.length === 0) {
    if (plan.stocks.length === 0 && plan.unsized.length === 0) lines.push("Nothing is cut from sheets or boards.");
    return `${lines.join("\n").trimEnd()}\n`;
  }
  const shop = shopOf(context);
  const limit = shop.liftStated
    ? `${sayWeight(context, shop.lift)}, as stated`
    : `${sayWeight(context, shop.lift)}, the load constant of the lifting equation`;
  lines.push(
    ...wrap(`Marked heavy: over ${limit}.`, 80),
    "",
    "Cautions",
    ...cautionTexts(steps).flatMap((text) => indented(`– ${text}`)),
  );
  return `${lines.join("\n").trimEnd()}\n`;
}

/** What comes before the first of the cuts: the trimming of new sheets, where they are trimmed, and a look at the boards. */
export function trimWords(context: Context, plan: CutPlan): readonly string[] {
  const fresh = plan.stocks.find(({ stock, sheets }) => stock.kind === "sheet" && sheets.some(({ offcut }) => !offcut));
  const trim = fresh === undefined ? zero : trimOf(context, fresh.stock);
  const hasBoards = plan.stocks.some(({ stock, sheets }) => stock.kind === "board" && 0 < sheets.length);
  const size = withUnit(trim, context.units);
  return [
    ...(isPositive(trim)
      ? [
          `First trim ${size} off each edge of a new sheet: all settings are from trimmed edges, or from those of an offcut.`,
        ]
      : []),
    ...(hasBoards
      ? [
          "Boards are laid out over their full length and width, with nothing off for checked ends, knots or a crooked edge: see what is good of each before its first cut.",
        ]
      : []),
  ];
}

/** Why a part has no place: a sheet that it would just fit may be too small once its edges are off. */
export function whyUnplaced(context: Context, { stock }: StockPlan, { why }: StockPlan["unplaced"][number]): string {
  if (why !== "larger than every sheet") return why;
  if (stock.kind === "board") return "larger than every board";
  return isPositive(trimOf(context, stock)) ? "larger than every sheet once its edges are trimmed" : why;
}

/** What holds a short piece at the saw in place of a hand. */
export function holdWords({ tool }: CutStep): string {
  return tool === "mitre saw" ? "clamp it to fence or table" : "clamp it in a sled, or cut it by hand";
}

/** Whether fewer would do, as the end of a sentence; nothing of nothing that is cut. */
export function proofWords({ stock, sheets, used, lowerBound, proven, leastCost }: StockPlan): string {
  if (sheets.length === 0) return "";
  // Of several sizes, so many may be needed, and cheaper or smaller ones do: what counts of boards is what they cost.
  if (!proven && (used <= lowerBound || (stock.kind === "board" && leastCost !== undefined)))
    return leastCost === undefined
      ? "; no fewer is possible, but smaller ones might do"
      : `; not proven, at least ${(Math.floor(100 * leastCost + 1e-6) / 100).toFixed(2)} is to pay`;
  if (!proven) return `; not proven, at least ${lowerBound} ${lowerBound === 1 ? "is" : "are"} needed`;
  // A plan may be the cheapest of several sizes of sheet and still not the one of fewest.
  return stock.kind === "sheet" && used <= lowerBound ? "; no fewer is possible" : "; no cheaper purchase is possible";
}

/** What new sheets or boards cost together, as the end of a sentence; nothing where that is not known. */
export function costWords({ cost }: StockPlan): string {
  return cost === undefined || cost === 0 ? "" : `; ${cost.toFixed(2)} in all`;
}

function stockLines(context: Context, one: StockPlan): readonly string[] {
  const noun = one.stock.kind === "board" ? "board" : "sheet";
  const count = `${one.used} ${noun}${one.used === 1 ? "" : "s"}`;
  const rack = one.inRack === 0 ? "" : `; ${one.inRack} in the rack, ${Math.max(0, one.used - one.inRack)} to buy`;
  const head = wrap(`${one.stock.name}: ${count}${proofWords(one)}${rack}${costWords(one)}`, 80);
  const sheets = one.sheets.flatMap((sheet) => {
    const marks = new Map<string, number>();
    for (const placed of sheet.placed) marks.set(placed.mark, (marks.get(placed.mark) ?? 0) + 1);
    const parts = [...marks].map(([mark, number]) => (number === 1 ? mark : `${number} × ${mark}`)).join(", ");
    return indented(
      `${sheet.name}, ${exactText(sheet.width, context.units)} × ${exactText(sheet.height, context.units)}: ${parts}`,
    );
  });
  const glued = new Map(
    one.sheets.flatMap((sheet) =>
      sheet.placed.filter((placed) => 1 < placed.staves).map((placed) => [placed.mark, placed] as const),
    ),
  );
  const staves = [...glued.values()].flatMap((placed) =>
    indented(
      `${placed.mark}: glued up from ${placed.staves}, each cut ${showText(placed.width, context.reading)} wide before jointing`,
    ),
  );
  const left = one.unplaced.flatMap((part) =>
    indented(
      `not placed: ${part.quantity} × ${part.mark} (${part.part.name} · ${part.part.of}): ${whyUnplaced(context, one, part)}`,
    ),
  );
  return [...head, ...sheets, ...staves, ...left];
}

function stepLines(context: Context, step: CutStep): readonly string[] {
  const size = `${showText(step.width, context.reading)} × ${showText(step.height, context.reading)}`;
  const set = step.newSetting
    ? `set ${showText(step.setting, context.reading)}`
    : `again ${showText(step.setting, context.reading)}`;
  const heavy = step.heavy ? ` HEAVY ${sayWeight(context, step.pounds)}.` : "";
  const stands = step.stands.map((stand) => ` Stand ${stand}.`).join("");
  const short = step.short ? ` SHORT: ${holdWords(step)}.` : "";
  return indented(
    `${step.number}. ${step.tool}, ${runOf(step)}, ${set}: ${step.sheet}, piece ${size}: keep ${step.keeps}; falls ${step.falls}.${heavy}${short}${stands}`,
  );
}

/** What is left of an offcut takes its place; beside it the same wood would be there twice. */
function keptText({ text, sheet, isOfOffcut }: KeptOffcut): string {
  return isOfOffcut ? `${text}: what is left of ${sheet}, to be written in its place once that is cut` : text;
}

function indented(text: string): readonly string[] {
  return wrap(text, 76).map((line, index) => (index === 0 ? `  ${line}` : `    ${line}`));
}
