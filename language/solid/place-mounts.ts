import { add, over, subtract, zero } from "../core/rational.ts";
import type { MountModel, Opening } from "../derive/model.ts";
import { type Range, span, spanTo } from "./box.ts";
import { type Home, lay, poolOf } from "./lay.ts";
import { heldBy, loose, type MateDraft } from "./mate.ts";
import type { Spot } from "./place-box.ts";
import type { Laid } from "./shell.ts";
import type { Draft } from "./solid.ts";

/** What stands beside an opening: a side or partition, or nothing that is known. */
export type WallOf = (opening: Opening, side: "left" | "right") => Draft | undefined;

/**
 * The layers of a slide mount, the first flush with the edge of its opening. What the layers leave is shimmed at the
 * case; in the middle, between two openings, it is shimmed before the last layer, which is flush with the other edge.
 */
export function placeMount(mount: MountModel, home: Home, spot: Spot, behind: Range["from"], wallOf: WallOf): Laid {
  const opening = mount.openings[0]!;
  const pool = poolOf(mount.parts);
  const left = isLeftOf(mount, opening);
  const edge = left ? spot.x : add(spot.x, opening.wide.value);
  const middle = add(spot.y, mount.at.value);
  const drafts: Draft[] = [];
  let from = edge;
  for (const [index, stock] of mount.layers.entries()) {
    const piece = pool.take({ name: mount.side === "middle" ? "middle mount" : "mount", stock: stock.name });
    if (piece === undefined) continue;
    const { part } = piece;
    const t = part.thickness.value;
    const last = mount.side === "middle" && 0 < index && index === mount.layers.length - 1;
    const start = last ? farEdge(edge, mount, left) : from;
    const x = last === left ? span(start, t) : spanTo(start, t);
    const y = span(subtract(middle, over(part.width.value, 2)), part.width.value);
    const draft = lay(home, piece, x, y, span(behind, part.length.value));
    from = left ? x.from : x.to;
    if (draft !== undefined) drafts.push(draft);
  }
  return { drafts, mates: matesOf(mount, drafts, left, wallOf(opening, left ? "left" : "right")) };
}

/** A mount between two openings is counted from the edge of the first. */
function isLeftOf(mount: MountModel, opening: Opening): boolean {
  if (mount.side !== "middle") return mount.side === "left";
  return opening.bounds.left.shared && opening.bounds.left.member?.value === mount.need.value;
}

function farEdge(edge: Range["from"], mount: MountModel, left: boolean): Range["from"] {
  return left ? subtract(edge, mount.need.value) : add(edge, mount.need.value);
}

function matesOf(
  mount: MountModel,
  drafts: readonly Draft[],
  left: boolean,
  wall: Draft | undefined,
): readonly MateDraft[] {
  const shim = { least: zero, most: mount.left.value, how: "shim" as const };
  const toward = left ? -1 : 1;
  const layers = drafts.slice(1).flatMap((draft, index) => loose(drafts[index]!, draft, "x", toward, shim));
  const last = drafts.at(-1);
  if (last === undefined) return [];
  if (mount.side === "middle") return [...layers, ...drafts.map((draft) => heldBy(draft, "shim"))];
  return [...layers, ...(wall === undefined ? [heldBy(last, "existing work")] : loose(last, wall, "x", toward, shim))];
}
