import type { FillBlock } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import type { Word } from "../../core/span.ts";
import type { Check } from "../check.ts";
import { finding } from "../check.ts";

/** An opening must get one box, and one front or door; a box and a shelf cannot share it. */
export const openingMustBeFilledOnce: Check = {
  codes: ["opening/filled-twice", "opening/covered-twice", "opening/box-and-shelf"],
  run: ({ design }) => {
    const boxed = firstOf(design.boxes);
    const covered = firstOf(design.fronts);
    return [
      ...design.boxes.flatMap((block) => again(block, boxed, twoBoxes)),
      ...design.fronts.flatMap((block) => again(block, covered, twoFronts)),
      // Whether one at a height that is said leaves the box its room, the dry fit shows.
      ...design.shelves.flatMap((block) => (block.at === undefined ? again(block, boxed, boxAndShelf) : [])),
    ];
  },
};

type Make = (word: Word, first: Word) => Finding;

function firstOf(blocks: readonly FillBlock[]): ReadonlyMap<string, Word> {
  const words = blocks.flatMap((block) => block.openings).reverse();
  return new Map(words.map((word) => [word.text, word]));
}

function again(block: FillBlock, firsts: ReadonlyMap<string, Word>, make: Make): readonly Finding[] {
  return block.openings.flatMap((word) => {
    const first = firsts.get(word.text);
    return first === undefined || first === word ? [] : [make(word, first)];
  });
}

function twoBoxes(word: Word, first: Word): Finding {
  return finding({
    code: "opening/filled-twice",
    severity: "error",
    span: word.span,
    message: `"${word.text}" has a box already`,
    reason: "Both would be cut, and only one goes in.",
    remedy: "Name another opening, or divide this one.",
    related: [{ span: first.span, message: "the first is here" }],
  });
}

function twoFronts(word: Word, first: Word): Finding {
  return finding({
    code: "opening/covered-twice",
    severity: "error",
    span: word.span,
    message: `"${word.text}" has a front or a door already`,
    reason: "Both would be cut, and they would cover the same place.",
    remedy: "Name another opening, or take one of them out.",
    related: [{ span: first.span, message: "the first is here" }],
  });
}

function boxAndShelf(word: Word, box: Word): Finding {
  return finding({
    code: "opening/box-and-shelf",
    severity: "error",
    span: word.span,
    message: `"${word.text}" is filled by a box: a shelf has no room in it`,
    reason: "A box takes the whole height of its opening but for what its slides want.",
    remedy: "Divide the opening, and give each its own.",
    related: [{ span: box.span, message: "the box" }],
  });
}
