import type { Length } from "../../../language/core/length.ts";
import type { Part } from "../../../language/core/part.ts";
import { add, ratio, toText } from "../../../language/core/rational.ts";
import type { Model } from "../../../language/derive/model.ts";
import type { Build } from "../../../language/service.ts";
import { type Box, boxOf } from "../../../language/solid/box.ts";
import { type DryFit, dryFit } from "../../../language/solid/dry-fit.ts";
import type { Solid } from "../../../language/solid/solid.ts";

/** A box from six numbers of sixteenths of an inch: x, y and z, each from and to. */
export function boxFrom(x: readonly number[], y: readonly number[], z: readonly number[]): Box {
  const range = ([from, to]: readonly number[]) => ({ from: ratio(from!, 16), to: ratio(to!, 16) });
  const box = boxOf(range(x), range(y), range(z));
  if (box === undefined) throw new Error("a box of the test has no size");
  return box;
}

/** All that stands in the way of a dry fit, each as a line. */
export function troubles({ clashes, gaps, adrift, motions, opposed }: DryFit): readonly string[] {
  return [
    ...clashes.map(({ a, b, volume }) => `clash: ${a.id}, ${b.id}: ${toText(volume)}`),
    ...gaps.map(({ a, b, how, gap }) => `gap: ${a.id}, ${b?.id}: ${how} ${gap === undefined ? "none" : toText(gap)}`),
    ...adrift.map(({ id }) => `adrift: ${id}`),
    ...motions.flatMap(({ blocks }) => blocks.map(({ part, obstacle }) => `blocked: ${part.id}, ${obstacle.id}`)),
    ...opposed.map(({ a, b }) => `opposed: ${a.of}, ${b.of}`),
  ];
}

/** The dry fit of a build in which one size of one part has been changed by so much, as a slip at the saw would. */
export function refitted(build: Build, id: string, size: "length" | "width", by: Length): DryFit {
  const { context, model } = build.derivation;
  return dryFit(context, changed(model, id, size, by));
}

function changed(model: Model, id: string, size: "length" | "width", by: Length): Model {
  const change = (parts: readonly Part[]): readonly Part[] =>
    parts.map((part) =>
      part.id === id ? { ...part, [size]: { ...part[size], value: add(part[size].value, by) } } : part,
    );
  const each = <T extends { readonly parts: readonly Part[] }>(things: readonly T[]): readonly T[] =>
    things.map((thing) => ({ ...thing, parts: change(thing.parts) }));
  return {
    ...model,
    parts: change(model.parts),
    boxes: each(model.boxes),
    fronts: each(model.fronts),
    mounts: each(model.mounts),
    shelves: each(model.shelves),
  };
}

export function solidCalled(fit: DryFit, id: string): Solid {
  const solid = fit.placement.solids.find((one) => one.id === id);
  if (solid === undefined)
    throw new Error(`no solid ${id} among ${fit.placement.solids.map((one) => one.id).join(", ")}`);
  return solid;
}
