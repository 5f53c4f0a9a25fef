import { titleOf } from "../core/file-name.ts";
import type { Finding } from "../core/finding.ts";
import { withUnit } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import type { Derivation } from "../derive/derive.ts";
import type { Desk } from "../draw/desk.ts";
import type { CutBatch } from "../plan/cut-list.ts";
import { cutList } from "../plan/cut-list.ts";
import type { CutPlan } from "../plan/cut-plan.ts";
import type { DryFit } from "../solid/dry-fit.ts";
import type { Layout } from "./flow.ts";
import { footOf } from "./flow.ts";
import type { PaperSize } from "./page.ts";

/** What papers are made from: a build and, where one has been worked out, its cutting plan. */
export interface PaperDesk extends Desk {
  readonly findings: readonly Finding[];
  readonly batches: readonly CutBatch[];
  readonly plan: CutPlan | undefined;
  /** The piece put together in software; undefined where that failed. */
  readonly dryFit: () => DryFit | undefined;
}

/** What papers take from a build. */
export interface PaperSource {
  readonly derivation: Derivation;
  readonly findings: readonly Finding[];
  readonly dryFit: () => DryFit | undefined;
}

export function paperDesk({ derivation, findings, dryFit }: PaperSource, plan: CutPlan | undefined): PaperDesk {
  const { context, model } = derivation;
  const batches = cutList(model);
  return { context, model, findings, batches, plan, dryFit, marks: marksOf(batches) };
}

/** The letter of every part. */
export function marksOf(batches: readonly CutBatch[]): ReadonlyMap<Part, string> {
  const rows = batches.flatMap((batch) => batch.rows);
  return new Map(rows.flatMap((row) => row.parts.map((part) => [part, row.mark] as const)));
}

export function projectOf({ context }: Desk): string {
  return titleOf(context.design);
}

export function layoutOf(desk: Desk, size: PaperSize, subject: string): Layout {
  const { units, reading } = desk.context;
  return { size, title: projectOf(desk), subject, foot: footOf(units, withUnit(reading.step, units)), units };
}
