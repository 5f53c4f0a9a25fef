import { finding, sayApart, sayLoad, sayWeight } from "../../fit/check.ts";
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
      const [sags, limited] = sayApart(context, sag, allowed);
      return [
        finding({
          code: kind === "rail" ? "load/rail-sags" : "load/case-bottom-sags",
          severity: "warning",
          span: part.source,
          message: `under ${sayWeight(context, load)} the ${part.name} of ${part.of} sags ${sags} over ${about(context, span)}; ${limited} is the limit${most}`,
          reason:
            kind === "rail"
              ? "A slide in the middle of a box stands on the rail below it (Wood Handbook, Table 9-1)."
              : `What stands on it is taken at ${sayLoad(context, 40)}, ${sayWeight(context, 200)} at most (${sagLimits[limit].source}).`,
          remedy: "Put a support under its middle, or use thicker or stiffer stock.",
        }),
      ];
    }),
};
