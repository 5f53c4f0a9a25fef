import { toNumber } from "../core/rational.ts";
import { type Context, distance, size } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import { densityOf, pounds } from "../fit/weight.ts";
import { type LiftLimit, liftingIndex, loadConstant, recommendedWeight } from "../published/lifting.ts";
import { pieceWeight } from "../published/panel-stock.ts";
import type { Weighed } from "./weigh.ts";

/** One thing to lift: its weight in pounds, and its share of what one person should lift; above 1 asks for a second pair of hands. */
export interface Lifted {
  readonly kind: "part" | "assembly" | "sheet";
  readonly of: string;
  readonly pounds: number;
  readonly index: number;
}

/** What one person lifts here, and everything that is lifted, heaviest first. */
export interface Handling {
  /** In pounds: what is written, or the load constant of the lifting equation; less where the reach allows less. */
  readonly limit: number;
  readonly stated: number | undefined;
  /** By the lifting equation, where a reach is written. */
  readonly equation: LiftLimit | undefined;
  readonly lifts: readonly Lifted[];
}

export function handlingOf(
  context: Context,
  model: Model,
  parts: readonly Weighed[],
  assemblies: readonly Weighed[],
): Handling {
  const stated = pounds(context, context.design.shop.lifts[0]?.amount);
  const equation = byEquation(context);
  const limit = Math.min(stated ?? loadConstant.in.value, equation?.weight ?? Number.POSITIVE_INFINITY);
  const lifted = (kind: Lifted["kind"], { of, pounds: weight }: Pick<Weighed, "of" | "pounds">): Lifted => ({
    kind,
    of,
    pounds: weight,
    index: liftingIndex(weight, limit) ?? 0,
  });
  const sheets = [...model.stocks.values()].flatMap((stock): readonly Lifted[] => {
    if (stock.kind !== "sheet") return [];
    const wide = size(context, stock.block.size?.first);
    const long = size(context, stock.block.size?.second);
    const weight = pieceWeight(
      wide === undefined ? Number.NaN : toNumber(wide.value),
      long === undefined ? Number.NaN : toNumber(long.value),
      toNumber(stock.thickness.value),
      densityOf(context, stock),
    );
    return weight === undefined ? [] : [lifted("sheet", { of: stock.name, pounds: weight })];
  });
  const lifts = [
    ...parts.map((one) => lifted("part", one)),
    ...assemblies.map((one) => lifted("assembly", one)),
    ...sheets,
  ];
  return { limit, stated, equation, lifts: lifts.sort((a, b) => b.pounds - a.pounds) };
}

/**
 * The recommended weight for the reach and heights written: from the low one to the high one, not turning, now and then,
 * with the fair grip of a panel's edge. Missing heights are the best there are.
 */
function byEquation(context: Context): LiftLimit | undefined {
  const lift = context.design.shop.lifts[0];
  const reach = distance(context, lift?.reach);
  if (lift === undefined || reach === undefined) return undefined;
  const inches = (measure: typeof lift.low, otherwise: number): number => {
    const value = distance(context, measure);
    return value === undefined ? otherwise : toNumber(value.value);
  };
  const low = inches(lift.low, best);
  const high = inches(lift.high, Math.max(low, best));
  return recommendedWeight({
    unit: "in",
    reach: toNumber(reach.value),
    height: low,
    travel: Math.abs(high - low),
    turn: 0,
    perMinute: 0.2,
    duration: "up to 1 h",
    grip: "fair",
  });
}

/** Knuckle height, at which the equation takes nothing off, in inches (NIOSH 94-110). */
const best = 30;
