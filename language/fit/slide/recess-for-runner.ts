import type { Finding, Fix } from "../../core/finding.ts";
import { writtenText } from "../../core/length.ts";
import { less } from "../../core/rational.ts";
import { behind } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { size } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { BoxModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say } from "../check.ts";
import { limits } from "../limits.ts";
import { isUnderMounted } from "./side-mounted.ts";

/** A box on under-mounted slides should have a recess under its bottom for them to stand in. */
export const boxShouldHaveRecessForRunner: Check = {
  codes: ["slide/no-recess"],
  run: (context, { boxes }) => boxes.filter(isUnderMounted).flatMap((box) => check(context, box)),
};

function check(context: Context, box: BoxModel): readonly Finding[] {
  const use = box.whole.bottom;
  if (use === undefined || box.bottom === undefined) return [];
  const groove = use.fittings.find((one) => one.word === "groove");
  const up = groove === undefined ? undefined : (size(context, groove.up) ?? fallback("bottom.up"));
  const wanted = limits.recess.value;
  if (up !== undefined && !less(up.value, wanted)) return [];
  const held = use.fittings.find((one) => one.word === "under" || one.word === "rabbet");
  const stock = use.stocks[0]!;
  return [
    finding({
      code: "slide/no-recess",
      severity: "warning",
      span: groove?.up?.span ?? groove?.span ?? held?.span ?? stock.span,
      message:
        up === undefined
          ? "there is no recess under this bottom for the slides to stand in"
          : `the recess under this bottom is ${say(context, up.value)}; under-mounted slides want ${say(context, wanted)}`,
      reason:
        "An under-mounted slide stands below the bottom, between the sides. From memory: about 1/2 in, 13 mm; its own sheet of sizes goes before this.",
      remedy: `Put the bottom in a groove ${say(context, wanted)} up from the edge.`,
      related: [{ span: box.slides.block.name.span, message: `"${box.slides.name}" is mounted under the box` }],
      fixes: [lifted(context, groove, held?.span, stock.span)],
    }),
  ];
}

type Groove = NonNullable<BoxModel["whole"]["bottom"]>["fittings"][number] | undefined;

function lifted(
  context: Context,
  groove: Groove,
  held: Fix["edits"][number]["span"] | undefined,
  stock: Fix["edits"][number]["span"],
): Fix {
  const up = writtenText(limits.recess.value, context.units);
  if (groove?.up !== undefined) return rewrite(groove.up.span, up);
  if (groove !== undefined) return rewrite(behind(groove.span), ` up ${up}`, `Write up ${up}`);
  const depth = writtenText(fallback("bottom.groove").value, context.units);
  const text = `in groove ${depth} up ${up}`;
  return held === undefined
    ? rewrite(behind(stock), ` ${text}`, `Put it ${text}`)
    : rewrite(held, text, `Put it ${text}`);
}
