import type { Check } from "../check.ts";
import { finding } from "../check.ts";
import { isSettled } from "../stock/used.ts";

/** An opening should get something: a box, a front, a door or a shelf. */
export const openingShouldBeUsed: Check = {
  codes: ["opening/unused"],
  run: (context, model) => {
    const { boxes, fronts, shelves } = context.design;
    const fills = [...boxes, ...fronts, ...shelves];
    if (fills.length === 0 || !isSettled(context, model)) return [];
    const filled = new Set(fills.flatMap((block) => block.openings.map((word) => word.text)));
    return model.openings.flatMap(({ name }) =>
      filled.has(name.text)
        ? []
        : [
            finding({
              code: "opening/unused",
              severity: "hint",
              span: name.span,
              message: `nothing goes into "${name.text}" or covers it`,
              reason:
                "An opening that is left open on purpose is rare beside others that are filled; one forgotten is not.",
              remedy: "Give it a box, a front, a door or a shelf; or allow it, if it stays open.",
            }),
          ],
    );
  },
};
