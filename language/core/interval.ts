import type { Length } from "./length.ts";
import { oncePer } from "./once-per.ts";
import type { Rational } from "./rational.ts";
import { absolute, add, compare, equal, isZero, largest, multiply, one, smallest, subtract, zero } from "./rational.ts";
import type { DerivedOrigin, Rule, Sourced } from "./sourced.ts";
import { derived, writtenPlaces } from "./sourced.ts";
import type { Span } from "./span.ts";

/** What one uncertain size does to a derived one: the width of the interval that it alone would cause, in inches. */
export interface Contribution {
  /** What the size is called where it is used: `thickness`, `reading 2`. */
  readonly name: string;
  readonly leaf: Sourced<Length>;
  readonly place: Span | undefined;
  readonly spread: Length;
}

/** The interval that a length lies in, in inches, and what makes it so wide, the largest first. */
export interface Interval {
  readonly low: Length;
  readonly high: Length;
  readonly contributions: readonly Contribution[];
}

/**
 * The interval of a length from the ranges of the sizes that it hangs on. A size that is used twice is one unknown and
 * not two: rules that are linear give exact ends, others are worked out at every corner of the ranges. A length without
 * any uncertain size under it is its own interval.
 */
export const intervalOf: (value: Sourced<Length>) => Interval = oncePer(workedOut);

function workedOut(value: Sourced<Length>): Interval {
  const leaves = uncertainLeaves(value);
  if (leaves.size === 0) return { low: value.value, high: value.value, contributions: [] };
  const slopes = slopesOf(value, leaves, new Map());
  return slopes === undefined ? atCorners(value, leaves) : fromSlopes(value, leaves, slopes);
}

const cutRule: Rule = { gives: "as cut", formula: "{size} ± {cut tolerance}", tag: "from memory" };

/** A size as it comes off the saw: its own unknown, within the tolerance of the cut. */
export function asCut(size: Sourced<Length>, tolerance: Sourced<Length>): Sourced<Length> {
  const cut = derived(cutRule, { size, "cut tolerance": tolerance }, (of) => of.size);
  return { ...cut, low: subtract(size.value, tolerance.value), high: add(size.value, tolerance.value) };
}

interface Leaf {
  readonly name: string;
  readonly node: Sourced<Length>;
  readonly low: Length;
  readonly high: Length;
}

type Leaves = ReadonlyMap<string | Sourced<unknown>, Leaf>;

/** More corners than this are not worked out; the ranges of the inputs are then taken as independent. */
const mostCorners = 10;

function uncertainLeaves(value: Sourced<Length>): Leaves {
  const leaves = new Map<string | Sourced<unknown>, Leaf>();
  const names = new Map<Sourced<unknown>, string>([[value, "size"]]);
  for (const [node, name] of names) {
    const own = ownRange(node);
    if (own !== undefined) {
      const key = keyOf(node);
      if (!leaves.has(key)) leaves.set(key, { name, ...own });
    } else if (node.origin.kind === "derived") {
      for (const [inputName, input] of Object.entries(node.origin.inputs))
        if (!names.has(input)) names.set(input, inputName);
    }
  }
  return leaves;
}

function ownRange(node: Sourced<unknown>): Omit<Leaf, "name"> | undefined {
  if (!isLength(node) || node.low === undefined || node.high === undefined || equal(node.low, node.high))
    return undefined;
  return { node, low: node.low, high: node.high };
}

/** One written measure is one unknown however often it is read; any other node is an unknown of its own. */
function keyOf(node: Sourced<unknown>): string | Sourced<unknown> {
  const { origin } = node;
  return origin.kind === "written" ? `${origin.span.uri}:${origin.span.start}:${origin.span.end}` : node;
}

function isLength(node: Sourced<unknown>): node is Sourced<Length> {
  const { value } = node;
  return typeof value === "object" && value !== null && "n" in value && "d" in value;
}

type Slopes = ReadonlyMap<string | Sourced<unknown>, Rational>;

/** How much a length changes for each inch of each uncertain size; `undefined` where a rule on the way is not linear. */
function slopesOf(
  node: Sourced<unknown>,
  leaves: Leaves,
  done: Map<Sourced<unknown>, Slopes | undefined>,
): Slopes | undefined {
  if (done.has(node)) return done.get(node);
  const slopes = freshSlopes(node, leaves, done);
  done.set(node, slopes);
  return slopes;
}

function freshSlopes(
  node: Sourced<unknown>,
  leaves: Leaves,
  done: Map<Sourced<unknown>, Slopes | undefined>,
): Slopes | undefined {
  const key = keyOf(node);
  if (ownRange(node) !== undefined && leaves.has(key)) return new Map([[key, one]]);
  if (node.origin.kind !== "derived") return new Map();
  const moving = new Map<string, Slopes>();
  for (const [name, input] of Object.entries(node.origin.inputs)) {
    const slopes = slopesOf(input, leaves, done);
    if (slopes === undefined) return undefined;
    if (0 < slopes.size) moving.set(name, slopes);
  }
  const factors = linearFactors(node.origin, [...moving.keys()]);
  if (factors === undefined) return undefined;
  const total = new Map<string | Sourced<unknown>, Rational>();
  for (const [name, slopes] of moving)
    for (const [leaf, slope] of slopes)
      total.set(leaf, add(total.get(leaf) ?? zero, multiply(factors.get(name)!, slope)));
  return total;
}

/** What a rule's result changes by for an inch more of each input; `undefined` unless it does so evenly. */
function linearFactors(origin: DerivedOrigin, moving: readonly string[]): ReadonlyMap<string, Rational> | undefined {
  const values = valuesOf(origin);
  const at = (change: (value: Rational) => Rational, names: readonly string[]): Rational | undefined =>
    applied(origin, {
      ...values,
      ...Object.fromEntries(names.map((name) => [name, change(values[name] as Rational)])),
    });
  const here = applied(origin, values);
  if (here === undefined) return undefined;
  const factors = new Map<string, Rational>();
  let sum = zero;
  for (const name of moving) {
    const up = at((value) => add(value, one), [name]);
    const down = at((value) => subtract(value, one), [name]);
    if (up === undefined || down === undefined) return undefined;
    const factor = subtract(up, here);
    if (!equal(factor, subtract(here, down))) return undefined;
    factors.set(name, factor);
    sum = add(sum, factor);
  }
  const together = at((value) => add(value, one), moving);
  return together !== undefined && equal(subtract(together, here), sum) ? factors : undefined;
}

function valuesOf(origin: DerivedOrigin): Record<string, unknown> {
  return Object.fromEntries(Object.entries(origin.inputs).map(([name, input]) => [name, input.value]));
}

function applied(origin: DerivedOrigin, values: Record<string, unknown>): Rational | undefined {
  const result = origin.apply(values as never);
  return typeof result === "object" && result !== null && "n" in result ? (result as Rational) : undefined;
}

function fromSlopes(value: Sourced<Length>, leaves: Leaves, slopes: Slopes): Interval {
  let [low, high] = [value.value, value.value];
  const contributions: Contribution[] = [];
  for (const [key, leaf] of leaves) {
    const slope = slopes.get(key) ?? zero;
    if (isZero(slope)) continue;
    const ends = [leaf.low, leaf.high].map((end) => multiply(slope, subtract(end, leaf.node.value)));
    low = add(low, smallest(ends[0]!, ends[1]!));
    high = add(high, largest(ends[0]!, ends[1]!));
    contributions.push(contribution(leaf, absolute(subtract(ends[1]!, ends[0]!))));
  }
  return { low, high, contributions: sorted(contributions) };
}

/** Every combination of the ends, for rules that are not linear, such as the smallest of several readings. */
function atCorners(value: Sourced<Length>, leaves: Leaves): Interval {
  const all = [...leaves];
  const contributions = all.map(([key, leaf]) => {
    const ends = [leaf.low, leaf.high].map((end) => evaluated(value, new Map([[key, end]])));
    return contribution(leaf, absolute(subtract(ends[1]!, ends[0]!)));
  });
  if (mostCorners < all.length) {
    const spread = contributions.reduce((sum, one) => add(sum, one.spread), zero);
    return {
      low: subtract(value.value, spread),
      high: add(value.value, spread),
      contributions: sorted(contributions),
    };
  }
  const corners = Array.from({ length: 2 ** all.length }, (_, corner) =>
    evaluated(
      value,
      new Map(all.map(([key, leaf], index) => [key, (corner >> index) % 2 === 0 ? leaf.low : leaf.high])),
    ),
  );
  return {
    low: smallest(value.value, ...corners),
    high: largest(value.value, ...corners),
    contributions: sorted(contributions),
  };
}

/** The length with some of its leaves set to other values. */
function evaluated(value: Sourced<Length>, set: ReadonlyMap<string | Sourced<unknown>, Length>): Length {
  const done = new Map<Sourced<unknown>, unknown>();
  const at = (node: Sourced<unknown>): unknown => {
    if (done.has(node)) return done.get(node);
    const result = set.get(keyOf(node)) ?? again(node, at);
    done.set(node, result);
    return result;
  };
  return at(value) as Length;
}

function again(node: Sourced<unknown>, at: (node: Sourced<unknown>) => unknown): unknown {
  if (node.origin.kind !== "derived" || ownRange(node) !== undefined) return node.value;
  const values = Object.fromEntries(Object.entries(node.origin.inputs).map(([name, input]) => [name, at(input)]));
  return applied(node.origin, values) ?? node.value;
}

function contribution(leaf: Leaf, spread: Length): Contribution {
  return { name: leaf.name, leaf: leaf.node, place: writtenPlaces(leaf.node)[0], spread };
}

function sorted(contributions: readonly Contribution[]): readonly Contribution[] {
  return [...contributions].sort((a, b) => compare(b.spread, a.spread));
}
