import { finding, say } from "../../fit/check.ts";
import type { DryFitCheck } from "./check.ts";

/** Drawers of the front and the rear face must fit into the depth of their case together. */
export const opposedDrawersMustFit: DryFitCheck = {
  codes: ["motion/opposed-drawers"],
  run: (context, { opposed }) =>
    opposed.map(({ a, b, by }) =>
      finding({
        code: "motion/opposed-drawers",
        severity: "error",
        span: (a.whole.deep ?? a.whole.slides)?.key.span ?? a.block.head,
        message: `${a.of} and ${b.of} meet back to back: together they take ${say(context, by)} more than the case is deep`,
        reason: "Openings on both faces share one depth; what stands behind both must fit into it.",
        remedy: `Use shorter slides for one of them, by ${say(context, by)} and the room that its slides want behind.`,
        related: [
          { span: b.block.head, message: "the drawer that comes from the other face" },
          { span: b.opening.name.span, message: "its opening" },
        ],
      }),
    ),
};
