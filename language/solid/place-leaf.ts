import type { Length } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import { add, over, subtract, times, zero } from "../core/rational.ts";
import { runsUp } from "../derive/front-parts.ts";
import { common, extent, mirrored, type Range, shared, span, spanTo } from "./box.ts";
import { interlock, mitred } from "./interlock.ts";
import { cut, grow, lay, machined, present } from "./lay.ts";
import { joined, loose, type MateDraft } from "./mate.ts";
import { evenly } from "./place-box.ts";
import type { Leaf } from "./place-front.ts";
import type { Laid } from "./shell.ts";
import type { Draft } from "./solid.ts";

/** Stiles, rails, mid members and panels of a framed leaf. */
export function placeLeaf(leaf: Leaf): Laid {
  const stiles = [stileAt(leaf, "left"), stileAt(leaf, "right")] as const;
  const edges = stiles.map((stile) => (stile === undefined ? undefined : unturned(leaf, stile.outline.x)));
  const clearX: Range = { from: edges[0]?.to ?? leaf.x.from, to: edges[1]?.from ?? leaf.x.to };
  const { bottom, top } = outerRails(leaf, clearX);
  const clearY: Range = { from: bottom?.outline.y.to ?? leaf.y.from, to: top?.outline.y.from ?? leaf.y.to };
  const midRails = midRailsOf(leaf, clearX, clearY);
  const rows = between(
    clearY,
    midRails.map(({ outline }) => outline.y),
  );
  const midStiles = rows.map((row) => midStilesOf(leaf, clearX, row));
  const rails = present([bottom, ...midRails, top]);
  const uprights = [...present(stiles), ...midStiles.flat()];
  mortise([...rails, ...uprights]);
  if (leaf.front.whole.mitred !== undefined || leaf.front.whole.joint?.kind === "mitred")
    for (const rail of present([bottom, top])) for (const stile of stiles) mitre(rail, stile);
  const groove = machined(present(stiles)[0]?.part, "groove");
  const cells = rows.flatMap((row, index) => {
    const posts = [stiles[0], ...midStiles[index]!, stiles[1]];
    const columns = between(
      clearX,
      midStiles[index]!.map((stile) => unturned(leaf, stile.outline.x)),
    );
    return columns.map((column, at): Cell => {
      const panel = panelAt(leaf, column, row, groove);
      return { panel, left: posts[at], right: posts[at + 1], below: rails[index], above: rails[index + 1] };
    });
  });
  const panels = present(cells.map(({ panel }) => panel));
  const drafts = [...present(stiles), ...rails, ...midStiles.flat(), ...panels];
  return {
    drafts,
    mates: [
      ...rails.flatMap((rail) => railMates(rail, stiles)),
      ...midStiles.flatMap((row, index) => row.flatMap((stile) => uprightMates(stile, rails, index))),
      ...cells.flatMap(panelMates),
    ],
  };
}

/** A stretch as it was laid, before what stands in a rear face was turned about. */
function unturned({ home }: Leaf, range: Range): Range {
  return home.turn === undefined ? range : mirrored(range, home.turn.wide);
}

/** Where the groove of the frame lies: centred, or its written distance from the back. */
function grooveZ(leaf: Leaf, frameThick: Length, groove: Machining): Range | undefined {
  if (groove.wide === undefined) return undefined;
  const back = add(leaf.z, frameThick);
  if (groove.where.includes("off centre")) return spanTo(subtract(back, groove.from?.value ?? zero), groove.wide.value);
  return span(add(leaf.z, over(subtract(frameThick, groove.wide.value), 2)), groove.wide.value);
}

function stileAt(leaf: Leaf, which: "left" | "right"): Draft | undefined {
  const piece = leaf.pool.take({ name: "stile" });
  if (piece === undefined) return undefined;
  const { part } = piece;
  const x = which === "left" ? span(leaf.x.from, part.width.value) : spanTo(leaf.x.to, part.width.value);
  const draft = lay(leaf.home, piece, x, span(leaf.y.from, part.length.value), span(leaf.z, part.thickness.value));
  const groove = machined(part, "groove");
  const z = groove === undefined ? undefined : grooveZ(leaf, part.thickness.value, groove);
  if (groove?.deep !== undefined && z !== undefined) {
    const inside = which === "left" ? spanTo(x.to, groove.deep.value) : span(x.from, groove.deep.value);
    cut(draft, inside, span(leaf.y.from, part.length.value), z);
  }
  return draft;
}

function outerRails(leaf: Leaf, clear: Range): { readonly bottom: Draft | undefined; readonly top: Draft | undefined } {
  const topPiece = leaf.pool.take({ name: "top rail" }) ?? leaf.pool.take({ name: "rail" });
  const bottomPiece = leaf.pool.take({ name: "bottom rail" }) ?? leaf.pool.take({ name: "rail" });
  const bottom =
    bottomPiece && railAt(leaf, bottomPiece, clear, span(leaf.y.from, bottomPiece.part.width.value), ["top"]);
  const top = topPiece && railAt(leaf, topPiece, clear, spanTo(leaf.y.to, topPiece.part.width.value), ["bottom"]);
  return { bottom, top };
}

/** A rail from stile to stile, its tongues in their grooves; its left end is home, what it lacks shows at the right. */
function railAt(
  leaf: Leaf,
  piece: { readonly part: Part; readonly index: number },
  clear: Range,
  y: Range,
  grooved: readonly ("top" | "bottom")[],
): Draft | undefined {
  const { part } = piece;
  const tongue = tongueOf(part);
  const z = span(leaf.z, part.thickness.value);
  const isMitred = machined(part, "mitre") !== undefined;
  const from = isMitred ? leaf.x.from : clear.from;
  const x = span(from, subtract(part.length.value, times(tongue, 2)));
  const draft = lay(leaf.home, piece, x, y, z);
  const groove = machined(part, "groove");
  const gz = groove === undefined ? undefined : grooveZ(leaf, part.thickness.value, groove);
  const tz = machined(part, "tenon") === undefined ? gz : middleThird(z);
  if (tz !== undefined) for (const end of [spanTo(x.from, tongue), span(x.to, tongue)]) grow(draft, end, y, tz);
  if (groove?.deep === undefined || gz === undefined) return draft;
  for (const edge of grooved) {
    // In a mitred frame the grooves of rail and stile meet at the mitre.
    const beyond = isMitred ? groove.deep.value : tongue;
    const run = isMitred ? clear : x;
    const along = { from: subtract(run.from, beyond), to: add(run.to, beyond) };
    cut(draft, along, edge === "top" ? spanTo(y.to, groove.deep.value) : span(y.from, groove.deep.value), gz);
  }
  return draft;
}

function tongueOf(part: Part): Length {
  return (machined(part, "tongue") ?? machined(part, "tenon"))?.deep?.value ?? zero;
}

/** A tenon takes the middle third of its stock: common practice, no source. */
function middleThird(z: Range): Range {
  const third = over(extent(z), 3);
  return span(add(z.from, third), third);
}

function midRailsOf(leaf: Leaf, clearX: Range, clearY: Range): readonly Draft[] {
  const count = leaf.front.parts.find((part) => part.name === "mid rail")?.quantity ?? 0;
  const each = count / leaf.front.leaves;
  return Array.from({ length: each }, (_, index) => {
    const piece = leaf.pool.take({ name: "mid rail" });
    if (piece === undefined) return undefined;
    const y = evenly(clearY, piece.part.width.value, each, index);
    return railAt(leaf, piece, clearX, y, ["top", "bottom"]);
  }).filter((draft) => draft !== undefined);
}

/** The clear stretches that members leave of a whole one. */
function between(clear: Range, members: readonly Range[]): readonly Range[] {
  const edges = [clear.from, ...members.flatMap(({ from, to }) => [from, to]), clear.to];
  return Array.from({ length: members.length + 1 }, (_, index) => ({
    from: edges[2 * index]!,
    to: edges[2 * index + 1]!,
  }));
}

function midStilesOf(leaf: Leaf, clearX: Range, row: Range): readonly Draft[] {
  const quantity = leaf.front.parts.find((part) => part.name === "mid stile")?.quantity ?? 0;
  const midRails = leaf.front.parts.find((part) => part.name === "mid rail")?.quantity ?? 0;
  const each = quantity / leaf.front.leaves / (midRails / leaf.front.leaves + 1);
  return Array.from({ length: each }, (_, index) => {
    const piece = leaf.pool.take({ name: "mid stile" });
    if (piece === undefined) return undefined;
    const { part } = piece;
    const tongue = tongueOf(part);
    const x = evenly(clearX, part.width.value, each, index);
    const y = span(row.from, subtract(part.length.value, times(tongue, 2)));
    const z = span(leaf.z, part.thickness.value);
    const draft = lay(leaf.home, piece, x, y, z);
    const groove = machined(part, "groove");
    const gz = groove === undefined ? undefined : grooveZ(leaf, part.thickness.value, groove);
    const tz = machined(part, "tenon") === undefined ? gz : middleThird(z);
    if (tz !== undefined) for (const end of [spanTo(y.from, tongue), span(y.to, tongue)]) grow(draft, x, end, tz);
    if (groove?.deep !== undefined && gz !== undefined) {
      const along = { from: subtract(y.from, tongue), to: add(y.to, tongue) };
      cut(draft, span(x.from, groove.deep.value), along, gz);
      cut(draft, spanTo(x.to, groove.deep.value), along, gz);
    }
    return draft;
  }).filter((draft) => draft !== undefined);
}

/** A tenon that is longer than the groove is deep cuts its own mortise. */
function mortise(drafts: readonly Draft[]): void {
  for (const tenoned of drafts) {
    if (machined(tenoned.part, "tenon") === undefined) continue;
    for (const tenon of tenoned.added)
      for (const other of drafts)
        if (other !== tenoned && common(other.outline, tenon) !== undefined) other.cuts.push(tenon);
  }
}

/** The two halves of a mitre lie one above the other here; each is as large as it is in truth. */
function mitre(rail: Draft, stile: Draft | undefined): void {
  if (stile === undefined) return;
  const x = shared(rail.outline.x, stile.outline.x);
  const y = shared(rail.outline.y, stile.outline.y);
  if (x !== undefined && y !== undefined) interlock(stile, rail, { x, y, z: rail.outline.z }, mitred);
}

/** A panel in the middle of its cell, its tongue at its front, rabbeted on its back. */
function panelAt(leaf: Leaf, column: Range, row: Range, groove: Machining | undefined): Draft | undefined {
  const piece = leaf.pool.take({ name: "panel" });
  const frame = leaf.front.thickness?.value;
  const gz = groove === undefined || frame === undefined ? undefined : grooveZ(leaf, frame, groove);
  if (piece === undefined || gz === undefined) return undefined;
  const { part } = piece;
  const [wide, high] = runsUp(leaf.front)
    ? [part.width.value, part.length.value]
    : [part.length.value, part.width.value];
  const x = centred(column, wide);
  const y = centred(row, high);
  const z = span(gz.from, part.thickness.value);
  const draft = lay(leaf.home, piece, x, y, z);
  const rabbet = machined(part, "rabbet", "back");
  if (rabbet?.wide === undefined || rabbet.deep === undefined) return draft;
  const behind = spanTo(z.to, rabbet.deep.value);
  const w = rabbet.wide.value;
  cut(draft, span(x.from, w), y, behind);
  cut(draft, spanTo(x.to, w), y, behind);
  cut(draft, x, span(y.from, w), behind);
  cut(draft, x, spanTo(y.to, w), behind);
  return draft;
}

function centred(range: Range, long: Length): Range {
  return span(add(range.from, over(subtract(extent(range), long), 2)), long);
}

function railMates(rail: Draft, stiles: readonly (Draft | undefined)[]): readonly MateDraft[] {
  if (machined(rail.part, "mitre") !== undefined) return [];
  return [...joined(rail, stiles[0], "x", -1), ...joined(rail, stiles[1], "x", 1)];
}

function uprightMates(stile: Draft, rails: readonly Draft[], row: number): readonly MateDraft[] {
  return [...joined(stile, rails[row], "y", -1), ...joined(stile, rails[row + 1], "y", 1)];
}

/** A panel and the members round it. */
interface Cell {
  readonly panel: Draft | undefined;
  readonly left: Draft | undefined;
  readonly right: Draft | undefined;
  readonly below: Draft | undefined;
  readonly above: Draft | undefined;
}

/** A panel floats in the grooves round it: it may touch the bottom of a groove, and must not leave one. */
function panelMates({ panel, left, right, below, above }: Cell): readonly MateDraft[] {
  if (panel === undefined) return [];
  const room = (member: Draft | undefined) => {
    const most = machined(member?.part, "groove")?.deep?.value ?? zero;
    return { least: zero, most, how: "float" as const };
  };
  return [
    ...loose(panel, left, "x", -1, room(left)),
    ...loose(panel, right, "x", 1, room(right)),
    ...loose(panel, below, "y", -1, room(below)),
    ...loose(panel, above, "y", 1, room(above)),
  ];
}
