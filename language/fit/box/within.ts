import type { Given } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { writtenText } from "../../core/length.ts";
import { less, subtract } from "../../core/rational.ts";
import type { Sourced } from "../../core/sourced.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel } from "../../derive/model.ts";
import { placeOf, say } from "../check.ts";

export interface Limit {
  readonly code: string;
  /** `wide`, `high` or `deep`. */
  readonly word: string;
  readonly given: Given | undefined;
  readonly most: Sourced<Length>;
  readonly reason: string;
}

/** A size of a box that is written must not pass what its opening leaves; the fix writes what does. */
export function mustNotPass(context: Context, box: BoxModel, limit: Limit, size: Sourced<Length>): readonly Finding[] {
  if (limit.given === undefined || !less(limit.most.value, size.value)) return [];
  const text = writtenText(limit.most.value, context.units);
  const { span } = limit.given.measure;
  return [
    {
      code: limit.code,
      severity: "error",
      span,
      message: `this box is ${say(context, subtract(size.value, limit.most.value))} too ${limit.word}: "${box.opening.name.text}" takes one ${say(context, limit.most.value)} ${limit.word}`,
      reason: limit.reason,
      remedy: `Make it ${say(context, limit.most.value)} ${limit.word} at most, or leave the size out and it is derived.`,
      related: [{ span: placeOf(limit.most, box.opening.name.span), message: "what it must fit comes from here" }],
      fixes: [{ title: `Write ${text}`, edits: [{ span, text }], safe: true }],
    },
  ];
}
