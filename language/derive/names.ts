import type { Design } from "../core/design.ts";
import type { Finding } from "../core/finding.ts";
import type { Word } from "../core/span.ts";

/** The kinds of thing that have names; two of one kind may not share one. */
export type NameKind = "stock" | "slides" | "hinges" | "screws" | "opening" | "case" | "length" | "part";

export interface Names {
  readonly of: Readonly<Record<NameKind, ReadonlyMap<string, Word>>>;
  readonly findings: readonly Finding[];
}

/** Every name given in a design, and a finding where two things of one kind share a name. */
export function namesOf(design: Design): Names {
  const findings: Finding[] = [];
  const of = Object.fromEntries(
    Object.entries(givenNames(design)).map(([kind, words]) => [kind, tableOf(kind as NameKind, words, findings)]),
  ) as Record<NameKind, ReadonlyMap<string, Word>>;
  return { of, findings };
}

function givenNames(design: Design): Record<NameKind, readonly Word[]> {
  const names = (blocks: readonly { readonly name: Word }[]) => blocks.map((block) => block.name);
  return {
    stock: names([...design.sheets, ...design.boards, ...design.edgings]),
    slides: names(design.slides),
    hinges: names(design.hinges),
    screws: names(design.screws),
    opening: openingNamesOf(design),
    case: names(design.cases),
    length: names(design.lets),
    part: names(design.parts),
  };
}

/** The openings of a design: those that stand by themselves, and those of its cases. */
export function openingNamesOf({ openings, cases }: Pick<Design, "openings" | "cases">): readonly Word[] {
  return [...openings.map(({ name }) => name), ...cases.flatMap(namesInCase)];
}

type Layout = Design["cases"][number]["layout"];

/** The openings of a case, front and rear. */
export function namesInCase(block: Design["cases"][number]): readonly Word[] {
  const layouts = [block.layout, block.frame?.layout, block.rear?.layout, block.rear?.frame?.layout];
  return layouts.flatMap((layout) => inLayout(layout ?? []));
}

/** The openings of a layout, in the order in which they stand. */
export function inLayout(layout: Layout): readonly Word[] {
  return layout.flatMap((item) => {
    if (item.kind === "opening") return [item.name];
    return item.kind === "split" ? inLayout(item.items) : [];
  });
}

function tableOf(kind: NameKind, words: readonly Word[], findings: Finding[]): ReadonlyMap<string, Word> {
  const table = new Map<string, Word>();
  for (const word of words) {
    const before = table.get(word.text);
    if (before === undefined) table.set(word.text, word);
    else findings.push(twice(kind, word, before));
  }
  return table;
}

function twice(kind: NameKind, word: Word, before: Word): Finding {
  return {
    code: "name/twice",
    severity: "error",
    span: word.span,
    message: `there are two ${plural[kind]} called "${word.text}"`,
    reason: "What is said of the name could mean either; only the first counts.",
    remedy: "Give one of them another name.",
    related: [{ span: before.span, message: "the first is here" }],
    fixes: [],
  };
}

const plural: Record<NameKind, string> = {
  stock: "stocks",
  slides: "slides",
  hinges: "hinges",
  screws: "screws",
  opening: "openings",
  case: "cases",
  length: "lengths",
  part: "parts",
};

/** The given name that was most likely meant; `undefined` when none is near. */
export function nearest(text: string, given: Iterable<string>): string | undefined {
  let best: string | undefined;
  let least = Math.max(1, Math.floor(text.length / 3)) + 1;
  for (const candidate of given) {
    const distance = editDistance(text, candidate, least);
    if (distance < least) [best, least] = [candidate, distance];
  }
  return best;
}

/** Levenshtein's distance, or `most` where it is that or more. */
function editDistance(a: string, b: string, most: number): number {
  if (most <= Math.abs(a.length - b.length)) return most;
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + cost));
    }
    row = next;
  }
  return row[b.length]!;
}
