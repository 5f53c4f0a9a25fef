import { vocabulary } from "../core/vocabulary.ts";

/** A statement, an item of a layout or a line of a record: the ways to write it, and what it says. */
export interface Statement {
  /** Names and values in capitals; `OTHER` is a thing of the same kind. */
  readonly forms: readonly string[];
  readonly means: string;
}

/** What stands in a file outside of all blocks, by its first word. */
export const statements: Readonly<Record<string, Statement>> = {
  project: { forms: ['project "TITLE"'], means: "The title of the file, on lists and drawings." },
  inches: { forms: ["inches"], means: "Bare numbers of this file are inches." },
  millimetres: { forms: ["millimetres"], means: "Bare numbers of this file are millimetres." },
  read: {
    forms: ["read to LENGTH"],
    means: "The smallest step that sizes are shown in; they are rounded down to it.",
  },
  use: { forms: ['use "PATH"'], means: "Takes in another build file of this folder or below." },
  let: { forms: ["let NEW = LENGTH"], means: "Names a length." },
  allow: { forms: ['allow CODE "REASON"'], means: "Silences a finding that is known and meant." },
  lift: {
    forms: ["lift WEIGHT [reach LENGTH] [from LENGTH] [up LENGTH]"],
    means: "What one person here handles alone.",
  },
  offcut: {
    forms: ['offcut of STOCK LENGTH x LENGTH [from "TITLE"]'],
    means:
      "One piece in the rack; with a title, what the plan of that job leaves over, which is not there for the job itself.",
  },
  ...Object.fromEntries(
    (["sheet", "board", "edging", "slides", "hinges", "screws", "case", "opening"] as const).map((word) => [
      word,
      { forms: [`${word} NEW [like OTHER] { ... }`], means: gives(word) },
    ]),
  ),
  part: { forms: ["part NEW { ... }"], means: gives("part") },
  ...Object.fromEntries(
    (["saw", "grooves", "pockets", "place", "times"] as const).map((word) => [
      word,
      { forms: [`${word} { ... }`], means: gives(word) },
    ]),
  ),
  box: { forms: ["box for OPENINGS [like OTHER] { ... }"], means: gives("box") },
  front: {
    forms: ["front for OPENINGS [like OTHER] { ... }", "front spanning OPENINGS [like OTHER] { ... }"],
    means: gives("front"),
  },
  door: {
    forms: ["door for OPENINGS [like OTHER] { ... }", "door spanning OPENINGS [like OTHER] { ... }"],
    means: gives("door"),
  },
  false: {
    forms: ["false front for OPENINGS [like OTHER] { ... }"],
    means: "A front that is fixed and opens nothing.",
  },
  shelf: { forms: ["shelf in OPENINGS [like OTHER] { ... }"], means: gives("shelf") },
  cut: { forms: ["cut { ... }"], means: "What has been cut already: owner, part and count." },
};

/** What openings are laid out with, in a case, its face frame or its rear. */
export const layoutWords: Readonly<Record<string, Statement>> = {
  across: { forms: ["across [LENGTH | rest | equal] { ... }"], means: "Divides a space from left to right." },
  down: { forms: ["down [LENGTH | rest | equal] { ... }"], means: "Divides a space from top to bottom." },
  rail: { forms: ["rail [LENGTH]"], means: "A member that lies between two openings, one above the other." },
  stile: { forms: ["stile [LENGTH]"], means: "A member that stands between two openings, side by side." },
  partition: {
    forms: ["partition [LENGTH]"],
    means: "A panel that stands between two openings of a frameless case.",
  },
  opening: {
    forms: ["opening NEW [LENGTH | rest | equal]"],
    means: "A space that a box, a front, a door or shelves go into.",
  },
  openings: {
    forms: ["openings NEWS [LENGTH | rest | equal], [rails LENGTH | stiles LENGTH | partitions LENGTH]"],
    means: "Several openings in one line, with what stands between each two.",
  },
};

const record = "PART COUNT [at LENGTH [x LENGTH]] [from STOCK] [spoiled]";

/** What a `cut` block records. */
export const cutWords: Readonly<Record<string, Statement>> = {
  ...Object.fromEntries(
    ["box", "front", "door", "shelf"].map((word) => [
      word,
      { forms: [`${word} OPENING ${record}`], means: `Pieces of the ${word} in that opening that are cut.` },
    ]),
  ),
  false: { forms: [`false front OPENING ${record}`], means: "Pieces of the false front that are cut." },
  case: { forms: [`case CASE ${record}`], means: "Pieces of the case that are cut." },
  part: {
    forms: ["part HANDPART COUNT [at LENGTH [x LENGTH]] [from STOCK] [spoiled]"],
    means: "Pieces of a part stated by hand that are cut.",
  },
  sheet: { forms: ["sheet SHEET COUNT"], means: "Whole sheets that are broken down." },
  board: { forms: ["board BOARD COUNT"], means: "Whole boards that are broken down." },
  offcut: { forms: ["offcut of STOCK LENGTH x LENGTH"], means: "An offcut that is used up." },
};

/** A form as people read it. */
export function shownForm(form: string): string {
  return form
    .replace("NEWS", "NAMES")
    .replace("NEW", "NAME")
    .replace("HANDPART", "NAME")
    .replace("SHEET", "STOCK")
    .replace(" [like OTHER]", " [like NAME]");
}

function gives(word: keyof typeof vocabulary): string {
  return `Gives ${vocabulary[word].gives}.`;
}
