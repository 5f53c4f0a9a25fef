import { capitalShare } from "./display-list.ts";

/**
 * Advance widths of the embedded typeface (Source Sans 3) in thousandths of its size, from the space to the tilde; a
 * test holds them to the font file. Kept here so that drawings can be laid out where no font can be read.
 */
const widths: Readonly<Record<"regular" | "bold", readonly number[]>> = {
  regular: [
    200, 289, 426, 497, 497, 824, 609, 249, 303, 303, 418, 497, 249, 311, 249, 350, 497, 497, 497, 497, 497, 497, 497,
    497, 497, 497, 249, 249, 497, 497, 497, 425, 847, 543, 588, 571, 615, 527, 494, 617, 652, 263, 479, 579, 486, 727,
    647, 664, 566, 664, 569, 534, 536, 645, 515, 786, 513, 476, 539, 303, 350, 303, 497, 500, 542, 504, 553, 456, 555,
    496, 292, 504, 544, 246, 247, 495, 255, 829, 547, 542, 555, 555, 347, 419, 338, 544, 467, 719, 446, 467, 425, 303,
    241, 303, 497,
  ],
  bold: [
    200, 315, 482, 513, 513, 841, 639, 275, 324, 324, 438, 513, 275, 322, 275, 344, 513, 513, 513, 513, 513, 513, 513,
    513, 513, 513, 275, 275, 513, 513, 513, 444, 875, 558, 597, 576, 625, 538, 510, 628, 663, 282, 494, 597, 502, 745,
    657, 674, 582, 674, 592, 545, 546, 655, 536, 800, 541, 501, 540, 324, 344, 324, 513, 500, 549, 516, 563, 462, 564,
    507, 317, 520, 558, 262, 263, 522, 271, 843, 560, 549, 564, 564, 373, 431, 361, 556, 495, 748, 481, 495, 443, 324,
    255, 324, 513,
  ],
};

const more: Readonly<Record<string, number>> = { "−": 505, "×": 505, "·": 262, "–": 480, "—": 800, "’": 262, "…": 955 };

/** A letter outside the table: Latin and its neighbours are narrow, ideographs are square. */
function unknownWidth(letter: string): number {
  return letter.codePointAt(0)! < 0x1100 ? 580 : 1000;
}

/** Width in millimetres of a text whose capitals are `size` high, without kerning. */
export function textWidth(text: string, size: number, face: "regular" | "bold" = "regular"): number {
  let sum = 0;
  for (const letter of text) sum += widths[face][letter.codePointAt(0)! - 32] ?? more[letter] ?? unknownWidth(letter);
  return (sum / 1000) * (size / capitalShare);
}

/** Breaks a text at its spaces so that no line is wider than `wide` millimetres; a longer word is broken. */
export function wrapText(
  text: string,
  wide: number,
  size: number,
  face: "regular" | "bold" = "regular",
): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/)) {
    const joined = line === "" ? word : `${line} ${word}`;
    if (textWidth(joined, size, face) <= wide) {
      line = joined;
      continue;
    }
    if (line !== "") lines.push(line);
    line = word;
    while (wide < textWidth(line, size, face)) {
      const fitting = fittingLetters(line, wide, size, face);
      lines.push(line.slice(0, fitting));
      line = line.slice(fitting);
    }
  }
  if (line !== "" || lines.length === 0) lines.push(line);
  return lines;
}

/** How much of a word fits, at least one letter, never half of one. */
function fittingLetters(word: string, wide: number, size: number, face: "regular" | "bold"): number {
  let [count, end] = [0, 0];
  for (const letter of word) {
    if (0 < count && wide < textWidth(word.slice(0, end + letter.length), size, face)) break;
    [count, end] = [count + 1, end + letter.length];
  }
  return end;
}

/** The text, shortened with an ellipsis where it is wider than `wide` millimetres. */
export function fitted(text: string, wide: number, size: number, face: "regular" | "bold" = "regular"): string {
  if (textWidth(text, size, face) <= wide) return text;
  const letters = [...text];
  while (0 < letters.length && wide < textWidth(`${letters.join("")}…`, size, face)) letters.pop();
  return `${letters.join("").trimEnd()}…`;
}
