import type { Length } from "../core/length.ts";
import { add, subtract, zero } from "../core/rational.ts";
import type { Stock } from "../derive/model.ts";
import { type Home, machined, type Pool } from "./lay.ts";
import { joined, type MateDraft } from "./mate.ts";
import type { Draft } from "./solid.ts";

/** Solids laid, and the faces of theirs that are meant to meet. */
export interface Laid {
  readonly drafts: readonly Draft[];
  readonly mates: readonly MateDraft[];
}

/** What the panels of a case all lie by. */
export interface Shell {
  readonly home: Home;
  readonly pool: Pool;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly wide: Length;
  readonly high: Length;
  /** Where the panels begin behind a face frame. */
  readonly front: Length;
  readonly floor: Length;
  readonly sides: readonly [Draft, Draft];
  readonly thick: Length;
}

/** A part that lies from one side of a case to the other. */
export function betweenSides({ sides }: Shell, part: Draft): readonly MateDraft[] {
  return [...joined(part, sides[0], "x", -1), ...joined(part, sides[1], "x", 1)];
}

/** Where what stands inside the case ends at the back: before the back, or with the sides. */
export function innerEnd({ sides }: Shell): Length {
  const { part, outline } = sides[0];
  const back = machined(part, "rabbet", "back edge") ?? machined(part, "groove", "back edge");
  return subtract(outline.z.to, add(back?.wide?.value ?? zero, back?.from?.value ?? zero));
}
