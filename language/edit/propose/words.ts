import type { BlockWord } from "../../core/vocabulary.ts";
import { propertiesOf } from "../../core/vocabulary.ts";
import type { Next } from "../following.ts";
import { readForm } from "../forms.ts";
import type { Blanks } from "../snippets.ts";
import { phraseOf, snippetBehind, snippetOf } from "../snippets.ts";
import { isLaidOut, takenBy } from "../spot.ts";
import type { Statement } from "../statements.ts";
import { cutWords, layoutWords, shownForm, statements } from "../statements.ts";
import type { Place, Proposal } from "./proposal.ts";
import { named, ranks } from "./proposal.ts";

/** What a property or statement can be written with: its form as a whole, where gaps can be filled, else its first words. */
function whole(form: string, means: string, kind: Proposal["kind"], rank: number, blanks: Blanks): Proposal {
  const read = readForm(form);
  const items = read.rest.kind === "row" ? read.rest.items : [read.rest];
  const { text } = phraseOf(read.key.text, items);
  const snippet = snippetOf(read, blanks);
  return named(text, kind, {
    detail: shownForm(form),
    about: () => `\`${shownForm(form)}\`\n\n${means}`,
    text,
    snippet: snippet === text ? undefined : snippet,
    rank,
  });
}

/** Properties that may well stand several times in one block. */
const repeatable = new Set(["edging", "mid", "corner", "wall"]);

/** What can begin at a place: statements of the file; properties that the block does not have yet, and its layout. */
export function beginnings({ scene, spot }: Place, blanks: Blanks): readonly Proposal[] {
  const { block, word } = spot;
  const begin = (table: Readonly<Record<string, Statement>>, rank: number): readonly Proposal[] =>
    Object.values(table).flatMap(({ forms, means }) =>
      forms.map((form) => whole(form, means, "statement", rank, blanks)),
    );
  if (block === undefined) return begin(statements, ranks.statement);
  if (block.word === "cut") return begin(cutWords, ranks.fresh);
  const { tokens } = scene.outline;
  const present = new Set(
    block.items.flatMap(({ key }) => (tokens[key]!.start === word.start ? [] : tokens[key]!.text)),
  );
  const properties = takenBy(block).flatMap((key): readonly Proposal[] => {
    const said = propertiesOf(block.word as BlockWord).get(key);
    if (said === undefined || (present.has(key) && !repeatable.has(key))) return [];
    return [whole(said.form, sentence(said.means), "property", ranks.fresh, blanks)];
  });
  const layout = isLaidOut(block) ? begin(layoutWords, ranks.fresh) : [];
  const allow = 0 < properties.length ? begin({ allow: statements["allow"]! }, ranks.statement) : [];
  return [...properties, ...layout, ...allow];
}

/** A word that goes on with what was begun, with all that belongs to it. */
export function continuation({ leaf, behind }: Next, key: string, blanks: Blanks): readonly Proposal[] {
  if (!/^[a-z]/.test(leaf.text)) return [];
  const { text, rest } = phraseOf(leaf.text, behind);
  const snippet = snippetBehind(text, rest, key, blanks);
  const plain = shownForm(
    [text, ...rest.flatMap((form) => (form.kind === "blank" || form.kind === "word" ? form.text : []))].join(" "),
  );
  return [
    named(text, "choice", {
      detail: plain === text ? "" : plain,
      about: () => meanings[text] ?? "",
      snippet: snippet === text ? undefined : snippet,
      rank: ranks.word,
    }),
  ];
}

/** What a choice means, where the word alone does not say it. */
const meanings: Readonly<Record<string, string>> = {
  rest: "What the others leave; one of each division.",
  equal: "As much as each of the others that are equal.",
  under: "Nailed or screwed on from below, the full size of the box.",
  "from behind": "Slid in from behind, under a back that ends above it.",
  applied: "Laid on from behind, the full size of the case.",
  "in rabbet": "In a recess along the edge, as deep as is said.",
  "in groove": "In a groove all round, as deep as is said.",
  "in dado": "In a trench across the sides, as deep as is said.",
  "ends over sides": "Front and back run full width, and the sides stand between them.",
  spoiled: "Cut, but no good: it has to be made again, and the stock is gone.",
  like: "Takes over all that is said of the other, but what is said here.",
};

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
