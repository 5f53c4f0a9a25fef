/** How many columns of a terminal a character takes: two if it is wide, none if it joins the one before. */
export function cellsOf(character: string): number {
  if (character < "\u00ad") return 1;
  if (/^[\p{Mn}\p{Me}\p{Cf}]$/u.test(character)) return 0;
  return wide.test(character) ? 2 : 1;
}

/** East Asian wide and full-width blocks of Unicode, and pictures that are shown as such. */
const wide =
  /^[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]$/u;

export function widthOf(text: string): number {
  if (/^[\x20-\x7e]*$/.test(text)) return text.length;
  return [...text].reduce((sum, character) => sum + cellsOf(character), 0);
}

/** Any space but those in a figure as the tape reads it: a whole number, its fraction, and the sign that it is a hair less. */
const betweenWords = /(?<!\d)\s+|(?<=\d)\s+(?=\S|$)(?!\d+\/\d|−)/;

/** Breaks a text between words into lines of at most so many columns; a word longer than a line is broken too. */
export function wrap(text: string, columns: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  let width = 0;
  const words = text.split(betweenWords).map((word) => word.replace(/\s+/g, " "));
  for (const word of words.flatMap((one) => chopped(one, columns))) {
    const more = widthOf(word);
    if (line === "") [line, width] = [word, more];
    else if (width + 1 + more <= columns) [line, width] = [`${line} ${word}`, width + 1 + more];
    else {
      lines.push(line);
      [line, width] = [word, more];
    }
  }
  return line === "" && 0 < lines.length ? lines : [...lines, line];
}

function chopped(word: string, columns: number): readonly string[] {
  if (word === "") return [];
  if (widthOf(word) <= columns) return [word];
  const pieces = [""];
  let width = 0;
  for (const character of word) {
    const cells = cellsOf(character);
    if (columns < width + cells) {
      pieces.push("");
      width = 0;
    }
    pieces[pieces.length - 1] += character;
    width += cells;
  }
  return pieces;
}
