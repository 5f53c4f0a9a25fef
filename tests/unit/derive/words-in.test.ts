import { expect, test } from "vitest";
import { wordsIn } from "../../../language/derive/words-in.ts";
import { clean } from "../../support/lowered.ts";

const design = clean(`inches
sheet ply { called 3/4  measures 45/64  size 48 x 96 }
board ash { thick 3/4  wide 5 1/2  long 96 }
slides plain { mount side  extension full  lengths 10 to 28 by 2  clearance 1/2 }
screws short { gauge #8  long 5/4 }
let room = chest.inside.wide - 2 * play.long
let play = 1/8
case chest {
  wide room  high 34 1/2  deep 24
  panels ply  back ply in rabbet 3/8
  frame ash { stiles 1 1/2  rails 1 1/2  down { openings o-1 to o-3 equal, rails 1 } }
}
box for o-1 to o-3 { sides ply  bottom ply under  corners screws short  slides plain 20 }
`);

const sorted = (words: ReadonlySet<string>): readonly string[] => [...words].sort();

test("a block says its own name and all others, and uses those that it does not give", () => {
  const { said, used } = wordsIn(design.cases[0]!);
  expect(sorted(said)).toEqual(expect.arrayContaining(["ash", "chest", "o-1", "o-2", "o-3", "ply", "room"]));
  expect(said.has("wide")).toBe(false);
  expect(used.has("room")).toBe(true);
  expect(used.has("chest")).toBe(false);
});

test("a reading uses the thing that it begins with, and says the words behind it", () => {
  const { said, used } = wordsIn(design.lets[0]!);
  expect(sorted(used)).toEqual(["chest", "play"]);
  expect(sorted(said)).toEqual(expect.arrayContaining(["chest", "inside", "long", "play", "room", "wide"]));
});

test("hardware that is named with its length or in a list is used", () => {
  const { said, used } = wordsIn(design.boxes[0]!);
  expect(sorted(used)).toEqual(expect.arrayContaining(["plain", "short"]));
  expect(sorted(said)).toEqual(expect.arrayContaining(["o-1", "o-2", "o-3", "plain", "ply", "short"]));
});

test("a length that reads nothing uses nothing", () => {
  expect(sorted(wordsIn(design.lets[1]!).used)).toEqual([]);
  expect(wordsIn(design.lets[1]!).said.has("play")).toBe(true);
});

test("findings and allowances of a block use no name, and a block is gone through once", () => {
  const word = { text: "plain", span: design.cases[0]!.name.span };
  const block = { allows: [{ code: word }], uses: { slide: word }, slides: word, none: null };
  expect(sorted(wordsIn(block).used)).toEqual(["plain"]);
  expect(sorted(wordsIn({ allows: [{ code: word }], uses: { slide: word } }).used)).toEqual([]);
  expect(sorted(wordsIn({ uses: { slide: word } }).said)).toEqual(["plain"]);
  expect(wordsIn(block)).toBe(wordsIn(block));
});
