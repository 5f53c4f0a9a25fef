import { showText } from "../core/length.ts";
import { sheetPlanDrawing } from "../draw/sheet-plan.ts";
import type { CutStep } from "../plan/steps.ts";
import { stepsOf } from "../plan/steps.ts";
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
      ...plan.stocks.map((stock) => {
        const kind = stock.stock.kind === "board" ? "board" : "sheet";
        const bound = stock.proven ? "no fewer is possible" : `at least ${stock.lowerBound} are needed`;
        return paragraph(`${stock.stock.name}: ${stock.used} ${kind}${stock.used === 1 ? "" : "s"}; ${bound}.`, wide);
      }),
      ...unplaced(desk, wide),
      ...figures(drawings, wide),
      ...(steps.length === 0 ? [] : [heading("Cuts, in order", wide)]),
      ...steps.map((step) => stepLine(desk, step, wide)),
    ],
  };
}

function unplaced(desk: PaperDesk, wide: number): readonly Piece[] {
  const left = desk.plan?.stocks.flatMap((stock) => stock.unplaced) ?? [];
  const sizes = desk.plan?.unsized ?? [];
  return [
    ...left.map((one) => paragraph(`No place for ${one.quantity} of ${one.mark}, ${one.part.name}: ${one.why}`, wide)),
    ...sizes.map((name) => paragraph(`${name} has no plan: the size that it is sold in is not stated.`, wide)),
  ];
}

function stepLine(desk: PaperDesk, step: CutStep, wide: number): Piece {
  const { reading } = desk.context;
  const set = `${step.newSetting ? "set" : "as set,"} ${showText(step.setting, reading)}`;
  const heavy = step.heavy ? " More than one person lifts alone here: get help, or cut it on the floor." : "";
  const stands = step.stands.length === 0 ? "" : ` Stand: ${step.stands.join("; ")}.`;
  const words = `${step.sheet}, ${step.tool}: ${step.kind}, ${set}. Keeps ${step.keeps}; falls off: ${step.falls}.${stands}${heavy}`;
  return tickLine(String(step.number), words, wide, "cuts");
}
