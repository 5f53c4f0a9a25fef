import type { Span } from "../core/span.ts";
import { startOfFile } from "../core/span.ts";
import { madeIn, partsOf } from "./owners.ts";
import type { Scene } from "./scene.ts";

/** A line shown above a place. */
export interface Lens {
  readonly span: Span;
  readonly title: string;
}

/** Above the file: the rod. Above each block that gives parts: how many pieces. */
export function lensesOf(scene: Scene): readonly Lens[] {
  const { uri, model } = scene;
  if (model.parts.length === 0) return [];
  const pieces = model.parts.reduce((sum, part) => sum + part.quantity, 0);
  return [
    { span: startOfFile(uri), title: `Open the rod: ${count(pieces, "piece")}` },
    ...madeIn(scene).flatMap((made): readonly Lens[] => {
      const parts = partsOf(scene, made);
      const quantity = parts.reduce((sum, part) => sum + part.quantity, 0);
      return quantity === 0 ? [] : [{ span: made.block.head, title: count(quantity, "piece") }];
    }),
  ];
}

function count(number: number, word: string): string {
  return `${number} ${word}${number === 1 ? "" : "s"}`;
}
