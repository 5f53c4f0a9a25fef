import type { FoldingRange, SelectionRange } from "vscode-languageserver";
import { FoldingRangeKind } from "vscode-languageserver";
import type { Fold } from "../../language/edit/folding.ts";
import { foldsOf } from "../../language/edit/folding.ts";
import { outlineOf } from "../../language/edit/outline.ts";
import { selectionsAt } from "../../language/edit/selection.ts";
import type { Feature } from "./feature.ts";
import { rangeOf } from "./places.ts";
import { offsetAt } from "./scene.ts";

/** Folds blocks and comments away, and grows a selection by what belongs together. */
export const structure: Feature = {
  capabilities: { foldingRangeProvider: true, selectionRangeProvider: true },
  register({ connection, session }) {
    connection.onFoldingRanges(async ({ textDocument }) => {
      const current = await session.current(textDocument.uri);
      return current === undefined ? null : foldsOf(outlineOf(current.text)).map(foldingRange);
    });
    connection.onSelectionRanges(async ({ textDocument, positions }) => {
      const current = await session.current(textDocument.uri);
      if (current === undefined) return null;
      const outline = outlineOf(current.text);
      return positions.map((position) => {
        const spans = selectionsAt(current.uri, outline, offsetAt(current.text, position));
        const chain = spans.reduceRight<SelectionRange | undefined>(
          (parent, span) => ({ range: rangeOf(span), ...(parent === undefined ? {} : { parent }) }),
          undefined,
        );
        return chain ?? { range: { start: position, end: position } };
      });
    });
  },
};

function foldingRange({ from, to, kind }: Fold): FoldingRange {
  const known = foldKinds[kind];
  return { startLine: from, endLine: to, ...(known === undefined ? {} : { kind: known }) };
}

const foldKinds: Readonly<Record<Fold["kind"], FoldingRangeKind | undefined>> = {
  block: undefined,
  comment: FoldingRangeKind.Comment,
  uses: FoldingRangeKind.Imports,
  region: FoldingRangeKind.Region,
};
