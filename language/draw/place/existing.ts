import { inUnit } from "../../core/length.ts";
import { add, isZero, ratio, subtract, zero } from "../../core/rational.ts";
import type { Opening } from "../../derive/model.ts";
import type { Place, Solid } from "./solid.ts";
import { from, upTo } from "./solid.ts";

/** How much of what stands already is shown round an opening; its own thickness is not known. */
const shown = inUnit(ratio(38), "mm");
const frameDeep = inUnit(ratio(19), "mm");

/** What an opening that was measured on site stands in: its edges, what lies behind them, and the back. */
export function existingSolids(opening: Opening): readonly Solid[] {
  const wide = opening.wide.value;
  const high = opening.high.value;
  const deep = opening.deep?.value;
  const beside = { left: opening.bounds.left.beside?.value ?? zero, right: opening.bounds.right.beside?.value ?? zero };
  const all: Place["x"] = [subtract(zero, add(shown, beside.left)), add(wide, add(shown, beside.right))];
  const y: Place["y"] = [subtract(zero, shown), add(high, shown)];
  const framed = !isZero(beside.left) || !isZero(beside.right);
  const edge: Place["z"] = framed ? [zero, frameDeep] : [zero, deep ?? frameDeep];
  const make = (name: string, place: Place): Solid => ({
    id: `opening ${opening.name.text}/${name}`,
    role: "existing",
    part: undefined,
    name,
    of: `opening ${opening.name.text}`,
    place,
    made: "existing",
    grain: undefined,
    target: opening.span,
  });
  const edges = [
    make("left edge", { x: [all[0], zero], y, z: edge }),
    make("right edge", { x: [wide, all[1]], y, z: edge }),
    make("floor", { x: [zero, wide], y: [y[0], zero], z: edge }),
    make("head", { x: [zero, wide], y: [high, y[1]], z: edge }),
  ];
  if (deep === undefined) return edges;
  const sides = framed
    ? [
        make("left side", { x: upTo(subtract(zero, beside.left), shown), y, z: [frameDeep, deep] }),
        make("right side", { x: from(add(wide, beside.right), shown), y, z: [frameDeep, deep] }),
      ]
    : [];
  return [make("back", { x: all, y, z: from(deep, frameDeep) }), ...sides, ...edges];
}
