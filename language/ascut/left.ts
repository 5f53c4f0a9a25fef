import { gatheredBy } from "../core/gather.ts";
import type { Part } from "../core/part.ts";
import { toText } from "../core/rational.ts";
import type { Model } from "../derive/model.ts";
import type { CutBatch, CutRow } from "../plan/cut-list.ts";
import { cutList } from "../plan/cut-list.ts";
import { type AsCut, leftOf } from "./as-cut.ts";

/**
 * What is left to cut, in the order and under the marks of the whole list, since those stand on the wood already. What
 * must now be cut to another size than the whole list says gets a number behind its mark.
 */
export function leftBatches(model: Model, made: AsCut): readonly CutBatch[] {
  const left = leftByPart(made);
  return cutList(model).flatMap((batch): readonly CutBatch[] => {
    const rows = batch.rows.flatMap((row) => leftRows(row, left));
    return rows.length === 0 ? [] : [{ stock: batch.stock, rows }];
  });
}

/** The model with only what is left to cut for its parts. */
export function leftModel(model: Model, made: AsCut): Model {
  return { ...model, parts: leftOf(made).map(({ part }) => part) };
}

/** How many pieces of a row of the whole list exist. */
export function doneIn(made: AsCut): (parts: readonly Part[]) => number {
  const left = leftByPart(made);
  return (parts) => parts.reduce((sum, part) => sum + part.quantity - (left.get(part)?.quantity ?? 0), 0);
}

function leftByPart(made: AsCut): ReadonlyMap<Part, Part> {
  return new Map(leftOf(made).map(({ from, part }) => [from, part]));
}

function leftRows(row: CutRow, left: ReadonlyMap<Part, Part>): readonly CutRow[] {
  const key = (part: Part): string => `${toText(part.length.value)} ${toText(part.width.value)}`;
  const sizes = gatheredBy(
    row.parts.flatMap((part) => left.get(part) ?? []),
    key,
  );
  const asListed = key(row.parts[0]!);
  const changed = [...sizes.keys()].filter((size) => size !== asListed);
  return [...sizes].map(([size, parts]) => ({
    mark: size === asListed ? row.mark : `${row.mark}${changed.indexOf(size) + 2}`,
    quantity: parts.reduce((sum, part) => sum + part.quantity, 0),
    parts,
  }));
}
