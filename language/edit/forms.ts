/**
 * The forms of the vocabulary (`bottom STOCK [under | in groove LENGTH]`) read as what they are: small grammars. They say
 * what can come next behind the words typed so far, what a whole one looks like, and which part of it is being written.
 * Places count characters of the form.
 */
export type Form = Leaf | Row | Ways | Maybe | List;

export interface Leaf {
  /** A word of the language; something to be filled in; a pair of brackets with a block. */
  readonly kind: "word" | "blank" | "block";
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

interface Row {
  readonly kind: "row";
  readonly items: readonly Form[];
}

interface Ways {
  readonly kind: "ways";
  readonly ways: readonly Form[];
}

/** May be left out. */
interface Maybe {
  readonly kind: "maybe";
  readonly of: Form;
}

/** Once or several times, with or without commas. */
interface List {
  readonly kind: "list";
  readonly of: Form;
}

/** A form without its first word. */
export interface KeyedForm {
  readonly text: string;
  readonly key: Leaf;
  readonly rest: Form;
}

const known = new Map<string, KeyedForm>();

/** Reads a form; each is read once. */
export function readForm(text: string): KeyedForm {
  const before = known.get(text);
  if (before !== undefined) return before;
  const pieces = [...text.matchAll(/\{ \.\.\. \}|, \.\.\.|, or a list|[[\]|,=]|[^\s[\]|,=]+/g)].map(
    (match): Piece => ({ text: match[0], from: match.index, to: match.index + match[0].length }),
  );
  const [head, ...tail] = pieces;
  const form: KeyedForm = {
    text,
    key: { kind: "word", ...(head ?? { text: "", from: 0, to: 0 }) },
    rest: special(tail) ?? waysOf({ pieces: tail, at: 0 }),
  };
  known.set(text, form);
  return form;
}

interface Piece {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

interface Reading {
  readonly pieces: readonly Piece[];
  at: number;
}

/** Forms that are said shorter than they are meant. */
function special(pieces: readonly Piece[]): Form | undefined {
  const leaves = (): readonly Form[] => pieces.filter(({ text }) => /^[\w{]/.test(text)).map(leafOf);
  const text = pieces.map((piece) => piece.text).join(" ");
  if (text === "rails | stiles COUNT") {
    const [rails, stiles, count] = leaves();
    return row([{ kind: "ways", ways: [rails!, stiles!] }, count!]);
  }
  if (text.endsWith(", or a list")) {
    const [first, ...others] = leaves();
    return { kind: "ways", ways: [row([first!, ...others]), { kind: "list", of: first! }] };
  }
  if (text.startsWith("left LENGTH right LENGTH")) {
    const sides = leaves();
    const reaches = sides.flatMap((side, index) => (index % 2 === 0 ? [row([side, sides[index + 1]!])] : []));
    return { kind: "list", of: { kind: "ways", ways: reaches } };
  }
  return undefined;
}

function waysOf(reading: Reading): Form {
  const ways: Form[] = [rowOf(reading)];
  while (reading.pieces[reading.at]?.text === "|") {
    reading.at++;
    ways.push(rowOf(reading));
  }
  return ways.length === 1 ? ways[0]! : { kind: "ways", ways };
}

function rowOf(reading: Reading): Form {
  const items: Form[] = [];
  for (;;) {
    const piece = reading.pieces[reading.at];
    if (piece === undefined || piece.text === "|" || piece.text === "]") return row(items);
    reading.at++;
    if (piece.text === "[") {
      items.push({ kind: "maybe", of: waysOf(reading) });
      reading.at++;
    } else if (piece.text === ", ...") {
      const all = row([...items]);
      items.splice(0, items.length, { kind: "list", of: all });
    } else if (piece.text === ",") {
      items.push({ kind: "maybe", of: leafOf(piece) });
    } else items.push(leafOf(piece));
  }
}

function row(items: readonly Form[]): Form {
  return items.length === 1 ? items[0]! : { kind: "row", items };
}

/** What a word in capitals stands for, where only some words can. */
const choices: Readonly<Record<string, readonly string[]>> = {
  JOINT: [
    ...["pocket screws", "screws", "nails", "rabbet", "dado"],
    ...["dovetails", "half-blind dovetails", "fingers", "mitred"],
  ],
  UNIT: ["board foot", "foot", "metre", "piece", "sheet", "pair"],
  EDGE: ["left", "right", "top", "bottom"],
  SIDE: ["left", "right"],
  WORD: ["veneer", "mdf", "particle", "hardboard"],
};

function leafOf({ text, from, to }: Piece): Form {
  const leaf = (kind: Leaf["kind"], of: string): Leaf => ({ kind, text: of, from, to });
  const words = (said: string): Form => row(said.split(" ").map((word) => leaf("word", word)));
  if (text.startsWith("{")) return leaf("block", text);
  const own = choices[text];
  if (own !== undefined) return { kind: "ways", ways: own.map(words) };
  if (text === "EDGES")
    return { kind: "list", of: { kind: "ways", ways: ["all", ...choices["EDGE"]!, "front", "back"].map(words) } };
  if (text === "WEIGHT") return row([leaf("blank", "WEIGHT"), { kind: "ways", ways: ["lb", "kg"].map(words) }]);
  // `clearance LENGTH [+LENGTH]`: the sign belongs to the length before it.
  if (/^[+-]LENGTH$/.test(text)) return leaf("blank", "TOLERANCE");
  return leaf(/^[#"]?[A-Z]{2,}"?$/.test(text) ? "blank" : "word", text.replaceAll('"', ""));
}
