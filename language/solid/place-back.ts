import type { Length } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { add, less, over, subtract, zero } from "../core/rational.ts";
import { fallback } from "../derive/defaults.ts";
import { type Range, span, spanTo } from "./box.ts";
import { lay, machined } from "./lay.ts";
import { joined, loose, type MateDraft } from "./mate.ts";
import { betweenSides, innerEnd, type Laid, type Shell } from "./shell.ts";
import type { Draft } from "./solid.ts";

/** The back, applied, in the rabbets of the sides, or with its play in their grooves. */
export function backOf(shell: Shell, lyingParts: readonly Draft[]): Laid {
  const piece = shell.pool.take({ name: "back" });
  if (piece === undefined) return { drafts: [], mates: [] };
  const { part } = piece;
  const [left, right] = shell.sides;
  const end = left.outline.z.to;
  const grooved = machined(left.part, "groove", "back edge");
  const rabbeted = machined(left.part, "rabbet", "back edge");
  const held = grooved ?? rabbeted;
  const z =
    held === undefined
      ? span(end, part.thickness.value)
      : spanTo(subtract(end, held.from?.value ?? zero), part.thickness.value);
  const y = spanTo(shell.high, part.length.value);
  const x = grooved === undefined ? backX(shell, part, rabbeted?.deep?.value) : centred(shell.wide, part.width.value);
  const draft = lay(shell.home, piece, x, y, z);
  if (draft === undefined) return { drafts: [], mates: [] };
  const room = { least: zero, most: fallback("case.grooveTrim").value, how: "play" as const };
  const ends =
    held === undefined
      ? [...joined(draft, left, "z", -1), ...joined(draft, right, "z", -1)]
      : grooved === undefined
        ? [...joined(draft, left, "x", -1), ...joined(draft, right, "x", 1)]
        : [...loose(draft, left, "x", -1, room), ...loose(draft, right, "x", 1, room)];
  return { drafts: [draft], mates: [...ends, ...lyingParts.flatMap((one) => behindPart(shell, draft, one))] };
}

/** The front stretcher of an open top does not reach the back. */
function behindPart(shell: Shell, back: Draft, part: Draft): readonly MateDraft[] {
  return part.part.name === "stretcher" && less(part.outline.z.to, innerEnd(shell)) ? [] : joined(back, part, "z", -1);
}

function backX(shell: Shell, part: Part, rabbet: Length | undefined): Range {
  return rabbet === undefined ? span(zero, part.width.value) : span(subtract(shell.thick, rabbet), part.width.value);
}

function centred(whole: Length, long: Length): Range {
  return span(over(subtract(whole, long), 2), long);
}

/** The kick stands against the back of its notches, over the whole width. */
export function kickOf(shell: Shell, bottom: Draft | undefined): Laid {
  const piece = shell.pool.take({ name: "kick" });
  const notch = machined(shell.sides[0].part, "notch", "kick");
  if (piece === undefined || notch?.wide === undefined) return { drafts: [], mates: [] };
  const { part } = piece;
  const z = spanTo(add(shell.front, notch.wide.value), part.thickness.value);
  const draft = lay(shell.home, piece, span(zero, part.length.value), span(zero, part.width.value), z);
  if (draft === undefined) return { drafts: [], mates: [] };
  const sides = shell.sides.flatMap((side) => joined(draft, side, "z", 1));
  return { drafts: [draft], mates: [...sides, ...joined(draft, bottom, "y", 1)] };
}

/** Nailers lie behind a back in grooves, and before any other. */
export function nailersOf(
  shell: Shell,
  back: Draft | undefined,
  bottom: Draft | undefined,
  top: Draft | undefined,
): Laid {
  const pieces = [0, 1, 2].flatMap(() => shell.pool.take({ name: "nailer" }) ?? []);
  const ledge = machined(shell.sides[0].part, "groove", "back edge")?.from?.value;
  const low = ledge === undefined ? (bottom?.outline.y.to ?? shell.floor) : shell.floor;
  const high = ledge === undefined ? (top?.outline.y.from ?? shell.high) : shell.high;
  const end = ledge === undefined ? innerEnd(shell) : shell.sides[0].outline.z.to;
  const drafts = pieces.flatMap((piece, index) => {
    const { part } = piece;
    const wide = part.width.value;
    const middle = over(subtract(add(low, high), wide), 2);
    const y = index === 0 ? spanTo(high, wide) : index === 1 ? span(low, wide) : span(middle, wide);
    const z = spanTo(end, part.thickness.value);
    return lay(shell.home, piece, span(shell.thick, part.length.value), y, z) ?? [];
  });
  const mates = drafts.flatMap((draft) => [
    ...betweenSides(shell, draft),
    ...joined(draft, back, "z", ledge === undefined ? 1 : -1),
  ]);
  return { drafts, mates };
}
