import type { Length } from "../core/length.ts";
import { add, equal, isZero, one, type Rational, subtract } from "../core/rational.ts";
import { derived, type Rule, type Sourced } from "../core/sourced.ts";

/** Sizes that turned out otherwise than derived: the size as it was, and what it is. */
export type Turned = ReadonlyMap<Sourced<Length>, Sourced<Length>>;

const rule: Rule = {
  gives: "derived again",
  formula: "{size} with what is on the bench in place of what was derived",
  tag: "geometry",
};

/** The size worked out again with others in its tree as they turned out; the same object where nothing in it did. */
export function derivedAgain(size: Sourced<Length>, turned: Turned): Sourced<Length> {
  if (turned.size === 0) return size;
  const itself = turned.get(size);
  if (itself !== undefined) return itself;
  const entries = [...turned].map(([from, to], index) => ({ name: `as cut ${index + 1}`, from, to }));
  const worked = (sizeFor: (entry: (typeof entries)[number]) => Length): Length =>
    valueWith(size, new Map(entries.map((entry) => [entry.from, sizeFor(entry)])));
  if (
    equal(
      worked(({ to }) => to.value),
      size.value,
    )
  )
    return size;
  const inputs: Record<string, Sourced<Length>> = {
    size,
    ...Object.fromEntries(entries.map(({ name, to }) => [name, to])),
  };
  return derived(rule, inputs, (of) => worked(({ name }) => of[name]!));
}

/**
 * How much a size grows for each inch that another in its tree does; `undefined` where it does not hang on it, or not
 * evenly.
 */
export function slopeOf(size: Sourced<Length>, on: Sourced<Length>): Rational | undefined {
  const at = (value: Length): Length => valueWith(size, new Map([[on, value]]));
  const up = subtract(at(add(on.value, one)), size.value);
  const down = subtract(size.value, at(subtract(on.value, one)));
  return isZero(up) || !equal(up, down) ? undefined : up;
}

/** The value of a size with some nodes of its tree set. */
function valueWith(size: Sourced<Length>, set: ReadonlyMap<Sourced<unknown>, Length>): Length {
  const done = new Map<Sourced<unknown>, unknown>();
  const at = (node: Sourced<unknown>): unknown => {
    if (done.has(node)) return done.get(node);
    const value = set.get(node) ?? again(node, at);
    done.set(node, value);
    return value;
  };
  return at(size) as Length;
}

/** A node none of whose inputs changed keeps its value: rules need not be asked again. */
function again(node: Sourced<unknown>, at: (node: Sourced<unknown>) => unknown): unknown {
  const { origin } = node;
  if (origin.kind !== "derived") return node.value;
  const values = Object.fromEntries(Object.entries(origin.inputs).map(([name, input]) => [name, at(input)]));
  const isSame = Object.entries(origin.inputs).every(([name, input]) => values[name] === input.value);
  return isSame ? node.value : origin.apply(values as never);
}
