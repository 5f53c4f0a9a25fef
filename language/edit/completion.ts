import type { Finding } from "../core/finding.ts";
import type { Span } from "../core/span.ts";
import { speciesNames } from "../published/species.ts";
import type { TextToken } from "../syntax/text-tokens.ts";
import { tokenBefore } from "./outline.ts";
import { spanOfTokens } from "./places.ts";
import { readingProposals } from "./propose/lengths.ts";
import { blankProposals } from "./propose/names.ts";
import type { Place, Proposal } from "./propose/proposal.ts";
import { named, ranks } from "./propose/proposal.ts";
import { beginnings, continuation } from "./propose/words.ts";
import type { Scene } from "./scene.ts";
import type { Blanks } from "./snippets.ts";
import type { Spot } from "./spot.ts";
import { followingAt, spotAt } from "./spot.ts";
import { pathBetween } from "./uses.ts";

/** What could be written at a place, and what it would stand in the place of: a piece of one line. */
export interface Completion {
  readonly span: Span;
  readonly proposals: readonly Proposal[];
}

export interface CompletionAsked {
  /** Whether a blank was typed and nothing was asked for: then only what must come next is worth showing. */
  readonly unasked: boolean;
  /** What was found in the file, for what can be allowed. */
  readonly findings: readonly Finding[];
  /** The build files that could be used, as addresses. */
  readonly files: readonly string[];
}

/** What could be written at an offset of a text, whole or broken; `undefined` where nothing is proposed. Never throws. */
export function completionAt(scene: Scene, offset: number, asked: CompletionAsked): Completion | undefined {
  const { outline } = scene;
  const spot = spotAt(outline, offset);
  if (spot === undefined) return fileAt(scene, offset, asked.files);
  const place: Place = { scene, spot };
  const lead = leadOf(spot);
  const span = spanBetween(scene, lead?.start ?? spot.word.start, Math.max(spot.word.end, offset));
  const path = pathBefore(
    outline.tokens,
    outline.tokens.findLastIndex((token) => token.end <= spot.word.start),
  );
  const proposals = path === undefined ? proposalsAt(place, asked) : readingProposals(place, path);
  // What has begun as a number is one.
  const isNumber = /^[0-9.]/.test(spot.word.text);
  const fitting = proposals.filter(
    ({ label }) => (!isNumber || /^[0-9]/.test(label)) && (lead === undefined || label.startsWith(lead.text)),
  );
  const ordered = fitting.toSorted((a, b) => a.rank - b.rank);
  return ordered.length === 0 ? undefined : { span, proposals: ordered };
}

function proposalsAt(place: Place, { unasked, findings }: CompletionAsked): readonly Proposal[] {
  const { spot, scene } = place;
  const { next, ended } = followingAt(spot);
  const blanks: Blanks = (blank, key) => gapsFor(place, blank, key);
  const expected = next.flatMap((one) =>
    one.leaf.kind === "blank"
      ? blankProposals(place, one.leaf.text, findings)
      : one.leaf.kind === "word"
        ? continuation(one, spot.key?.text ?? "", blanks)
        : [],
  );
  // A species of several words goes on.
  if (spot.key?.text === "species" && leadOf(spot) !== undefined) return blankProposals(place, "WORDS", findings);
  if (unasked) return ended || spot.key === undefined ? [] : expected;
  const newLine = /[\n\r]/.test(scene.text.slice(spot.last?.end ?? 0, spot.word.start));
  const begins = ended || spot.key === undefined || newLine;
  return [...expected, ...(begins ? beginnings(place, blanks) : [])];
}

/** The words before the place that belong to one name with it: `hard maple`, `slide/shallow`. */
function leadOf({ key, said, last }: Spot): { readonly start: number; readonly text: string } | undefined {
  const [first] = said;
  if (first === undefined || last === undefined) return undefined;
  if (key?.text === "allow")
    return said.length === 2 && last.text === "/" ? { start: first.start, text: `${first.text}/` } : undefined;
  const text = said.map((token) => token.text).join(" ");
  const isSpecies = key?.text === "species" && said.every(({ line }) => line === first.line);
  return isSpecies && speciesNames.some((name) => name.startsWith(`${text} `))
    ? { start: first.start, text }
    : undefined;
}

/** More names than these are no choice but a list. */
const mostChoices = 12;

const listed = new Set(["STOCK", "BOARD", "SHEET", "CASE", "NAME", "OPENINGS"]);

/** Names that a gap lets one choose from, of a property or statement that is proposed and not written yet. */
function gapsFor({ scene, spot }: Place, blank: string, key: string): readonly string[] {
  if (!listed.has(blank)) return [];
  const begun = { ...spot, key: { text: key }, said: [] };
  return blankProposals({ scene, spot: begun }, blank, [])
    .filter(({ rank }) => blank !== "OPENINGS" || rank < ranks.plain)
    .slice(0, mostChoices)
    .map(({ label }) => label);
}

/** The names before a point that the place stands right behind: `desk.box.` */
function pathBefore(tokens: readonly TextToken[], last: number): readonly string[] | undefined {
  const path: string[] = [];
  let at = last;
  while (tokens[at]?.text === "." && tokens[at]?.kind === "sign" && tokens[at - 1] !== undefined) {
    path.unshift(tokens[at - 1]!.text);
    at -= 2;
  }
  return path.length === 0 ? undefined : path;
}

/** A piece of one line. */
function spanBetween(scene: Scene, start: number, end: number): Span {
  const { outline, text, uri } = scene;
  const near = outline.tokens[tokenBefore(outline, start)];
  let [line, from] = near === undefined ? [0, 0] : [near.line, near.start - near.column];
  for (let at = near?.start ?? 0; at < start; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) [line, from] = [line + 1, at + 1];
  }
  return { uri, start, end, line, column: start - from, endLine: line, endColumn: end - from };
}

/** In the quotes of a `use`: the build files that there are, by the way from this one. */
function fileAt(scene: Scene, offset: number, files: readonly string[]): Completion | undefined {
  const { outline, uri } = scene;
  const at = tokenBefore(outline, offset);
  const [text, key] = [outline.tokens[at], outline.tokens[at - 1]];
  if (text?.kind !== "text" || key?.text !== "use" || key.kind !== "word") return undefined;
  const whole = spanOfTokens(uri, text, text);
  const closed = 1 < text.text.length && text.text.endsWith('"') ? 1 : 0;
  const span = {
    ...whole,
    ...{
      start: whole.start + 1,
      column: whole.column + 1,
      end: whole.end - closed,
      endColumn: whole.endColumn - closed,
    },
  };
  const paths = files.flatMap((file) => (file === uri ? [] : (pathBetween(uri, file) ?? [])));
  const proposals = paths.filter((path) => !path.startsWith("../../..")).map((path) => named(path, "file"));
  return proposals.length === 0 ? undefined : { span, proposals };
}
