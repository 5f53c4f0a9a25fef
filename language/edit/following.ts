import type { TextToken } from "../syntax/text-tokens.ts";
import type { Form, Leaf } from "./forms.ts";
import { lengthEnd, namesEnd, numberEnd } from "./runs.ts";

/** Something that can come next, and what belongs behind it in its row. */
export interface Next {
  readonly leaf: Leaf;
  readonly behind: readonly Form[];
  /** Whether something must come here. */
  readonly must: boolean;
}

export interface Following {
  readonly next: readonly Next[];
  /** Whether the form may end here. */
  readonly ended: boolean;
}

/** What can come next behind some words of a form, its first word left out. Neither next nor ended: they are not of this form. */
export function following(form: Form, said: readonly TextToken[]): Following {
  const next = new Map<string, Next>();
  let ended = false;
  const walk: Walk = {
    said: said.slice(0, mostWords),
    expect: (leaf, behind) => {
      const key = `${leaf.text} ${leaf.from} ${behind.length}`;
      if (!next.has(key)) next.set(key, { leaf, behind, must: true });
    },
  };
  step(walk, form, [], 0, (at) => {
    ended ||= at === said.length;
  });
  return { next: [...next.values()].map((one) => ({ ...one, must: !ended })), ended };
}

/** No property has more words; those of a series that goes on and on say nothing new. */
const mostWords = 60;

interface Walk {
  readonly said: readonly TextToken[];
  readonly expect: (leaf: Leaf, behind: readonly Form[]) => void;
}

function step(walk: Walk, form: Form, behind: readonly Form[], at: number, go: (at: number) => void): void {
  switch (form.kind) {
    case "row":
      inRow(walk, form.items, at, go);
      return;
    case "ways":
      for (const way of form.ways) step(walk, way, behind, at, go);
      return;
    case "maybe":
      step(walk, form.of, [], at, go);
      go(at);
      return;
    case "list":
      step(walk, form.of, behind, at, (after) => {
        go(after);
        const next = walk.said[after]?.text === "," ? after + 1 : after;
        if (at < next) step(walk, form, [], next, go);
      });
      return;
    default:
      inLeaf(walk, form, behind, at, go);
  }
}

function inRow(walk: Walk, items: readonly Form[], at: number, go: (at: number) => void): void {
  const [first, ...rest] = items;
  if (first === undefined) go(at);
  else step(walk, first, rest, at, (after) => inRow(walk, rest, after, go));
}

function inLeaf(walk: Walk, leaf: Leaf, behind: readonly Form[], at: number, go: (at: number) => void): void {
  const end = at === walk.said.length ? "unfinished" : endOf(leaf, walk.said, at);
  if (end === "unfinished") walk.expect(leaf, behind);
  else if (end !== undefined) go(end);
}

function endOf({ kind, text }: Leaf, said: readonly TextToken[], at: number): number | "unfinished" | undefined {
  const token = said[at]!;
  if (kind === "block") return undefined;
  if (kind === "word") return token.text === text || (text === "x" && token.text === "×") ? at + 1 : undefined;
  switch (text) {
    case "STOCK":
    case "SHEET":
    case "BOARD":
    case "NAME":
    case "NEW":
    case "OTHER":
    case "OPENING":
    case "CASE":
    case "HANDPART":
      return token.kind === "name" ? at + 1 : undefined;
    case "OPENINGS":
    case "NEWS":
      return namesEnd(said, at);
    case "PART":
      return partEnd(said, at);
    case "CODE":
      return codeEnd(said, at);
    case "TITLE":
    case "PATH":
    case "REASON":
      return token.kind === "text" ? at + 1 : undefined;
    case "WORDS":
      return wordsEnd(said, at);
    case "#NUMBER":
      return token.kind === "gauge" ? at + 1 : undefined;
    case "LENGTH":
      return lengthEnd(said, at);
    default:
      return numberEnd(said, at);
  }
}

const twofold = new Set(["rail", "stile", "mount"]);

function partEnd(said: readonly TextToken[], at: number): number | undefined {
  const [token, next] = [said[at]!, said[at + 1]];
  if (token.kind !== "name" && token.kind !== "word") return undefined;
  const goesOn = ["top", "bottom", "mid", "middle"].includes(token.text) && twofold.has(next?.text ?? "");
  return goesOn ? at + 2 : at + 1;
}

function codeEnd(said: readonly TextToken[], at: number): number | "unfinished" | undefined {
  if (!/^[a-z]/.test(said[at]!.text)) return undefined;
  if (said[at + 1]?.text !== "/") return at + 1;
  return said[at + 2] === undefined ? "unfinished" : at + 3;
}

/** A species may have several words; all of one line. */
function wordsEnd(said: readonly TextToken[], at: number): number | undefined {
  let end = at;
  while (said[end] !== undefined && said[end]!.kind === "name" && said[end]!.line === said[at]!.line) end++;
  return end === at ? undefined : end;
}
