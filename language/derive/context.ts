import type { Design, Given, SlidesBlock } from "../core/design.ts";
import type { Measure } from "../core/expr.ts";
import type { Finding, Fix, Related } from "../core/finding.ts";
import type { Length, Reading, Units } from "../core/length.ts";
import { decimalText, withUnit } from "../core/length.ts";
import type { Rational } from "../core/rational.ts";
import { isPositive, less, times, zero } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Word } from "../core/span.ts";
import { fallback } from "./defaults.ts";
import type { LookUp, Trouble } from "./evaluate.ts";
import { countOf, isTrouble, lengthOf, lengthOfExpr } from "./evaluate.ts";
import type { NameKind, Names } from "./names.ts";
import { namesOf, nearest } from "./names.ts";

/** What the derivation of one design carries along. Findings are gathered; nothing throws. */
export interface Context {
  readonly design: Design;
  readonly names: Names;
  readonly units: Units;
  readonly reading: Reading;
  readonly findings: Finding[];
  /** Distances worked out so far, by the measure that states them. */
  readonly distances: Map<Measure, Sourced<Length> | undefined>;
  /** Slide lengths by their block. */
  readonly series: Map<SlidesBlock, readonly Sourced<Length>[]>;
  /** Set once the things that can be read by name are known. */
  lookUp: LookUp;
}

export function contextOf(design: Design): Context {
  const names = namesOf(design);
  const findings = [...design.findings, ...names.findings];
  const step = fallback(design.units === "inches" ? "reading.inches" : "reading.millimetres").value;
  const context = {
    design,
    names,
    units: design.units,
    reading: { units: design.units, step },
    findings,
    lookUp: unready,
    series: new Map(),
    distances: new Map(),
  };
  const written = design.reading === undefined ? undefined : size(context, design.reading);
  return written === undefined ? context : { ...context, reading: { units: design.units, step: written.value } };
}

const unready: LookUp = (path) => ({
  code: "name/unknown-length",
  span: path[0]!.span,
  message: "a reading must be written as a number",
});

/** A finding with its usual fields empty. */
export function found(
  context: Context,
  finding: Omit<Finding, "related" | "fixes"> & {
    readonly related?: readonly Related[];
    readonly fixes?: readonly Fix[];
  },
): void {
  context.findings.push({ related: [], fixes: [], ...finding });
}

/** A size as written: positive and below any workshop, or a finding and `undefined`. */
export function size(context: Context, measure: Measure | undefined): Sourced<Length> | undefined {
  const value = distance(context, measure);
  if (value === undefined || measure === undefined) return undefined;
  if (isPositive(value.value)) return value;
  found(context, {
    code: "length/not-positive",
    severity: "error",
    span: measure.span,
    message: `this size is ${withUnit(value.value, context.units)}`,
    reason: "Nothing can be cut to a size of nought or less.",
    remedy: "Write a size above nought.",
  });
  return undefined;
}

/** No length in a build file may be more: a thousand feet. */
export const longest: Length = times({ n: 12n, d: 1n }, 1000);
const shortest = times(longest, -1);

/** A distance as written, which may be nought but not less. Worked out once: one block serves many boxes. */
export function distance(context: Context, measure: Measure | undefined): Sourced<Length> | undefined {
  if (measure === undefined) return undefined;
  if (context.distances.has(measure)) return context.distances.get(measure);
  const value = evaluatedDistance(context, measure);
  context.distances.set(measure, value);
  return value;
}

function evaluatedDistance(context: Context, measure: Measure): Sourced<Length> | undefined {
  const value = lengthOf(measure, context.lookUp);
  if (isTrouble(value)) return reportTrouble(context, value);
  if (less(longest, value.value) || less(value.value, shortest)) return tooLarge(context, measure);
  return value;
}

function tooLarge(context: Context, measure: Measure): undefined {
  found(context, {
    code: "length/too-large",
    severity: "error",
    span: measure.span,
    message: "this is more than a thousand feet",
    reason: "No cabinet is that large; a unit or a point is probably missing.",
    remedy: "Check the number and its unit.",
  });
  return undefined;
}

/** As `size`, for a property that may be missing. */
export function givenSize(context: Context, given: Given | undefined): Sourced<Length> | undefined {
  return size(context, given?.measure);
}

/** A distance that may be nought (a gap, a clearance), or a finding where it is less. */
export function givenDistance(context: Context, given: Given | undefined): Sourced<Length> | undefined {
  const value = distance(context, given?.measure);
  if (value === undefined || given === undefined || !less(value.value, zero)) return value;
  found(context, {
    code: "length/not-positive",
    severity: "error",
    span: given.measure.span,
    message: `this is ${withUnit(value.value, context.units)}`,
    reason: `"${given.key.text}" is a distance; it cannot be less than nought.`,
    remedy: "Write nought or more.",
  });
  return undefined;
}

/** A whole number of pieces from 0 to `most`, or a finding and `undefined`. */
export function pieces(context: Context, expr: Parameters<typeof countOf>[0], most: number): number | undefined {
  const value = countOf(expr);
  if (isTrouble(value)) return reportTrouble(context, value);
  if (value.d === 1n && 0n <= value.n && value.n <= BigInt(most)) return Number(value.n);
  found(context, {
    code: "length/not-a-count",
    severity: "error",
    span: expr.span,
    message: "this is not a number of pieces",
    reason: `Pieces are counted in whole numbers, here from 0 to ${most}.`,
    remedy: "Write a whole number.",
  });
  return undefined;
}

/** A plain number such as pounds or percents, not negative; or a finding and `undefined`. */
export function amount(context: Context, expr: Parameters<typeof countOf>[0]): Rational | undefined {
  const value = countOf(expr);
  if (isTrouble(value)) return reportTrouble(context, value);
  if (!less(value, zero)) return value;
  found(context, {
    code: "length/not-positive",
    severity: "error",
    span: expr.span,
    message: `this is ${decimalText(value, 4)}`,
    reason: "Prices, weights and shares are nought or more.",
    remedy: "Write a number of nought or more.",
  });
  return undefined;
}

/** The length that an expression states, with its place. */
export function lengthIn(context: Context, expr: Parameters<typeof lengthOfExpr>[0]): Sourced<Length> | undefined {
  const value = lengthOfExpr(expr, context.units, context.lookUp);
  return isTrouble(value) ? reportTrouble(context, value) : value;
}

function reportTrouble(context: Context, trouble: Trouble): undefined {
  // Half a line is reported by the parser already.
  if (trouble.code === "length/broken") return undefined;
  if (
    context.findings.some(
      (finding) =>
        finding.code === trouble.code &&
        finding.span.start === trouble.span.start &&
        finding.span.uri === trouble.span.uri,
    )
  ) {
    return undefined;
  }
  const { code, span, message } = trouble;
  found(context, { code, span, message, severity: "error", ...troubleTexts[code], ...asStock(context, trouble) });
  return undefined;
}

/** The name of a stock where a length is asked for: `partition birch`. */
function asStock(context: Context, { code, name }: Trouble): { readonly message?: string; readonly remedy?: string } {
  if (code !== "name/unknown-length" || name === undefined || !context.names.of.stock.has(name)) return {};
  return {
    message: `"${name}" is a stock, and a length is asked for here`,
    remedy: `Write ${name}.thickness for how thick it is; what a thing is made of is said by a property of the block, such as partitions STOCK.`,
  };
}

const troubleTexts: Record<Trouble["code"], { readonly reason: string; readonly remedy: string }> = {
  "length/over-nothing": { reason: "A length over nought has no size.", remedy: "Divide by something else." },
  "length/not-a-length": {
    reason: "Only lengths add up to lengths; a plain number can multiply or divide one.",
    remedy: "Check what each name stands for.",
  },
  "length/broken": { reason: "", remedy: "" },
  "length/too-many-digits": {
    reason: "No size of a workshop needs them; exact arithmetic with ever more digits would stop the editor.",
    remedy: "Check the numbers.",
  },
  "name/unknown-length": {
    reason: "The size cannot be worked out without it.",
    remedy: 'Name it with "let", or check the spelling.',
  },
  "length/circular": { reason: "Each needs the other to be known first.", remedy: "Write one of them as a number." },
  "length/too-far": {
    reason: "No drawing takes a size through so many names; following them without end would stop the editor.",
    remedy: "Write it as a number.",
  },
};

/** The thing a word names, or a finding that proposes the nearest name there is. */
export function resolve<T>(
  context: Context,
  kind: NameKind,
  word: Word,
  things: Pick<ReadonlyMap<string, T>, "get">,
): T | undefined {
  const thing = things.get(word.text);
  if (thing !== undefined) return thing;
  // A thing that is named but could not be made has its own finding.
  if (context.names.of[kind].has(word.text)) return undefined;
  const meant = nearest(word.text, context.names.of[kind].keys());
  const given = [...context.names.of[kind].keys()];
  found(context, {
    code: `name/unknown-${kind}`,
    severity: "error",
    span: word.span,
    message: `there is no ${singular[kind]} called "${word.text}"`,
    reason:
      given.length === 0
        ? `No ${singular[kind]} is described in this file or the files it uses.`
        : `These are described: ${list(given)}.`,
    remedy:
      meant === undefined
        ? `Describe it, or write a name that is described.`
        : `Write "${meant}", or describe "${word.text}".`,
    fixes:
      meant === undefined ? [] : [{ title: `Write ${meant}`, edits: [{ span: word.span, text: meant }], safe: false }],
  });
  return undefined;
}

function list(names: readonly string[]): string {
  const shown = names.slice(0, 8).join(", ");
  return names.length <= 8 ? shown : `${shown} and ${names.length - 8} more`;
}

const singular: Record<NameKind, string> = {
  stock: "stock",
  slides: "slide",
  hinges: "hinge",
  screws: "screw",
  opening: "opening",
  case: "case",
  length: "length",
  part: "part",
};
