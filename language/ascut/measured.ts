import type { Length, LengthUnit, Units } from "../core/length.ts";
import { inUnit, inUnits, parseCount } from "../core/length.ts";
import { isPositive } from "../core/rational.ts";

/** A size as someone wrote it, and as a build file takes it. */
export interface Measured {
  readonly value: Length;
  readonly text: string;
}

const units: Readonly<Record<string, LengthUnit>> = {
  '"': "in",
  "″": "in",
  in: "in",
  inch: "in",
  inches: "in",
  mm: "mm",
  cm: "cm",
  m: "m",
  ft: "ft",
};

/** The size that a text such as `13 11/16`, `13 11/16"` or `348 mm` gives, in a file of these units; or what is wrong, as a sentence. */
export function sizeIn(text: string, fileUnits: Units): Measured | string {
  const match = /^\s*([\d\s./¼½¾⅐-⅞-]+?)\s*("|″|[a-z]+)?\s*$/i.exec(text);
  const value = match === null ? undefined : parseCount(match[1]!.trim().replace(/\s+/g, " "));
  const word = match?.[2]?.toLowerCase();
  const unit = word === undefined ? undefined : units[word];
  if (match === null || value === undefined || (word !== undefined && unit === undefined))
    return `"${text.trim()}" is no size: write it as the tape reads, 13 11/16 or 348 mm`;
  if (!isPositive(value)) return `"${text.trim()}" is no size that wood can have`;
  const length = unit === undefined ? inUnits(value, fileUnits) : inUnit(value, unit);
  const count = match[1]!.trim().replace(/\s+/g, " ");
  return { value: length, text: unit === undefined ? count : `${count} ${unit}` };
}
