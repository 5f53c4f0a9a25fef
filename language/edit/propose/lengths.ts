import type { Length } from "../../core/length.ts";
import { writtenText } from "../../core/length.ts";
import type { Sourced } from "../../core/sourced.ts";
import type { Word } from "../../core/span.ts";
import { startOfFile } from "../../core/span.ts";
import { isTrouble } from "../../derive/evaluate.ts";
import { explained, sizeText } from "../explain.ts";
import { headNames } from "../spot.ts";
import type { Place, Proposal } from "./proposal.ts";
import { named, ranks } from "./proposal.ts";

/** What can be written where a length is wanted: what it comes to without it, the file's named lengths, things that have sizes. */
export function lengthProposals(place: Place): readonly Proposal[] {
  const { scene, spot } = place;
  if (spot.key?.text === "read") return steps(place);
  const { names } = scene.context;
  const lets = [...names.of.length.keys()].flatMap((name) => {
    const value = readingOf(place, [name]);
    if (value === undefined) return [];
    return [
      named(name, "length", {
        detail: sizeText(value.value, scene.reading),
        about: () => explained(name, value, scene),
      }),
    ];
  });
  const sized = [...names.of.opening.keys(), ...names.of.case.keys()].map((name) =>
    named(name, names.of.opening.has(name) ? "opening" : "case", {
      detail: `${name}.width, ${name}.height, ${name}.depth`,
      text: `${name}.`,
      rank: ranks.unsuited,
    }),
  );
  return [...asDerived(place), ...lets, ...sized];
}

/** The steps that a tape or a rule is read to. */
function steps({ scene }: Place): readonly Proposal[] {
  const texts = scene.context.units === "inches" ? ["1/32", "1/16", "1/64"] : ["1 mm", "0.5 mm"];
  return texts.map((text) => named(text, "size"));
}

/** What the size being stated would be if it were not. */
function asDerived({ scene, spot }: Place): readonly Proposal[] {
  const { block, key } = spot;
  const which = key === undefined ? undefined : (["wide", "high", "deep"] as const).find((word) => word === key.text);
  if (block === undefined || which === undefined || 0 < spot.said.length) return [];
  const [name] = headNames(scene.outline, block);
  const { boxes, fronts } = scene.model;
  const box = block.word === "box" ? boxes.find((one) => one.opening.name.text === name) : undefined;
  const front =
    block.word === "front" || block.word === "door"
      ? fronts.find((one) => one.openings.some((each) => each.name.text === name))
      : undefined;
  const value = which === "deep" ? box?.deep : (box ?? front)?.[which];
  return value === undefined || value.origin.kind === "written" ? [] : [sized(scene, which, value)];
}

function sized(scene: Place["scene"], which: string, value: Sourced<Length>): Proposal {
  return named(writtenText(value.value, scene.context.units), "size", {
    detail: "as it is derived",
    about: () => explained(which, value, scene),
    rank: ranks.best,
  });
}

/** What can be read of a thing, behind its name and a point; names as they stand in the text. */
export function readingProposals(place: Place, path: readonly string[]): readonly Proposal[] {
  return readable.flatMap((word) => {
    const value = readingOf(place, [...path, word]);
    if (value !== undefined) {
      return [
        named(word, "length", {
          detail: sizeText(value.value, place.scene.reading),
          about: () => explained([...path, word].join("."), value, place.scene),
          rank: ranks.suits,
        }),
      ];
    }
    const isOwner = path.length === 1 && (word === "box" || word === "front");
    return isOwner && readingOf(place, [...path, word, "width"]) !== undefined
      ? [named(word, "part", { detail: `the ${word} of ${path[0]}` })]
      : [];
  });
}

const readable = [
  ...["width", "height", "depth", "thickness", "box", "front"],
  ...["clearance", "above", "below", "behind", "travel", "longer", "inside", "thickest"],
  ...["cup", "overlay", "bore"],
];

function readingOf({ scene }: Place, path: readonly string[]): Sourced<Length> | undefined {
  const span = startOfFile(scene.uri);
  const words = path.map((text): Word => ({ text, span }));
  const value = scene.context.lookUp(words);
  return isTrouble(value) ? undefined : value;
}
