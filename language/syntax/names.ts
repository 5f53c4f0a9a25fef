import type { Word } from "../core/span.ts";
import type * as ast from "../generated/ast.ts";
import type { Reader } from "./reader.ts";
import { maybe, report, spanOf, wordOf } from "./reader.ts";

/** A range that spells more names than any piece of furniture has is a slip of the finger. */
const mostInRange = 200;

/** The names of a list, ranges spelled out: `plan-1 to plan-4` is four. Each keeps the place it was written at. */
export function lowerNames(reader: Reader, node: ast.NameList | undefined): readonly Word[] {
  return (node?.entries ?? []).flatMap((entry) => {
    const first = wordOf(reader, entry, "first", maybe(entry.first));
    if (first === undefined) return [];
    const last = wordOf(reader, entry, "last", entry.last);
    return last === undefined ? [first] : spellOut(reader, entry, first, last);
  });
}

function spellOut(reader: Reader, entry: ast.NameEntry, first: Word, last: Word): readonly Word[] {
  const from = numbered(first.text);
  const to = numbered(last.text);
  if (from === undefined || to === undefined || from.stem !== to.stem || to.number < from.number) {
    report(reader, {
      code: "name/range",
      severity: "error",
      span: spanOf(reader, entry),
      message: `"${first.text} to ${last.text}" is not a range`,
      reason: "A range counts upwards from one number to another behind the same name: a-1 to a-4.",
      remedy: "Write both ends alike but for their number, the smaller one first, or list the names with commas.",
    });
    return [first, last];
  }
  if (mostInRange < to.number - from.number + 1) {
    report(reader, {
      code: "name/range",
      severity: "error",
      span: spanOf(reader, entry),
      message: `this range spells ${to.number - from.number + 1} names`,
      reason: `A range spells at most ${mostInRange}.`,
      remedy: "Check its numbers.",
    });
    return [first];
  }
  const count = to.number - from.number + 1;
  return Array.from({ length: count }, (_, index) => {
    if (index === 0) return first;
    if (index === count - 1) return last;
    return { text: `${from.stem}${from.number + index}`, span: spanOf(reader, entry) };
  });
}

function numbered(name: string): { readonly stem: string; readonly number: number } | undefined {
  const match = /^(.*?)(\d{1,9})$/.exec(name);
  return match === null ? undefined : { stem: match[1]!, number: Number(match[2]) };
}
