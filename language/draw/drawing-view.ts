import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import { cutList } from "../plan/cut-list.ts";
import type { Desk } from "./desk.ts";
import type { Drawing, Equivalent } from "./display-list.ts";
import { svgOf } from "./svg.ts";

/** A drawing as it is shown: SVG without colours of its own, and a table that says the same. */
export interface DrawingView {
  readonly id: string;
  readonly title: string;
  readonly scale: string;
  readonly svg: string;
  readonly textEquivalent: Equivalent;
}

/** As it is shown on the rod. */
export function drawingView(drawing: Drawing): DrawingView {
  const { id, title, scale, equivalent } = drawing;
  return { id, title, scale, svg: svgOf(drawing), textEquivalent: equivalent };
}

/** What the drawings of a build are made from. */
export function deskFor(context: Context, model: Model): Desk {
  const rows = cutList(model).flatMap((batch) => batch.rows);
  return { context, model, marks: new Map(rows.flatMap((row) => row.parts.map((part) => [part, row.mark] as const))) };
}
