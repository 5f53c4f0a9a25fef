import type { CutRecord } from "../../core/design.ts";
import type { Finding, Fix, Related } from "../../core/finding.ts";
import { type Length, writtenText } from "../../core/length.ts";
import { less, subtract } from "../../core/rational.ts";
import type { Sourced } from "../../core/sourced.ts";
import type { Context } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import { finding, rewrite } from "../../fit/check.ts";
import type { AsCut, Count } from "../as-cut.ts";
import { type Dimension, dimensions, sizeOf } from "../pieces.ts";
import type { Joint, Judged } from "../verdicts.ts";
import type { SavedOf } from "./saved.ts";
import { countedName, nameOf, tapeText, writeSpoiled } from "./words.ts";

/** What each measured size comes to: one finding for each record and kind; a piece that is lost has nothing else to say. */
export function judgedFindings(context: Context, made: AsCut, saved: SavedOf): readonly Finding[] {
  const deciding = decidingJoints(made);
  return made.judged.flatMap((one) => {
    if (!one.isGood) return [lost(one, saved)];
    return [
      ...about(one, "neighbours", (joints) => {
        const own = joints.filter((joint) => deciding.has(joint));
        return own.length === 0 ? [] : [neighbours(context, made, one, own)];
      }),
      ...about(one, "too large", (joints) => [tooLarge(context, one, joints)]),
      ...about(one, "not checked", (joints) => [notChecked(one, joints)]),
      ...about(one, "forgiven", (joints) => [forgiven(one, joints)]),
    ];
  });
}

function about(
  one: Judged,
  kind: Joint["kind"],
  say: (joints: readonly Joint[]) => readonly Finding[],
): readonly Finding[] {
  const joints = one.joints.filter((joint) => joint.kind === kind);
  return joints.length === 0 ? [] : say(joints);
}

/** Of all that make one thing smaller, the one that makes it smallest: the others follow it, and have nothing to say. */
function decidingJoints({ judged }: AsCut): ReadonlySet<Joint> {
  const least = new Map<Sourced<Length>, { readonly joint: Joint; readonly to: Length }>();
  for (const { isGood, joints } of judged) {
    if (!isGood) continue;
    for (const joint of joints) {
      const { moves } = joint;
      if (moves === undefined) continue;
      const before = least.get(moves.outside.size);
      if (before === undefined || less(moves.to, before.to)) least.set(moves.outside.size, { joint, to: moves.to });
    }
  }
  return new Set([...least.values()].map(({ joint }) => joint));
}

function saidOf(joints: readonly Joint[]): string {
  return joints.map(({ says }) => says).join("; ");
}

function relatedOf(joints: readonly Joint[]): readonly Related[] {
  const seen = new Set<string>();
  return joints
    .flatMap(({ related }) => related)
    .filter(({ span, message }) => {
      const key = `${span.uri}:${span.start} ${message}`;
      return !seen.has(key) && seen.add(key) !== undefined;
    });
}

/** On the size that is told of. */
function placeOf({ piece }: Judged, joints: readonly Joint[]): CutRecord["span"] {
  const { at, wide, span } = piece.record;
  return (joints[0]?.dimension === "width" ? (wide ?? at) : at)?.span ?? span;
}

function lost(one: Judged, saved: SavedOf): Finding {
  const joints = one.joints.filter(({ kind }) => kind === "lost");
  const { remedy, fixes } = saved(one.piece.record);
  return finding({
    code: "cut/lost",
    severity: "warning",
    span: placeOf(one, joints),
    message: `${countedName(one.wanted, one.piece.count)} cannot be used: ${saidOf(joints)}`,
    reason: "Nothing that it meets makes up for that. It is on the list of what is left to cut again.",
    remedy: `Cut it again. ${remedy}`.trim(),
    related: relatedOf(joints),
    fixes: [...fixes, ...writeSpoiled(one.piece.record)],
  });
}

function neighbours(context: Context, made: AsCut, one: Judged, joints: readonly Joint[]): Finding {
  const moved = made.counts
    .filter(({ wanted }) => wanted.of === one.wanted.of)
    .flatMap((count) => changeOf(context, made, count));
  if (moved.length === 0) return forgiven(one, joints);
  return finding({
    code: "cut/neighbours",
    severity: "warning",
    span: placeOf(one, joints),
    message: `${nameOf(one.wanted)} can be used if its neighbours follow: ${saidOf(joints)}`,
    reason:
      "Cut as the whole list says, they would no longer meet it. The list of what is left has them as they must be now.",
    remedy: `Cut ${moved.map(({ says }) => says).join("; ")}.`,
    related: [...relatedOf(joints), ...moved.map(({ related }) => related)],
    fixes: writeSpoiled(one.piece.record),
  });
}

/** What must be cut to another size than derived: what is not made yet, and what is and has come out larger. */
function changeOf(
  context: Context,
  made: AsCut,
  count: Count,
): readonly { readonly says: string; readonly related: Related }[] {
  const { wanted, left, length, width } = count;
  if (length === wanted.part.length && width === wanted.part.width) return [];
  const size = tapeText(context, length.value, width.value);
  const related = { span: wanted.part.source, message: `${nameOf(wanted)} becomes ${size}` };
  const large = toCutDown(made, count);
  return [
    ...(left === 0 ? [] : [{ says: `${countedName(wanted, left)} to ${size}`, related }]),
    ...(large === 0 ? [] : [{ says: `${countedName(wanted, large)}, made already, down to ${size}`, related }]),
  ];
}

/** How many good pieces are larger than they must be now. */
export function toCutDown(made: AsCut, count: Count): number {
  const tolerance = fallback("cut.tolerance").value;
  const isLarger = ({ piece }: Judged): boolean =>
    dimensions.some((dimension) =>
      less(tolerance, subtract(sizeOf(piece, count.wanted, dimension), count[dimension].value)),
    );
  return made.judged
    .filter((one) => one.wanted === count.wanted && one.isGood && isLarger(one))
    .reduce((sum, { piece }) => sum + piece.count, 0);
}

function tooLarge(context: Context, one: Judged, joints: readonly Joint[]): Finding {
  return finding({
    code: "cut/too-large",
    severity: "warning",
    span: placeOf(one, joints),
    message: `${countedName(one.wanted, one.piece.count)}: ${saidOf(joints)}`,
    reason: "Larger than it was derived it does not go in, or holds its joints open.",
    remedy: "Cut it down, and write the size that it has then.",
    fixes: [
      { title: "Write the size that it has when it is cut down", edits: cutDown(context, one, joints), safe: false },
    ],
  });
}

function cutDown(context: Context, { piece, wanted }: Judged, joints: readonly Joint[]): Fix["edits"] {
  const measure = (dimension: Dimension) => (dimension === "length" ? piece.record.at : piece.record.wide);
  return joints.flatMap(({ dimension }) => {
    const written = measure(dimension);
    return written === undefined
      ? []
      : rewrite(written.span, writtenText(wanted.part[dimension].value, context.units)).edits;
  });
}

function notChecked(one: Judged, joints: readonly Joint[]): Finding {
  return finding({
    code: "cut/not-checked",
    severity: "hint",
    span: placeOf(one, joints),
    message: `${nameOf(one.wanted)} counts as made: ${saidOf(joints)}`,
    reason: "What no joint holds it to, only its maker can judge.",
    remedy: "Hold it where it goes. If it is of no use, write spoiled behind it.",
    fixes: writeSpoiled(one.piece.record),
  });
}

function forgiven(one: Judged, joints: readonly Joint[]): Finding {
  return finding({
    code: "cut/forgiven",
    severity: "hint",
    span: placeOf(one, joints),
    message: `${nameOf(one.wanted)} can be used as it is: ${saidOf(joints)}`,
    reason: "It is within what its joints make up for.",
    remedy: "Nothing need be done.",
    related: relatedOf(joints),
  });
}
