import type { Length, Reading } from "../core/length.ts";
import { asMade, exactText } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import type { Sourced } from "../core/sourced.ts";

/** What is cut into a part, and what else to mind, one line each. */
export function notesOf(part: Part, reading: Reading): readonly string[] {
  const notes = part.machining.map((one) => machiningText(one, reading));
  if (part.cutToFit !== undefined) notes.push(`cut to fit: ${part.cutToFit}`);
  if (part.note !== undefined) notes.push(part.note);
  return notes;
}

function machiningText(one: Machining, reading: Reading): string {
  const size = sizeText(one, reading);
  const count = one.count === undefined || one.count === 1 ? "" : `${one.count} × `;
  const from = one.from === undefined ? "" : `, ${lengthText(one, one.from, reading)} from the edge`;
  const note = one.note === undefined ? "" : ` (${one.note})`;
  return `${count}${one.kind}${size}, ${one.where}${from}${note}`;
}

function sizeText(one: Machining, reading: Reading): string {
  const text = (value: Sourced<Length> | undefined, word: string): string =>
    value === undefined ? "" : ` ${lengthText(one, value, reading)} ${word}`;
  return `${text(one.wide, "wide")}${text(one.deep, "deep")}`;
}

/** A cup is bored and set out in millimetres. */
function lengthText({ kind }: Machining, { value }: Sourced<Length>, { units }: Reading): string {
  return kind === "cup" && units === "inches" ? asMade(value, units) : exactText(value, units);
}
