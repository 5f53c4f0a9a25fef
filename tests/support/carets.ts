import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import type { Finding } from "../../language/core/finding.ts";
import { createWorkspace } from "../../language/service.ts";

/**
 * How to write a fixture
 * ----------------------
 * A fixture is a build file, `tests/fixtures/findings/FAMILY/NAME.scant`, for the code `FAMILY/NAME`. Under a line that
 * has a finding stands a comment with carets under exactly the place of the finding, and its code:
 *
 *       box for left { sides ply  slides runner 24 }
 *     //                                        ^^ slide/too-long: the part of the message that matters
 *
 * - Exact both ways: a finding without carets fails, and carets without a finding fail. One comment line per finding;
 *   several may stand below each other. What follows the code behind a colon must be in the message; it may be left out.
 * - The two slashes take two columns: indent a line whose finding begins further left.
 * - `|` in place of carets is an empty place. `^^>` begins at the carets and runs on past the end of the line.
 * - Beside what is wrong, a fixture holds its nearest neighbour that is right, on a line marked `// fine`.
 * - `// besides: CODE, CODE` anywhere leaves findings of these codes out of account (`FAMILY/*` for a whole family).
 * - `// ---- other.scant` begins another file, which the first can use. `shop.scant` of the fixtures' folder can always
 *   be used: stocks, slides and hinges that have no finding of their own.
 * - A fixture that breaks these rules fails as malformed, whatever it finds.
 *
 * Every fix that a finding of a fixture offers is applied, and must take the finding away.
 */
export interface Fixture {
  readonly name: string;
  /** Texts by file name; the first is the one that is built. */
  readonly files: ReadonlyMap<string, string>;
  readonly expected: readonly Expected[];
  readonly besides: readonly string[];
}

export interface Expected {
  readonly file: string;
  /** Zero-based, as in a span. */
  readonly line: number;
  readonly column: number;
  /** `undefined` where the place runs on past its line. */
  readonly endColumn: number | undefined;
  readonly code: string;
  readonly says: string | undefined;
}

/** What is wrong with a fixture itself, as against what it finds. */
export class MalformedFixture extends Error {}

export const fixtureRoot = "file:///fixtures";
export const mainFile = "main.scant";

const caretLine = /^\s*\/\/([ \t]*)(\^+>?|\|)(?: ([a-z]+(?:-[a-z]+)*\/[a-z]+(?:-[a-z]+)*)(?:: (.+?))?)?\s*$/;
const fileLine = /^\/\/ ---- (\S+\.scant)\s*$/;
const besidesLine = /^\s*\/\/ besides: (.+?)\s*$/;

/** Reads a fixture; throws a `MalformedFixture` that says what is wrong with it. */
export function parseFixture(name: string, text: string, shop?: string): Fixture {
  const besides: string[] = [];
  const expected: Expected[] = [];
  const files = new Map<string, string[]>([[mainFile, []]]);
  let file = mainFile;
  let fine = false;
  let above: { readonly line: number; readonly text: string } | undefined;
  const fault = (index: number, what: string) => new MalformedFixture(`${name}:${index + 1}: ${what}`);
  text.split("\n").forEach((line, index) => {
    const next = fileLine.exec(line)?.[1];
    if (next !== undefined) {
      if (files.has(next)) throw fault(index, `there is a second ${next}`);
      file = next;
      files.set(file, []);
      above = undefined;
      return;
    }
    const lines = files.get(file)!;
    lines.push(line);
    if (/\/\/ fine\b/.test(line)) fine = true;
    const named = besidesLine.exec(line)?.[1];
    if (named !== undefined) {
      besides.push(...named.split(/,\s*/));
      return;
    }
    if (!/^\s*\/\/.*(\^|\s\|(\s|$))/.test(line)) {
      above = { line: lines.length - 1, text: line };
      return;
    }
    expected.push(expectation(line, above, file, (what) => fault(index, what)));
  });
  if (!fine)
    throw new MalformedFixture(`${name}: no line is marked "// fine", so nothing shows where the finding ends`);
  if (expected.length === 0) throw new MalformedFixture(`${name}: no carets`);
  const texts = [...files].map(([key, lines]): [string, string] => [key, lines.join("\n")]);
  if (shop !== undefined && !files.has("shop.scant")) texts.push(["shop.scant", shop]);
  return { name, files: new Map(texts), expected, besides };
}

function expectation(
  line: string,
  above: { readonly line: number; readonly text: string } | undefined,
  file: string,
  fault: (what: string) => MalformedFixture,
): Expected {
  const match = caretLine.exec(line);
  if (match === null) throw fault("carets that cannot be read: // ^^^ family/code: message");
  const [, , marks, code, says] = match;
  if (code === undefined) throw fault("carets without a code");
  if (above === undefined) throw fault("carets with no line above them");
  const column = line.indexOf(marks!);
  const open = marks!.endsWith(">");
  const width = marks === "|" ? 0 : marks!.length - (open ? 1 : 0);
  if (above.text.length < column + width) throw fault("carets that reach past the end of the line above");
  return { file, line: above.line, column, endColumn: open ? undefined : column + width, code, says };
}

/** Builds the fixture and says every difference between what it expects and what is found. */
export function differences(fixture: Fixture): readonly string[] {
  const left = [...findingsOf(fixture.files)].filter((finding) => !isBeside(fixture, finding.code));
  const missing: string[] = [];
  for (const wanted of fixture.expected) {
    const at = left.findIndex((finding) => matches(wanted, finding));
    if (0 <= at) left.splice(at, 1);
    else missing.push(`missing: ${place(wanted)} ${wanted.code}${wanted.says === undefined ? "" : `: ${wanted.says}`}`);
  }
  return [...missing, ...left.map((finding) => `extra: ${placeOf(finding)} ${finding.code}: ${finding.message}`)];
}

/** Every fix that is offered, applied alone: those after which the finding still stands, or the text cannot be read. */
export function fixesThatFail(fixture: Fixture): readonly string[] {
  const before = findingsOf(fixture.files);
  return before.flatMap((finding) =>
    finding.fixes.flatMap((fix) => {
      const files = new Map(fixture.files);
      const edits = [...fix.edits].sort((a, b) => b.span.start - a.span.start);
      for (const { span, text } of edits) {
        const name = nameOf(span.uri);
        const old = files.get(name) ?? "";
        files.set(name, old.slice(0, span.start) + text + old.slice(span.end));
      }
      const after = findingsOf(files);
      const unread = after.filter((one) => one.code.startsWith("syntax/")).length;
      const wasUnread = before.filter((one) => one.code.startsWith("syntax/")).length;
      const stays = after.some(
        (one) => one.code === finding.code && one.message === finding.message && sameSpot(one, finding),
      );
      if (!stays && unread <= wasUnread) return [];
      return [
        `${fixture.name}: "${fix.title}" for ${finding.code} ${stays ? "leaves it standing" : "breaks the text"}`,
      ];
    }),
  );
}

/** All fixtures of a folder, by their path in it without the ending: `slide/too-long`. */
export function fixtureFiles(folder: string): readonly { readonly name: string; readonly text: string }[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".scant") && entry.parentPath !== folder)
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
    .map((path) => ({
      name: relative(folder, path)
        .replaceAll("\\", "/")
        .replace(/\.scant$/, ""),
      text: readFileSync(path, "utf8"),
    }));
}

/** The findings of a build of these files, the first of them being built. */
export function findingsOf(files: ReadonlyMap<string, string>): readonly Finding[] {
  const workspace = createWorkspace({ root: fixtureRoot });
  for (const [file, text] of files) workspace.set(`${fixtureRoot}/${file}`, text);
  return workspace.build(`${fixtureRoot}/${[...files.keys()][0]!}`).findings;
}

function matches(wanted: Expected, finding: Finding): boolean {
  const { span } = finding;
  const ends =
    wanted.endColumn === undefined
      ? span.line < span.endLine
      : span.endLine === span.line && span.endColumn === wanted.endColumn;
  return (
    ends &&
    finding.code === wanted.code &&
    nameOf(span.uri) === wanted.file &&
    span.line === wanted.line &&
    span.column === wanted.column &&
    (wanted.says === undefined || finding.message.includes(wanted.says))
  );
}

function isBeside({ besides }: Fixture, code: string): boolean {
  return besides.some(
    (pattern) => pattern === code || (pattern.endsWith("/*") && code.startsWith(pattern.slice(0, -1))),
  );
}

function sameSpot(a: Finding, b: Finding): boolean {
  return a.span.uri === b.span.uri && a.span.line === b.span.line && a.span.column === b.span.column;
}

function nameOf(uri: string): string {
  return uri.slice(fixtureRoot.length + 1);
}

function place({ file, line, column, endColumn }: Expected): string {
  return `${file}:${line + 1}:${column + 1}-${endColumn === undefined ? "" : endColumn + 1}`;
}

function placeOf({ span }: Finding): string {
  const end = span.endLine === span.line ? `${span.endColumn + 1}` : "";
  return `${nameOf(span.uri)}:${span.line + 1}:${span.column + 1}-${end}`;
}
