import { writtenTitle } from "../core/file-name.ts";
import type { Length } from "../core/length.ts";
import { readOff, writtenText } from "../core/length.ts";
import { compare, ratio, toNumber } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import type { CutNode, CutPlan } from "./cut-plan.ts";

/** A piece left over that is worth a place in the rack. */
export interface KeptOffcut {
  readonly sheet: string;
  readonly stock: string;
  readonly node: CutNode;
  /** Whether it is what is left of an offcut, which is stated already and must not be counted twice. */
  readonly isOfOffcut: boolean;
  /** The offcut, and the line that states it in a build file with the job whose plan leaves it over. */
  readonly text: string;
  readonly line: string;
}

/** Smaller pieces are more trouble to store than they are worth (common practice, no source). */
const narrowest = ratio(6);
const leastArea = 1.5;

/** What is left over and worth keeping, largest first, each with the line that states it in a build file. */
export function keptOffcuts(context: Context, plan: CutPlan): readonly KeptOffcut[] {
  const kept = plan.stocks.flatMap((stock) =>
    stock.sheets.flatMap((sheet) =>
      leftIn(sheet.cuts)
        .filter((node) => worthKeeping(node, stock.stock.kind))
        .map((node) => {
          const text = textFor(context, stock.stock.name, node);
          const line = `${text} from "${writtenTitle(context.design)}"`;
          return { sheet: sheet.name, stock: stock.stock.name, node, isOfOffcut: sheet.offcut, text, line };
        }),
    ),
  );
  return kept.sort((a, b) => area(b.node) - area(a.node));
}

/** Those that can be written beside what the rack states already: left of new sheets and boards. */
export function newOffcuts(context: Context, plan: CutPlan): readonly KeptOffcut[] {
  return keptOffcuts(context, plan).filter(({ isOfOffcut }) => !isOfOffcut);
}

function leftIn(node: CutNode): readonly CutNode[] {
  if (node.content.kind === "left") return [node];
  return node.content.kind === "cut" ? node.content.pieces.flatMap(leftIn) : [];
}

function worthKeeping(node: CutNode, kind: "sheet" | "board" | "edging"): boolean {
  if (kind === "board") return compare(ratio(12), node.height) <= 0 && compare(ratio(1), node.width) <= 0;
  return compare(narrowest, node.width) <= 0 && compare(narrowest, node.height) <= 0 && leastArea <= area(node);
}

function area(node: CutNode): number {
  return (toNumber(node.width) * toNumber(node.height)) / 144;
}

function textFor(context: Context, stock: string, node: CutNode): string {
  // With its unit, so that it means the same in a file of other units.
  const unit = context.units === "inches" ? "in" : "mm";
  // As the tape reads it, and so never larger than it is.
  const size = (length: Length): string => `${writtenText(readOff(length, context.reading), context.units)} ${unit}`;
  return `offcut of ${stock} ${size(node.width)} x ${size(node.height)}`;
}
