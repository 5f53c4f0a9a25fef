import type { BoxModel, FrontModel, Model } from "../derive/model.ts";
import { groupedBy } from "./grouped.ts";
import type { Clash } from "./interference.ts";
import type { Solid } from "./solid.ts";

/** What stands in the way of something that moves: which part meets which, and how far it gets. */
export interface Block {
  readonly part: Solid;
  readonly obstacle: Solid;
  /** Inches pulled out, or degrees opened, when they meet; nought where they stand in each other's way from the start. */
  readonly at: number;
  /** How far the obstacle stands open, in degrees, where it is a door that does. */
  readonly standing: Standing | undefined;
}

/** A leaf that stands open in the way. */
export interface Standing {
  /** Degrees. */
  readonly at: number;
  /** How far in from where it stands, in inches, what comes out would have to be to pass it. */
  readonly by: number;
  /** Whether a wall keeps it from opening further. */
  readonly held: boolean;
}

/** The parts that come out together: the box, and the front that is screwed to it. */
export function movedWith(model: Model, box: BoxModel, byAssembly: ReadonlyMap<string, readonly Solid[]>) {
  const over = frontsOver(model.fronts, box.opening.name.text);
  const fronts = over.filter((front) => front.block.kind === "front");
  return [box.of, ...fronts.map(({ of }) => of)].flatMap((of) => byAssembly.get(of) ?? []);
}

const frontsOver = groupedBy(({ openings }: FrontModel) => openings.map(({ name }) => name.text));

/** The solids that stand in one frame of axes: that of a case, or of an opening that stands alone. */
export const inFrame = groupedBy(({ frame }: Solid) => [frame]);

/** Whether a front covers the opening of a box. */
export function covers({ openings }: FrontModel, { opening }: BoxModel): boolean {
  return openings.some(({ name }) => name.text === opening.name.text);
}

/** Pairs of parts, and of assemblies, that claim one space already where they stand still, as keys for `isStuck`. */
export function stuckAmong(clashes: readonly Clash[]): ReadonlySet<string> {
  return new Set(clashes.flatMap(({ a, b }) => [...stuckPair(a.id, b.id), ...stuckAssemblies(a, b)]));
}

function stuckPair(a: string, b: string): readonly string[] {
  return [`${a}|${b}`, `${b}|${a}`];
}

/** Two boxes that claim one space run into each other with all their parts; a case has parts that are far apart. */
function stuckAssemblies(a: Solid, b: Solid): readonly string[] {
  return [a, b].some(({ assembly }) => assembly.startsWith("case ")) ? [] : stuckPair(a.assembly, b.assembly);
}

/** Whether two parts claim one space already where they stand still. */
export function isStuck(stuck: ReadonlySet<string>, a: Solid, b: Solid): boolean {
  return 0 < stuck.size && (stuck.has(`${a.id}|${b.id}`) || stuck.has(`${a.assembly}|${b.assembly}`));
}

/** Solids by the assembly that they belong to. */
export function assembled(solids: readonly Solid[]): ReadonlyMap<string, readonly Solid[]> {
  const groups = new Map<string, Solid[]>();
  for (const solid of solids) {
    const group = groups.get(solid.assembly);
    if (group === undefined) groups.set(solid.assembly, [solid]);
    else group.push(solid);
  }
  return groups;
}
