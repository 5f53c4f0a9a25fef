import type { Opening } from "../../derive/model.ts";
import { threeText } from "../explain.ts";
import { aboutName } from "../hover-name.ts";
import type { Scene } from "../scene.ts";
import type { Place, Proposal } from "./proposal.ts";
import { named, ranks } from "./proposal.ts";

/** What can go into an opening or over it. */
export type Filling = "box" | "front" | "shelf";

/** What a block of this first word is for. */
export function fillingOf(word: string | undefined): Filling | undefined {
  if (word === "box" || word === "shelf") return word;
  return word === "front" || word === "door" || word === "false" ? "front" : undefined;
}

/** The openings of a file, those that have none of the kind yet first; several in a row also as a range. */
export function openingProposals({ scene }: Place, filling: Filling | undefined): readonly Proposal[] {
  const names = [...scene.context.names.of.opening.keys()];
  const free = names.filter((name) => filling !== undefined && !isTaken(scene, name, filling));
  return [
    ...rangesIn(free).map((range) => named(range, "opening", { detail: `without a ${filling} yet`, rank: ranks.best })),
    ...names.map((name) => {
      const isFree = free.includes(name);
      return named(name, "opening", {
        detail: [sizeOf(scene, name), ...(filling === undefined ? [] : [standing(scene, name, filling, isFree)])]
          .filter((text) => text !== "")
          .join("; "),
        about: () => aboutOpening(scene, name),
        rank: filling === undefined ? ranks.plain : isFree ? ranks.suits : ranks.unsuited,
      });
    }),
  ];
}

/** The openings that have something to be like. */
export function modelProposals({ scene }: Place, filling: Filling): readonly Proposal[] {
  const names = [...scene.context.names.of.opening.keys()].filter((name) => hasOwn(scene, name, filling));
  return names.map((name) =>
    named(name, "opening", { detail: sizeOf(scene, name), about: () => aboutOpening(scene, name) }),
  );
}

export function aboutOpening(scene: Scene, text: string): string {
  const given = scene.context.names.of.opening.get(text);
  return given === undefined ? "" : (aboutName(scene, { kind: "opening", text, span: given.span, given: false }) ?? "");
}

function sizeOf(scene: Scene, name: string): string {
  const opening = openingOf(scene, name);
  return opening === undefined ? "" : threeText([opening.wide, opening.high, opening.deep], scene.reading);
}

export function openingOf({ model }: Scene, name: string): Opening | undefined {
  return model.openings.find((one) => one.name.text === name);
}

/** The openings that have no such thing, and nothing that would be in its way. */
export function freeOpenings(scene: Scene, filling: Filling): readonly string[] {
  return [...scene.context.names.of.opening.keys()].filter((name) => !isTaken(scene, name, filling));
}

function isTaken(scene: Scene, name: string, filling: Filling): boolean {
  if (hasOwn(scene, name, filling)) return true;
  return (filling === "box" && hasOwn(scene, name, "shelf")) || (filling === "shelf" && hasOwn(scene, name, "box"));
}

/** By what is written: half a block has made nothing yet. */
function hasOwn({ context }: Scene, name: string, filling: Filling): boolean {
  const { boxes, fronts, shelves } = context.design;
  const blocks = filling === "box" ? boxes : filling === "front" ? fronts : shelves;
  return blocks.some(({ openings }) => openings.some(({ text }) => text === name));
}

function standing(scene: Scene, name: string, filling: Filling, isFree: boolean): string {
  if (isFree) return `no ${filling} yet`;
  const other = hasOwn(scene, name, filling) ? filling : filling === "box" ? "shelf" : "box";
  return `has a ${other}`;
}

/** `plan-1 to plan-4`, where three or more names count on. */
function rangesIn(names: readonly string[]): readonly string[] {
  const ranges: string[] = [];
  let run: string[] = [];
  const close = (): void => {
    if (2 < run.length) ranges.push(`${run[0]} to ${run.at(-1)}`);
    run = [];
  };
  for (const name of names) {
    if (run.length === 0 || !countsOn(run.at(-1)!, name)) close();
    run.push(name);
  }
  close();
  return ranges;
}

function countsOn(before: string, name: string): boolean {
  const [a, b] = [before, name].map((text) => /^(.*?)(\d{1,6})$/.exec(text));
  return a != null && b != null && a[1] === b[1] && Number(a[2]) + 1 === Number(b[2]);
}
