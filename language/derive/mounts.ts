import type { StockUse } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import { exactText, type Reading, showText } from "../core/length.ts";
import {
  add,
  compare,
  equal,
  less as isLess,
  isPositive,
  largest,
  over,
  smallest,
  subtract,
  sum,
  toText,
} from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { derived } from "../core/sourced.ts";
import type { Span } from "../core/span.ts";
import type { Context } from "./context.ts";
import { givenSize, resolve } from "./context.ts";
import { fallback } from "./defaults.ts";
import type { BoxModel, MountModel, Stock } from "./model.ts";
import { layersFor } from "./packing.ts";
import { partsFrom } from "./parts.ts";
import { less } from "./rules/less.ts";
import { plus } from "./rules/plus.ts";

/** A place where a slide needs something to be screwed to. */
interface Seat {
  readonly box: BoxModel;
  readonly side: "left" | "right";
  readonly need: Sourced<Length>;
  /** The member that stands between two openings here, when a mount can serve both. */
  readonly shared: Span | undefined;
  readonly at: Sourced<Length>;
  /** The height of a mount for this slide alone. */
  readonly high: Sourced<Length>;
  /** Tells the wall or member apart that it hangs at; missing for an opening that stands alone. */
  readonly wall: Span | string | undefined;
}

/**
 * The mounts of all side-mounted boxes. Slides that hang at one wall or on one member so close that their mounts would
 * run into each other share one mount, which is as much higher.
 */
export function deriveMounts(
  context: Context,
  boxes: readonly BoxModel[],
  stocks: ReadonlyMap<string, Stock>,
): readonly MountModel[] {
  const seats = boxes.flatMap((box) => seatsOf(context, box));
  const walls = new Map<Span | string, Seat[]>();
  for (const [index, seat] of seats.entries()) {
    const wall = seat.wall ?? String(index);
    const list = walls.get(wall);
    if (list === undefined) walls.set(wall, [seat]);
    else list.push(seat);
  }
  const order = new Map(seats.map((seat, index) => [seat, index]));
  const layersOf = new Map<string, readonly Stock[]>();
  return [...walls.values()]
    .flatMap(groupsAt)
    .map((group) => [...group].sort((a, b) => order.get(a)! - order.get(b)!))
    .sort((a, b) => order.get(a[0]!)! - order.get(b[0]!)!)
    .map(([first, ...rest]) => mountFor(context, first!, rest, stocks, layersOf));
}

/** Seats of one wall in groups: those whose mounts would run into each other. */
function groupsAt(seats: readonly Seat[]): readonly (readonly Seat[])[] {
  const sorted = [...seats].sort((a, b) => compare(bottomOf(a), bottomOf(b)));
  const groups: Seat[][] = [];
  let top: Length | undefined;
  for (const seat of sorted) {
    const group = groups.at(-1);
    if (group !== undefined && top !== undefined && isLess(bottomOf(seat), top)) group.push(seat);
    else groups.push([seat]);
    const end = add(bottomOf(seat), seat.high.value);
    top = top === undefined || isLess(top, end) ? end : top;
  }
  return groups;
}

function seatsOf(context: Context, box: BoxModel): readonly Seat[] {
  const mount = box.slides.block.mount?.value ?? "side";
  if (mount !== "side" || box.parts.length === 0) return [];
  const at = givenSize(context, box.whole.at) ?? middleOf(box);
  const slide = givenSize(context, box.slides.block.high) ?? fallback("slides.high");
  const high = plus(slide, fallback("mount.beyond"));
  return (["left", "right"] as const).flatMap((side): Seat[] => {
    const bound = box.opening.bounds[side];
    const need = bound.shared ? bound.member : bound.beside;
    if (need === undefined || !isPositive(need.value)) return [];
    const shared = bound.shared ? bound.at : undefined;
    return [{ box, side, need, shared, at, high, wall: shared ?? wallOf(box, side) }];
  });
}

function middleOf(box: BoxModel): Sourced<Length> {
  return derived(
    { gives: "height of the slide's middle", formula: "{below} + {box height} ÷ 2", tag: "common practice" },
    { below: box.slides.below, "box height": box.high },
    (of) => add(of.below, over(of["box height"], 2)),
  );
}

/** The edge of an opening in its case, from the wall's side. */
function wallOf({ opening }: BoxModel, side: "left" | "right"): string | undefined {
  const { rect } = opening;
  if (rect === undefined || opening.case === undefined) return undefined;
  return [opening.case, opening.face, side, toText(side === "left" ? rect.x : add(rect.x, rect.wide))].join(" ");
}

function heightOf(seat: Seat): Length {
  return add(seat.box.opening.rect?.y ?? { n: 0n, d: 1n }, seat.at.value);
}

function bottomOf(seat: Seat): Length {
  return subtract(heightOf(seat), over(seat.high.value, 2));
}

/** From the face frame to what stands behind; in a case with openings on both faces no further than its own box. */
function mountLength(context: Context, { opening, deep }: BoxModel, stocks: ReadonlyMap<string, Stock>) {
  const home = context.design.cases.find((block) => block.name.text === opening.case);
  if (home?.rear === undefined) return opening.behindFrame ?? opening.deep ?? deep;
  const frame = opening.face === "front" ? home.frame : home.rear.frame;
  const stock = frame === undefined ? undefined : stocks.get(frame.stock.text);
  return stock === undefined ? deep : less(deep, stock.thickness);
}

/** The height of one mount for several slides, and of its middle above the floor of the first one's opening. */
function spanned(seats: readonly [Seat, ...Seat[]]): { readonly high: Sourced<Length>; readonly at: Sourced<Length> } {
  const [first] = seats;
  if (seats.length === 1) return first;
  const bottom = smallest(...(seats.map(bottomOf) as [Length, ...Length[]]));
  const top = largest(...(seats.map((seat) => add(bottomOf(seat), seat.high.value)) as [Length, ...Length[]]));
  const inputs = Object.fromEntries(seats.map((seat) => [`slide in ${seat.box.opening.name.text}`, seat.at]));
  const names = Object.keys(inputs).map((name) => `{${name}}`);
  const formula = `from the lowest to the highest of ${names.join(", ")}, each with {mount of one slide} round it`;
  const all = { ...inputs, "mount of one slide": first.high };
  return {
    high: derived({ gives: "height of a mount for several slides", formula, tag: "geometry" }, all, () =>
      subtract(top, bottom),
    ),
    at: derived({ gives: "middle of a mount for several slides", formula, tag: "geometry" }, all, () =>
      subtract(over(add(bottom, top), 2), first.box.opening.rect?.y ?? { n: 0n, d: 1n }),
    ),
  };
}

function mountFor(
  context: Context,
  seat: Seat,
  others: readonly Seat[],
  stocks: ReadonlyMap<string, Stock>,
  layersOf: Map<string, readonly Stock[]>,
): MountModel {
  const { opening } = seat.box;
  const layers = layersAt(context, seat, stocks, layersOf);
  const built = together(layers);
  const left = leftOf(seat.need, layers);
  const long = mountLength(context, seat.box, stocks);
  const { high, at } = spanned([seat, ...others]);
  const mount = {
    of: seat.box.of,
    openings: [opening, ...others.map((other) => other.box.opening)],
    side: seat.shared === undefined ? seat.side : ("middle" as const),
    need: seat.need,
    layers,
    built,
    left,
    at,
    high,
    long,
  };
  return { ...mount, parts: mountParts(context, mount, [seat, ...others]) };
}

/** Needs recur from box to box, and each costs a search. */
function layersAt(
  context: Context,
  seat: Seat,
  stocks: ReadonlyMap<string, Stock>,
  known: Map<string, readonly Stock[]>,
): readonly Stock[] {
  const sheets = sheetsFor(context, seat.box, stocks);
  const key = `${toText(seat.need.value)} ${sheets.map((sheet) => sheet.name).join(" ")}`;
  const layers = known.get(key) ?? layersFor(seat.need.value, sheets);
  known.set(key, layers);
  return layers;
}

/** The sheets that packing may be cut from: those named for the box, for its case, or all. */
function sheetsFor(context: Context, box: BoxModel, stocks: ReadonlyMap<string, Stock>): readonly Stock[] {
  const home = context.design.cases.find((block) => block.name.text === box.opening.case);
  const use: StockUse | undefined = box.whole.packing ?? home?.packing;
  if (use !== undefined) return use.stocks.flatMap((word) => resolve(context, "stock", word, stocks) ?? []);
  return [...stocks.values()].filter((stock) => stock.kind === "sheet");
}

function inputsOf(layers: readonly Stock[]): Record<string, Sourced<Length>> {
  return Object.fromEntries(layers.map((stock, index) => [`layer ${index + 1}, ${stock.name}`, stock.thickness]));
}

function together(layers: readonly Stock[]): Sourced<Length> {
  const inputs = inputsOf(layers);
  const formula =
    layers.length === 0
      ? "no layer is thin enough"
      : Object.keys(inputs)
          .map((name) => `{${name}}`)
          .join(" + ");
  return derived({ gives: "packing", formula, tag: "geometry" }, inputs, (of) => sum(Object.values(of)));
}

function leftOf(need: Sourced<Length>, layers: readonly Stock[]): Sourced<Length> {
  return layers.length === 0 ? need : less(need, together(layers));
}

function mountParts(
  context: Context,
  mount: Omit<MountModel, "parts">,
  seats: readonly [Seat, ...Seat[]],
): MountModel["parts"] {
  const byStock = new Map<Stock, number>();
  for (const layer of mount.layers) byStock.set(layer, (byStock.get(layer) ?? 0) + 1);
  const { box } = seats[0];
  const note = noteOf(context, mount, seats);
  return [...byStock].flatMap(([stock, quantity]) =>
    partsFrom(context, {
      name: mount.side === "middle" ? "middle mount" : "mount",
      of: box.of,
      quantity,
      stock,
      length: mount.long,
      width: mount.high,
      source: box.whole.slides?.key.span ?? box.block.head,
      note,
    }),
  );
}

/** What the layers come to, what is left, and where the slide goes: to the file's reading. */
function noteOf(context: Context, mount: Omit<MountModel, "parts">, seats: readonly [Seat, ...Seat[]]): string {
  const { reading } = context;
  const labels = mount.layers.map((stock) => labelOf(context, stock)).join(" + ");
  const shim = isPositive(mount.left.value) ? `shim ${shimText(mount.left.value, reading)}` : "no shim";
  const measured = `${labels} measures ${showText(mount.built.value, reading)} of ${showText(mount.need.value, reading)}: ${shim}`;
  const alike = seats.every((seat) => equal(seat.at.value, seats[0].at.value));
  const heights = seats.map(
    ({ at, box }) => `${showText(at.value, reading)} above the floor of ${box.opening.name.text}`,
  );
  const where =
    seats.length === 1 || alike
      ? `slide's middle ${showText(seats[0].at.value, reading)} above the floor of the opening`
      : `slides' middles ${heights.join(", ")}`;
  const serves = seats.length === 1 ? "" : `; serves ${seats.map(({ box }) => box.opening.name.text).join(" and ")}`;
  return `${measured}; ${where}${serves}`;
}

/** Less than the finest mark would be read off as nought. */
function shimText(left: Length, reading: Reading): string {
  return isLess(left, reading.step) ? `under ${showText(reading.step, reading)}` : showText(left, reading);
}

/** A sheet is talked of by its label. */
function labelOf(context: Context, stock: Stock): string {
  if (stock.kind !== "sheet" || stock.block.called === undefined) return stock.name;
  const label = givenSize(context, stock.block.called);
  return label === undefined ? stock.name : exactText(label.value, context.units);
}
