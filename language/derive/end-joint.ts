import type { Length } from "../core/length.ts";
import type { Machining } from "../core/part.ts";
import { divide, floor, isPositive, subtract, times } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { fallback } from "./defaults.ts";

/** What is bored into both ends of a panel that stands between others, for pocket screws or dowels; nothing for another joint. */
export function endJoint(joint: string | undefined, wide: Sourced<Length>): readonly Machining[] {
  if (joint === "dowels")
    return [{ kind: "holes", where: "both ends", count: 2 * atEachEnd(wide.value), note: "dowels" }];
  if (joint !== "pocket screws") return [];
  return [{ kind: "pockets", where: "outside face, both ends", count: 2 * atEachEnd(wide.value) }];
}

/** So many that no two are farther apart than is usual, two at least. */
function atEachEnd(wide: Length): number {
  const clear = subtract(wide, times(fallback("pockets.edge").value, 2));
  const apart = fallback("pockets.apart").value;
  const gaps = divide(clear, apart);
  if (gaps === undefined || !isPositive(gaps)) return 2;
  const whole = floor(gaps);
  return Math.max(2, Number(isPositive(subtract(gaps, { n: whole, d: 1n })) ? whole + 1n : whole) + 1);
}
