import type { Length } from "../core/length.ts";
import { add, equal, less, ratio, smallest, subtract, zero } from "../core/rational.ts";
import { type Axis, axes, extent } from "../solid/box.ts";
import type { DryFit } from "../solid/dry-fit.ts";
import type { Mate } from "../solid/mate.ts";
import type { Solid } from "../solid/solid.ts";
import type { Dimension } from "./pieces.ts";
import type { Wanted } from "./wanted.ts";

/** How a part is held at its ends along one of its sides. */
export type Held =
  | { readonly kind: "joined"; readonly to: readonly Solid[] }
  | {
      readonly kind: "floating";
      /** How much shorter it may be and still be held: inches. */
      readonly slack: Length;
      readonly in: readonly Solid[];
      readonly how: "float" | "play" | "pins";
    }
  | { readonly kind: "free" };

/** From memory: what must stay in a groove for a panel not to slip out when it lies wholly at its other edge. */
const leastInGroove = ratio(1, 16);

/** From memory: what a shelf may lack in all and still lie on the pins at both its ends. */
const onPins = ratio(1, 4);

/** How the dry fit holds a part along its length or width. Free where the fit knows of nothing that it meets there. */
export function heldAlong(fit: DryFit | undefined, wanted: Wanted, dimension: Dimension): Held {
  const solids = (fit?.placement.solids ?? []).filter(({ part }) => wanted.parts.includes(part));
  const ways = solids.flatMap((solid) =>
    axesOf(solid, wanted.part[dimension].value).map((axis) => heldOn(fit!, solid, axis)),
  );
  const joined = ways.flatMap((way) => (way.kind === "joined" ? way.to : []));
  if (0 < joined.length) return { kind: "joined", to: [...new Set(joined)] };
  const floating = ways.filter((way) => way.kind === "floating");
  const [first] = floating;
  if (first === undefined) return { kind: "free" };
  const tightest = floating.reduce((least, one) => (less(one.slack, least.slack) ? one : least), first);
  return { ...tightest, in: [...new Set(floating.flatMap((one) => one.in))] };
}

/** How much narrower a member may be before the panels beside it leave its groove; nothing where there is no panel. */
export function slackBeside(fit: DryFit | undefined, member: Wanted): Length {
  const floats = (fit?.placement.mates ?? []).filter(
    ({ how, b }) => how === "float" && b !== undefined && member.parts.includes(b.part),
  );
  const slacks = floats.map(({ a, axis }) => slackOf(fit!, a, axis));
  const [first, ...rest] = slacks.filter((slack) => slack !== undefined);
  return first === undefined ? zero : smallest(first, ...rest);
}

/** The directions in which a part lies with this side of it; a square one lies with either in both. */
function axesOf(solid: Solid, size: Length): readonly Axis[] {
  return axes.filter((axis) => equal(extent(solid.outline[axis]), size));
}

function heldOn(fit: DryFit, solid: Solid, axis: Axis): Held {
  const mates = matesOf(fit, solid, axis);
  const joined = mates.filter(({ how }) => how === "joined");
  if (0 < joined.length) return { kind: "joined", to: joined.flatMap((mate) => otherOf(mate, solid)) };
  const slack = slackOf(fit, solid, axis);
  const how = mates.find(isLoose)?.how;
  if (slack === undefined || (how !== "float" && how !== "play" && how !== "pins")) return { kind: "free" };
  return { kind: "floating", slack, in: mates.filter(isLoose).flatMap((mate) => otherOf(mate, solid)), how };
}

/** Lying wholly at one side it must still be held at the other, so what is open at both is counted together. */
function slackOf(fit: DryFit, solid: Solid, axis: Axis): Length | undefined {
  const loose = matesOf(fit, solid, axis).filter((mate) => mate.a === solid && isLoose(mate));
  if (loose.length === 0) return undefined;
  const open = loose.reduce((sum, { gap }) => add(sum, gap ?? zero), zero);
  const depths = loose.map((mate) => (mate.how === "pins" ? onPins : subtract(grooveIn(mate.b), leastInGroove)));
  return subtract(smallest(depths[0]!, ...depths.slice(1)), open);
}

function isLoose({ how }: Mate): boolean {
  return how === "float" || how === "play" || how === "pins";
}

function grooveIn(solid: Solid | undefined): Length {
  return solid?.part.machining.find(({ kind }) => kind === "groove")?.deep?.value ?? zero;
}

function matesOf(fit: DryFit, solid: Solid, axis: Axis): readonly Mate[] {
  return fit.placement.mates.filter((mate) => mate.axis === axis && (mate.a === solid || mate.b === solid));
}

function otherOf(mate: Mate, solid: Solid): readonly Solid[] {
  const other = mate.a === solid ? mate.b : mate.a;
  return other === undefined ? [] : [other];
}
