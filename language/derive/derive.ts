import type { Design } from "../core/design.ts";
import type { Finding } from "../core/finding.ts";
import type { Part } from "../core/part.ts";
import { checkBought } from "./bought.ts";
import type { Context } from "./context.ts";
import { contextOf } from "./context.ts";
import { hardwareOf } from "./hardware.ts";
import { type Island, islandLists, islandsOf, sharedOf } from "./islands.ts";
import { withLikes } from "./like.ts";
import type { Model, MountModel, Stock } from "./model.ts";
import { openingNamesOf } from "./names.ts";
import { lookUpIn, type Readable } from "./readings.ts";
import { type Made, made, propertyOf } from "./stages.ts";

export interface Derivation {
  readonly context: Context;
  readonly model: Model;
  /** What can be worked out by itself: together they hold all that the model holds. */
  readonly islands: readonly DerivedIsland[];
}

/** An island as it was derived; the same object for as long as nothing that it hangs on changes. */
export interface DerivedIsland {
  readonly context: Context;
  /** Without hardware, which is counted over the whole job. */
  readonly model: Model;
}

/** What one derivation leaves for the next of the same file. */
export interface DeriveMemory {
  shared: Shared | undefined;
  islands: ReadonlyMap<object, KnownIsland>;
}

interface KnownIsland extends DerivedIsland {
  readonly blocks: readonly object[];
  readonly made: Made;
  /** What was found in deriving it; its context comes to hold what was found in its dry fit too. */
  readonly findings: readonly Finding[];
}

/** What all islands are derived with, and what was found in making it. */
interface Shared {
  /** What it rests on. */
  readonly key: readonly unknown[];
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly distances: Context["distances"];
  readonly series: Context["series"];
  readonly findings: readonly Finding[];
}

export function deriveMemory(): DeriveMemory {
  return { shared: undefined, islands: new Map() };
}

/**
 * From what is said to what is cut: stocks, then cases and their openings, then what goes over the openings and into
 * them. Total: whatever cannot be derived is a finding, and everything else stands. With a memory, an island that hangs on
 * nothing that has changed is taken as it was.
 */
export function derive(said: Design, memory: DeriveMemory = deriveMemory()): Derivation {
  // What blocks with a name take over from the one that they are like.
  const { design, findings } = withLikes(said);
  const context = contextOf(design);
  context.findings.push(...findings);
  const islands = islandsOf(design);
  if (islands === undefined) {
    Object.assign(memory, deriveMemory());
    const whole = made(context);
    const model = modelOf(context, whole);
    return { context, model, islands: [{ context, model: { ...model, hardware: [] } }] };
  }
  const shared = sharedIn(context, memory.shared);
  const known = shared === memory.shared ? memory.islands : new Map<object, KnownIsland>();
  const derived = islands.map((island) => derivedIsland(context, island, shared, known));
  Object.assign(memory, { shared, islands: new Map(derived.map((one) => [one.blocks[0]!, one])) });
  context.findings.push(...shared.findings, ...derived.flatMap((one) => one.findings));
  const whole = joined(design, shared.stocks, derived);
  context.lookUp = lookUpIn(context, readableIn(context, whole));
  return { context, model: modelOf(context, whole), islands: derived };
}

function sharedIn(context: Context, before: Shared | undefined): Shared {
  const { design, names } = context;
  const given = Object.values(names.of).map((table) => [...table.keys()].join("\n"));
  const key = [design.units, design.reading, ...sharedOf(design), ...design.lets, ...given];
  if (before !== undefined && isSame(before.key, key)) return before;
  const own: Context = { ...context, findings: [], distances: new Map(), series: new Map() };
  const { stocks } = made({ ...own, design: { ...design, ...nothing } });
  return { key, stocks, distances: own.distances, series: own.series, findings: own.findings };
}

const nothing: Island = { cases: [], openings: [], boxes: [], fronts: [], shelves: [], parts: [] };

function derivedIsland(
  context: Context,
  island: Island,
  shared: Shared,
  known: ReadonlyMap<object, KnownIsland>,
): KnownIsland {
  const blocks = islandLists.flatMap((list): readonly object[] => island[list]);
  const before = known.get(blocks[0]!);
  if (before !== undefined && isSame(before.blocks, blocks)) return before;
  const own: Context = {
    ...context,
    design: { ...context.design, ...island },
    findings: [],
    distances: new Map(shared.distances),
    series: new Map(shared.series),
  };
  const whole = made(own, shared.stocks);
  const model = { ...listed(own.design, whole), hardware: [] };
  return { blocks, context: own, made: whole, model, findings: [...own.findings] };
}

function isSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((one, index) => one === b[index]);
}

function joined(design: Design, stocks: ReadonlyMap<string, Stock>, islands: readonly KnownIsland[]): Made {
  const every = <T>(pick: (made: Made) => Iterable<T>): T[] => islands.flatMap((one) => [...pick(one.made)]);
  const boxes = inOrder(
    design.boxes,
    every((one) => one.boxes),
  );
  return {
    stocks,
    cases: new Map(every((one) => one.cases)),
    openings: new Map(every((one) => one.openings)),
    boxes,
    mounts: byFirstBox(
      every((one) => one.mounts),
      boxes,
    ),
    fronts: inOrder(
      design.fronts,
      every((one) => one.fronts),
    ),
    shelves: inOrder(
      design.shelves,
      every((one) => one.shelves),
    ),
    byHand: new Map(every((one) => one.byHand)),
  };
}

/** What was made of blocks, in the order of the blocks. */
function inOrder<B extends object, T extends { readonly block: B }>(
  blocks: readonly B[],
  all: readonly T[],
): readonly T[] {
  const order = new Map(blocks.map((block, index) => [block, index]));
  return [...all].sort((a, b) => order.get(a.block)! - order.get(b.block)!);
}

function byFirstBox(mounts: readonly MountModel[], boxes: Made["boxes"]): readonly MountModel[] {
  const order = new Map([...boxes].reverse().map((box, index) => [box.opening.name.text, boxes.length - index]));
  const place = ({ openings }: MountModel): number => order.get(openings[0]?.name.text ?? "") ?? 0;
  return [...mounts].sort((a, b) => place(a) - place(b));
}

function modelOf(context: Context, whole: Made): Model {
  checkBought(context, whole.stocks);
  const model = listed(context.design, whole);
  return { ...model, hardware: hardwareOf(context, model) };
}

function listed(design: Design, whole: Made): Omit<Model, "hardware"> {
  const { stocks, boxes, mounts, fronts, shelves } = whole;
  const cases = design.cases.flatMap(({ name }) => whole.cases.get(name.text) ?? []);
  const names = new Set(openingNamesOf(design).map(({ text }) => text));
  const parts: readonly Part[] = [
    ...cases.flatMap((one) => one.parts),
    ...boxes.flatMap((box) => box.parts),
    ...mounts.flatMap((mount) => mount.parts),
    ...fronts.flatMap((front) => front.parts),
    ...shelves.flatMap((shelf) => shelf.parts),
    ...design.parts.flatMap((block) => whole.byHand.get(block) ?? []),
  ];
  return {
    stocks,
    openings: [...names].flatMap((name) => whole.openings.get(name) ?? []),
    cases: cases.map((one) => one.model),
    boxes,
    mounts,
    fronts,
    shelves,
    parts,
  };
}

/** What is worked out already, to be read by name. */
function readableIn(context: Context, whole: Made): Readable {
  const first = <T>(all: readonly T[], namesOf: (one: T) => readonly string[]): ReadonlyMap<string, T> =>
    new Map([...all].reverse().flatMap((one) => namesOf(one).map((name) => [name, one] as const)));
  const boxes = first(whole.boxes, ({ opening }) => [opening.name.text]);
  const fronts = first(whole.fronts, ({ openings }) => openings.map(({ name }) => name.text));
  return {
    isUnderWay: () => false,
    opening: (name) => whole.openings.get(name),
    case: (name) => whole.cases.get(name)?.model,
    box: (name) => boxes.get(name),
    front: (name) => fronts.get(name),
    property: (name, property) => propertyOf(context, whole.stocks, name, property),
  };
}
