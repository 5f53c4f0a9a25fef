import type { Span } from "../core/span.ts";
import { startOfFile } from "../core/span.ts";
import { madeIn, partsOf } from "./owners.ts";
import type { Scene } from "./scene.ts";

/** A line shown above a place. */
export interface Lens {
  readonly span: Span;
  readonly title: string;
  /** What it leads to on the rod: an item of a drawing, both by their ids; missing: the rod itself. */
  readonly drawn: { readonly drawing: string; readonly item: string } | undefined;
}

/** Above the file: the rod. Above each block that gives parts: how many pieces. Above openings: where they are drawn. */
export function lensesOf(scene: Scene): readonly Lens[] {
  const { uri, model } = scene;
  if (model.parts.length === 0) return [];
  const pieces = model.parts.reduce((sum, part) => sum + part.quantity, 0);
  return [
    { span: startOfFile(uri), title: `Open the rod: ${count(pieces, "piece")}`, drawn: undefined },
    ...madeIn(scene).flatMap((made): readonly Lens[] => {
      const parts = partsOf(scene, made);
      const quantity = parts.reduce((sum, part) => sum + part.quantity, 0);
      return quantity === 0 ? [] : [{ span: made.block.head, title: count(quantity, "piece"), drawn: undefined }];
    }),
    ...openingLenses(scene),
  ];
}

/** One for the openings that are stated on one line, above the line: the first of them leads to the drawing of all. */
function openingLenses({ uri, model }: Scene): readonly Lens[] {
  const lines = new Set<number>();
  return model.openings.flatMap(({ name, span, case: home, face }): readonly Lens[] => {
    if (span.uri !== uri || lines.has(span.line)) return [];
    lines.add(span.line);
    const drawing = home === undefined ? `opening ${name.text}/front` : `case ${home}/${face}`;
    return [{ span, title: "Show where it is drawn", drawn: { drawing, item: `opening ${name.text}` } }];
  });
}

function count(number: number, word: string): string {
  return `${number} ${word}${number === 1 ? "" : "s"}`;
}
