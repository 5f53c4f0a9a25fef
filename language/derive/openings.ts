import type { GivenList, OpeningBlock } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import { largest, smallest } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { derived } from "../core/sourced.ts";
import type { Word } from "../core/span.ts";
import type { Context } from "./context.ts";
import { distance, found, size } from "./context.ts";
import type { Bound, Opening, Side } from "./model.ts";

/** An opening that stands already, from its readings: the smallest governs what goes in, the largest what covers it. */
export function standingOpening(context: Context, block: OpeningBlock): Opening | undefined {
  const wides = sizes(context, block.wide);
  const highs = sizes(context, block.high);
  const deeps = sizes(context, block.deep);
  if (wides.length === 0 || highs.length === 0) {
    lacking(context, block.name, [block.wide === undefined ? "wide" : "", block.high === undefined ? "high" : ""]);
    return undefined;
  }
  return {
    name: block.name,
    wide: least(wides, "width"),
    high: least(highs, "height"),
    widest: most(wides, "width"),
    highest: most(highs, "height"),
    deep: deeps.length === 0 ? undefined : least(deeps, "depth"),
    behindFrame: undefined,
    bounds: boundsOf(context, block),
    framed: block.beside !== undefined,
    case: undefined,
    face: "front",
    rect: undefined,
    span: block.head,
  };
}

function sizes(context: Context, list: GivenList | undefined): readonly Sourced<Length>[] {
  return (list?.values ?? []).flatMap((value) => size(context, value.measure) ?? []);
}

function lacking(context: Context, name: Word, words: readonly string[]): void {
  const missing = words.filter((word) => word !== "");
  if (missing.length === 0) return;
  found(context, {
    code: "opening/no-size",
    severity: "error",
    span: name.span,
    message: `the opening "${name.text}" lacks: ${missing.join(", ")}`,
    reason: "Boxes and fronts are sized from it.",
    remedy: `Measure it in three places and write ${missing.map((word) => `${word} LENGTH, LENGTH, LENGTH`).join(" and ")}.`,
  });
}

function least(values: readonly Sourced<Length>[], what: string): Sourced<Length> {
  return governing(values, `smallest ${what} measured`, smallest);
}

function most(values: readonly Sourced<Length>[], what: string): Sourced<Length> {
  return governing(values, `largest ${what} measured`, largest);
}

function governing(values: readonly Sourced<Length>[], gives: string, pick: typeof smallest): Sourced<Length> {
  const [first, ...rest] = values;
  if (rest.length === 0) return first!;
  const inputs = Object.fromEntries(values.map((value, index) => [`reading ${index + 1}`, value]));
  const formula = `the ${gives.split(" ")[0]} of ${values.map((_, index) => `{reading ${index + 1}}`).join(", ")}`;
  return derived({ gives, formula, tag: "common practice" }, inputs, (of) => {
    const [head, ...tail] = Object.values(of);
    return pick(head!, ...tail);
  });
}

function boundsOf(context: Context, block: OpeningBlock): Readonly<Record<Side, Bound>> {
  const beside = (edge: Side): Bound => {
    const values = block.beside?.values ?? [];
    const written =
      values.find((value) => value.edge?.text === edge) ?? values.find((value) => value.edge === undefined);
    return { member: undefined, outer: false, beside: distance(context, written?.measure), shared: false };
  };
  const unknown: Bound = { member: undefined, outer: false, beside: undefined, shared: false };
  return { left: beside("left"), right: beside("right"), top: unknown, bottom: unknown };
}
