import { finding } from "../../fit/check.ts";
import type { DryFitCheck } from "./check.ts";
import { nameOf } from "./names.ts";

/** Every part should be held by something, or at least touch something. */
export const partsShouldBeHeld: DryFitCheck = {
  codes: ["dryfit/adrift"],
  run: (_context, { adrift, gaps }) => {
    // A part that should meet another and does not is told as that.
    const told = new Set(gaps.filter(({ a }) => a.part.name !== "shelf").map(({ a }) => a));
    const rest = adrift.filter((solid) => !told.has(solid));
    return rest.map((solid) =>
      finding({
        code: "dryfit/adrift",
        severity: "warning",
        span: solid.part.source,
        message: `${nameOf(solid)} touches nothing`,
        reason: "Put together, no face of it meets another part, and no hardware is known to hold it.",
        remedy: "Check its size and place, or say what carries it.",
      }),
    );
  },
};
