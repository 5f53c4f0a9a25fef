import type { Form, KeyedForm } from "./forms.ts";

/** What could be filled in for a word in capitals of what a first word begins, best first; none where anything could. */
export type Blanks = (blank: string, key: string) => readonly string[];

type Own = (blank: string) => readonly string[];

/**
 * A form as a snippet, without what may be left out: what is to be filled in becomes a gap, of several words one can be
 * chosen, and a block is opened on lines of its own.
 */
export function snippetOf({ key, rest }: KeyedForm, blanks: Blanks): string {
  return [key.text, ...pieces([rest], (blank) => blanks(blank, key.text), { gap: 0 })].join(" ");
}

/** As `snippetOf`, for what stands behind a word in its row. */
export function snippetBehind(word: string, behind: readonly Form[], key: string, blanks: Blanks): string {
  return [word, ...pieces(behind, (blank) => blanks(blank, key), { gap: 0 })].join(" ");
}

/** The words that a row begins with, as far as nothing has to be filled in: `in groove`. */
export function phraseOf(
  word: string,
  behind: readonly Form[],
): { readonly text: string; readonly rest: readonly Form[] } {
  const [first, ...rest] = behind;
  if (first?.kind !== "word" || !/^[a-z]/.test(first.text)) return { text: word, rest: behind };
  const more = phraseOf(first.text, rest);
  return { text: `${word} ${more.text}`, rest: more.rest };
}

interface Gaps {
  gap: number;
}

function pieces(forms: readonly Form[], blanks: Own, gaps: Gaps): readonly string[] {
  return forms.flatMap((form) => piecesOf(form, blanks, gaps));
}

function piecesOf(form: Form, blanks: Own, gaps: Gaps): readonly string[] {
  switch (form.kind) {
    case "word":
      return [form.text];
    case "block":
      return ["{\n\t$0\n}"];
    case "blank":
      return [blankText(form.text, blanks, gaps)];
    case "maybe":
      return [];
    case "list":
      return pieces([form.of], blanks, gaps);
    case "row":
      return pieces(form.items, blanks, gaps);
    case "ways":
      return waysText(form.ways, blanks, gaps);
  }
}

/** The words that the ways begin with, to choose from, and what stands behind all of them alike. */
function waysText(ways: readonly Form[], blanks: Own, gaps: Gaps): readonly string[] {
  const split = ways.map(leadOf);
  // What begins with something to fill in is no choice among words.
  if (split.some(({ words }) => words === "")) return pieces(ways.slice(0, 1), blanks, gaps);
  const [first, ...others] = split;
  const isShared = others.every(({ behind }) => namesOf(behind) === namesOf(first!.behind));
  const choice = gap(
    split.map(({ words }) => words),
    gaps,
  );
  return [choice, ...(isShared ? pieces(first!.behind, blanks, gaps) : [])];
}

function leadOf(way: Form): { readonly words: string; readonly behind: readonly Form[] } {
  const items = way.kind === "row" ? way.items : [way];
  const end = items.findIndex((item) => item.kind !== "word");
  const words = items.slice(0, end < 0 ? items.length : end).map((item) => (item.kind === "word" ? item.text : ""));
  return { words: words.join(" "), behind: end < 0 ? [] : items.slice(end) };
}

function namesOf(forms: readonly Form[]): string {
  return forms.map((form) => ("text" in form ? form.text : form.kind)).join(" ");
}

/** What a gap says where a name would not be read. */
const shown: Readonly<Record<string, string>> = { COUNT: "1", WEIGHT: "40", NEW: "NAME", NEWS: "NAME-1 to NAME-4" };

function blankText(blank: string, blanks: Own, gaps: Gaps): string {
  const names = blanks(blank).filter((name) => !/[,|}$\\]/.test(name));
  if (blank === "#NUMBER") return `#${gap(["8"], gaps)}`;
  if (["TITLE", "PATH", "REASON"].includes(blank)) return `"${gap([blank.toLowerCase()], gaps)}"`;
  if (0 < names.length) return gap(names, gaps);
  return gap([shown[blank] ?? blank], gaps);
}

function gap(texts: readonly string[], gaps: Gaps): string {
  gaps.gap += 1;
  const open = "${";
  return texts.length === 1 ? `${open}${gaps.gap}:${texts[0]}}` : `${open}${gaps.gap}|${texts.join(",")}|}`;
}
