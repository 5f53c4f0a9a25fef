import { fileName } from "../core/file-name.ts";
import type { Length, Reading } from "../core/length.ts";
import { mixedText, showText, toMillimetres } from "../core/length.ts";
import { ratio, toNumber } from "../core/rational.ts";
import type { Origin, Sourced } from "../core/sourced.ts";
import type { Span } from "../core/span.ts";
import { poundInKilograms } from "../published/lifting.ts";
import { whyChain, whyLine } from "../view/why.ts";

/** How sizes are told: in whose units, and from which file. */
export interface Telling {
  readonly reading: Reading;
  readonly uri: string;
}

/** A size with its unit, as the tape shows it: `14 1/2 in`, `7 5/32 − in` where it is a hair over. */
export function sizeText(length: Length, { units, step }: Reading): string {
  return `${showText(length, { units, step })} ${units === "inches" ? "in" : "mm"}`;
}

/** Width, height and depth, those that are known. */
export function threeText(sizes: readonly (Sourced<Length> | undefined)[], reading: Reading): string {
  const known = sizes.flatMap((size) => (size === undefined ? [] : [showText(size.value, reading)]));
  return `${known.join(" × ")} ${reading.units === "inches" ? "in" : "mm"}`;
}

/** Pounds as the file's maker weighs. */
export function weightText(pounds: number, { units }: Reading): string {
  return units === "inches" ? `${tenths(pounds)} lb` : `${tenths(pounds * poundInKilograms)} kg`;
}

function tenths(value: number): string {
  return String(Number(value.toFixed(1)));
}

/** A small distance in decimals. */
export function smallText(inches: number, { units }: Reading): string {
  return units === "inches" ? `${inches.toFixed(3)} in` : `${(inches * 25.4).toFixed(1)} mm`;
}

/** A distance that was reckoned and not measured, down to an eighth of an inch or a millimetre. */
export function spanText(inches: number, { units }: Reading): string {
  return units === "inches"
    ? `${mixedText(ratio(Math.floor(inches * 8 + nearly), 8))} in`
    : `${Math.floor(inches * 25.4 + nearly)} mm`;
}

/** What the last digits of a double may lack. */
const nearly = 1e-6;

/** The exact size in the other units, for people who have the other tape at hand. */
export function otherUnits(length: Length, { units }: Reading): string {
  const millimetres = toNumber(toMillimetres(length));
  return units === "inches" ? `${trimmed(millimetres)} mm` : `${trimmed(millimetres / 25.4)} in`;
}

function trimmed(value: number): string {
  return String(Number(value.toFixed(3)));
}

/** The whole origin of a size as a list in Markdown, inputs below what they give. */
export function explained(name: string, value: Sourced<unknown>, telling: Telling): string {
  return chain(name, value, telling, deepest);
}

/** The first step of it alone. */
export function explainedBriefly(name: string, value: Sourced<unknown>, telling: Telling): string {
  return chain(name, value, telling, 0);
}

/** Further down no one reads. */
const deepest = 6;

function chain(name: string, value: Sourced<unknown>, telling: Telling, levels: number): string {
  const unit = telling.reading.units === "inches" ? "in" : "mm";
  return whyChain(name, value, telling.reading, levels)
    .map((step) => {
      const size = step.because === "" ? step.size : `${step.size} ${unit}`;
      return `${"  ".repeat(step.depth)}- ${escaped(step.name)} **${escaped(size)}**${origin(step.value, telling)}`;
    })
    .join("\n");
}

function origin(value: Sourced<unknown>, telling: Telling): string {
  const { origin } = value;
  switch (origin.kind) {
    case "written":
      return ` — written${place(origin.span, telling.uri)}`;
    case "default":
      return ` — default: ${origin.tag}, ${escaped(origin.because)}${origin.source === undefined ? "" : ` (${escaped(origin.source)})`}`;
    case "derived":
      return ` = ${escaped(whyLine(value as Sourced<Length>, telling.reading))}${standing(origin)}`;
  }
}

/** What a rule rests on, where it is more than the arithmetic of solid bodies. */
function standing({ rule }: Extract<Origin, { kind: "derived" }>): string {
  if (rule.source !== undefined) return ` — ${rule.tag}: ${escaped(rule.source)}`;
  return rule.tag === "geometry" ? "" : ` — ${rule.tag}`;
}

/** A link to where something is written; the beginning of a file is no place. */
function place(span: Span, uri: string): string {
  if (span.end === 0) return "";
  const file = span.uri === uri ? "" : `${fileName(span.uri)} `;
  return ` in [${escaped(file)}line ${span.line + 1}](${span.uri}#L${span.line + 1})`;
}

/** Text that Markdown shows as it is. */
export function escaped(text: string): string {
  return text.replace(/[\\`*_{}[\]<>#|~]/g, (sign) => `\\${sign}`);
}
