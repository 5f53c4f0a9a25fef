import type { Area, Hatch, Point, Weight } from "./display-list.ts";

/** A stretch of hatching. */
export interface Stretch {
  readonly from: Point;
  readonly to: Point;
}

export interface Hatching {
  readonly weight: Weight;
  readonly stretches: readonly Stretch[];
}

/** The lines that tell what an area is made of, cut off at its outline; the same wherever it is drawn. */
export function hatchLines(area: Area): Hatching {
  const weight: Weight = area.hatch === "grain" ? "hair" : "fine";
  if (area.hatch === undefined || area.points.length < 3) return { weight, stretches: [] };
  return { weight, stretches: makers[area.hatch](area) };
}

const makers: Readonly<Record<Hatch, (area: Area) => readonly Stretch[]>> = {
  solid: (area) => [...slanted(area, 45, 2.2, 0), ...slanted(area, 45, 2.2, 0.6)],
  metal: (area) => slanted(area, -45, 0.7, 0),
  existing: (area) => slanted(area, 60, 3.2, 0).flatMap((stretch) => broken(stretch, 2.4, 1.2)),
  core: (area) => slanted(area, 0, 0.9, 0).flatMap((stretch, row) => broken(shifted(stretch, row), 0.3, 1.3)),
  ply: plies,
  grain,
};

/** Parallel lines at an angle to the area's own direction, `apart` millimetres from one another. */
function slanted(area: Area, degrees: number, apart: number, offset: number): readonly Stretch[] {
  return ruled(area.points, turned(area.along, degrees), apart, offset);
}

function turned({ x, y }: Point, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  return { x: x * Math.cos(angle) - y * Math.sin(angle), y: x * Math.sin(angle) + y * Math.cos(angle) };
}

/** Lines in one direction over the whole outline, by the even-odd rule; they keep their place as the outline moves over them. */
function ruled(points: readonly Point[], direction: Point, apart: number, offset: number): readonly Stretch[] {
  const across = { x: -direction.y, y: direction.x };
  const reach = points.map((point) => dot(point, across));
  const first = Math.ceil((Math.min(...reach) - offset) / apart);
  const last = Math.floor((Math.max(...reach) - offset) / apart);
  const made: Stretch[] = [];
  for (let index = first; index <= last && made.length < mostStretches; index++) {
    made.push(...crossing(points, direction, across, index * apart + offset));
  }
  return made;
}

const mostStretches = 4000;

function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

/** What lies inside the outline of the line at one distance. */
function crossing(points: readonly Point[], direction: Point, across: Point, at: number): readonly Stretch[] {
  const places: number[] = [];
  points.forEach((from, index) => {
    const to = points[(index + 1) % points.length]!;
    const [a, b] = [dot(from, across), dot(to, across)];
    if (a < at === b < at) return;
    const share = (at - a) / (b - a);
    places.push(dot(from, direction) + share * (dot(to, direction) - dot(from, direction)));
  });
  places.sort((a, b) => a - b);
  const point = (along: number): Point => ({
    x: direction.x * along + across.x * at,
    y: direction.y * along + across.y * at,
  });
  const made: Stretch[] = [];
  for (let index = 0; index + 1 < places.length; index += 2) {
    const [start, end] = [places[index]!, places[index + 1]!];
    if (0.05 < end - start) made.push({ from: point(start), to: point(end) });
  }
  return made;
}

function broken({ from, to }: Stretch, dash: number, gap: number): readonly Stretch[] {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const made: Stretch[] = [];
  for (let at = 0; at < long && made.length < mostStretches; at += dash + gap) {
    made.push({ from: between(from, to, at / long), to: between(from, to, Math.min(1, (at + dash) / long)) });
  }
  return made;
}

function between(from: Point, to: Point, share: number): Point {
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}

function shifted({ from, to }: Stretch, row: number): Stretch {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  return { from: between(from, to, Math.min(0.9, (row % 2 === 0 ? 0.2 : 0.9) / Math.max(long, 1))), to };
}

/** The area's extent along its direction and across it. */
function extents(area: Area): {
  readonly start: number;
  readonly end: number;
  readonly low: number;
  readonly high: number;
} {
  const across = turned(area.along, 90);
  const along = area.points.map((point) => dot(point, area.along));
  const over = area.points.map((point) => dot(point, across));
  return { start: Math.min(...along), end: Math.max(...along), low: Math.min(...over), high: Math.max(...over) };
}

/** Layers along the sheet; every other one shows the ends of its grain. */
function plies(area: Area): readonly Stretch[] {
  const { low, high } = extents(area);
  const thick = high - low;
  const layers = thick < 0.7 ? 1 : thick < 3 ? 3 : thick < 8 ? 5 : 7;
  if (layers === 1) return ruled(area.points, area.along, thick, low + thick / 2);
  const across = turned(area.along, 90);
  const made: Stretch[] = [];
  for (let layer = 1; layer < layers; layer++) {
    made.push(...crossing(area.points, area.along, across, low + (thick * layer) / layers));
  }
  const pitch = Math.max(1.1, thick / layers);
  for (const tick of ruled(area.points, across, pitch, pitch / 2)) made.push(...ticked(tick, layers));
  return made;
}

/** The parts of a line across the sheet that lie in its cross layers. */
function ticked({ from, to }: Stretch, layers: number): readonly Stretch[] {
  return Array.from({ length: Math.floor(layers / 2) }, (_, index) => ({
    from: between(from, to, (2 * index + 1) / layers),
    to: between(from, to, (2 * index + 2) / layers),
  }));
}

/** Lines of grain on a face: uneven in place and length, the same every time for one size of face. */
function grain(area: Area): readonly Stretch[] {
  const { low, high, start, end } = extents(area);
  const [wide, long] = [high - low, end - start];
  if (wide < 0.8 || long < 1.5) return [];
  const count = Math.min(16, Math.max(1, Math.round(wide / 2.4)));
  const next = uneven(Math.round(wide * 10) * 7919 + Math.round(long * 10));
  const across = turned(area.along, 90);
  const made: Stretch[] = [];
  for (let index = 0; index < count; index++) {
    const at = low + (wide * (index + 0.3 + 0.4 * next())) / count;
    for (const whole of crossing(area.points, area.along, across, at)) {
      const first = 0.04 + 0.25 * next();
      const second = first + 0.25 + 0.4 * next();
      made.push({
        from: between(whole.from, whole.to, first),
        to: between(whole.from, whole.to, Math.min(0.96, second)),
      });
      if (second < 0.75) {
        made.push({ from: between(whole.from, whole.to, second + 0.06), to: between(whole.from, whole.to, 0.96) });
      }
    }
  }
  return made;
}

/** Numbers from 0 to 1 in an order that looks like none (Park and Miller's generator). */
function uneven(seed: number): () => number {
  let state = (seed % 2147483646) + 1;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}
