import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import { densityOf, weightOf } from "../fit/weight.ts";
import { roughVolume } from "./box.ts";
import type { Placement } from "./place.ts";
import type { Solid } from "./solid.ts";

/** What one thing weighs: cubic inches of it, and pounds. */
export interface Weighed {
  readonly of: string;
  readonly volume: number;
  readonly pounds: number;
}

/** Pounds and cubic inches of a solid, its machining taken off and its bands counted in as its own stock. */
export function weigh(context: Context, model: Model, solid: Solid): Weighed {
  const stock = model.stocks.get(solid.part.stock);
  const volume = roughVolume(solid.pieces);
  return { of: solid.id, volume, pounds: stock === undefined ? 0 : (volume * densityOf(context, stock)) / 1728 };
}

/** Everything by the assembly that it belongs to; parts without a place by their outline. Hardware is not weighed. */
export function assembliesOf(context: Context, model: Model, { solids, unplaced }: Placement): readonly Weighed[] {
  const sums = new Map<string, { volume: number; pounds: number }>();
  const put = (of: string, volume: number, pounds: number): void => {
    const sum = sums.get(of) ?? { volume: 0, pounds: 0 };
    sums.set(of, { volume: sum.volume + volume, pounds: sum.pounds + pounds });
  };
  for (const solid of solids) {
    const { volume, pounds } = weigh(context, model, solid);
    put(solid.assembly, volume, pounds);
  }
  for (const part of unplaced) {
    const sizes = [part.length, part.width, part.thickness].map(({ value }) => Number(value.n) / Number(value.d));
    const volume = sizes.reduce((product, size) => product * size, part.quantity);
    put(part.of, volume, part.quantity * weightOf(context, model, part));
  }
  return [...sums].map(([of, sum]) => ({ of, ...sum }));
}
