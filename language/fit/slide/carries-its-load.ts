import type { Finding } from "../../core/finding.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, number, rewrite } from "../check.ts";
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
  const over = number(own + laid - rated, 0);
  const others = stronger(context, box, own + laid);
  const shared = {
    related: [{ span: slides.block.carries!.key.span, message: `"${slides.name}" carries ${number(rated, 0)} lb` }],
    fixes: others.map((name) => rewrite(whole.slides!.name.span, name, `Use "${name}"`)),
  };
  if (holds !== undefined && whole.holds !== undefined) {
    return [
      finding({
        code: "slide/overloaded",
        severity: "error",
        span: whole.holds.amount.span,
        message: `${number(holds, 0)} lb, and ${number(own, 0)} lb of box and front, are ${over} lb more than the ${number(rated, 0)} lb that its slides carry`,
        reason: "An overloaded slide sags when it is out, then binds, and its screws work loose.",
        remedy: `Use slides that carry ${number(own + holds, 0)} lb, or let it hold ${number(Math.max(0, rated - own), 0)} lb at most.`,
        ...shared,
      }),
    ];
  }
  return [
    finding({
      code: "slide/below-test-load",
      severity: "warning",
      span: whole.slides.name.span,
      message: `the test load of 15 lb per square foot is ${number(laid, 0)} lb here; with ${number(own, 0)} lb of box and front that is ${over} lb more than "${slides.name}" carries`,
      reason:
        "A kitchen drawer is tested with that load (ANSI/KCMA A161.1 cl. 7.1, as reproduced); one that may be filled will be.",
      remedy: "Say what it holds if that is less: holds 20 lb. Or use stronger slides.",
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
