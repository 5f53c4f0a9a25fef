import type { Length } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import { add, isPositive, over, subtract, times, zero } from "../core/rational.ts";
import { fallback } from "../derive/defaults.ts";

/** A rectangle on the face of a part, its length along x, its width along y: inches, exact. */
export interface FaceCut {
  readonly kind: Machining["kind"];
  readonly x: readonly [Length, Length];
  readonly y: readonly [Length, Length];
  readonly deep: Length | undefined;
  readonly where: string;
}

export interface Bore {
  readonly x: Length;
  readonly y: Length;
  readonly wide: Length;
  readonly deep: Length | undefined;
  readonly where: string;
}

/** What is cut into the face of a panel, as far as its place is known; `unplaced` names the rest. */
export interface PanelCuts {
  readonly outline: readonly (readonly [Length, Length])[];
  readonly cuts: readonly FaceCut[];
  readonly bores: readonly Bore[];
  readonly unplaced: readonly Machining[];
}

/**
 * Bottom and front edges lie along y = 0, top and back edges at the part's width; front ends at x = 0, back ends at its
 * length. A part that stands has its lower end at x = 0.
 */
export function panelCuts(part: Part): PanelCuts {
  const notch = part.machining.find((one) => one.kind === "notch");
  const cuts: FaceCut[] = [];
  const bores: Bore[] = [];
  const unplaced: Machining[] = [];
  for (const one of part.machining) {
    if (one === notch || onEdge.has(one.kind)) continue;
    const [rects, holes] = [faceCuts(part, one, notch), cupBores(part, one)];
    cuts.push(...rects);
    bores.push(...holes);
    if (rects.length + holes.length === 0) unplaced.push(one);
  }
  return { outline: outlineOf(part, notch), cuts, bores, unplaced };
}

/** Made on edges and ends, or with a jig of their own: nothing to lay out on a face. */
const onEdge: ReadonlySet<Machining["kind"]> = new Set(["edging", "pockets", "tongue", "tenon", "mitre"]);

/** A rectangle, less a corner at the front of the lower end. */
function outlineOf(part: Part, notch: Machining | undefined): PanelCuts["outline"] {
  const [long, wide] = [part.length.value, part.width.value];
  if (notch?.wide === undefined || notch.deep === undefined) {
    return [
      [zero, zero],
      [long, zero],
      [long, wide],
      [zero, wide],
    ];
  }
  const [up, back] = [notch.deep.value, notch.wide.value];
  return [
    [up, zero],
    [long, zero],
    [long, wide],
    [zero, wide],
    [zero, back],
    [up, back],
  ];
}

function faceCuts(part: Part, one: Machining, notch: Machining | undefined): readonly FaceCut[] {
  if (one.wide === undefined || !["groove", "rabbet", "dado"].includes(one.kind)) return [];
  const wide = one.wide.value;
  const [longEnd, wideEnd] = [part.length.value, part.width.value];
  const make = (x: FaceCut["x"], y: FaceCut["y"]): FaceCut => ({
    kind: one.kind,
    x,
    y,
    deep: one.deep?.value,
    where: one.where,
  });
  const first = (at: Length): readonly [Length, Length] => [at, add(at, wide)];
  const last = (at: Length, end: Length): readonly [Length, Length] => [
    subtract(end, add(at, wide)),
    subtract(end, at),
  ];
  const whole = { x: [zero, longEnd], y: [zero, wideEnd] } as const;
  const at = one.from?.value ?? zero;
  switch (one.where.slice(one.where.indexOf(", ") + 2)) {
    case "bottom edge":
    case "front edge":
      return [make(whole.x, first(at))];
    case "back edge": {
      // A back in a groove lies in front of the ledge that is left behind it.
      const set = one.kind === "groove" && one.from === undefined ? fallback("case.grooveSet").value : at;
      return [make(whole.x, last(set, wideEnd))];
    }
    case "top edge":
      return [make(whole.x, last(at, wideEnd))];
    case "both ends":
      return [make(first(at), whole.y), make(last(at, longEnd), whole.y)];
    case "front end":
      return [make(first(at), whole.y)];
    case "back end":
      return [make(last(at, longEnd), whole.y)];
    case "all edges":
      return [
        make(first(zero), whole.y),
        make(last(zero, longEnd), whole.y),
        make(whole.x, first(zero)),
        make(whole.x, last(zero, wideEnd)),
      ];
    case "inside face":
      return one.note === "bottom and top"
        ? [make(first(notch?.deep?.value ?? zero), whole.y), make(last(zero, longEnd), whole.y)]
        : [];
    default:
      return [];
  }
}

/** Cups along the hinge side: the outer ones so far from the ends, further ones evenly between. Seen on the back. */
function cupBores(part: Part, one: Machining): readonly Bore[] {
  const edge = /, (left|right|top|bottom) edge$/.exec(one.where)?.[1];
  if (one.kind !== "cup" || one.wide === undefined || one.from === undefined || edge === undefined) return [];
  const count = one.count ?? 0;
  const end = fallback("hinge.fromEnd").value;
  const upright = edge === "left" || edge === "right";
  const along = upright ? part.length.value : part.width.value;
  const apart = subtract(along, times(end, 2));
  if (count < 1 || !isPositive(apart)) return [];
  const step = 1 < count ? over(apart, count - 1) : zero;
  const across = upright ? part.width.value : part.length.value;
  // The back is seen turned round: its left hand edge is the right hand one of the front.
  const far = edge === "left" || edge === "top";
  const from = far ? subtract(across, one.from.value) : one.from.value;
  return Array.from({ length: count }, (_, index): Bore => {
    const place = add(end, times(step, index));
    const [x, y] = upright ? [place, from] : [from, place];
    return { x, y, wide: one.wide!.value, deep: one.deep?.value, where: one.where };
  });
}
