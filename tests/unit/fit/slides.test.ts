import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { Finding } from "../../../language/core/finding.ts";
import { applied } from "../../../language/fit/fix-all.ts";
import { findingsOf, mainFile } from "../../support/carets.ts";

const shop = readFileSync(fileURLToPath(new URL("../../fixtures/findings/shop.scant", import.meta.url)), "utf8");
const head = 'inches\nuse "shop.scant"\n';

function found(text: string, code: string): readonly Finding[] {
  const files = new Map([
    [mainFile, head + text],
    ["shop.scant", shop],
  ]);
  return findingsOf(files).filter((finding) => finding.code === code);
}

/** The text after each fix of the first finding of a code. */
function mended(text: string, code: string): readonly string[] {
  const [first] = found(text, code);
  return (first?.fixes ?? []).map(({ edits }) => applied(head + text, edits).slice(head.length));
}

describe("a slide with nothing behind it", () => {
  const box = "box for a { sides ply  bottom thin under  slides runner  holds 20 lb }";
  const store = (layout: string) => `case store { wide 48  high 30  deep 24  panels ply  ${layout} }\n${box}`;
  const code = "slide/nothing-behind";

  test("is given a member between its opening and the next, on the side where it lacks", () => {
    expect(mended(store("across { opening a  opening b }"), code)).toEqual([
      store("across { opening a partition  opening b }"),
    ]);
    expect(mended(store("across { opening b  opening a }"), code)).toEqual([
      store("across { opening b  partition opening a }"),
    ]);
    // In a face frame it is a stile.
    expect(mended(store("frame oak { across { opening a  opening b } }"), code)).toEqual([
      store("frame oak { across { opening a stile  opening b } }"),
    ]);
  });

  test("is given it round the column that it stands in, and not inside it", () => {
    expect(mended(store("across { down { opening a  rail  opening c }  opening b }"), code)).toEqual([
      store("across { down { opening a  rail  opening c } partition  opening b }"),
    ]);
    expect(mended(store("down { opening c  rail  across { opening a  opening b } }"), code)).toEqual([
      store("down { opening c  rail  across { opening a partition  opening b } }"),
    ]);
  });

  test("of openings written as one range is given members between all of them", () => {
    const range = (members: string) =>
      `case store { wide 48  high 30  deep 24  panels ply  across { openings a-1 to a-3${members} } }
box for a-1 to a-3 { sides ply  bottom thin under  slides runner  holds 20 lb }`;
    expect(mended(range(""), code)).toEqual([range(" partitions")]);
  });

  test("in a rear face is given it there", () => {
    const rear = (member: string) =>
      store(`opening front-one  rear { across { opening a${member}  opening b } }`).replace("runner ", "runner 10 ");
    expect(mended(rear(""), code)).toEqual([rear(" partition")]);
  });

  test("where it is the case's panels that are not known, is told so and given nothing", () => {
    const [first] = found(`case store { wide 20  high 30  deep 24  frame oak { opening a } }\n${box}`, code);
    expect([first?.remedy, first?.fixes]).toEqual(["Say what the case's panels are made of: panels STOCK.", []]);
  });

  test("is no matter of slides that hang below, or of an opening that stands on its own", () => {
    const under = "slides low { mount under  lengths 9 to 30 by 3  carries 90 lb }\n";
    expect(
      found(under + store("across { opening a  opening b }").replace("slides runner", "slides low"), code),
    ).toEqual([]);
    expect(found(`opening a { wide 15  high 6  deep 23 }\n${box}`, code)).toEqual([]);
  });
});

describe("what slides carry", () => {
  const opening = "opening a { wide 15  high 6  deep 23 }\n";
  const slides = (name: string, mount: string, carries: string) =>
    `slides ${name} { mount ${mount}  extension full  lengths 10 to 28 by 2  clearance 1/2  behind 1/2  carries ${carries} }\n`;
  const box = (holds: string) => `box for a { sides ply  bottom thin under  slides runner  holds ${holds} }\n`;
  const code = "slide/overloaded";

  test("is the box, its front and what it holds", () => {
    // A box of 8 lb on slides for 100 lb holds 92.
    expect(found(opening + box("92 lb"), code)).toEqual([]);
    // A drawer front of oak 16 x 7 x 3/4, 84 cubic inches at about 47 lb a cubic foot, weighs 2 lb more.
    const front = "front for a { overlay 1/2  slab oak }\n";
    expect(found(opening + box("92 lb") + front, code).map(({ message }) => message)).toEqual([
      "92 lb, and 10 lb of box and front, are 2 lb more than the 100 lb that its slides carry",
    ]);
    // A door before it does not move with it.
    expect(
      found(opening + box("92 lb") + front.replace("front for", "door for").replace("oak", "oak  hinged left"), code),
    ).toEqual([]);
  });

  test("in kilograms is 2.2046 times as much in pounds", () => {
    // 41.7 kg are 91.9 lb, 42.2 kg are 93.03
    expect(found(opening + box("41.7 kg"), code)).toEqual([]);
    expect(found(opening + box("42.2 kg"), code)).toHaveLength(1);
  });

  test("is mended by those of its mount that carry it, the weakest first, three at most", () => {
    const rack =
      slides("giant", "side", "500 lb") +
      slides("below", "under", "200 lb") +
      slides("strong", "side", "150 lb") +
      slides("feeble", "side", "107 lb") +
      slides("plain", "side", "110 lb") +
      slides("sturdy", "side", "300 lb");
    // 100 lb and 8 lb of box
    const [first] = found(rack + opening + box("100 lb"), code);
    expect(first?.fixes.map(({ title }) => title)).toEqual(['Use "plain"', 'Use "strong"', 'Use "sturdy"']);
    expect(first?.remedy).toBe("Use slides that carry 108 lb, or let it hold 92 lb at most.");
  });
});

describe("under-mounted slides", () => {
  const low =
    "slides low { mount under  extension full  lengths 9 to 30 by 3  behind 1/2  carries 90 lb  thickest 5/8 }\n";
  const box = (words: string) =>
    `opening a { wide 15  high 6  deep 23 }\nbox for a { ${words}  corners dovetails  slides low  holds 10 lb }`;

  test("stand in a recess 1/2 in high: a groove is lifted, or put in", () => {
    const bottom = (words: string) => mended(low + box(`sides thin  bottom quarter${words}`), "slide/no-recess");
    const lifted = (words: string) => [low + box(`sides thin  bottom quarter${words}`)];
    expect(bottom(" in groove 7/32 up 3/8")).toEqual(lifted(" in groove 7/32 up 1/2"));
    expect(bottom(" in groove 7/32")).toEqual(lifted(" in groove 7/32 up 1/2"));
    expect(bottom(" under")).toEqual(lifted(" in groove 1/4 up 1/2"));
    expect(bottom(" in rabbet 1/4")).toEqual(lifted(" in groove 1/4 up 1/2"));
    expect(bottom("")).toEqual(lifted(" in groove 1/4 up 1/2"));
    expect(bottom(" in groove 7/32 up 1/2")).toEqual([]);
    expect(bottom(" in groove 7/32 up 5/8")).toEqual([]);
  });

  test("take sides up to a thickness; the thickest of the kind that they take are offered, and no bottom's stock", () => {
    const rack =
      "sheet fair { measures 9/16 }\nsheet fine { measures 5/8 }\nsheet slight { measures 5/16 }\nboard lath { thick 1/2 }\n";
    // 5/8 and 9/16 are taken, and so is thin with 15/32, but two are enough; 7/32 and a lath are not offered.
    expect(
      found(rack + low + box("sides ply  bottom quarter in groove 7/32 up 1/2"), "slide/thick-side")[0]?.fixes.map(
        ({ title }) => title,
      ),
    ).toEqual(['Make the sides of "fine"', 'Make the sides of "fair"']);
    expect(found(rack + low + box("sides fine  bottom quarter in groove 7/32 up 1/2"), "slide/thick-side")).toEqual([]);
  });
});

describe("a slide's length", () => {
  const box = (words: string) =>
    `opening a { wide 15  high 6  deep 23 }\nbox for a { sides ply  bottom thin under  slides runner ${words} }`;

  test("that is not the box's: the box is made as deep, or the slide as short", () => {
    expect(mended(box("20  deep 19"), "slide/longer-than-box")).toEqual([box("20  deep 20"), box("18  deep 19")]);
    // Of a slide that nobody named only the box can be changed: 23 − 1/2 takes a 22.
    expect(mended(box(" deep 19"), "slide/longer-than-box")).toEqual([box(" deep 22")]);
  });

  test("that is too long becomes the longest that goes in, where one does", () => {
    expect(mended(box("24"), "slide/too-long")).toEqual([box("22")]);
    // 22 1/2 leaves 22, just enough for one; 22 31/64 does not.
    const exact = box("24").replace("deep 23", "deep 22 1/2");
    expect(mended(exact, "slide/too-long")).toEqual([exact.replace("runner 24", "runner 22")]);
    const short = box("24").replace("deep 23", "deep 22 31/64");
    expect(mended(short, "slide/too-long")).toEqual([short.replace("runner 24", "runner 20")]);
    const shallow = box("24").replace("deep 23", "deep 9");
    expect(found(shallow, "slide/too-long")[0]?.fixes).toEqual([]);
    // 22 1/2 is all the room that there is.
    expect(found(box("22").replace("deep 23", "deep 22 1/2"), "slide/too-long")).toEqual([]);
    expect(found(box("22").replace("deep 23", "deep 22 31/64"), "slide/too-long")).toHaveLength(1);
  });

  test("that is not sold becomes the nearest, or the longest that fits", () => {
    expect(mended(box("19"), "slide/not-sold")).toEqual([box("18"), box("22")]);
    expect(mended(box("21 1/2"), "slide/not-sold")).toEqual([box("22")]);
    expect(found(box("20"), "slide/not-sold")).toEqual([]);
  });

  test("that leaves more than 4 in of the depth is remarked where a longer one fits and it was named", () => {
    // Room 22 1/2. A box deeper than its slide uses what it uses.
    expect(found(box("14"), "slide/shallow")).toHaveLength(1);
    expect(found(box("14  deep 22"), "slide/shallow")).toEqual([]);
    expect(found(box(""), "slide/shallow")).toEqual([]);
  });
});
