import { withUnit, writtenText } from "../../core/length.ts";
import { compare, less, subtract } from "../../core/rational.ts";
import type { Sourced } from "../../core/sourced.ts";
import type { Opening, SlideModel } from "../../derive/model.ts";
import { slidesFor } from "../../derive/slides.ts";
import { explained } from "../explain.ts";
import { headNames } from "../spot.ts";
import { openingOf } from "./openings.ts";
import type { Place, Proposal } from "./proposal.ts";
import { named, ranks } from "./proposal.ts";

/** The lengths of a slide series that fit the openings of a box, the longest first; then those that are too long. */
export function slideLengths(place: Place): readonly Proposal[] {
  const { scene, spot } = place;
  const tightest = tightestOf(place);
  if (tightest === undefined) return [];
  const { context } = scene;
  const { room, series, name } = tightest;
  const isTooLong = ({ value }: SlideModel["series"][number]): boolean => room !== undefined && less(room.value, value);
  const fitting = series.filter((length) => !isTooLong(length)).reverse();
  return [...fitting, ...series.filter(isTooLong)].map((length, index) => {
    const text = writtenText(length.value, context.units);
    const good = !isTooLong(length);
    const depth = room === undefined ? "" : withUnit(room.value, context.units);
    const over = room === undefined ? "" : withUnit(subtract(length.value, room.value), context.units);
    const best = good && index === 0 ? "the longest that fits" : "fits";
    return named(text, "size", {
      detail: room === undefined ? `of ${name}` : good ? `${best}; ${depth} of room` : `${over} too long for the room`,
      about: () =>
        room === undefined
          ? `The opening's depth is not known: what fits cannot be said.`
          : explained(`room for the slide in ${headNames(scene.outline, spot.block!)[0]}`, room, scene),
      rank: good && index === 0 && room !== undefined ? ranks.best : good ? ranks.suits : ranks.unsuited,
    });
  });
}

/** The slides in the opening of least depth, of those that the box is for. */
function tightestOf({ scene, spot }: Place): SlideModel | undefined {
  const { outline, context } = scene;
  const [name] = spot.said;
  const block = context.design.slides.find((one) => one.name.text === name?.text);
  if (block === undefined || name === undefined || spot.block === undefined) return undefined;
  const word = { text: name.text, span: block.name.span };
  // What is asked here must leave no findings behind.
  const apart = { ...context, findings: [] };
  const all = headNames(outline, spot.block).flatMap((of) => {
    const opening = openingOf(scene, of);
    if (opening === undefined) return [];
    const use = { key: word, name: word, length: undefined };
    return [slidesFor(apart, block, use, opening, insetFront(scene.model.fronts, opening))];
  });
  return all.toSorted((a, b) =>
    a.room === undefined ? 1 : b.room === undefined ? -1 : compare(a.room.value, b.room.value),
  )[0];
}

function insetFront(
  fronts: Place["scene"]["model"]["fronts"],
  opening: Opening,
): Sourced<Opening["wide"]["value"]> | undefined {
  const own = fronts.find(({ openings }) => openings.some(({ name }) => name.text === opening.name.text));
  return own?.whole.inset === undefined ? undefined : own.thickness;
}
