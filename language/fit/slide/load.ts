import { toNumber } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel, FrontModel, Model } from "../../derive/model.ts";
import { testLoad } from "../../published/loads.ts";
import { pounds, weightOfAll } from "../weight.ts";

/** What a pair of slides carries, in pounds: the box, the front that moves with it, and what lies in the box. */
export interface SlideLoad {
  readonly own: number;
  /** As written. */
  readonly holds: number | undefined;
  /** The published test load on the bottom, which counts where nothing is written. */
  readonly test: number | undefined;
  readonly rated: number | undefined;
}

/** The fronts by the openings that they cover. */
export function frontsByOpening(model: Model): ReadonlyMap<string, FrontModel> {
  return new Map(
    model.fronts
      .filter((front) => front.block.kind === "front")
      .flatMap((front) => front.openings.map((opening): [string, FrontModel] => [opening.name.text, front])),
  );
}

export function loadOf(
  context: Context,
  model: Model,
  box: BoxModel,
  fronts: ReadonlyMap<string, FrontModel>,
): SlideLoad {
  const front = fronts.get(box.opening.name.text);
  const parts = [...box.parts, ...(front?.parts ?? [])];
  const inside = box.inside;
  return {
    own: weightOfAll(context, model, parts),
    holds: pounds(context, box.whole.holds),
    test: inside === undefined ? undefined : testLoad(toNumber(inside.wide.value), toNumber(inside.deep.value)),
    rated: pounds(context, box.slides.block.carries),
  };
}
