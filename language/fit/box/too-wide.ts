import { boxWidth } from "../../derive/rules/box-width.ts";
import type { Check } from "../check.ts";
import { mustNotPass } from "./within.ts";

/** A box must leave its slides their room on both sides. */
export const boxMustLeaveSlidesRoom: Check = {
  codes: ["box/too-wide"],
  run: (context, { boxes }) =>
    boxes
      .filter((box) => box.slides.block.mount?.value !== "under")
      .flatMap((box) => {
        const most = boxWidth(box.opening.wide, box.slides.clearance);
        const reason = "A slide that is squeezed binds, and the drawer will not run.";
        return mustNotPass(
          context,
          box,
          { code: "box/too-wide", word: "wide", given: box.whole.wide, most, reason },
          box.wide,
        );
      }),
};
