import { less } from "../../core/rational.ts";
import type { Check } from "../check.ts";
import { finding, say } from "../check.ts";
import { limits } from "../limits.ts";
import { isUnderMounted } from "./side-mounted.ts";

/** A wide and shallow box should run on slides that keep it square. From memory: ordinary slides take 24 in, or a width within the depth. */
export const boxShouldNotBeWiderThanCommon: Check = {
  codes: ["slide/wide-box"],
  run: (context, { boxes }) =>
    boxes.flatMap((box) => {
      const use = box.whole.slides;
      if (use === undefined || isUnderMounted(box) || box.parts.length === 0) return [];
      if (!less(limits.widestBox.value, box.wide.value) || !less(box.deep.value, box.wide.value)) return [];
      return [
        finding({
          code: "slide/wide-box",
          severity: "warning",
          span: use.name.span,
          message: `this box is ${say(context, box.wide.value)} wide and ${say(context, box.deep.value)} deep: wider than is common for ordinary slides`,
          reason:
            "Pulled at one corner, a box that is wider than deep turns a little and jams. Common practice from memory: 24 in, unless the box is as deep as it is wide.",
          remedy:
            "Make two boxes of it, or use slides that are made to keep a wide box square, and say so with an allow.",
          related: [{ span: box.opening.name.span, message: "its opening" }],
        }),
      ];
    }),
};
