import type { Design } from "../core/design.ts";
import type { Edit } from "../core/finding.ts";
import { lower } from "../syntax/lower.ts";
import { textTokens } from "../syntax/text-tokens.ts";
import type { Occurrence } from "./names.ts";
import { isSpelled, nameIndex } from "./names.ts";
import { edited } from "./places.ts";

/** What a rename writes, in every file that it concerns; or why it cannot be, in a sentence for people. */
export type Renaming = { readonly edits: readonly Edit[] } | { readonly refused: string };

/** The builds that a name may stand in, each as the designs of its files, and the texts of those files. */
export interface Family {
  readonly builds: readonly (readonly Design[])[];
  readonly textOf: (uri: string) => string | undefined;
}

/**
 * A name changed wherever it stands. Openings of one range (`a-1 to a-4`) keep their numbers and change together. What
 * would be read differently afterwards is refused.
 */
export function renamed(family: Family, name: Occurrence, written: string): Renaming {
  if (!/^[A-Za-zÀ-ÖØ-öø-ſ][A-Za-zÀ-ÖØ-öø-ſ0-9_-]*$/.test(written)) {
    return { refused: "A name begins with a letter and holds letters, digits, - and _ only." };
  }
  const all = occurrencesIn(family);
  if (!all.some((one) => one.kind === name.kind && one.text === name.text && one.given)) {
    return { refused: `"${name.text}" is not described in any file that is known.` };
  }
  const names = renamesOf(family, name, written);
  if (names === undefined) {
    const number = /\d+$/.exec(name.text)?.[0] ?? "";
    return { refused: `"${name.text}" belongs to a range; its new name must end in ${number} too.` };
  }
  const taken = all.find(
    (one) => one.kind === name.kind && one.given && !names.has(one.text) && isValue(names, one.text),
  );
  if (taken !== undefined) return { refused: `There is a "${taken.text}" already.` };
  const edits = all.flatMap((one): Edit[] => {
    const text = one.kind === name.kind ? names.get(one.text) : undefined;
    return text === undefined || text === one.text || !isSpelled(one) ? [] : [{ span: one.span, text }];
  });
  return staysRead(family, edits, name, names)
    ? { edits }
    : { refused: `As "${written}" it would be read as something else somewhere.` };
}

function isValue(names: ReadonlyMap<string, string>, text: string): boolean {
  return [...names.values()].includes(text);
}

/** Every name of the builds, each place once. */
function occurrencesIn({ builds }: Family): readonly Occurrence[] {
  const byPlace = new Map<string, Occurrence>();
  for (const designs of builds) {
    for (const one of nameIndex(designs).all) {
      byPlace.set(`${one.span.uri} ${one.span.start} ${one.span.end} ${one.kind} ${one.text}`, one);
    }
  }
  return [...byPlace.values()];
}

/** Old names and new ones: the name itself, or all of the ranges that it belongs to; `undefined` if the number differs. */
function renamesOf(family: Family, name: Occurrence, written: string): ReadonlyMap<string, string> | undefined {
  const old = numbered(name.text);
  const members = old === undefined || name.kind !== "opening" ? [] : rangeMembers(family, old);
  if (old === undefined || members.length <= 1) return new Map([[name.text, written]]);
  if (!written.endsWith(old.digits) || written.length <= old.digits.length) return undefined;
  const stem = written.slice(0, -old.digits.length);
  if (/\d$/.test(stem)) return undefined;
  const own = (number: number): string => (number === old.number ? old.digits : String(number));
  const given = new Map<string, string>();
  for (const number of members) given.set(`${old.stem}${own(number)}`, `${stem}${own(number)}`);
  return given;
}

/** The numbers of all names that ranges tie to this one, its own with them. */
function rangeMembers(family: Family, name: Numbered): readonly number[] {
  const ranges = rangesIn(family, name.stem);
  const members = new Set([name.number]);
  for (let grown = true; grown; ) {
    grown = false;
    for (const [from, to] of ranges) {
      const tied = [...members].some((number) => from <= number && number <= to);
      for (let number = from; tied && number <= to; number++) {
        grown ||= !members.has(number);
        members.add(number);
      }
    }
  }
  return [...members];
}

/** A range that spells more names than this is a slip of the finger, and a finding. */
const mostInRange = 200;

function rangesIn({ builds, textOf }: Family, stem: string): readonly (readonly [number, number])[] {
  const uris = new Set(builds.flat().map((design) => design.uri));
  return [...uris].flatMap((uri) => {
    const tokens = textTokens(textOf(uri) ?? "").filter((token) => token.kind !== "comment");
    return tokens.flatMap((token, index): (readonly [number, number])[] => {
      if (token.text !== "to" || token.kind !== "word") return [];
      const [from, to] = [tokens[index - 1], tokens[index + 1]].map((end) =>
        end?.kind === "name" ? numbered(end.text) : undefined,
      );
      const isRange = from?.stem === stem && to?.stem === stem && from.number <= to.number;
      return isRange && to.number - from.number < mostInRange ? [[from.number, to.number]] : [];
    });
  });
}

interface Numbered {
  readonly stem: string;
  readonly digits: string;
  readonly number: number;
}

function numbered(name: string): Numbered | undefined {
  const match = /^(.*?)(\d{1,9})$/.exec(name);
  return match === null ? undefined : { stem: match[1]!, digits: match[2]!, number: Number(match[2]) };
}

/** Whether the files, read anew, say the same but for the names. A word of the language is not a name everywhere. */
function staysRead(
  family: Family,
  edits: readonly Edit[],
  name: Occurrence,
  names: ReadonlyMap<string, string>,
): boolean {
  const anew = new Map<string, Design>();
  const reread = (design: Design): Design => {
    const own = edits.filter((edit) => edit.span.uri === design.uri);
    const text = family.textOf(design.uri);
    if (own.length === 0 || text === undefined) return design;
    const made = anew.get(design.uri) ?? lower(edited(text, own), design.uri);
    anew.set(design.uri, made);
    return made;
  };
  return family.builds.every((designs) => {
    const after = designs.map(reread);
    if (designs.some((design, index) => design.findings.length !== after[index]!.findings.length)) return false;
    const gist = (of: readonly Design[], map: (one: Occurrence) => string): string =>
      nameIndex(of)
        .all.map((one) => `${one.span.uri} ${one.kind} ${map(one)} ${one.given}`)
        .join("\n");
    const mapped = (one: Occurrence): string => (one.kind === name.kind ? (names.get(one.text) ?? one.text) : one.text);
    return gist(designs, mapped) === gist(after, (one) => one.text);
  });
}
