import type { CutRecord } from "../../core/design.ts";
import type { Finding, Fix } from "../../core/finding.ts";
import { nearest } from "../../derive/names.ts";
import { finding, rewrite } from "../../fit/check.ts";
import { isOf, ownerOf } from "../pieces.ts";
import type { Wanted } from "../wanted.ts";
import { takeOut } from "./words.ts";

/** A record whose words name no part, where a name comes near that does; nothing for a part that is needed no more. */
export function nameless(record: CutRecord, wanted: readonly Wanted[]): readonly Finding[] {
  const slip = slipIn(record, wanted);
  if (slip === undefined) return [];
  return [
    finding({
      code: "cut/no-such-part",
      severity: "warning",
      span: slip.fix.edits[0]!.span,
      message: `nothing here is called ${calledIn(record)}: ${slip.instead}`,
      reason: "A record that names no part takes nothing off the list, and the part is cut a second time.",
      remedy: `${slip.fix.title}, or take the record out.`,
      fixes: [slip.fix, takeOut(record)],
    }),
  ];
}

/** What a record names, in its own words. */
export function calledIn(record: CutRecord): string {
  const { part, stock } = record;
  const words = [ownerOf(record), part?.text, stock === undefined ? undefined : `from ${stock.text}`];
  return words.filter((word) => word !== undefined).join(" ");
}

/** Whether a record is of something that an earlier design had. */
export function isNeededNoMore(record: CutRecord, wanted: readonly Wanted[]): boolean {
  return slipIn(record, wanted) === undefined;
}

interface Slip {
  readonly fix: Fix;
  readonly instead: string;
}

function slipIn(record: CutRecord, wanted: readonly Wanted[]): Slip | undefined {
  const own = wanted.filter(({ of }) => isOf(record, of));
  return 0 < own.length ? slipInPart(record, own) : slipInOwner(record, wanted);
}

function slipInPart({ part, stock }: CutRecord, own: readonly Wanted[]): Slip | undefined {
  const named = own.filter(({ name }) => part === undefined || name === part.text);
  if (stock !== undefined && 0 < named.length) {
    const instead = named[0]!.part.stock;
    return { fix: rewrite(stock.span, instead), instead: `it is made of ${instead}` };
  }
  const meant =
    part === undefined
      ? undefined
      : nearest(
          part.text,
          own.map(({ name }) => name),
        );
  if (part === undefined || meant === undefined) return undefined;
  return { fix: rewrite(part.span, meant), instead: `there is a ${meant}` };
}

/** The same name under another word (`door` for `front`), or a name that comes near; names that differ in their number only do not. */
function slipInOwner({ owner, of, part }: CutRecord, wanted: readonly Wanted[]): Slip | undefined {
  const withPart = wanted.filter(({ name }) => part === undefined || name === part.text);
  const kinds = withPart.filter((one) => one.of.endsWith(` ${of.text}`)).map((one) => kindOf(one.of));
  if (kinds[0] !== undefined)
    return { fix: rewrite(owner.span, kinds[0]), instead: `there is a ${kinds[0]} ${of.text}` };
  const names = withPart
    .filter((one) => kindOf(one.of) === owner.text)
    .map((one) => one.of.slice(owner.text.length + 1));
  const meant = nearest(
    of.text,
    names.filter((name) => stem(name) !== stem(of.text)),
  );
  return meant === undefined
    ? undefined
    : { fix: rewrite(of.span, meant), instead: `there is a ${owner.text} ${meant}` };
}

function kindOf(of: string): string {
  return of.slice(0, of.lastIndexOf(" "));
}

function stem(name: string): string {
  return name.replace(/\d+$/, "");
}
