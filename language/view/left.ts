import type { Benched } from "../ascut/findings/index.ts";
import { leftBatches, leftModel } from "../ascut/left.ts";
import { type Held, nothingHeld, onHand } from "../ascut/rack.ts";
import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import { markedParts } from "../plan/cut-list.ts";
import { type CutPlan, cutPlan, type PlanBudget, type Planning, startPlan } from "../plan/cut-plan.ts";
import type { MarkedPart } from "../plan/problems.ts";
import { type BuyLine, buyLines } from "./buying.ts";
import { csvOf } from "./csv.ts";
import { savedNotes } from "./day.ts";
import { listDocument } from "./list.ts";
import { markdownOf } from "./markdown.ts";
import { planDocument, planText } from "./plan.ts";
import { rodView } from "./rod.ts";
import { textOf } from "./text.ts";
import type { ListDocument, PlanDocument, RodView } from "./types.ts";
import { wrap } from "./wrap.ts";

/** What is left to cut, and the rack less what is broken down and used up. Marks are those of the whole list. */
export interface Left {
  readonly pieces: number;
  /** The model with only what is left to cut for its parts. */
  readonly model: Model;
  rod(): RodView;
  list(): ListDocument;
  /** The list for a terminal, at most 80 columns wide. */
  text(): string;
  csv(): string;
  markdown(): string;
  /** How what is left is cut from what is still in the rack, less what other jobs hold there. */
  plan(budget: PlanBudget, held?: Held): CutPlan;
  startPlan(held?: Held): Planning;
  /** What a search for that plan rests on: the rack as it is now, and the parts under their marks. */
  toPlan(): ToPlan;
  planDocument(plan: CutPlan): PlanDocument;
  planText(plan: CutPlan): string;
  buying(plan: CutPlan): readonly BuyLine[];
}

export interface ToPlan {
  readonly context: Context;
  readonly model: Model;
  readonly rows: readonly MarkedPart[];
}

export function leftOver(
  context: Context,
  model: Model,
  { made, rescue, findings }: Pick<Benched, "made" | "rescue" | "findings">,
  whole: boolean,
): Left {
  const batches = leftBatches(model, made);
  const rest = leftModel(model, made);
  const pieces = rest.parts.reduce((sum, { quantity }) => sum + quantity, 0);
  const rod = (): RodView => {
    const view = rodView(context, rest, findings, whole, { batches, doneIn: undefined });
    const notes = [...view.notes, ...savedNotes(rescue)];
    return { ...view, title: `${view.title}: left to cut`, tables: [], notes };
  };
  const rows = markedParts(batches);
  return {
    pieces,
    model: rest,
    rod,
    list: () => listDocument(context, rest, findings),
    text: () => textOf(rod()),
    csv: () => csvOf(context, batches),
    markdown: () => markdownOf(rod()),
    plan: (budget, held = nothingHeld) => {
      const rack = onHand(context, rest, held);
      return cutPlan(rack.context, rack.model, rows, budget);
    },
    startPlan: (held = nothingHeld) => {
      const rack = onHand(context, rest, held);
      return startPlan(rack.context, rack.model, rows);
    },
    toPlan: () => ({ ...onHand(context, rest, nothingHeld), rows }),
    planDocument: (plan) => planDocument(context, plan),
    planText: (plan) => `${planText(context, plan)}${savedWords(rescue)}`,
    buying: (plan) => buyLines(context, rest, plan),
  };
}

/** The plan cuts all that is left, since whether a spoiled piece serves is for its maker to see. */
function savedWords({ saved }: Benched["rescue"]): string {
  const count = saved.filter(({ spare }) => spare.kind !== "offcut").length;
  if (count === 0) return "";
  const parts = count === 1 ? "1 part" : `${count} parts`;
  const text = `Planned with ${parts} that can be saved from pieces that lie about: see scantling day, and cut less from the stock.`;
  return `\n${wrap(text, 80).join("\n")}\n`;
}
