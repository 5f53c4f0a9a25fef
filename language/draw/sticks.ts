import type { Length } from "../core/length.ts";
import { add, compare, equal, over, zero } from "../core/rational.ts";
import type { Span } from "../core/span.ts";
import { openingPlace } from "./desk.ts";
import type { Scene } from "./place/scene.ts";
import type { Axis, Range, Solid } from "./place/solid.ts";
import type { Column } from "./section.ts";
import { columnsOf } from "./section.ts";

/** What stands at one place of a stick. */
export interface StickMark {
  /** Inches from the end that the stick is laid to; exact. */
  readonly at: Length;
  /** Everything that begins, ends or lies here. */
  readonly what: readonly string[];
  readonly kind: "edge" | "mount" | "slide";
}

/** A story stick: running sizes from one end, to be carried to every piece without measuring again. */
export interface Stick {
  readonly id: string;
  readonly title: string;
  /** The end that it is laid to: `the floor`. */
  readonly from: string;
  /** In order, the first at nought. */
  readonly marks: readonly StickMark[];
  readonly target: Span;
}

/** `who` is the opening or box that it concerns, if one does. */
type Mark = readonly [at: Length, what: string, kind: StickMark["kind"], who?: string];

/** Sticks for the heights of each column, the widths of a face and the depths; those with nothing between their ends are left out. */
export function sticksOf(scenes: readonly Scene[]): readonly Stick[] {
  return scenes.flatMap((scene) => {
    const columns = columnsOf(scene);
    return [...columns.map((column) => heights(scene, column)), widths(scene), depths(scene)].filter(
      (stick) => 2 < stick.marks.length,
    );
  });
}

function stick(scene: Scene, run: string, from: string, marks: readonly Mark[]): Stick {
  const owner = scene.case === undefined ? `opening ${scene.name}` : `case ${scene.name}`;
  return {
    id: `stick ${owner}/${run}`,
    title: `${owner}: ${run}`,
    from,
    marks: gathered(marks),
    target: scene.case?.block.name.span ?? scene.openings[0]!.span,
  };
}

/** One mark for each place; a slide's line keeps its kind whatever else lies there. */
function gathered(marks: readonly Mark[]): readonly StickMark[] {
  const sorted = [...marks].sort((a, b) => compare(a[0], b[0]));
  const places: Mark[][] = [];
  for (const mark of sorted) {
    const last = places.at(-1);
    if (last !== undefined && equal(last[0]![0], mark[0])) last.push(mark);
    else places.push([mark]);
  }
  return places.map((here) => ({
    at: here[0]![0],
    what: whatOf(here),
    kind: here.find(([, , kind]) => kind === "slide")?.[2] ?? here[0]![2],
  }));
}

/** Marks that say the same of several boxes say it once: `plan-1 to plan-4 slide, end`. */
function whatOf(marks: readonly Mark[]): readonly string[] {
  const names = new Map<string, Set<string>>();
  for (const [, what, , who] of marks) {
    const known = names.get(what) ?? new Set();
    if (who !== undefined) known.add(who);
    names.set(what, known);
  }
  return [...names].map(([what, who]) => (who.size === 0 ? what : `${inFewWords([...who])} ${what}`));
}

/** Names that count on are said by the first and the last of them. */
function inFewWords(names: readonly string[]): string {
  const runs: string[][] = [];
  for (const name of names) {
    const last = runs.at(-1);
    if (last !== undefined && countedOn(last.at(-1)!) === name) last.push(name);
    else runs.push([name]);
  }
  return runs.map((run) => (run.length < 3 ? run.join(", ") : `${run[0]} to ${run.at(-1)}`)).join(", ");
}

/** The name with the next number: `plan-2` after `plan-1`. */
function countedOn(name: string): string | undefined {
  const match = /^(.*?)(\d{1,9})$/.exec(name);
  return match === null ? undefined : `${match[1]}${Number(match[2]) + 1}`;
}

function heights(scene: Scene, column: Column): Stick {
  const names = column.openings.map((opening) => opening.name.text);
  const edges = column.openings.flatMap((opening): readonly Mark[] => {
    const { y } = openingPlace(scene, opening);
    return [
      [y[0], "floor", "edge", opening.name.text],
      [y[1], "head", "edge", opening.name.text],
    ];
  });
  const shell: readonly Mark[] =
    scene.case === undefined
      ? []
      : [
          [zero, "standing floor", "edge"],
          ...(scene.case.kick === undefined ? [] : ([[scene.case.kick.value, "kick", "edge"]] as const)),
          [scene.case.high.value, "top of the case", "edge"],
        ];
  const fills = scene.solids.filter((solid) => names.some((name) => solid.of === `box ${name}`));
  const run = names.length === 1 ? `heights at ${names[0]}` : `heights at ${names[0]} to ${names.at(-1)}`;
  const from = scene.case === undefined ? "the floor of the opening" : "the floor";
  return stick(scene, run, from, [...shell, ...edges, ...mountEdges(fills, "y"), ...slideLines(fills)]);
}

/** A slide is put up by its middle line. */
function slideLines(solids: readonly Solid[]): readonly Mark[] {
  return solids
    .filter((solid) => solid.role === "slide")
    .map(({ place, of }): Mark => {
      return [over(add(...place.y), 2), "slide, middle", "slide", nameOf(of)];
    });
}

function mountEdges(solids: readonly Solid[], axis: Axis): readonly Mark[] {
  return solids
    .filter((solid) => solid.role === "mount")
    .flatMap(({ place, of }): readonly Mark[] => {
      const range: Range = place[axis];
      const [start, end] = axis === "y" ? ["lower edge", "upper edge"] : ["start", "end"];
      return [
        [range[0], `mount, ${start}`, "mount", nameOf(of)],
        [range[1], `mount, ${end}`, "mount", nameOf(of)],
      ];
    });
}

function nameOf(owner: string): string {
  return owner.slice(owner.indexOf(" ") + 1);
}

function widths(scene: Scene): Stick {
  const edges = scene.openings
    .filter((opening) => opening.face === "front")
    .flatMap((opening): readonly Mark[] => {
      const { x } = openingPlace(scene, opening);
      return [
        [x[0], "left", "edge", opening.name.text],
        [x[1], "right", "edge", opening.name.text],
      ];
    });
  const panels = scene.solids
    .filter((solid) => solid.role === "case" && (solid.name === "side" || solid.name === "partition"))
    .flatMap(({ place, name }): readonly Mark[] => [
      [place.x[0], `${name}, left face`, "edge"],
      [place.x[1], `${name}, right face`, "edge"],
    ]);
  return stick(scene, "widths", scene.case === undefined ? "the left of the opening" : "the left outside", [
    ...panels,
    ...edges,
    ...(scene.case === undefined ? boxWidths(scene) : []),
  ]);
}

function boxWidths(scene: Scene): readonly Mark[] {
  return scene.solids
    .filter((solid) => solid.role === "slide")
    .flatMap(({ place, of }): readonly Mark[] => [
      [place.x[0], "slide", "slide", nameOf(of)],
      [place.x[1], "slide", "slide", nameOf(of)],
    ]);
}

function depths(scene: Scene): Stick {
  const front: readonly Mark[] = [[zero, scene.case === undefined ? "front edge" : "front of the case", "edge"]];
  const frame = scene.solids
    .filter((solid) => solid.role === "frame" && equal(solid.place.z[0], zero))
    .map(({ place }): Mark => [place.z[1], "back of the frame", "edge"]);
  const slides = scene.solids
    .filter((solid) => solid.role === "slide" && equal(solid.place.z[0], zero))
    .map(({ place, of }): Mark => [place.z[1], "slide, end", "slide", nameOf(of)]);
  const clear = scene.openings
    .filter((opening) => opening.face === "front")
    .flatMap((opening): readonly Mark[] =>
      opening.deep === undefined ? [] : [[opening.deep.value, "inside of the back", "edge"]],
    );
  const back: readonly Mark[] = scene.case === undefined ? [] : [[scene.case.deep.value, "back of the case", "edge"]];
  const mounts = mountEdges(
    scene.solids.filter((solid) => solid.role === "mount"),
    "z",
  ).filter(([at]) => compare(zero, at) < 0);
  return stick(scene, "depths", scene.case === undefined ? "the front edge" : "the front of the case", [
    ...front,
    ...frame,
    ...mounts,
    ...slides,
    ...clear,
    ...back,
  ]);
}
