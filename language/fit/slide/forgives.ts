import type { Length } from "../../core/length.ts";
import { subtract, zero } from "../../core/rational.ts";
import type { SlideModel } from "../../derive/model.ts";
import { limits } from "../limits.ts";

/** How much more and how much less than its clearance a slide forgives on each side; the usual amount where none is written. */
export function forgives({ clearance }: SlideModel): { readonly more: Length; readonly less: Length } {
  const { low, high, value } = clearance;
  if (low === undefined || high === undefined) return { more: limits.slideForgives.value, less: zero };
  return { more: subtract(high, value), less: subtract(value, low) };
}
