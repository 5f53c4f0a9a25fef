import { finding } from "../../fit/check.ts";
import type { DryFitCheck } from "./check.ts";
import { about, nameOf } from "./names.ts";

/** A solid inset front should not swell tight in its opening. */
export const insetFrontShouldNotBind: DryFitCheck = {
  codes: ["wood/inset-binds"],
  run: (context, { movement }) =>
    movement.binding.flatMap(({ solid, grows, room }) =>
      grows <= room
        ? []
        : [
            finding({
              code: "wood/inset-binds",
              severity: "warning",
              span: solid.part.source,
              message: `${nameOf(solid)} swells by ${about(context, grows)} in the damp season; the gaps round it leave ${about(context, room)}`,
              reason: "A front that has no room left jams in its opening (Wood Handbook, Eq. 13-2 and Table 13-5).",
              remedy: "Make its gap wider, use frame and panel, or a sheet.",
            }),
          ],
    ),
};
