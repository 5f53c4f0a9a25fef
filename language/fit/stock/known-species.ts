import { findSpecies, speciesLike } from "../../published/species.ts";
import type { Check } from "../check.ts";
import { finding, rewrite } from "../check.ts";

/** A species must be one that the tables know, or its movement, weight and stiffness cannot be worked out. */
export const speciesShouldBeKnown: Check = {
  codes: ["stock/unknown-species"],
  run: ({ design }) =>
    design.boards.flatMap(({ species }) => {
      if (species === undefined || findSpecies(species.text) !== undefined) return [];
      const like = speciesLike(species.text).slice(0, 5);
      return [
        finding({
          code: "stock/unknown-species",
          severity: "warning",
          span: species.span,
          message:
            1 < like.length
              ? `"${species.text}" can mean several woods: ${like.join(", ")}`
              : `"${species.text}" is not in the tables of woods`,
          reason:
            "How far a panel moves with the seasons, what a door weighs and how a shelf sags follow from the wood.",
          remedy:
            like.length === 0
              ? "Write a wood that behaves like it, and its density if it is known."
              : "Write which one it is.",
          fixes: like.map((name) => rewrite(species.span, name)),
        }),
      ];
    }),
};
