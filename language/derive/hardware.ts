import type { Price } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import { exactText, inUnit, showText, toMillimetres, withUnit } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import type { Rational } from "../core/rational.ts";
import { add, divide, multiply, one, ratio, times, toNumber } from "../core/rational.ts";
import type { Tag } from "../core/sourced.ts";
import type { Context } from "./context.ts";
import { amount, pieces } from "./context.ts";
import { fallback } from "./defaults.ts";
import { runsUp } from "./front-parts.ts";
import { hingesCut } from "./hinging.ts";
import type { BoxModel, FrontModel, Model, Stock } from "./model.ts";
import { pocketScrewLength, slideScrew, statedScrew, usualScrew } from "./screw-sizes.ts";

/** Something to buy that is not cut from stock: how many, for what, and why so many. */
export interface HardwareItem {
  readonly kind: "slides" | "hinges" | "screws" | "dowels" | "pins" | "edging" | "glue" | "pulls";
  readonly name: string;
  readonly size: string;
  readonly quantity: number;
  readonly unit: "pair" | "piece" | "foot" | "metre" | "joint";
  /** The owners that it is for. */
  readonly owners: readonly string[];
  readonly because: string;
  readonly tag: Tag;
  /** In the file's own money; missing where no price is written. */
  readonly cost: number | undefined;
}

type Line = Omit<HardwareItem, "owners" | "cost"> & { readonly owner: string; readonly price: Price | undefined };

/** Every slide, hinge, screw, pin, pull and length of edging that the model wants, equal ones counted together. */
export function hardwareOf(context: Context, model: Omit<Model, "hardware">): readonly HardwareItem[] {
  const lines = [
    ...model.boxes.flatMap((box) => boxLines(context, box)),
    ...model.mounts.flatMap((mount) => screwsForMount(mount.of)),
    ...model.fronts.flatMap((front) => frontLines(context, front)),
    ...model.shelves.flatMap((shelf) =>
      shelf.whole.adjustable === undefined ? [] : shelf.parts.map((part) => pins(shelf.of, part.quantity)),
    ),
    ...boredLines(context, model),
    ...edgingLines(context, model),
    ...glueLines(model),
  ];
  return together(context, lines);
}

function boxLines(context: Context, box: BoxModel): readonly Line[] {
  if (box.parts.length === 0 || box.slides.length === undefined) return [];
  const { block } = box.slides;
  const size = showText(box.slides.length.value, context.reading);
  const slides: Line = {
    kind: "slides",
    name: box.slides.name,
    size,
    quantity: 1,
    unit: "pair",
    owner: box.of,
    because: "a pair for each box",
    tag: "geometry",
    price: block.costs,
  };
  const fixing: Line = {
    kind: "screws",
    name: block.screws?.text ?? "pan-head",
    size:
      block.screws === undefined
        ? slideScrew(context, box.sides.thickness.value)
        : statedScrew(context, block.screws.text),
    quantity: 12,
    unit: "piece",
    owner: box.of,
    because: "three in each member of each slide, as they are put up",
    tag: "common practice",
    price: priceOf(context, block.screws?.text),
  };
  return [slides, fixing, ...cornerScrews(context, box), ...bottomScrews(context, box)];
}

function cornerScrews(context: Context, box: BoxModel): readonly Line[] {
  const kind = box.whole.corners?.kind ?? "screws";
  if (kind === "pocket screws") {
    const thick = toNumber(box.sides.thickness.value);
    const size = pocketSize(context, thick);
    return [pocketLine(context, box.of, size, 8, "two at each end of front and back")];
  }
  if (kind !== "screws") return [];
  const each = Math.max(2, Math.ceil(toNumber(box.high.value) / 3));
  return [
    {
      kind: "screws",
      name: "wood screw",
      size: usualScrew(context, "corner"),
      quantity: 4 * each,
      unit: "piece",
      owner: box.of,
      because: `one every ${context.units === "inches" ? "three inches" : "76 mm"} of each corner, at least two`,
      tag: "common practice",
      price: undefined,
    },
  ];
}

function bottomScrews(context: Context, box: BoxModel): readonly Line[] {
  const held = box.whole.bottom?.fittings[0]?.word ?? "under";
  if (box.bottom === undefined || held !== "under") return [];
  const around = 2 * (toNumber(box.wide.value) + toNumber(box.deep.value));
  return [
    {
      kind: "screws",
      name: "flat-head",
      size: usualScrew(context, "bottom"),
      quantity: Math.ceil(around / 6),
      unit: "piece",
      owner: box.of,
      because: `one every ${context.units === "inches" ? "six inches" : "152 mm"} round a bottom that lies under the sides`,
      tag: "common practice",
      price: undefined,
    },
  ];
}

function pocketLine(context: Context, owner: string, size: string, quantity: number, because: string): Line {
  const named = context.design.shop.pockets[0]?.screws?.text;
  return {
    kind: "screws",
    name: named ?? "pocket screw",
    size: named === undefined ? size : statedScrew(context, named),
    quantity,
    unit: "piece",
    owner,
    because,
    tag: "common practice",
    price: priceOf(context, named),
  };
}

/** Both pieces of a joint are of one stock: rails and stiles, panels of a case, sides and ends of a box. */
function pocketSize(context: Context, thick: number): string {
  const length = pocketScrewLength(context, thick, thick);
  return length === undefined ? "try a length in scrap" : withUnit(length, context.units);
}

/** Pocket screws and dowels by what is bored for them; those of boxes are counted with their corners. */
function boredLines(context: Context, { parts }: Omit<Model, "hardware">): readonly Line[] {
  return parts.flatMap((part) =>
    part.of.startsWith("box ") ? [] : part.machining.flatMap((made) => boredLine(context, part, made)),
  );
}

/** Parts of a case that are no frame: their ends are as wide as the case is deep, and take more than two. */
const panels = new Set(["bottom", "top", "stretcher", "partition"]);

function boredLine(context: Context, part: Part, made: Machining): readonly Line[] {
  const quantity = (made.count ?? 0) * part.quantity;
  const isPanel = part.of.startsWith("case ") && panels.has(part.name);
  const apart = withUnit(fallback("pockets.apart").value, context.units);
  const why = isPanel
    ? { because: `at most ${apart} apart across the ends of the panels`, tag: "from memory" as const }
    : { because: "two at each end of each rail", tag: "common practice" as const };
  const thick = toNumber(part.thickness.value);
  if (made.kind === "pockets") {
    const size = pocketSize(context, thick);
    return [{ ...pocketLine(context, part.of, size, quantity, why.because), ...why }];
  }
  if (made.kind !== "holes" || made.note !== "dowels") return [];
  const size = dowels[context.units][thick < 0.6 ? "thin" : "thick"];
  return [{ kind: "dowels", name: "dowels", size, quantity, unit: "piece", owner: part.of, ...why, price: undefined }];
}

/** About half as thick as the wood, as they are sold; the thin ones for wood of half an inch (common practice, no source). */
const dowels = {
  inches: { thin: "1/4 × 1 in", thick: "3/8 × 1 1/2 in" },
  millimetres: { thin: "6 × 30 mm", thick: "8 × 40 mm" },
} as const;

function priceOf(context: Context, name: string | undefined): Price | undefined {
  return context.design.screws.find((screw) => screw.name.text === name)?.costs;
}

function screwsForMount(of: string): readonly Line[] {
  return [
    {
      kind: "screws",
      name: "wood screw",
      size: "into case or frame, by the thickness packed",
      quantity: 4,
      unit: "piece",
      owner: of,
      because: "two at each end of a mount, besides glue between its layers",
      tag: "common practice",
      price: undefined,
    },
  ];
}

function frontLines(context: Context, front: FrontModel): readonly Line[] {
  const lines: Line[] = [];
  const hinges = hingesCut(front.parts);
  const use = front.whole.hinges;
  if (hinges !== undefined && use !== undefined) {
    const block = context.design.hinges.find((hinge) => hinge.name.text === use.name.text);
    lines.push({
      kind: "hinges",
      name: use.name.text,
      size: "",
      quantity: hinges * front.leaves,
      unit: "piece",
      owner: front.of,
      because: use.count === undefined ? "by the height of the door" : "as written",
      tag: use.count === undefined ? "common practice" : "geometry",
      price: block?.costs,
    });
  }
  const pulls = front.whole.pulls === undefined ? 0 : (pieces(context, front.whole.pulls.value, 12) ?? 0);
  if (0 < pulls)
    lines.push({
      kind: "pulls",
      name: "pull",
      size: "",
      quantity: pulls * front.leaves,
      unit: "piece",
      owner: front.of,
      because: "as written",
      tag: "geometry",
      price: undefined,
    });
  if (front.block.kind === "front")
    lines.push({
      kind: "screws",
      name: "wood screw",
      size: `${usualScrew(context, "front")}, from inside the box`,
      quantity: 4 * front.leaves,
      unit: "piece",
      owner: front.of,
      because: "four hold a front to its box",
      tag: "common practice",
      price: undefined,
    });
  return lines;
}

function pins(of: string, shelves: number): Line {
  return {
    kind: "pins",
    name: "shelf pin",
    size: "5 mm",
    quantity: 4 * shelves,
    unit: "piece",
    owner: of,
    because: "four under each shelf",
    tag: "common practice",
    price: undefined,
  };
}

/** A band is cut long and trimmed: a tenth more than the edges. */
const bandWaste = ratio(11, 10);

function edgingLines(context: Context, model: Omit<Model, "hardware">): readonly Line[] {
  const uprights = new Set(model.fronts.filter(runsUp).map(({ of }) => of));
  return model.parts.flatMap((part) =>
    part.machining.flatMap((made): readonly Line[] => {
      const stock = made.kind === "edging" && made.note !== undefined ? model.stocks.get(made.note) : undefined;
      if (stock === undefined) return [];
      const edges = edgeLength(part, made.where, uprights.has(part.of));
      const long = multiply(times(edges, part.quantity), bandWaste);
      const metric = context.units === "millimetres";
      const quantity = metric ? toNumber(toMillimetres(long)) / 1000 : toNumber(long) / 12;
      return [
        {
          kind: "edging",
          name: stock.name,
          size: exactText(stock.thickness.value, context.units),
          quantity,
          unit: metric ? "metre" : "foot",
          owner: part.of,
          because: "the edges named and a tenth more, since a band is cut long and trimmed",
          tag: "common practice",
          price: edgingPrice(stock),
        },
      ];
    }),
  );
}

function edgingPrice(stock: Stock): Price | undefined {
  return stock.kind === "edging" ? stock.block.costs : undefined;
}

/** The length of an upright front runs from its bottom to its top, that of any other part from left to right. */
function edgeLength({ length, width }: Model["parts"][number], where: string, upright: boolean): Length {
  if (where === "all edges") return times(add(length.value, width.value), 2);
  const named = where.replace(/ edge$/, "").split(", ");
  const ends = named.filter((edge) => edge === "left" || edge === "right").length;
  const sides = named.length - ends;
  const [along, across] = upright ? [ends, sides] : [sides, ends];
  return add(times(length.value, along), times(width.value, across));
}

/** Glue is counted in joints: how much a joint takes is for the bottle's label to say. */
function glueLines(model: Omit<Model, "hardware">): readonly Line[] {
  return model.parts.flatMap((part) => {
    const joints = part.machining.filter(
      (made) =>
        ["tongue", "tenon", "rabbet", "dado", "tails", "fingers", "mitre"].includes(made.kind) &&
        made.note !== "bottom" &&
        part.name !== "panel",
    );
    const count = joints.reduce((sum, made) => sum + (made.count ?? 1), 0) * part.quantity;
    return count === 0
      ? []
      : [
          {
            kind: "glue" as const,
            name: "wood glue",
            size: "",
            quantity: count,
            unit: "joint" as const,
            owner: part.of,
            because: "each housed joint is glued; a panel is not",
            tag: "common practice" as const,
            price: undefined,
          },
        ];
  });
}

function together(context: Context, lines: readonly Line[]): readonly HardwareItem[] {
  const byKey = new Map<string, Line[]>();
  for (const line of lines) {
    const key = [line.kind, line.name, line.size, line.unit, line.because].join("|");
    const same = byKey.get(key);
    if (same === undefined) byKey.set(key, [line]);
    else same.push(line);
  }
  return [...byKey.values()].map((same) => {
    const first = same[0]!;
    const exactQuantity = same.reduce((sum, line) => sum + line.quantity, 0);
    const quantity =
      first.unit === "foot" || first.unit === "metre" ? Math.ceil(exactQuantity * 10) / 10 : exactQuantity;
    const { owner: _owner, price: _price, ...item } = first;
    return {
      ...item,
      quantity,
      owners: [...new Set(same.map((line) => line.owner))],
      cost: costOf(context, first, quantity),
    };
  });
}

/** What a quantity costs by the price for one lot of it. */
function costOf(context: Context, line: Line, quantity: number): number | undefined {
  if (line.price === undefined) return undefined;
  const value = amount(context, line.price.amount);
  const lot = lotOf(line, line.price);
  const each = value === undefined || lot === undefined ? undefined : divide(value, lot);
  return each === undefined ? undefined : Math.round(toNumber(each) * quantity * 100) / 100;
}

/** How many of a line's units its price is for; `undefined` where that cannot be told, as for a roll of edging. */
function lotOf({ kind, unit }: Line, { per }: Price): Rational | undefined {
  if (per !== undefined && /^\d+$/.test(per)) return ratio(BigInt(per));
  if (kind === "screws") return per === undefined ? ratio(100) : one;
  // A price by the piece where they are counted in pairs, or the other way round.
  if (kind === "slides" && per === "piece") return ratio(1, 2);
  if (kind === "hinges" && per === "pair") return ratio(2);
  if (kind !== "edging") return one;
  if (per !== undefined && per !== "foot" && per !== "metre") return undefined;
  return divide(inUnit(one, per === "metre" ? "m" : "ft"), inUnit(one, unit === "metre" ? "m" : "ft"));
}
