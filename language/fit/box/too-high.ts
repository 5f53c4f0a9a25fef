import { boxHeight } from "../../derive/rules/box-height.ts";
import type { Check } from "../check.ts";
import { mustNotPass } from "./within.ts";

/** A box must leave the room that its slides want above and below. */
export const boxMustClearAboveAndBelow: Check = {
  codes: ["box/too-high"],
  run: (context, { boxes }) =>
    boxes.flatMap((box) => {
      const most = boxHeight(box.opening.high, box.slides.above, box.slides.below);
      const reason = "A box is tipped to go onto its slides, and rubs where it has no room.";
      return mustNotPass(
        context,
        box,
        { code: "box/too-high", word: "high", given: box.whole.high, most, reason },
        box.high,
      );
    }),
};
