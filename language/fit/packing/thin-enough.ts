import type { Finding } from "../../core/finding.ts";
import { intervalOf } from "../../core/interval.ts";
import { isPositive, less, sum } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { BoxModel, Model, MountModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, placeOf, say } from "../check.ts";
import { limits } from "../limits.ts";

/** Packing must fill the space behind a slide: with something, not past the edge of the opening, and not with shims alone. */
export const packingMustFillWithoutStandingProud: Check = {
  codes: ["packing/none-thin-enough", "packing/proud", "packing/much-to-shim"],
  run: (context, model) => {
    const boxes = new Map(model.boxes.map((box) => [box.of, box]));
    return model.mounts.flatMap((mount) => check(context, model, mount, boxes.get(mount.of)));
  },
};

function check(context: Context, model: Model, mount: MountModel, box: BoxModel | undefined): readonly Finding[] {
  if (mount.layers.length === 0) return noneThinEnough(context, model, mount, box);
  return [...proud(context, mount), ...muchToShim(context, mount, box)];
}

function wordFor(box: BoxModel | undefined, mount: MountModel): Finding["span"] {
  return box?.whole.packing?.key.span ?? box?.whole.slides?.name.span ?? mount.openings[0]!.name.span;
}

function noneThinEnough(
  context: Context,
  model: Model,
  mount: MountModel,
  box: BoxModel | undefined,
): readonly Finding[] {
  if (!isPositive(mount.need.value) || model.stocks.size === 0) return [];
  return [
    finding({
      code: "packing/none-thin-enough",
      severity: "error",
      span: wordFor(box, mount),
      message: `the slide of "${mount.openings[0]!.name.text}" must come out by ${say(context, mount.need.value)}, and no sheet named is that thin`,
      reason: "Without packing the slide is screwed to nothing, or stands behind the edge of the opening.",
      remedy: "Name a thinner sheet for packing, or plane a strip to that size and write it as a part.",
      related: [{ span: placeOf(mount.need, mount.openings[0]!.span), message: "what must be filled comes from here" }],
    }),
  ];
}

/** Judged on the worst case, since a layer that measures as it should never stands proud by the numbers. */
function proud(context: Context, mount: MountModel): readonly Finding[] {
  const { low, contributions } = intervalOf(mount.left);
  const over = { n: -low.n, d: low.d };
  const first = contributions[0];
  if (first === undefined || !less(fallback("cut.tolerance").value, over)) return [];
  return [
    finding({
      code: "packing/proud",
      severity: "warning",
      span: first.place ?? mount.openings[0]!.name.span,
      message: `packing of ${say(context, mount.built.value)} may stand ${say(context, over)} proud of the edge of "${mount.openings[0]!.name.text}": most of it from the ${first.name}`,
      reason: "Packing that stands proud takes the room that the slide needs, and the box will not go in.",
      remedy: "Measure what is uncertain, or use a thinner layer and shim it.",
      related: [
        { span: placeOf(mount.need, mount.openings[0]!.span), message: "what is to be filled comes from here" },
      ],
    }),
  ];
}

function muchToShim(context: Context, mount: MountModel, box: BoxModel | undefined): readonly Finding[] {
  if (!less(limits.shim.value, mount.left.value)) return [];
  const built = sum(mount.layers.map((layer) => layer.thickness.value));
  return [
    finding({
      code: "packing/much-to-shim",
      severity: "hint",
      span: wordFor(box, mount),
      message: `the sheets at hand fill ${say(context, built)} of the ${say(context, mount.need.value)} beside "${mount.openings[0]!.name.text}": ${say(context, mount.left.value)} is left to shim`,
      reason: "A stack of shims gives under a loaded slide.",
      remedy: `Plane a strip to ${say(context, mount.left.value)}, or name another sheet for packing.`,
      related: [
        { span: placeOf(mount.need, mount.openings[0]!.span), message: "what is to be filled comes from here" },
      ],
    }),
  ];
}
