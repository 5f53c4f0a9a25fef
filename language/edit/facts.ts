import type { DryFit } from "../solid/dry-fit.ts";
import type { Bending } from "../solid/load.ts";
import type { Motion } from "../solid/motion.ts";
import { smallText, spanText, weightText } from "./explain.ts";
import type { Scene } from "./scene.ts";

/** What the dry fit says of a thing (`box plan-1`), a sentence each; nothing where it has not been done. */
export function factsOf({ fit, reading }: Scene, of: string): readonly string[] {
  if (fit === undefined) return [];
  return [
    ...weight(fit, of, reading),
    ...rated(fit, of, reading),
    ...bending(fit, of, reading),
    ...moves(fit, of, reading),
    ...seasons(fit, of, reading),
  ];
}

type Reading = Scene["reading"];

function weight({ assemblies }: DryFit, of: string, reading: Reading): readonly string[] {
  const own = assemblies.find((each) => each.of === of);
  return own === undefined || own.pounds === 0
    ? []
    : [`weighs ${weightText(own.pounds, reading)}, without hardware and what it holds`];
}

function rated({ loads }: DryFit, of: string, reading: Reading): readonly string[] {
  return loads.rated
    .filter((each) => each.of === of)
    .flatMap(({ kind, asked, rated: carries }) => {
      if (asked === undefined) return [];
      if (kind === "slides") {
        const limit = carries === undefined ? "" : `, of ${weightText(carries, reading)} that they are rated for`;
        return [`its slides carry ${weightText(asked, reading)}${limit}`];
      }
      const has = carries === undefined || carries === asked ? "" : `; it is bored for ${carries}`;
      return [`asks for ${asked} hinges by its height and weight${has}`];
    });
}

function bending({ loads }: DryFit, of: string, reading: Reading): readonly string[] {
  return loads.bending.filter(({ part }) => part.of === of).map((one) => bendingText(one, reading));
}

/** The load of a bottom that is held all round is shared between two ways: the share of one would only puzzle. */
function bendingText({ kind, load, stated, sag, allowed, limit, longest }: Bending, reading: Reading): string {
  const amount = kind === "box bottom" ? "" : weightText(load, reading);
  const under = `${stated ? "what it holds" : "the published load"}${amount === "" ? "" : `, ${amount}`}`;
  const reach = longest();
  const reached = reach === undefined ? "" : `; the longest span allowed is ${spanText(reach, reading)}`;
  const name = kind === "rail" ? "the rail below " : kind === "shelf" ? "" : "its bottom ";
  return `${name}sags ${smallText(sag, reading)} under ${under}; ${smallText(allowed, reading)} is the limit (${limit})${reached}`;
}

function moves({ motions }: DryFit, of: string, reading: Reading): readonly string[] {
  return motions.filter(({ mover }) => mover === of).map((motion) => motionText(motion, reading));
}

function motionText({ kind, travel, blocks, wall }: Motion, reading: Reading): string {
  const [first] = [...blocks].sort((a, b) => a.at - b.at);
  const far = (at: number): string => (kind === "door" ? `${Math.floor(at)}°` : spanText(at, reading));
  const verb = kind === "door" ? "opens" : "comes out";
  if (wall !== undefined && (first === undefined || wall.at < first.at)) {
    const what = `the ${wall.wall.trimmed ? "trim on the wall" : "wall"} at the ${wall.wall.side}`;
    return `${verb} ${far(wall.at)}, where ${wall.pull ? "its pull" : "it"} meets ${what}`;
  }
  if (first === undefined) return `${verb} ${far(travel)}, clear of everything`;
  const { obstacle, at, standing } = first;
  const other = `${obstacle.part.name} of ${obstacle.assembly}`;
  return `${verb} ${far(at)} and meets the ${other}${standing === undefined ? "" : `, standing open to ${Math.floor(standing.at)}°`}`;
}

/** What the air of its place does to solid wood over a year. */
function seasons({ movement }: DryFit, of: string, reading: Reading): readonly string[] {
  const size = (inches: number): string => smallText(inches, reading);
  const floating = movement.floating
    .filter(({ solid }) => solid.assembly === of)
    .map(({ kind, grows, shrinks, spare, held }) => {
      const room =
        spare < 0 ? `has ${size(-spare)} too little room at each edge` : `leaves ${size(spare)} free at each edge`;
      const hold = held < 0 ? `comes ${size(-held)} out of its groove` : `stays ${size(held)} in its groove`;
      return `its ${kind} grows by ${size(grows)} when it is dampest and ${room}; it shrinks by ${size(shrinks)} when it is driest and ${hold}`;
    });
  const restrained = movement.restrained
    .filter(({ solid }) => solid.assembly === of)
    .map(
      ({ solid, by, moves: most }) =>
        `its ${solid.part.name} would move ${size(most)} over the year, and the ${by.part.name} holds it fast`,
    );
  const binding = movement.binding
    .filter(({ solid }) => solid.assembly === of)
    .map(({ grows, room }) => `grows by ${size(grows)} when it is dampest; ${size(room)} of room is left round it`);
  // Panels that are alike say the same.
  return [...new Set([...floating, ...restrained, ...binding])];
}
