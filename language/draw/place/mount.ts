import type { Length } from "../../core/length.ts";
import { add, subtract, zero } from "../../core/rational.ts";
import type { MountModel, Opening } from "../../derive/model.ts";
import type { Tables } from "./scene.ts";
import type { Range, Solid } from "./solid.ts";
import { from, middled, placed, upTo } from "./solid.ts";

/** The layers of a mount, each a solid, built up from the case's side towards the opening. */
export function mountSolids({ stocks }: Tables, mount: MountModel): readonly Solid[] {
  const [opening] = mount.openings;
  if (opening === undefined) return [];
  const middle = add(opening.rect?.y ?? zero, mount.at.value);
  const y = middled(middle, middle, mount.high.value);
  const z = from(startOf(opening), mount.long.value);
  return layerRanges(mount, opening).flatMap((x, index) => {
    const stock = mount.layers[index];
    const part = mount.parts.find((one) => one.stock === stock?.name);
    return part === undefined ? [] : [placed(part, "mount", { x, y, z }, "z", "x", stocks)];
  });
}

/** Behind the frame, where there is one. */
function startOf(opening: Opening): Length {
  if (opening.behindFrame === undefined || opening.deep === undefined) return zero;
  return subtract(opening.deep.value, opening.behindFrame.value);
}

/** From the opening's edge, with which the slide must be flush, outwards; what is shimmed lies behind. */
function layerRanges(mount: MountModel, opening: Opening): readonly Range[] {
  const left = opening.rect?.x ?? zero;
  const right = add(left, opening.wide.value);
  const outward = mount.side === "right" || (mount.side === "middle" && opening.bounds.right.shared);
  let at = outward ? right : left;
  const ranges = mount.layers.map(({ thickness }): Range => {
    const range = outward ? from(at, thickness.value) : upTo(at, thickness.value);
    at = outward ? range[1] : range[0];
    return range;
  });
  if (mount.side !== "middle") return ranges;
  // In the middle the last layer lies against the far edge of the member: what is left over is shimmed between.
  const far = outward ? add(right, mount.need.value) : subtract(left, mount.need.value);
  const last = mount.layers.at(-1)?.thickness.value ?? zero;
  return [...ranges.slice(0, -1), outward ? upTo(far, last) : from(far, last)];
}
