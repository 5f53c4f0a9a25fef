import { withUnit } from "../../core/length.ts";
import { less, toNumber } from "../../core/rational.ts";
import { givenDistance } from "../../derive/context.ts";
import type { BoxModel, Stock } from "../../derive/model.ts";
import { sagOf } from "../../fit/box/bottom-stiff-enough.ts";
import { limits } from "../../fit/limits.ts";
import { shelfOf } from "../../fit/shelf/stiff-enough.ts";
import { pounds } from "../../fit/weight.ts";
import { testLoad } from "../../published/loads.ts";
import { allowedSag, shelfDesignLoad, shelfLoads, shelfSag } from "../../published/shelves.ts";
import { smallText } from "../explain.ts";
import { aboutName } from "../hover-name.ts";
import { headNames } from "../spot.ts";
import type { Place, Proposal } from "./proposal.ts";
import { named, ranks } from "./proposal.ts";

/** Whether a stock suits a place, and why. */
interface Suits {
  readonly good: boolean;
  readonly why: string;
}

/** The stocks that can be named at a place: those that suit it first, the thinnest of them before the others. */
export function stockProposals(place: Place, kinds: readonly Stock["kind"][]): readonly Proposal[] {
  const { context, model } = place.scene;
  const suits = judgeAt(place);
  const stocks = [...model.stocks.values()].filter((stock) => kinds.includes(stock.kind));
  const judged = stocks.map((stock) => ({ stock, suits: suits?.(stock) }));
  const thickness = (stock: Stock): number => toNumber(stock.thickness.value);
  const ordered = suits === undefined ? judged : judged.toSorted((a, b) => thickness(a.stock) - thickness(b.stock));
  const made = ordered.map(({ stock, suits: said }) =>
    named(stock.name, "stock", {
      detail: [`${stock.kind}, ${withUnit(stock.thickness.value, context.units)}`, said?.why ?? ""]
        .filter((text) => text !== "")
        .join("; "),
      about: () => aboutStock(place, stock.name),
      rank: said === undefined ? ranks.plain : said.good ? ranks.suits : ranks.unsuited,
    }),
  );
  return [...made, ...unmeasured(place, kinds)];
}

/** Stocks of which no thickness is known yet. */
function unmeasured({ scene }: Place, kinds: readonly Stock["kind"][]): readonly Proposal[] {
  const { sheets, boards, edgings } = scene.context.design;
  const blocks = [...sheets, ...boards, ...edgings].filter(({ kind }) => kinds.includes(kind));
  const names = new Set(blocks.map(({ name }) => name.text).filter((name) => !scene.model.stocks.has(name)));
  return [...names].map((name) => named(name, "stock", { detail: "of no thickness yet", rank: ranks.unsuited }));
}

function aboutStock({ scene }: Place, text: string): string {
  const given = scene.context.names.of.stock.get(text);
  return given === undefined ? "" : (aboutName(scene, { kind: "stock", text, span: given.span, given: false }) ?? "");
}

/** What decides whether a stock suits the property that is written; `undefined` where nothing does. */
function judgeAt(place: Place): ((stock: Stock) => Suits) | undefined {
  const { block, key } = place.spot;
  if (block?.word === "shelf" && key?.text === "from") return forShelf(place);
  if (block?.word === "box" && key?.text === "bottom") return forBottom(place);
  if (block?.word === "box" && key?.text === "sides") return forSides(place);
  return key?.text === "frame" ? (stock) => forFrame(place, stock) : undefined;
}

function forShelf({ scene, spot }: Place): ((stock: Stock) => Suits) | undefined {
  const { context, model, reading } = scene;
  const [name] = headNames(scene.outline, spot.block!);
  const opening = model.openings.find((one) => one.name.text === name);
  if (opening?.deep === undefined) return undefined;
  const [span, depth] = [toNumber(opening.wide.value), toNumber(opening.deep.value)];
  const holds = model.shelves.find((shelf) => shelf.opening === opening)?.whole.holds;
  const load = pounds(context, holds) ?? shelfDesignLoad(span, depth, shelfLoads.general.value);
  const allowed = allowedSag(span, "L/144");
  if (load === undefined || allowed === undefined) return undefined;
  return (stock) => {
    const shelf = shelfOf(context, stock, depth, load);
    const sag = shelf === undefined ? undefined : shelfSag({ ...shelf, span })?.total;
    return sags(sag, allowed, (inches) => smallText(inches, reading));
  };
}

function forBottom(place: Place): ((stock: Stock) => Suits) | undefined {
  const { context, reading } = place.scene;
  const box = boxAt(place);
  if (box?.inside === undefined) return undefined;
  const [wide, deep] = [toNumber(box.inside.wide.value), toNumber(box.inside.deep.value)];
  const load = pounds(context, box.whole.holds) ?? testLoad(wide, deep);
  const allowed = allowedSag(Math.min(wide, deep), "1/16 in per foot");
  if (load === undefined || allowed === undefined) return undefined;
  return (stock) => sags(sagOf(context, stock, { wide, deep, load }), allowed, (inches) => smallText(inches, reading));
}

function sags(sag: number | undefined, allowed: number, text: (inches: number) => string): Suits {
  if (sag === undefined) return { good: false, why: "how stiff it is, is not known" };
  const good = sag <= allowed;
  return { good, why: `${good ? "stiff enough" : "too thin"}: sags ${text(sag)}, ${text(allowed)} is the limit` };
}

/** Under-mounted slides take sides of some thickness only. */
function forSides(place: Place): ((stock: Stock) => Suits) | undefined {
  const { context } = place.scene;
  const slides = boxAt(place)?.slides.block;
  const thickest = slides === undefined ? undefined : givenDistance({ ...context, findings: [] }, slides.thickest);
  if (slides === undefined || thickest === undefined) return undefined;
  const limit = withUnit(thickest.value, context.units);
  return (stock) =>
    less(thickest.value, stock.thickness.value)
      ? { good: false, why: `too thick: ${slides.name.text} takes sides to ${limit}` }
      : { good: true, why: `${slides.name.text} takes sides to ${limit}` };
}

function boxAt({ scene, spot }: Place): BoxModel | undefined {
  const [name] = headNames(scene.outline, spot.block!);
  return scene.model.boxes.find(({ opening }) => opening.name.text === name);
}

function forFrame({ scene }: Place, { thickness }: Stock): Suits {
  const limit = withUnit(limits.doorStock.value, scene.context.units);
  return less(thickness.value, limits.doorStock.value)
    ? { good: false, why: `thin for a frame: ${limit} is the least` }
    : { good: true, why: "thick enough for a frame" };
}
