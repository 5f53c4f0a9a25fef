import { finding } from "../../fit/check.ts";
import { yields } from "../wood.ts";
import type { DryFitCheck } from "./check.ts";
import { about, nameOf } from "./names.ts";

/** Solid wood should not be held fast across its grain by what does not move with it. */
export const woodShouldBeFreeAcross: DryFitCheck = {
  codes: ["wood/across-grain"],
  run: (context, { movement }) =>
    movement.restrained.map(({ solid, by, held, moves }) =>
      finding({
        code: "wood/across-grain",
        severity: "warning",
        span: solid.part.source,
        message: `${nameOf(solid)} moves by ${about(context, moves)} over the year where ${nameOf(by)} holds it along ${about(context, held)} across the grain`,
        reason: `Held fast it splits, or pulls the joint apart: about ${about(context, yields)} is what a joint forgives (common practice; movement by the Wood Handbook, Eq. 13-2 and Table 13-5).`,
        remedy:
          solid.part.name === "back"
            ? "Make it of loose boards, each lapped or tongued into the next and fixed along one line, or of a sheet."
            : "Screw it through slots, glue it at one end only, or let its grain run the same way.",
        related: [{ span: by.part.source, message: `${nameOf(by)} comes from here` }],
      }),
    ),
};
