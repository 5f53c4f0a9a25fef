import type { BrokenDown, CutBlock, CutRecord, Design, OffcutStatement } from "../core/design.ts";
import type { Expr } from "../core/expr.ts";
import type * as ast from "../generated/ast.ts";
import { lowerExpr, lowerMeasure } from "./lower-expr.ts";
import { lowerOffcut } from "./lower-stock.ts";
import type { Reader } from "./reader.ts";
import { maybe, spanOf, spanOfField, textAt, wordOf } from "./reader.ts";

type Cuts = Pick<Design, "cuts" | "brokenDown" | "usedOffcuts" | "cutBlocks">;

/** What the `cut` blocks of a file say exists; a record without its count or its owner is left out. */
export function lowerCuts(reader: Reader, blocks: readonly ast.CutBlock[]): Cuts {
  const entries = blocks.flatMap((block) => block.entries);
  return {
    cuts: entries.flatMap((node) => (node.$type === "CutRecord" ? lowerRecord(reader, node) : [])),
    brokenDown: entries.flatMap((node) => (node.$type === "CutStock" ? lowerBrokenDown(reader, node) : [])),
    usedOffcuts: entries.flatMap((node): readonly OffcutStatement[] =>
      node.$type === "CutOffcut" ? lowerOffcut(reader, node) : [],
    ),
    cutBlocks: blocks.map((block): CutBlock => ({ span: spanOf(reader, block) })),
  };
}

function lowerRecord(reader: Reader, node: ast.CutRecord): readonly CutRecord[] {
  const owner = wordOf(reader, node, "owner", maybe(node.owner));
  const of = wordOf(reader, node, "of", maybe(node.of));
  if (owner === undefined || of === undefined || maybe(node.count) === undefined) return [];
  const partSpan = spanOfField(reader, node, "part");
  return [
    {
      owner: owner.text === "false" ? { ...owner, text: "false front" } : owner,
      of,
      part:
        node.part === undefined ? undefined : { text: textAt(reader, partSpan).replace(/\s+/g, " "), span: partSpan },
      count: countOf(reader, node),
      at: lowerMeasure(reader, node.size),
      wide: lowerMeasure(reader, node.width),
      stock: wordOf(reader, node, "stock", node.stock),
      spoiled: node.spoiled ? { text: "spoiled", span: spanOfField(reader, node, "spoiled") } : undefined,
      span: spanOf(reader, node),
    },
  ];
}

function lowerBrokenDown(reader: Reader, node: ast.CutStock): readonly BrokenDown[] {
  const stock = wordOf(reader, node, "stock", maybe(node.stock));
  if (stock === undefined || maybe(node.count) === undefined) return [];
  return [{ kind: node.kind, stock, count: countOf(reader, node), span: spanOf(reader, node) }];
}

/** A count stands alone in the grammar, so that no unit and no arithmetic can follow it. */
function countOf(reader: Reader, node: ast.CutRecord | ast.CutStock): Expr {
  const quantity = {
    $type: "Quantity",
    $container: node,
    count: node.count,
    $cstNode: undefined,
  } as unknown as ast.Quantity;
  return { ...lowerExpr(reader, quantity, spanOf(reader, node)), span: spanOfField(reader, node, "count") };
}
