import type { Action, Asked, Offer } from "./action.ts";
import { expandLike } from "./expand-like.ts";
import { extractLet } from "./extract-let.ts";
import { fillOpening } from "./fill-opening.ts";
import { mixedNumber } from "./mixed-number.ts";
import { otherUnits } from "./other-units.ts";
import { writeDerived } from "./write-derived.ts";

const offers: readonly Offer[] = [fillOpening, writeDerived, extractLet, expandLike, mixedNumber, otherUnits];

/** Every change that can be offered at a place, what is wanted most often first. */
export function actionsAt(asked: Asked): readonly Action[] {
  return offers.flatMap((offer) => offer(asked));
}
