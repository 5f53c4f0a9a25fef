import type { Check } from "../check.ts";
import { finding } from "../check.ts";
import { isSettled, usedStocks } from "./used.ts";

/** A stock that a build describes itself should be used by it. The shop's rack, in a file of its own, may hold more. */
export const stockShouldBeUsed: Check = {
  codes: ["stock/unused"],
  run: (context, model) => {
    if (!isSettled(context, model)) return [];
    const used = usedStocks(context, model);
    return [...model.stocks.values()].flatMap(({ name, block }) =>
      used.has(name) || block.span.uri !== context.design.uri
        ? []
        : [
            finding({
              code: "stock/unused",
              severity: "hint",
              span: block.name.span,
              message: `nothing is made of "${name}"`,
              reason: "A stock that is described and not used is often a part that names another by mistake.",
              remedy: "Take it out, or move it to the shop's own file.",
              fixes: [{ title: "Take it out", edits: [{ span: block.span, text: "" }], safe: false }],
            }),
          ],
    );
  },
};
