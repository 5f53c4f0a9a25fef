import type { BenchPart, BenchSection } from "../../view/bench.ts";
import type { Left } from "../../view/left.ts";
import type { PaperDesk } from "../desk.ts";
import { buyingPart } from "./buying.ts";
import { fitPart } from "./fit.ts";
import { planPart } from "./plan.ts";
import { settingsPart } from "./settings.ts";
import { sticksPart } from "./sticks.ts";

/** What is wanted of the bench's papers on the rod. */
export interface BenchOrder {
  readonly parts: readonly BenchPart[];
  /** The drawing of the cutting plan that is looked at, by its id. */
  readonly sheet: string | undefined;
  /** What is left to cut, where the desk's plan is of that alone. */
  readonly left: Pick<Left, "pieces" | "model"> | undefined;
}

/** The parts asked for, each made from the same data as the papers. Plan and buying are empty without a plan on the desk. */
export function benchSections(desk: PaperDesk, order: BenchOrder): readonly BenchSection[] {
  return order.parts.map((part) => sectionOf(desk, part, order));
}

function sectionOf(desk: PaperDesk, part: BenchPart, { sheet, left }: BenchOrder): BenchSection {
  switch (part) {
    case "plan":
      return ofLeft(planPart(desk, sheet), left);
    case "buying":
      return ofLeft(buyingPart(left === undefined ? desk : { ...desk, model: left.model }), left);
    case "settings":
      return settingsPart(desk);
    case "sticks":
      return sticksPart(desk);
    case "fit":
      return fitPart(desk);
  }
}

/** Says first that it is not of the whole job. */
function ofLeft(section: BenchSection, left: BenchOrder["left"]): BenchSection {
  if (left === undefined) return section;
  const { pieces } = left;
  const words =
    pieces === 0
      ? "Everything is cut: nothing is left to plan."
      : `For what is left to cut: ${pieces} ${pieces === 1 ? "piece" : "pieces"}.`;
  return { ...section, notes: [words, ...section.notes] };
}
