import { finding, number } from "../../fit/check.ts";
import { sagLimits } from "../../published/shelves.ts";
import type { DryFitCheck } from "./check.ts";
import { about } from "./names.ts";

/** The bottom of a case and a rail under a slide should not sag past the published limit. Shelves and boxes have checks of their own. */
export const caseShouldNotSag: DryFitCheck = {
  codes: ["load/case-bottom-sags", "load/rail-sags"],
  run: (context, { loads }) =>
    loads.bending.flatMap(({ kind, part, load, span, sag, allowed, longest, limit }) => {
      if ((kind !== "case bottom" && kind !== "rail") || sag <= allowed) return [];
      const reach = longest();
      const most = reach === undefined ? "" : `; ${about(context, reach)} is the longest span for this load`;
      return [
        finding({
          code: kind === "rail" ? "load/rail-sags" : "load/case-bottom-sags",
          severity: "warning",
          span: part.source,
          message: `under ${number(load, 0)} lb the ${part.name} of ${part.of} sags ${about(context, sag)} over ${about(context, span)}; ${about(context, allowed)} is the limit${most}`,
          reason:
            kind === "rail"
              ? "A slide in the middle of a box stands on the rail below it (Wood Handbook, Table 9-1)."
              : `What stands on it is taken at 40 lb per square foot, 200 lb at most (${sagLimits[limit].source}).`,
          remedy: "Put a support under its middle, or use thicker or stiffer stock.",
        }),
      ];
    }),
};
