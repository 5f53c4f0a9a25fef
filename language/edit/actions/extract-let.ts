import type { Expr } from "../../core/expr.ts";
import { before, type Span } from "../../core/span.ts";
import { lengthRoots, lengthsIn } from "../lengths.ts";
import type { OutlineBlock } from "../outline.ts";
import { blockAt } from "../outline.ts";
import { spanOfItem } from "../places.ts";
import type { Scene } from "../scene.ts";
import type { Asked, Offer } from "./action.ts";

/** Gives the length under the cursor, or the part of it that is selected, a name of its own. */
export const extractLet: Offer = (asked) => {
  const { scene } = asked;
  const span = lengthAt(asked);
  const statement = scene.outline.items.find(({ key, end }) => {
    const [first, last] = [scene.outline.tokens[key], scene.outline.tokens[end - 1]];
    return (
      span !== undefined &&
      first !== undefined &&
      last !== undefined &&
      first.start <= span.start &&
      span.end <= last.end
    );
  });
  if (span === undefined || statement === undefined) return [];
  const key = scene.outline.tokens[statement.key]!.text;
  const text = scene.text.slice(span.start, span.end);
  if (key === "let" || key === "read" || /[\n\r]|\/[/*]/.test(text)) return [];
  const name = newName(scene, span, key);
  const at = before(spanOfItem(scene.uri, scene.outline, statement));
  return [
    {
      title: `Name this length: let ${name} = ${text}`,
      kind: "extract",
      edits: [
        { span: at, text: `let ${name} = ${text}\n` },
        { span, text: name },
      ],
    },
  ];
};

/** What the selection holds, as far as it is a length: a whole one under a cursor, exactly what is selected otherwise. */
function lengthAt({ scene, start, end }: Asked): Span | undefined {
  const own = scene.designs.find((design) => design.uri === scene.uri);
  if (own === undefined) return undefined;
  const root = lengthRoots(own).find(({ expr }) => expr.span.start <= start && end <= expr.span.end);
  // A name would not carry a tolerance, or the range of what was measured.
  const { measure } = root ?? {};
  if (root === undefined || measure === undefined) return undefined;
  if ([measure.plus, measure.minus, measure.to].some((part) => part !== undefined)) return undefined;
  const parts = lengthsIn(root.expr).filter(({ kind }) => kind !== "broken" && kind !== "name");
  const fitting = start === end ? parts[0] : parts.find((part) => isSelected(scene, part, start, end));
  return fitting?.span;
}

function isSelected({ text }: Scene, { span }: Expr, start: number, end: number): boolean {
  const selected = text.slice(start, end);
  const from = start + (selected.length - selected.trimStart().length);
  return span.start === from && span.end === from + selected.trim().length;
}

/** A name that says what is measured and is not taken: `box-wide`, `box-wide-2`. */
function newName({ outline, context }: Scene, { start }: Span, statement: string): string {
  const block = blockAt(outline, start);
  const item = block?.items.findLast(({ key }) => outline.tokens[key]!.start <= start);
  const owner = block === undefined ? statement : wordOf(block, statement);
  const key = item === undefined ? "size" : outline.tokens[item.key]!.text;
  const stem = `${owner}-${key}`;
  const taken = context.names.of.length;
  for (let number = 1; ; number++) {
    const name = number === 1 ? stem : `${stem}-${number}`;
    if (!taken.has(name)) return name;
  }
}

function wordOf({ word }: OutlineBlock, statement: string): string {
  return word === undefined || word === "across" || word === "down" || word === "face frame" ? statement : word;
}
