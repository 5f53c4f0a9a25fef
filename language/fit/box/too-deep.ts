import type { Check } from "../check.ts";
import { mustNotPass } from "./within.ts";

/** A box must not touch what stands behind it. */
export const boxMustNotTouchBack: Check = {
  codes: ["box/too-deep"],
  run: (context, { boxes }) =>
    boxes.flatMap((box) => {
      if (box.slides.boxRoom === undefined) return [];
      const reason = "The box would meet the back before its front is home.";
      return mustNotPass(
        context,
        box,
        { code: "box/too-deep", word: "deep", given: box.whole.deep, most: box.slides.boxRoom, reason },
        box.deep,
      );
    }),
};
