import type { Related } from "../core/finding.ts";
import { type Length, readOff, showText } from "../core/length.ts";
import {
  absolute,
  divide,
  equal,
  isPositive,
  less,
  type Rational,
  ratio,
  subtract,
  sum,
  times,
  zero,
} from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import { fallback } from "../derive/defaults.ts";
import { say } from "../fit/check.ts";
import type { DryFit } from "../solid/dry-fit.ts";
import { nameOf } from "./findings/words.ts";
import { heldAlong, slackBeside } from "./floats.ts";
import type { Outside } from "./outside.ts";
import { type Dimension, dimensions, type Piece, sizeOf } from "./pieces.ts";
import { slopeOf } from "./rederive.ts";
import type { Wanted } from "./wanted.ts";

/** What a measured size does at the joints along one side of a piece. */
export interface Joint {
  readonly dimension: Dimension;
  readonly kind: "forgiven" | "too large" | "neighbours" | "lost" | "not checked";
  /** What is so, as the rest of a sentence. */
  readonly says: string;
  readonly related: readonly Related[];
  readonly moves: Moves | undefined;
}

/** The outside size that comes out smaller, and at what, where the neighbours follow. */
export interface Moves {
  readonly outside: Outside;
  readonly to: Length;
  /** What the piece's own size changes by for each inch of the outside. */
  readonly slope: Rational;
}

/** A piece with what each of its joints makes of its size; none where it is as derived. */
export interface Judged {
  readonly piece: Piece;
  readonly wanted: Wanted;
  readonly joints: readonly Joint[];
  /** Whether it can still become what it was made as. */
  readonly isGood: boolean;
}

export interface Bench {
  readonly context: Context;
  readonly fit: DryFit | undefined;
  readonly outsides: ReadonlyMap<string, readonly Outside[]>;
  /** Every good piece of an owner, for members whose widths add up. */
  readonly pieces: readonly Piece[];
}

/** From memory, as for a face frame on its case: what is planed flush, or eased away, without showing. */
const flush = ratio(1, 32);

/** Common practice, no source: a quarter of the space between two marks is the least that is read by eye. */
const betweenMarks = 4;

/** What each piece's measured size means where it goes. */
export function judged(bench: Bench): readonly Judged[] {
  return bench.pieces.flatMap((piece): readonly Judged[] => {
    const { wanted } = piece;
    if (wanted === undefined || piece.spoiled) return [];
    const joints = dimensions.flatMap((dimension) => jointAlong(bench, piece, wanted, dimension) ?? []);
    return [{ piece, wanted, joints, isGood: joints.every(({ kind }) => kind !== "lost") }];
  });
}

function jointAlong(bench: Bench, piece: Piece, wanted: Wanted, dimension: Dimension): Joint | undefined {
  const right = wanted.part[dimension].value;
  const size = sizeOf(piece, wanted, dimension);
  const short = subtract(right, size);
  const { context } = bench;
  // What is taken from the work has no size of its own to be held to; and what the tape reads off is what was to be cut,
  // as is what differs by less than anyone reads between its marks.
  if (wanted.part.cutToFit !== undefined || equal(size, readOff(right, context.reading))) return undefined;
  if (less(times(absolute(short), betweenMarks), context.reading.step)) return undefined;
  const tolerance = dimension === "length" ? fallback("cut.tolerance").value : flush;
  if (!isPositive(short)) {
    const over = times(short, -1);
    if (!less(tolerance, over))
      return joint(
        dimension,
        "forgiven",
        `it is ${say(context, over)} ${largeWord(dimension)}, and a pass of the plane takes that off`,
      );
    return joint(
      dimension,
      "too large",
      `it is ${say(context, over)} ${largeWord(dimension)}: cut it down to ${tapeOf(context, right)}`,
    );
  }
  if (!less(tolerance, short)) {
    const why = dimension === "length" ? "and a joint closes over that" : "and that is planed flush";
    return joint(dimension, "forgiven", `it is ${lacks(context, short, dimension)}, ${why}`);
  }
  return (
    floating(bench, wanted, dimension, short) ??
    ownWidth(bench, wanted, dimension, short) ??
    outer(bench, wanted, dimension, short) ??
    unheld(bench, wanted, dimension, short)
  );
}

function joint(
  dimension: Dimension,
  kind: Joint["kind"],
  says: string,
  more: Partial<Pick<Joint, "related" | "moves">> = {},
): Joint {
  return { dimension, kind, says, related: [], moves: undefined, ...more };
}

/** What floats in grooves or lies on pins may be smaller, while it stays there. */
function floating(bench: Bench, wanted: Wanted, dimension: Dimension, short: Length): Joint | undefined {
  const held = heldAlong(bench.fit, wanted, dimension);
  if (held.kind !== "floating") return undefined;
  const { context } = bench;
  const where = held.how === "pins" ? "lies on its pins" : "stays in its grooves";
  const related = held.in.map(({ part }) => ({ span: part.source, message: `${nameOf(part)} holds it` }));
  const spare = isPositive(held.slack) ? say(context, held.slack) : "nothing";
  return less(held.slack, short)
    ? joint(dimension, "lost", `it is ${lacks(context, short, dimension)}, and ${where} with ${spare} less only`, {
        related,
      })
    : joint(dimension, "forgiven", `it is ${lacks(context, short, dimension)}, and ${where} with up to ${spare} less`, {
        related,
      });
}

/**
 * A member of a front that is too narrow: stiles let the front come out narrower, since the rails between them stay as
 * long as they are; everything else leaves more of its panels in the open, which must stay in their grooves.
 */
function ownWidth(bench: Bench, wanted: Wanted, dimension: Dimension, short: Length): Joint | undefined {
  const { context, outsides } = bench;
  if (dimension !== "width" || !/^(front|door|false front) /.test(wanted.of) || !/(rail|stile)$/.test(wanted.name))
    return undefined;
  if (wanted.name !== "stile") {
    const slack = slackBeside(bench.fit, wanted);
    const text = `it is ${lacks(context, short, dimension)}, and the panel beside it`;
    return less(slack, short)
      ? joint(dimension, "lost", `${text} would leave its groove`)
      : joint(dimension, "forgiven", `${text} still stays in its groove`);
  }
  const outside = outsides.get(wanted.of)?.find(({ word }) => word === "wide");
  if (outside === undefined) return undefined;
  const lacking = sum(bench.pieces.map((piece) => lackingIn(piece, wanted)));
  const to = subtract(outside.size.value, lacking);
  const related = [{ span: outside.place, message: "where it goes" }];
  const kind = less(to, outside.least) ? "lost" : "forgiven";
  return joint(dimension, kind, `it is ${lacks(context, short, dimension)}: ${outside.says(to)}`, { related });
}

/** What the pieces of a record take off the width of their front. */
function lackingIn(piece: Piece, wanted: Wanted): Length {
  const lacking =
    piece.wanted === wanted && !piece.spoiled
      ? subtract(wanted.part.width.value, sizeOf(piece, wanted, "width"))
      : zero;
  return isPositive(lacking) ? times(lacking, piece.count) : zero;
}

/** A part between or along the outside of its owner: the whole comes out smaller, if what stands round it lets it. */
function outer(bench: Bench, wanted: Wanted, dimension: Dimension, short: Length): Joint | undefined {
  const { context, outsides } = bench;
  const size = wanted.part[dimension];
  for (const outside of outsides.get(wanted.of) ?? []) {
    const slope = slopeOf(size, outside.size);
    const by = slope === undefined ? undefined : divide(short, slope);
    if (slope === undefined || by === undefined || !isPositive(by)) continue;
    const to = subtract(outside.size.value, by);
    const related = [{ span: outside.place, message: "what it must suit" }];
    const says = `it is ${lacks(context, short, dimension)}: ${outside.says(to)}`;
    if (less(to, outside.least)) return joint(dimension, "lost", says, { related });
    return joint(dimension, "neighbours", says, { related, moves: { outside, to, slope } });
  }
  return undefined;
}

function unheld(bench: Bench, wanted: Wanted, dimension: Dimension, short: Length): Joint {
  const { context } = bench;
  const held = heldAlong(bench.fit, wanted, dimension);
  if (held.kind !== "joined")
    return joint(
      dimension,
      "not checked",
      `it is ${lacks(context, short, dimension)}, and nothing in the file says what it meets there`,
    );
  const related = held.to.map(({ part }) => ({ span: part.source, message: `it is joined to ${nameOf(part)}` }));
  return joint(dimension, "lost", `it is ${lacks(context, short, dimension)}, and its joint would stand open by that`, {
    related,
  });
}

function lacks(context: Context, short: Length, dimension: Dimension): string {
  return `${say(context, short)} ${dimension === "length" ? "short" : "too narrow"}`;
}

function tapeOf({ reading, units }: Context, length: Length): string {
  return `${showText(length, reading)} ${units === "inches" ? "in" : "mm"}`;
}

function largeWord(dimension: Dimension): string {
  return dimension === "length" ? "too long" : "too wide";
}
