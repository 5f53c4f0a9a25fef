import { drawingView } from "../../draw/drawing-view.ts";
import { sheetPlanDrawing } from "../../draw/sheet-plan.ts";
import { newOffcuts } from "../../plan/keep.ts";
import { stepsOf } from "../../plan/steps.ts";
import type { BenchSection } from "../../view/bench.ts";
import { cautionTexts, trimWords } from "../../view/plan.ts";
import type { PaperDesk } from "../desk.ts";
import { stepWords, unplacedWords, verdicts } from "../plan-section.ts";
import { section } from "./section.ts";

/** How the stock is cut up: what is proven of it, each sheet drawn, the cuts in order, and what is worth keeping. */
export function planPart(desk: PaperDesk, wanted: string | undefined): BenchSection {
  const { plan, context } = desk;
  if (plan === undefined) return section("plan", {});
  const sheets = plan.stocks.flatMap((stock) => stock.sheets);
  const named = sheets.map((sheet) => ({ sheet, drawing: sheetPlanDrawing(desk, sheet) }));
  const drawings = named.flatMap(({ drawing }) => drawing ?? []);
  const steps = stepsOf(context, plan);
  const chosen = drawings.find(({ id }) => id === wanted) ?? drawings[0];
  return section("plan", {
    notes: [...verdicts(desk), ...unplacedWords(desk), ...trimWords(context, plan)],
    plan: {
      titles: drawings.map(({ id, title, scale }) => ({ id, title, scale })),
      drawing: chosen === undefined ? null : drawingView(chosen),
      steps: steps.map((step) => ({
        number: step.number,
        text: stepWords(desk, step),
        heavy: step.heavy,
      })),
      keep: newOffcuts(context, plan).map(({ text }) => text),
    },
    cautions: cautionTexts(steps),
  });
}
