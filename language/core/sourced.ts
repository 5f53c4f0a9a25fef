import type { Span } from "./span.ts";

/** How well a default or a table value is known. */
export type Tag = "published" | "as transcribed" | "common practice" | "from memory" | "geometry";

/** What stands in a build file. `low` and `high` are set where a tolerance or a range was written. */
export interface WrittenOrigin {
  readonly kind: "written";
  readonly span: Span;
  readonly text: string;
}

/** What holds when nothing is written: an entry of the defaults table. */
export interface DefaultOrigin {
  readonly kind: "default";
  readonly key: string;
  readonly tag: Tag;
  readonly because: string;
  readonly source: string | undefined;
}

/** What a rule made of named inputs. */
export interface DerivedOrigin {
  readonly kind: "derived";
  readonly rule: Rule;
  readonly inputs: Readonly<Record<string, Sourced<unknown>>>;
  /** Where the arithmetic itself is written, when it stands in a build file. */
  readonly at?: Span;
  /** The rule's own arithmetic, kept so that tolerances can be worked out from the same tree. */
  readonly apply: (values: never) => unknown;
}

export type Origin = WrittenOrigin | DefaultOrigin | DerivedOrigin;

/** A value and where it comes from. No number reaches a person without one. */
export interface Sourced<T> {
  readonly value: T;
  readonly origin: Origin;
  /** The interval that the value lies in, where one was written or measured. */
  readonly low?: T;
  readonly high?: T;
}

/** A rule of construction: what it gives, its formula with input names in braces, and its standing. */
export interface Rule {
  readonly gives: string;
  readonly formula: string;
  readonly tag: Tag;
  readonly source?: string;
}

type Values<I> = { readonly [K in keyof I]: I[K] extends Sourced<infer V> ? V : never };

/** The only way to make a derived number: a rule applied to inputs that all have an origin themselves. */
export function derived<I extends Record<string, Sourced<unknown>>, T>(
  rule: Rule,
  inputs: I,
  apply: (values: Values<I>) => T,
): Sourced<T> {
  const values: Record<string, unknown> = {};
  for (const name in inputs) values[name] = inputs[name]!.value;
  return {
    value: apply(values as Values<I>),
    origin: { kind: "derived", rule, inputs, apply: apply as (values: never) => unknown },
  };
}

/** A value as it stands in a build file. */
export function written<T>(value: T, span: Span, text: string): Sourced<T> {
  return { value, origin: { kind: "written", span, text } };
}

/** Every written place that the value hangs on, nearest first, each once. */
export function writtenPlaces(value: Sourced<unknown>): readonly Span[] {
  const found = new Map<string, Span>();
  walk(value, (origin) => {
    const span = origin.kind === "written" ? origin.span : origin.kind === "derived" ? origin.at : undefined;
    if (span !== undefined) found.set(`${span.uri}:${span.start}`, span);
  });
  return [...found.values()];
}

/** Visits every origin below a value, breadth first, each node of the tree once. */
export function walk(value: Sourced<unknown>, visit: (origin: Origin, value: Sourced<unknown>) => void): void {
  const seen = new Set<Sourced<unknown>>([value]);
  for (const next of seen) {
    visit(next.origin, next);
    if (next.origin.kind === "derived") for (const input of Object.values(next.origin.inputs)) seen.add(input);
  }
}
