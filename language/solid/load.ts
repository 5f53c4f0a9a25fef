import type { Part } from "../core/part.ts";
import { add, equal, toNumber } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import { hingesCut } from "../derive/hinging.ts";
import type { BoxModel, CaseModel, Model, Opening, Stock } from "../derive/model.ts";
import { frontsByOpening, loadOf } from "../fit/slide/load.ts";
import { densityOf, modulusOf, pounds, weightOfAll } from "../fit/weight.ts";
import { hingeCount } from "../published/hinges.ts";
import { testLoad } from "../published/loads.ts";
import { allowedSag, longestSpan, type SagLimit, shelfDesignLoad, shelfLoads, shelfSag } from "../published/shelves.ts";
import { deflection } from "../published/stiffness.ts";
import { extent, shared } from "./box.ts";
import { groupedBy } from "./grouped.ts";
import type { Solid } from "./solid.ts";

/** Something that bends between two supports: inches and pounds. */
export interface Bending {
  readonly kind: "shelf" | "box bottom" | "case bottom" | "rail";
  readonly part: Part;
  readonly load: number;
  /** Whether the load is written; otherwise it is the published design or test load. */
  readonly stated: boolean;
  readonly span: number;
  readonly sag: number;
  readonly limit: SagLimit;
  readonly allowed: number;
  /** The longest span that keeps to the limit under the same load, sought when it is asked for. */
  readonly longest: () => number | undefined;
}

/** A pair of slides or a door's hinges: what they are asked to do beside what they are rated for. */
export interface Rated {
  readonly kind: "slides" | "hinges";
  readonly of: string;
  /** Pounds on a pair of slides, or the hinges that a door's height and weight ask for; missing beyond the chart. */
  readonly asked: number | undefined;
  /** Pounds that the pair carries, or the hinges bored for. */
  readonly rated: number | undefined;
}

export interface Loads {
  readonly bending: readonly Bending[];
  readonly rated: readonly Rated[];
}

/** Shelves, bottoms and rails as beams by Table 9-1, slides by their rating, hinges by the chart. */
export function loadsOf(context: Context, model: Model, solids: readonly Solid[]): Loads {
  return {
    bending: [
      ...model.shelves.flatMap((shelf) => shelfBending(context, model, shelf)),
      ...model.boxes.flatMap((box) => boxBottom(context, model, box)),
      ...model.cases.flatMap((one) => caseBottom(context, model, one, solids)),
      ...model.boxes.flatMap((box) => railUnder(context, model, box, solids)),
    ],
    rated: [...slides(context, model), ...hinges(context, model)],
  };
}

interface Asked {
  readonly kind: Bending["kind"];
  readonly part: Part;
  readonly span: number;
  readonly depth: number;
  readonly holds: number | undefined;
  readonly otherwise: number | undefined;
  readonly limit: SagLimit;
}

/** A flat piece on two simple ends, its own weight counted in. */
function flat(context: Context, stock: Stock | undefined, asked: Asked): readonly Bending[] {
  const modulus = stock === undefined ? undefined : modulusOf(stock);
  const load = asked.holds ?? asked.otherwise;
  if (stock === undefined || modulus === undefined || load === undefined) return [];
  const thickness = toNumber(asked.part.thickness.value);
  const shelf = { depth: asked.depth, thickness, modulus, density: densityOf(context, stock), load: { pounds: load } };
  const sag = shelfSag({ ...shelf, span: asked.span })?.total;
  const allowed = allowedSag(asked.span, asked.limit);
  if (sag === undefined || allowed === undefined) return [];
  const { kind, part, span, limit } = asked;
  const stated = asked.holds !== undefined;
  return [{ kind, part, load, stated, span, sag, limit, allowed, longest: () => longestSpan(shelf, limit) }];
}

function shelfBending(context: Context, model: Model, { parts, whole }: Model["shelves"][number]): readonly Bending[] {
  const part = parts[0];
  if (part === undefined) return [];
  const [span, depth] = [toNumber(part.length.value), toNumber(part.width.value)];
  const holds = pounds(context, whole.holds);
  const otherwise = shelfDesignLoad(span, depth, shelfLoads.general.value);
  return flat(context, model.stocks.get(part.stock), {
    kind: "shelf",
    part,
    span,
    depth,
    holds,
    otherwise,
    limit: "L/144",
  });
}

/** A bottom held at four edges carries by two strips that sag alike where they cross (common practice): the shorter is shown. */
function boxBottom(context: Context, model: Model, box: BoxModel): readonly Bending[] {
  const part = box.parts.find(({ name }) => name === "bottom");
  if (part === undefined || box.inside === undefined) return [];
  const [wide, deep] = [toNumber(box.inside.wide.value), toNumber(box.inside.deep.value)];
  const [span, depth] = [Math.min(wide, deep), Math.max(wide, deep)];
  const share = part.stockKind === "board" ? 1 : depth ** 4 / (span ** 4 + depth ** 4);
  const holds = pounds(context, box.whole.holds);
  const load = holds ?? testLoad(wide, deep);
  const asked = { kind: "box bottom", part, span, depth, limit: "1/16 in per foot" } as const;
  const strip = load === undefined ? undefined : load * share;
  return flat(context, model.stocks.get(part.stock), {
    ...asked,
    holds: holds === undefined ? undefined : strip,
    otherwise: holds === undefined ? strip : undefined,
  });
}

const inAssembly = groupedBy(({ assembly }: Solid) => [assembly]);

/**
 * What stands on a case's bottom: openings without a box, each at the design load of a shelf. Only over a kick: without
 * one the bottom may lie on the floor, or the case hang on a wall.
 */
function caseBottom(context: Context, model: Model, one: CaseModel, solids: readonly Solid[]): readonly Bending[] {
  const own = inAssembly(solids, `case ${one.name}`);
  const bottom = own.find(({ part }) => part.name === "bottom");
  if (bottom === undefined || one.kick === undefined) return [];
  const boxed = new Set(model.boxes.map(({ opening }) => opening.name.text));
  const standing = one.openings.filter((opening) => !boxed.has(opening.name.text) && isLowest(opening, one));
  const depth = toNumber(bottom.part.width.value);
  const load = standing.reduce(
    (sum, { wide }) => sum + (shelfDesignLoad(toNumber(wide.value), depth, shelfLoads.general.value) ?? 0),
    0,
  );
  if (load === 0) return [];
  const posts = own.filter(({ part }) => part.name === "partition");
  const span = widestBay(bottom, posts);
  const stock = model.stocks.get(bottom.part.stock);
  const asked = { kind: "case bottom", part: bottom.part, span, depth, holds: undefined, limit: "L/144" } as const;
  return flat(context, stock, { ...asked, otherwise: load });
}

function isLowest({ rect }: Opening, one: CaseModel): boolean {
  const lowest = Math.min(...one.openings.map((opening) => toNumber(opening.rect?.y ?? { n: 0n, d: 1n })));
  return rect !== undefined && toNumber(rect.y) <= lowest;
}

/** Partitions stand on the bottom and bear nothing, but tie it to the top: the widest stretch between them is what bends. */
function widestBay(bottom: Solid, posts: readonly Solid[]): number {
  const [from, to] = [bottom.bounds.rough[0], bottom.bounds.rough[1]];
  const edges = [from, ...posts.flatMap(({ bounds }) => [bounds.rough[0], bounds.rough[1]]).sort((a, b) => a - b), to];
  let widest = 0;
  for (let index = 0; index + 1 < edges.length; index += 2)
    widest = Math.max(widest, edges[index + 1]! - edges[index]!);
  return widest;
}

/** A slide in the middle stands on the rail below its opening: half of its load, at midspan. */
function railUnder(context: Context, model: Model, box: BoxModel, solids: readonly Solid[]): readonly Bending[] {
  const { rect, case: home } = box.opening;
  if (box.slides.block.mount?.value !== "centre" || rect === undefined) return [];
  const rail = solids.find(
    ({ assembly, part, outline }) =>
      assembly === `case ${home}` &&
      part.name.endsWith("rail") &&
      equal(outline.y.to, rect.y) &&
      shared(outline.x, { from: rect.x, to: add(rect.x, rect.wide) }) !== undefined,
  );
  const stock = rail === undefined ? undefined : model.stocks.get(rail.part.stock);
  const modulus = stock === undefined ? undefined : modulusOf(stock);
  if (rail === undefined || modulus === undefined) return [];
  const { own, holds, test } = loadOf(context, model, box, frontsByOpening(model));
  const load = (own + (holds ?? test ?? 0)) / 2;
  const { part, outline } = rail;
  const span = toNumber(extent(outline.x));
  const size = { breadth: toNumber(part.thickness.value), depth: toNumber(part.width.value), modulus };
  const bent = (over: number): number | undefined =>
    deflection({ held: "midpoint on simple ends", load, span: over, ...size })?.total;
  const sag = bent(span);
  const allowed = allowedSag(span, "L/144");
  if (sag === undefined || allowed === undefined) return [];
  const stated = holds !== undefined;
  return [{ kind: "rail", part, load, stated, span, sag, limit: "L/144", allowed, longest: () => longestFor(bent) }];
}

/** The longest span in inches, up to 1000, whose deflection keeps to L/144. */
function longestFor(bent: (span: number) => number | undefined): number {
  let [short, long] = [0, 1000];
  for (let step = 0; step < 50; step += 1) {
    const middle = (short + long) / 2;
    const sag = bent(middle);
    if (sag !== undefined && sag <= middle / 144) short = middle;
    else long = middle;
  }
  return short;
}

function slides(context: Context, model: Model): readonly Rated[] {
  const fronts = frontsByOpening(model);
  return model.boxes.map((box) => {
    const { own, holds, test, rated } = loadOf(context, model, box, fronts);
    return { kind: "slides", of: box.of, asked: own + (holds ?? test ?? 0), rated };
  });
}

function hinges(context: Context, model: Model): readonly Rated[] {
  return model.fronts.flatMap((front) => {
    const bored = hingesCut(front.parts);
    if (front.block.kind !== "door" || bored === undefined) return [];
    const weight = weightOfAll(context, model, front.parts) / front.leaves;
    const asked = hingeCount(toNumber(front.high.value), weight)?.value;
    return [{ kind: "hinges" as const, of: front.of, asked, rated: bored }];
  });
}
