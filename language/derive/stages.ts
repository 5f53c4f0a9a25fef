import type { BoxBlock, FillBlock, FrontBlock, Given, GivenList, PartBlock } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import type { Sourced } from "../core/sourced.ts";
import { deriveBoxes } from "./box.ts";
import type { DerivedCase } from "./case.ts";
import { deriveCase } from "./case.ts";
import type { Context } from "./context.ts";
import { distance } from "./context.ts";
import { deriveFronts } from "./front.ts";
import { handPart } from "./hand-part.ts";
import { hung } from "./hinging.ts";
import { withLike } from "./like.ts";
import type { BoxModel, FrontModel, MountModel, Opening, OpeningTable, ShelfModel, Stock } from "./model.ts";
import { deriveMounts } from "./mounts.ts";
import { namesInCase, openingNamesOf } from "./names.ts";
import { standingOpening } from "./openings.ts";
import { lookUpIn, type Readable } from "./readings.ts";
import { deriveShelves } from "./shelf.ts";
import { stocksOf } from "./stock.ts";

/** What was made of a design, or of a part of one. */
export interface Made {
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly cases: ReadonlyMap<string, DerivedCase>;
  readonly openings: ReadonlyMap<string, Opening>;
  readonly boxes: readonly BoxModel[];
  readonly mounts: readonly MountModel[];
  readonly fronts: readonly FrontModel[];
  readonly shelves: readonly ShelfModel[];
  readonly byHand: ReadonlyMap<PartBlock, readonly Part[]>;
}

/** Works a design out, with stocks that are known already where they are given. Readings by name resolve from then on. */
export function made(context: Context, given?: ReadonlyMap<string, Stock>): Made {
  const { design } = context;
  const stage = stageOf(context, given);
  // 1 · readings by name resolve as soon as they are asked for
  context.lookUp = lookUpIn(context, stage.readable);
  // 2 · stocks, cases with their openings, openings that stand already
  const stocks = stage.stocks();
  const cases = new Map(
    design.cases.flatMap(({ name }) => {
      const one = stage.caseOf(name.text);
      return one === undefined ? [] : [[name.text, one] as const];
    }),
  );
  const openings = new Map(
    openingNamesOf(design).flatMap(({ text }) => {
      const opening = stage.openingOf(text);
      return opening === undefined ? [] : [[text, opening] as const];
    }),
  );
  // 3 · what covers the openings and what goes into them
  const fronts = stage.fronts();
  const boxes = stage.boxes();
  const mounts = deriveMounts(context, boxes, stocks);
  const shelves = stage.shelves();
  const byHand = new Map(design.parts.map((block) => [block, handPart(context, block, stocks)] as const));
  return { stocks, cases, openings, boxes, mounts, fronts, shelves, byHand };
}

/** The stages of the derivation, each worked out once, when it is first wanted. */
function stageOf(context: Context, given: ReadonlyMap<string, Stock> | undefined) {
  const { design } = context;
  const { once, keyed } = lazily();
  const stocks = once((): ReadonlyMap<string, Stock> => given ?? stocksOf(context), new Map());
  const standings = named(design.openings);
  const blocks = named(design.cases);
  const caseOf = keyed((name: string): DerivedCase | undefined => {
    const block = blocks.get(name);
    return block === undefined ? undefined : deriveCase(context, block, stocks());
  });
  /** The case that each opening stands in. */
  const homes = once(
    (): ReadonlyMap<string, string> =>
      new Map(
        design.cases
          .flatMap((block) => namesInCase(block).map((word) => [word.text, block.name.text] as const))
          .reverse(),
      ),
    new Map(),
  );
  const openingOf = keyed((name: string): Opening | undefined => {
    const standing = standings.get(name);
    if (standing !== undefined) return standingOpening(context, standing);
    const home = homes().get(name);
    return home === undefined ? undefined : caseOf(home)?.model.openings.find((opening) => opening.name.text === name);
  });
  const openingTable: OpeningTable = { get: openingOf };
  // By block, so that what is said of one front or box can read the size of another.
  const frontsOf = keyed((block: FrontBlock): readonly FrontModel[] =>
    deriveFronts(context, block, hung(withLike(context, block, design.fronts, "front")), stocks(), openingTable),
  );
  const fronts = (): readonly FrontModel[] => design.fronts.flatMap((block) => frontsOf(block) ?? []);
  const boxTables = once(
    () => ({
      stocks: stocks(),
      slides: named(design.slides),
      openings: openingTable,
      insetFronts: insetFronts(context, stocks()),
    }),
    undefined,
  );
  const boxesOf = keyed((block: BoxBlock): readonly BoxModel[] => {
    const tables = boxTables();
    const whole = withLike(context, block, design.boxes, "box");
    return tables === undefined ? [] : deriveBoxes(context, block, whole, tables);
  });
  const boxes = (): readonly BoxModel[] => design.boxes.flatMap((block) => boxesOf(block) ?? []);
  const shelves = once(
    (): readonly ShelfModel[] =>
      design.shelves.flatMap((block) =>
        deriveShelves(context, block, withLike(context, block, design.shelves, "shelf"), stocks(), openingTable),
      ),
    [],
  );
  const fill = <B extends FillBlock>(blocks: readonly B[], name: string): B | undefined =>
    blocks.find((block) => block.openings.some((opening) => opening.text === name));
  const isUnderWay = (name: string, part: string | undefined): boolean => {
    const [box, front, home] = [fill(design.boxes, name), fill(design.fronts, name), homes().get(name)];
    if (part === "box" && box !== undefined && boxesOf.isUnderWay(box)) return true;
    if ((part === "front" || part === "door") && front !== undefined && frontsOf.isUnderWay(front)) return true;
    return openingOf.isUnderWay(name) || caseOf.isUnderWay(name) || (home !== undefined && caseOf.isUnderWay(home));
  };
  const readable: Readable = {
    isUnderWay,
    opening: (name) => openingOf(name),
    case: (name) => caseOf(name)?.model,
    box: (name) => {
      const block = fill(design.boxes, name);
      return block && boxesOf(block)?.find((box) => box.opening.name.text === name);
    },
    front: (name) => {
      const block = fill(design.fronts, name);
      return block && frontsOf(block)?.find((one) => one.openings.some((opening) => opening.name.text === name));
    },
    property: (name, property) => propertyOf(context, stocks(), name, property),
  };
  return { stocks, caseOf, openingOf, fronts, boxes, shelves, readable };
}

/** A property of a stock or of slides, such as `runner.clearance`. */
export function propertyOf(
  context: Context,
  stocks: ReadonlyMap<string, Stock>,
  name: string,
  property: string,
): Sourced<Length> | undefined {
  const stock = stocks.get(name);
  if (stock !== undefined && ["thick", "thickness", "measures"].includes(property)) return stock.thickness;
  const { slides, sheets, boards, hinges } = context.design;
  const block = [...slides, ...sheets, ...boards, ...hinges].find((one) => one.name.text === name);
  const field: unknown = block === undefined ? undefined : (block as unknown as Record<string, unknown>)[property];
  if (typeof field !== "object" || field === null) return undefined;
  const given = field as Partial<Given & GivenList>;
  return distance(context, given.measure ?? given.values?.[0]?.measure);
}

/** Thickness of the inset front of each opening that has one. From what is said of it, since fronts may read boxes. */
function insetFronts(context: Context, stocks: ReadonlyMap<string, Stock>): ReadonlyMap<string, Sourced<Length>> {
  const table = new Map<string, Sourced<Length>>();
  for (const block of context.design.fronts) {
    const whole = withLike(context, block, context.design.fronts, "front");
    const thickness = stocks.get((whole.frame?.stock ?? whole.slab?.stocks[0])?.text ?? "")?.thickness;
    if (whole.inset === undefined || thickness === undefined) continue;
    for (const opening of block.openings) table.set(opening.text, thickness);
  }
  return table;
}

function named<T extends { readonly name: { readonly text: string } }>(blocks: readonly T[]): ReadonlyMap<string, T> {
  return new Map([...blocks].reverse().map((block) => [block.name.text, block]));
}

/** Ways of working a thing out once, when it is first wanted. */
interface Lazily {
  readonly once: <T>(make: () => T, meanwhile: T) => () => T;
  readonly keyed: <K, T>(make: (key: K) => T | undefined) => Keyed<K, T>;
}

interface Keyed<K, T> {
  (key: K): T | undefined;
  /** Whether the thing is being worked out right now, so that whoever asks for it goes round in a circle. */
  readonly isUnderWay: (key: K) => boolean;
}

/**
 * While a thing is being worked out it has nothing to give, so that a circle ends instead of going round. What met such
 * a gap on its way is given out but not kept, unless it is what was first asked for: asked again later, it has all.
 */
function lazily(): Lazily {
  let gaps = 0;
  let depth = 0;
  const worked = <T>(make: () => T, keep: (value: T) => void): T => {
    const before = gaps;
    depth++;
    const value = make();
    depth--;
    if (gaps === before || depth === 0) keep(value);
    return value;
  };
  const keyed = <K, T>(make: (key: K) => T | undefined): Keyed<K, T> => {
    const made = new Map<K, T | undefined>();
    const underWay = new Set<K>();
    const get = (key: K): T | undefined => {
      if (made.has(key)) return made.get(key);
      if (underWay.has(key)) {
        gaps++;
        return undefined;
      }
      underWay.add(key);
      const value = worked(
        () => make(key),
        (value) => made.set(key, value),
      );
      underWay.delete(key);
      return value;
    };
    return Object.assign(get, { isUnderWay: (key: K) => underWay.has(key) });
  };
  const once = <T>(make: () => T, meanwhile: T): (() => T) => {
    const only = keyed<undefined, { readonly value: T }>(() => ({ value: make() }));
    return () => (only(undefined) ?? { value: meanwhile }).value;
  };
  return { once, keyed };
}
