import { finding } from "../../fit/check.ts";
import type { DryFitCheck } from "./check.ts";
import { about, nameOf } from "./names.ts";

/** A solid drawer bottom should neither push its sides apart when it is damp nor leave a groove when it is dry. */
export const solidBottomShouldMove: DryFitCheck = {
  codes: ["wood/bottom-bursts", "wood/bottom-slips-out"],
  run: (context, { movement }) =>
    movement.floating.flatMap(({ solid, kind, grows, shrinks, spare, held }) => {
      if (kind !== "bottom" || (0 <= spare && 0 <= held)) return [];
      const bursts = spare < 0;
      return [
        finding({
          code: bursts ? "wood/bottom-bursts" : "wood/bottom-slips-out",
          severity: "warning",
          span: solid.part.source,
          message: bursts
            ? `${nameOf(solid)} swells by ${about(context, grows)} in the damp season, ${about(context, -2 * spare)} more than its grooves leave`
            : `${nameOf(solid)} shrinks by ${about(context, shrinks)} in the dry season and comes ${about(context, -held)} out of a groove`,
          reason: "Solid wood moves across its grain with the seasons (Wood Handbook, Eq. 13-2 and Table 13-5).",
          remedy: bursts
            ? "Give it more play, run its grain from side to side and slide it in from behind, or use a sheet."
            : "Cut the grooves deeper, or use a sheet.",
        }),
      ];
    }),
};
