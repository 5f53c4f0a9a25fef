import { showText } from "../core/length.ts";
import { sheetPlanDrawing } from "../draw/sheet-plan.ts";
import type { CutStep } from "../plan/steps.ts";
import { runOf, stepsOf } from "../plan/steps.ts";
import { costWords, holdWords, proofWords, trimWords, whyUnplaced } from "../view/plan.ts";
import type { PaperDesk } from "./desk.ts";
import type { Section } from "./flow.ts";
import type { Piece } from "./page.ts";
import { figures, heading, paragraph, tickLine } from "./pieces.ts";

/** How sheets and boards are cut up, drawn, and the cuts in the order in which they are made. */
export function planSection(desk: PaperDesk, wide: number): Section {
  const { plan } = desk;
  if (plan === undefined) return { title: "Cutting plan", begins: "behind", pieces: [] };
  const drawings = plan.stocks.flatMap((stock) => stock.sheets.flatMap((sheet) => sheetPlanDrawing(desk, sheet) ?? []));
  const steps = stepsOf(desk.context, plan);
  return {
    title: "Cutting plan",
    begins: "new page",
    pieces: [
      heading("Cutting plan", wide),
      ...[...verdicts(desk), ...unplacedWords(desk)].map((words) => paragraph(words, wide)),
      ...figures(drawings, wide),
      ...(steps.length === 0 ? [] : [heading("Cuts, in order", wide)]),
      ...trimWords(desk.context, plan).map((words) => paragraph(words, wide)),
      ...steps.map((step) => stepLine(desk, step, wide)),
    ],
  };
}

/** How many of each stock are cut up and whether fewer would do, a sentence for each. */
export function verdicts({ plan }: PaperDesk): readonly string[] {
  return (plan?.stocks ?? []).map((stock) => {
    const kind = stock.stock.kind === "board" ? "board" : "sheet";
    const rack = stock.inRack === 0 ? "" : `; ${Math.min(stock.used, stock.inRack)} of them in the rack`;
    return `${stock.stock.name}: ${stock.used} ${kind}${stock.used === 1 ? "" : "s"}${rack}${proofWords(stock)}${costWords(stock)}.`;
  });
}

/** What has no place in the plan, and why, a sentence for each. */
export function unplacedWords({ plan, context }: PaperDesk): readonly string[] {
  const left =
    plan?.stocks.flatMap((stock) => stock.unplaced.map((one) => ({ ...one, why: whyUnplaced(context, stock, one) }))) ??
    [];
  const sizes = plan?.unsized ?? [];
  return [
    ...left.map((one) => `No place for ${one.quantity} of ${one.mark}, ${one.part.name}: ${one.why}.`),
    ...sizes.map((name) => `${name} has no plan: the size that it is sold in is not stated.`),
  ];
}

function stepLine(desk: PaperDesk, step: CutStep, wide: number): Piece {
  return tickLine(String(step.number), stepWords(desk, step), wide, "cuts");
}

/** A cut as it is said to the one who makes it. */
export function stepWords({ context: { reading } }: PaperDesk, step: CutStep): string {
  const set = `${step.newSetting ? "set" : "as set,"} ${showText(step.setting, reading)}`;
  const heavy = step.heavy ? " More than one person lifts alone here: get help, or cut it on the floor." : "";
  const stands = step.stands.length === 0 ? "" : ` Stand: ${step.stands.join("; ")}.`;
  const short = step.short ? ` Short: ${holdWords(step)}.` : "";
  const size = `${showText(step.width, reading)} × ${showText(step.height, reading)}`;
  return `${step.sheet}, ${size}, ${step.tool}: ${runOf(step)}, ${set}. Keeps ${step.keeps}; falls off: ${step.falls}.${stands}${short}${heavy}`;
}
