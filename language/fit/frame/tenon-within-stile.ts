import type { FaceFrame } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { add, compare, equal, less, times } from "../../core/rational.ts";
import type { Sourced } from "../../core/sourced.ts";
import type { Span } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { givenSize, size } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { CaseModel, FrontModel, Member } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, placeOf, rewrite, say, textBelow } from "../check.ts";

/** A tenon must end inside its stile, and two in one stile must not meet. */
export const tenonMustEndInStile: Check = {
  codes: ["frame/tenon-through", "frame/tenons-meet"],
  run: (context, { cases, fronts }) => [
    ...cases.flatMap((one) => [
      ...ofFace(context, one, "front", one.block.frame),
      ...ofFace(context, one, "rear", one.block.rear?.frame),
    ]),
    ...fronts.flatMap((front) => ofDoor(context, front)),
  ],
};

function ofDoor(context: Context, { whole }: FrontModel): readonly Finding[] {
  const { joint, frame } = whole;
  if (joint?.kind !== "tenon" || frame === undefined) return [];
  const tenon = size(context, joint.depth) ?? fallback("joint.tenon");
  const stile = givenSize(context, whole.stiles) ?? size(context, frame.width) ?? fallback("front.frame");
  return through(context, tenon, stile, joint.depth?.span ?? joint.span);
}

function ofFace(
  context: Context,
  { members }: CaseModel,
  face: Member["face"],
  frame: FaceFrame | undefined,
): readonly Finding[] {
  if (frame?.joint?.kind !== "tenon") return [];
  const tenon = size(context, frame.joint.depth) ?? fallback("joint.tenon");
  const place = frame.joint.depth?.span ?? frame.joint.span;
  const own = members.filter((member) => member.face === face);
  const stiles = own.filter((member) => member.kind === "stile");
  const narrowest = [...stiles].sort((a, b) => compare(a.width.value, b.width.value))[0];
  const passing = narrowest === undefined ? [] : through(context, tenon, narrowest.width, place);
  if (0 < passing.length) return passing;
  const rails = own.filter((member) => member.kind === "rail");
  const between = stiles.find((stile) => less(stile.width.value, times(tenon.value, 2)) && isMetTwice(stile, rails));
  return between === undefined ? [] : [meet(context, tenon, between, place)];
}

function through(context: Context, tenon: Sourced<Length>, stile: Sourced<Length>, place: Span): readonly Finding[] {
  if (less(tenon.value, stile.value)) return [];
  return [
    finding({
      code: "frame/tenon-through",
      severity: "error",
      span: place,
      message: `a tenon of ${say(context, tenon.value)} goes through a stile of ${say(context, stile.value)}`,
      reason: "It would come out at the far edge, where it shows and where nothing holds it.",
      remedy: "Make the tenon at most two thirds of the stile, or the stile wider.",
      related: [{ span: placeOf(stile, place), message: "the width of the stile" }],
      fixes: shorterTenon(context, stile.value, 2, 3, place),
    }),
  ];
}

function meet(context: Context, tenon: Sourced<Length>, stile: Member, place: Span): Finding {
  return finding({
    code: "frame/tenons-meet",
    severity: "error",
    span: place,
    message: `tenons of ${say(context, tenon.value)} meet in the middle stile, which is ${say(context, stile.width.value)} wide`,
    reason: "Rails come from both sides at one height, and the same wood cannot be taken away twice.",
    remedy: "Make the tenons less than half of the stile, or the stile wider.",
    related: [{ span: stile.span, message: "the stile" }],
    fixes: shorterTenon(context, stile.width.value, 3, 8, place),
  });
}

function shorterTenon(context: Context, stile: Length, n: bigint | number, d: bigint | number, place: Span) {
  const text = textBelow(context, { n: stile.n * BigInt(n), d: stile.d * BigInt(d) });
  return text === undefined ? [] : [rewrite(place, text)];
}

/** Whether rails end at both edges of a stile at one height. */
function isMetTwice(stile: Member, rails: readonly Member[]): boolean {
  const left = stile.rect.x;
  const right = add(stile.rect.x, stile.rect.wide);
  const before = rails.filter(({ rect }) => equal(add(rect.x, rect.wide), left));
  const after = rails.filter(({ rect }) => equal(rect.x, right));
  return before.some((one) => after.some((other) => overlap(one, other)));
}

function overlap({ rect: a }: Member, { rect: b }: Member): boolean {
  return less(a.y, add(b.y, b.high)) && less(b.y, add(a.y, a.high));
}
