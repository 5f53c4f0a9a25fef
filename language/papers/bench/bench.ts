import type { BenchPart, BenchSection } from "../../view/bench.ts";
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
}

/** The parts asked for, each made from the same data as the papers. Plan and buying are empty without a plan on the desk. */
export function benchSections(desk: PaperDesk, { parts, sheet }: BenchOrder): readonly BenchSection[] {
  return parts.map((part) => sectionOf(desk, part, sheet));
}

function sectionOf(desk: PaperDesk, part: BenchPart, sheet: string | undefined): BenchSection {
  switch (part) {
    case "plan":
      return planPart(desk, sheet);
    case "buying":
      return buyingPart(desk);
    case "settings":
      return settingsPart(desk);
    case "sticks":
      return sticksPart(desk);
    case "fit":
      return fitPart(desk);
  }
}
