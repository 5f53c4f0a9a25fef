import { writtenText } from "../../core/length.ts";
import { less } from "../../core/rational.ts";
import { givenSize, size } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say } from "../check.ts";

/** The lap of half-blind dovetails must be thinner than the front that it is left on. */
export const lapMustBeThinnerThanFront: Check = {
  codes: ["joint/lap-too-thick"],
  run: (context, { boxes }) =>
    boxes.flatMap((box) => {
      const { corners, lap } = box.whole;
      const place = lap?.measure.span ?? corners?.depth?.span;
      const front = box.parts.find((part) => part.name === "front");
      if (corners?.kind !== "half-blind dovetails" || place === undefined || front === undefined) return [];
      const thick = givenSize(context, lap) ?? size(context, corners.depth);
      if (thick === undefined || less(thick.value, front.thickness.value)) return [];
      const usual = fallback("corner.lap").value;
      const text = writtenText(usual, context.units);
      return [
        finding({
          code: "joint/lap-too-thick",
          severity: "error",
          span: place,
          message: `a lap of ${say(context, thick.value)} is left on a front ${say(context, front.thickness.value)} thick`,
          reason: "No wood is left for the tails to go into.",
          remedy: `Leave ${say(context, usual)}.`,
          related: [{ span: front.source, message: "the front" }],
          fixes: less(usual, front.thickness.value) ? [rewrite(place, text)] : [],
        }),
      ];
    }),
};
