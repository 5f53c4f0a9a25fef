import type { Finding } from "../../core/finding.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, sayLoad, sayWeight } from "../check.ts";
import { pounds } from "../weight.ts";
import type { SlideLoad } from "./load.ts";
import { frontsByOpening, loadOf } from "./load.ts";

/** A pair of slides must carry what the box holds and weighs; without a figure it should carry the published test load. */
export const slideMustCarryItsLoad: Check = {
  codes: ["slide/overloaded", "slide/below-test-load"],
  run: (context, model) => {
    const fronts = frontsByOpening(model);
    return model.boxes.flatMap((box) =>
      box.parts.length === 0 ? [] : check(context, box, loadOf(context, model, box, fronts)),
    );
  },
};

function check(context: Context, box: BoxModel, load: SlideLoad): readonly Finding[] {
  const { holds, own, test, rated } = load;
  const { slides, whole } = box;
  const laid = holds ?? test;
  if (rated === undefined || laid === undefined || whole.slides === undefined || own + laid <= rated) return [];
  const over = sayWeight(context, own + laid - rated);
  const others = stronger(context, box, own + laid);
  const shared = {
    related: [
      { span: slides.block.carries!.key.span, message: `"${slides.name}" carries ${sayWeight(context, rated)}` },
    ],
    fixes: others.map((name) => rewrite(whole.slides!.name.span, name, `Use "${name}"`)),
  };
  if (holds !== undefined && whole.holds !== undefined) {
    return [
      finding({
        code: "slide/overloaded",
        severity: "error",
        span: whole.holds.amount.span,
        message: `${sayWeight(context, holds)}, and ${sayWeight(context, own)} of box and front, are ${over} more than the ${sayWeight(context, rated)} that its slides carry`,
        reason: "An overloaded slide sags when it is out, then binds, and its screws work loose.",
        remedy: `Use slides that carry ${sayWeight(context, own + holds)}, or let it hold ${sayWeight(context, Math.max(0, rated - own))} at most.`,
        ...shared,
      }),
    ];
  }
  return [
    finding({
      code: "slide/below-test-load",
      severity: "warning",
      span: whole.slides.name.span,
      message: `the test load of ${sayLoad(context, 15)} is ${sayWeight(context, laid)} here; with ${sayWeight(context, own)} of box and front that is ${over} more than "${slides.name}" carries`,
      reason:
        "A kitchen drawer is tested with that load (ANSI/KCMA A161.1 cl. 7.1, as reproduced); one that may be filled will be.",
      remedy: `Say what it holds if that is less: holds ${context.units === "inches" ? "20 lb" : "10 kg"}. Or use stronger slides.`,
      ...shared,
    }),
  ];
}

/** Slides of the same mount that carry the load, the weakest that do first. */
function stronger(context: Context, box: BoxModel, load: number): readonly string[] {
  const mount = box.slides.block.mount?.value;
  return context.design.slides
    .filter((block) => block.mount?.value === mount)
    .flatMap((block) => {
      const carries = pounds(context, block.carries);
      return carries === undefined || carries < load ? [] : [{ name: block.name.text, carries }];
    })
    .sort((a, b) => a.carries - b.carries)
    .map((one) => one.name)
    .slice(0, 3);
}
