import type { CaseBlock, LayoutItem, Share, SplitItem } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import { add, largest, smallest, subtract } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Rect } from "../derive/model.ts";
import type { Scene } from "./scene.ts";

/** A share of a division that states no size, with the size that it comes to; its origin too where it is an opening's. */
export interface ShareSize {
  readonly share: Share;
  readonly size: Length;
  readonly value: Sourced<Length> | undefined;
}

/** What each `rest` and `equal` of a scene's own file comes to; those that could not be derived are left out. */
export function shareSizes(scene: Scene): readonly ShareSize[] {
  const own = scene.designs.find((design) => design.uri === scene.uri);
  const found = new Map<number, ShareSize>();
  for (const block of own?.cases ?? []) {
    for (const one of sharesOf(scene, block))
      if (!found.has(one.share.span.start)) found.set(one.share.span.start, one);
  }
  return [...found.values()];
}

function sharesOf(scene: Scene, block: CaseBlock): readonly ShareSize[] {
  const layouts = [block.layout, block.frame?.layout, block.rear?.layout, block.rear?.frame?.layout];
  return layouts.flatMap((layout) => (layout ?? []).flatMap((item) => inItem(scene, item, undefined)));
}

function inItem(scene: Scene, item: LayoutItem, direction: SplitItem["direction"] | undefined): readonly ShareSize[] {
  if (item.kind === "opening") return ofOpening(scene, item.name.text, item.share, direction);
  if (item.kind !== "split") return [];
  const inner = item.items.flatMap((one) => inItem(scene, one, item.direction));
  const around = item.share === undefined || item.share.kind === "size" ? undefined : bounds(scene, item);
  if (around === undefined || direction === undefined || item.share === undefined) return inner;
  return [{ share: item.share, size: direction === "across" ? around.wide : around.high, value: undefined }, ...inner];
}

function ofOpening(
  { model }: Scene,
  name: string,
  share: Share | undefined,
  direction: SplitItem["direction"] | undefined,
): readonly ShareSize[] {
  const opening = model.openings.find((one) => one.name.text === name);
  // Openings of one line that state nothing share what is left as if they said so.
  if (opening === undefined || direction === undefined || share === undefined || share.kind === "size") return [];
  const value = direction === "across" ? opening.wide : opening.high;
  return [{ share, size: value.value, value }];
}

/** What the openings of a division take up together, with what stands between them. */
function bounds({ model }: Scene, split: SplitItem): Pick<Rect, "wide" | "high"> | undefined {
  const rects = openingsIn(split).flatMap((name) => model.openings.find((one) => one.name.text === name)?.rect ?? []);
  const [first, ...rest] = rects;
  if (first === undefined) return undefined;
  const span = (at: "x" | "y", size: "wide" | "high"): Length => {
    const low = smallest(first[at], ...rest.map((rect) => rect[at]));
    const high = largest(add(first[at], first[size]), ...rest.map((rect) => add(rect[at], rect[size])));
    return subtract(high, low);
  };
  return { wide: span("x", "wide"), high: span("y", "high") };
}

function openingsIn(split: SplitItem): readonly string[] {
  return split.items.flatMap((item) =>
    item.kind === "opening" ? [item.name.text] : item.kind === "split" ? openingsIn(item) : [],
  );
}
