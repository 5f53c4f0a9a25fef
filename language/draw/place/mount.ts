import type { Length } from "../../core/length.ts";
import { add, over, subtract, zero } from "../../core/rational.ts";
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

function layerRanges(mount: MountModel, opening: Opening): readonly Range[] {
  const left = opening.rect?.x ?? zero;
  const right = add(left, opening.wide.value);
  const outward = mount.side === "right" || (mount.side === "middle" && opening.bounds.right.shared);
  // From what is behind: the side of the case, or the middle of a member that serves both sides.
  const edge = outward ? add(right, mount.need.value) : subtract(left, mount.need.value);
  const gap = mount.side === "middle" ? over(mount.left.value, 2) : zero;
  let at = outward ? subtract(edge, gap) : add(edge, gap);
  return mount.layers.map(({ thickness }) => {
    const range = outward ? upTo(at, thickness.value) : from(at, thickness.value);
    at = outward ? range[0] : range[1];
    return range;
  });
}
