import type { Finding } from "../../core/finding.ts";
import type { Context } from "../../derive/context.ts";
import { finding, sayWeight } from "../../fit/check.ts";
import type { Standing } from "../stability.ts";
import type { DryFitCheck } from "./check.ts";
import { about } from "./names.ts";

/** A chest whose weight comes before its feet when its drawers are open must be fixed to the wall. */
export const chestMustNotTip: DryFitCheck = {
  codes: ["stability/tips"],
  run: (context, { standing }) => standing.flatMap((one) => tips(context, one)),
};

function tips(context: Context, { one, balances, scope }: Standing): readonly Finding[] {
  const over = balances.find(({ behind, drawers }) => drawers !== "shut" && behind < 0);
  if (over === undefined || scope === undefined) return [];
  const free = one.block.freestanding;
  // In the standard's scope it is told so as it is; low pieces are left out here as they are there.
  if (!scope.tall || (free !== undefined && scope.inScope)) return [];
  return [
    finding({
      code: "stability/tips",
      severity: free === undefined ? "hint" : "warning",
      span: free?.span ?? one.block.name.span,
      message: `with all drawers ${over.drawers === "open, loaded" ? "open and loaded" : "open and empty"}, the weight of "${one.name}" (about ${sayWeight(context, over.pounds)}, hardware not counted) lies ${about(context, -over.behind)} before its feet: it goes over unless it is fixed`,
      reason: `${scope.caution.value}`,
      remedy:
        "Fix it to a stud of the wall with an anchor before anything is put into it, and fit slides that let one drawer open at a time. The standard names its own tests; none of them is made here.",
    }),
  ];
}
