import type { StockUse } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import { exactText, showText } from "../core/length.ts";
import { add, equal, isPositive, over, sum, toText } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { derived } from "../core/sourced.ts";
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
  readonly shared: string | undefined;
  readonly at: Sourced<Length>;
}

/** The mounts of all side-mounted boxes. A mount in the middle serves the slides of both its sides where they meet. */
export function deriveMounts(
  context: Context,
  boxes: readonly BoxModel[],
  stocks: ReadonlyMap<string, Stock>,
): readonly MountModel[] {
  const seats = boxes.flatMap((box) => seatsOf(context, box));
  const bySharing = new Map<string, Seat[]>();
  for (const seat of seats) if (seat.shared !== undefined) listIn(bySharing, seat.shared).push(seat);
  const taken = new Set<Seat>();
  const layersOf = new Map<string, readonly Stock[]>();
  return seats.flatMap((seat) => {
    if (taken.has(seat)) return [];
    const neighbours = seat.shared === undefined ? [] : listIn(bySharing, seat.shared);
    const other = neighbours.find((one) => !taken.has(one) && meets(seat, one));
    taken.add(seat);
    if (other !== undefined) taken.add(other);
    return [mountFor(context, seat, other, stocks, layersOf)];
  });
}

function listIn<T>(table: Map<string, T[]>, key: string): T[] {
  const list = table.get(key) ?? [];
  table.set(key, list);
  return list;
}

function seatsOf(context: Context, box: BoxModel): readonly Seat[] {
  const mount = box.slides.block.mount?.value ?? "side";
  if (mount !== "side" || box.parts.length === 0) return [];
  const at = givenSize(context, box.whole.at) ?? middleOf(box);
  return (["left", "right"] as const).flatMap((side): Seat[] => {
    const bound = box.opening.bounds[side];
    const need = bound.shared ? bound.member : bound.beside;
    if (need === undefined || !isPositive(need.value)) return [];
    return [{ box, side, need, shared: bound.shared ? bound.id : undefined, at }];
  });
}

function middleOf(box: BoxModel): Sourced<Length> {
  return derived(
    { gives: "height of the slide's middle", formula: "{below} + {box height} ÷ 2", tag: "common practice" },
    { below: box.slides.below, "box height": box.high },
    (of) => add(of.below, over(of["box height"], 2)),
  );
}

/** Whether two slides hang at one height on both sides of one member. */
function meets(a: Seat, b: Seat): boolean {
  if (a === b || a.shared === undefined || a.shared !== b.shared || a.side === b.side) return false;
  return equal(heightOf(a), heightOf(b));
}

function heightOf(seat: Seat): Length {
  return add(seat.box.opening.rect?.y ?? { n: 0n, d: 1n }, seat.at.value);
}

function mountFor(
  context: Context,
  seat: Seat,
  other: Seat | undefined,
  stocks: ReadonlyMap<string, Stock>,
  layersOf: Map<string, readonly Stock[]>,
): MountModel {
  const { opening, slides } = seat.box;
  const layers = layersAt(context, seat, stocks, layersOf);
  const built = together(layers);
  const left = leftOf(seat.need, layers);
  const high = plus(givenSize(context, slides.block.high) ?? fallback("slides.high"), fallback("mount.beyond"));
  const long = opening.behindFrame ?? opening.deep ?? seat.box.deep;
  const openings = other === undefined ? [opening] : [opening, other.box.opening];
  const mount = {
    of: seat.box.of,
    openings,
    side: seat.shared === undefined ? seat.side : ("middle" as const),
    need: seat.need,
    layers,
    built,
    left,
    at: seat.at,
    high,
    long,
  };
  return { ...mount, parts: mountParts(context, mount, seat.box) };
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

function mountParts(context: Context, mount: Omit<MountModel, "parts">, box: BoxModel): MountModel["parts"] {
  const byStock = new Map<Stock, number>();
  for (const layer of mount.layers) byStock.set(layer, (byStock.get(layer) ?? 0) + 1);
  const note = noteOf(context, mount);
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
function noteOf(context: Context, mount: Omit<MountModel, "parts">): string {
  const { reading } = context;
  const labels = mount.layers.map((stock) => labelOf(context, stock)).join(" + ");
  const shim = isPositive(mount.left.value) ? `shim ${showText(mount.left.value, reading)}` : "no shim";
  const measured = `${labels} measures ${showText(mount.built.value, reading)} of ${showText(mount.need.value, reading)}: ${shim}`;
  const serves =
    mount.openings.length === 2 ? `; serves ${mount.openings.map((opening) => opening.name.text).join(" and ")}` : "";
  return `${measured}; slide's middle ${showText(mount.at.value, reading)} above the floor of the opening${serves}`;
}

/** A sheet is talked of by its label. */
function labelOf(context: Context, stock: Stock): string {
  if (stock.kind !== "sheet" || stock.block.called === undefined) return stock.name;
  const label = givenSize(context, stock.block.called);
  return label === undefined ? stock.name : exactText(label.value, context.units);
}
