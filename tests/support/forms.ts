/** Forms that the general reading of alternatives does not cover. */
const special: Readonly<Record<string, readonly string[]>> = {
  "mid rails | stiles COUNT": ["mid rails 1", "mid stiles 2", "mid rails 2"],
  "lengths FIRST to LAST by STEP, or a list": ["lengths 10 to 28 by 2", "lengths 10, 12 1/2, 14", "lengths 10"],
  "corners JOINT [LENGTH] [ends over sides]": [
    ...["pocket screws", "screws", "nails", "rabbet", "dado", "dovetails", "half-blind dovetails", "fingers"].flatMap(
      (joint) => [`corners ${joint}`, `corners ${joint} 3/8`, `corners ${joint} ends over sides`],
    ),
    "corners mitred",
  ],
  "gap LENGTH [round | between], ...": ["gap 1/8", "gap 1/8 round", "gap 1/8 between", "gap 1/8 between, 3/32 round"],
  "overlay LENGTH [EDGE], ...": ["overlay 1/2", "overlay 1/2 left", "overlay 1/2 left, 3/4 right 1 top"],
};

/** What stands for each word in capitals. */
const examples: Readonly<Record<string, string>> = {
  LENGTH: "3/4",
  NAME: "some-name",
  CASE: "some-case",
  STOCK: "some-stock",
  BOARD: "oak",
  COUNT: "3",
  NUMBER: "5",
  AMOUNT: "7.20",
  WEIGHT: "40 lb",
  EDGE: "left",
  EDGES: "left, top",
  SIDE: "right",
  WORD: "veneer",
  WORDS: "hard maple",
  UNIT: "board foot",
};

/** Every shape that a form of the vocabulary table allows: `[...]` left out and put in, each of what `|` divides. */
export function expanded(form: string): readonly string[] {
  const texts = special[form] ?? shapes(form);
  return [...new Set(texts.map((text) => filled(text).replace(/\s+/g, " ").trim()))];
}

function shapes(form: string): readonly string[] {
  const [key = "", ...rest] = form.split(" ");
  const tail = rest.join(" ");
  return alternatives(tail).flatMap((choice) => optionals(choice).map((text) => `${key} ${text}`));
}

/** What stands between the bars that are in no brackets. */
function alternatives(text: string): readonly string[] {
  const parts: string[] = [""];
  let depth = 0;
  for (const sign of text) {
    if (sign === "[") depth++;
    if (sign === "]") depth--;
    if (sign === "|" && depth === 0) parts.push("");
    else parts[parts.length - 1] += sign;
  }
  return parts;
}

/** With and without each of the brackets. */
function optionals(text: string): readonly string[] {
  const start = text.indexOf("[");
  if (start < 0) return [text];
  let end = start;
  for (let depth = 0; end < text.length; end++) {
    if (text[end] === "[") depth++;
    if (text[end] === "]" && --depth === 0) break;
  }
  const insides = ["", ...alternatives(text.slice(start + 1, end)).flatMap(optionals)];
  return optionals(text.slice(end + 1)).flatMap((after) =>
    insides.map((inside) => text.slice(0, start) + inside + after),
  );
}

function filled(text: string): string {
  return text
    .replace("LENGTH, ...", "3/4, 5/8")
    .replace("STOCK, ...", "some-stock, other-stock")
    .replace("{ ... }", "{ }")
    .replace(/[A-Z]{2,}/g, (word) => examples[word] ?? word);
}
