import type { CutRecord } from "../../core/design.ts";
import type { Edit, Fix } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { exactText, showText, withUnit, writtenText } from "../../core/length.ts";
import { before, behind } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import type { Wanted } from "../wanted.ts";

/** A part as a person says it: `the side of box plan-1`. */
export function nameOf({ of, name }: Pick<Wanted, "of" | "name">): string {
  return of === `part ${name}` ? `the part ${name}` : `the ${name} of ${of}`;
}

/** Several pieces of a part: `2 sides of box plan-1`. */
export function countedName({ of, name }: Pick<Wanted, "of" | "name">, count: number): string {
  const counted = count === 1 ? name : pluralOf(name);
  return of === `part ${name}` ? `${count} ${counted}` : `${count} ${counted} of ${of}`;
}

/** Names are the maker's own: a `foot`, a `tray`, a `bench`. */
export function pluralOf(name: string): string {
  if (/(?:^|[-_ ])foot$/.test(name)) return name.replace(/foot$/, "feet");
  if (/(?:s|x|z|ch|sh)$/.test(name)) return `${name}es`;
  return `${name.replace(/(?<=[^aeiou])y$/, "ie").replace(/(?<=[^f])f$/, "ve")}s`;
}

/** Exactly, with the unit once: `28 1/2 × 19 1/4 in`. */
export function sizesText({ units }: Context, length: Length, width: Length): string {
  return `${exactText(length, units)} × ${withUnit(width, units)}`;
}

/** As the tape shows it, for what is to be cut: `18 25/32 − × 2 1/2 in`. */
export function tapeText({ reading, units }: Context, length: Length, width: Length): string {
  return `${showText(length, reading)} × ${showText(width, reading)} ${units === "inches" ? "in" : "mm"}`;
}

/** As a record states it, read back exactly: `at 24 x 4 25/32`. */
export function atText(context: Context, length: Length, width: Length): string {
  return `at ${writtenText(length, context.units)} x ${writtenText(width, context.units)}`;
}

/** Behind what a record says, but before `spoiled`. */
export function addTo(record: CutRecord, text: string): Edit {
  return record.spoiled === undefined
    ? { span: behind(record.span), text: ` ${text}` }
    : { span: before(record.spoiled.span), text: `${text} ` };
}

export function takeOut(record: CutRecord, title = "Take the record out"): Fix {
  return { title, edits: [{ span: record.span, text: "" }], safe: false };
}

/** Makes pieces that cannot be used spoiled ones, which are cut anew. */
export function writeSpoiled(record: CutRecord): readonly Fix[] {
  if (record.spoiled !== undefined) return [];
  const title =
    record.count.kind === "number" && record.count.value.n === 1n
      ? "Write it down as spoiled"
      : "Write them down as spoiled";
  return [{ title, edits: [{ span: behind(record.span), text: " spoiled" }], safe: false }];
}
