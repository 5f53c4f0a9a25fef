import { expect, test } from "vitest";
import { add, ratio } from "../../../language/core/rational.ts";
import type { Rule } from "../../../language/core/sourced.ts";
import { derived, walk, written, writtenPlaces } from "../../../language/core/sourced.ts";
import { holds, spanFrom, startOfFile } from "../../../language/core/span.ts";

const rule: Rule = { gives: "both", formula: "{a} + {b}", tag: "geometry" };
const at = (start: number) => ({
  ...startOfFile("file:///a.scant"),
  start,
  end: start + 2,
  column: start,
  endColumn: start + 2,
});

test("a derived number has its rule, its named inputs and the arithmetic to do it again", () => {
  const [a, b] = [written(ratio(2), at(0), "2"), written(ratio(3), at(4), "3")];
  const both = derived(rule, { a, b }, (of) => add(of.a, of.b));
  expect(both.value).toEqual(ratio(5));
  expect(both.origin).toMatchObject({ kind: "derived", rule, inputs: { a, b } });
  const apply = both.origin.kind === "derived" ? (both.origin.apply as (of: unknown) => unknown) : undefined;
  expect(apply?.({ a: ratio(10), b: ratio(1) })).toEqual(ratio(11));
});

test("the written places are found through every step, nearest first, each once", () => {
  const [a, b] = [written(ratio(2), at(0), "2"), written(ratio(3), at(4), "3")];
  const both = derived(rule, { a, b }, (of) => add(of.a, of.b));
  const more = derived(rule, { a: both, b: a }, (of) => add(of.a, of.b));
  expect(writtenPlaces(more).map((span) => span.start)).toEqual([0, 4]);
});

test("each node is visited once, though it is used in many places", () => {
  let value = derived(rule, { a: written(ratio(1), at(0), "1"), b: written(ratio(1), at(4), "1") }, (of) =>
    add(of.a, of.b),
  );
  // Two to the sixtieth paths lead down this tree.
  for (let step = 0; step < 60; step++) value = derived(rule, { a: value, b: value }, (of) => add(of.a, of.b));
  let visits = 0;
  walk(value, () => visits++);
  expect(visits).toBe(63);
});

test("a place holds the offsets from its start to just behind its end", () => {
  const span = spanFrom(at(3), at(9));
  expect([span.start, span.end, span.endColumn]).toEqual([3, 11, 11]);
  expect([2, 3, 11, 12].map((offset) => holds(span, "file:///a.scant", offset))).toEqual([false, true, true, false]);
  expect(holds(span, "file:///b.scant", 5)).toBe(false);
});
