import type { Block } from "../core/design.ts";
import type { Span } from "../core/span.ts";
import { startOfFile } from "../core/span.ts";
import type { Scene } from "./scene.ts";

/** A line shown above a place. */
export interface Lens {
  readonly span: Span;
  readonly title: string;
}

/** Above the file: the rod. Above each block that gives parts: how many pieces. */
export function lensesOf({ uri, designs, model }: Scene): readonly Lens[] {
  const own = designs.find((design) => design.uri === uri);
  if (own === undefined || model.parts.length === 0) return [];
  const blocks: readonly Block[] = [...own.cases, ...own.boxes, ...own.fronts, ...own.shelves, ...own.parts];
  const pieces = model.parts.reduce((sum, part) => sum + part.quantity, 0);
  return [
    { span: startOfFile(uri), title: `Open the rod: ${count(pieces, "piece")}` },
    ...blocks.flatMap(({ head, span }): readonly Lens[] => {
      const parts = model.parts.filter(
        ({ source }) => source.uri === uri && span.start <= source.start && source.end <= span.end,
      );
      const quantity = parts.reduce((sum, part) => sum + part.quantity, 0);
      return quantity === 0
        ? []
        : [{ span: head, title: `${count(quantity, "piece")} of ${count(parts.length, "shape")}` }];
    }),
  ];
}

function count(number: number, word: string): string {
  return `${number} ${word}${number === 1 ? "" : "s"}`;
}
