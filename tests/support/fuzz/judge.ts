import type { Finding } from "../../../language/core/finding.ts";
import type { Span } from "../../../language/core/span.ts";
import { atOnce } from "../../../language/core/stepwise.ts";
import { drawingView } from "../../../language/draw/drawing-view.ts";
import { formatEdits } from "../../../language/edit/format.ts";
import { edited } from "../../../language/edit/places.ts";
import type { Build, Workspace } from "../../../language/service.ts";
import { createWorkspace, safeEdits } from "../../../language/service.ts";
import { lower } from "../../../language/syntax/lower.ts";
import { gist } from "../lowered.ts";

export const home = "file:///job";
export const fuzzed = `${home}/main.scant`;

/**
 * How much is asked of a text. `usual`: parser, derivation, findings, list, rod, csv and fixes. `format` asks too whether
 * the formatter keeps what it means; `all` asks that and for every other view, plan, drawings and day among them.
 */
export type Depth = "usual" | "format" | "all";

/** A workspace with the files that a text may use. One serves for many texts, as it does in an editor. */
export function workspaceWith(others: ReadonlyMap<string, string>): Workspace {
  const workspace = createWorkspace({ root: home });
  for (const [name, other] of others) workspace.set(`${home}/${name}`, other);
  return workspace;
}

/** All that the program does wrong with a text; nothing for a program that is in order. */
export function faultsOf(text: string, workspace: Workspace, depth: Depth): readonly string[] {
  workspace.set(fuzzed, text);
  const build = attempt("build", () => workspace.build(fuzzed));
  if (typeof build === "string") return [build];
  const findings = attempt("findings", () => build.findings);
  if (typeof findings === "string") return [findings];
  return [
    ...findings.flatMap((finding) => faultsOfFinding(finding, (uri) => workspace.textOf(uri))),
    ...views(build, depth),
    ...(depth === "usual" ? [] : faultsOfFormat(text)),
  ];
}

function attempt<T>(what: string, act: () => T): T | string {
  try {
    return act();
  } catch (error) {
    return `${what} threw: ${error instanceof Error ? error.stack : String(error)}`;
  }
}

function views(build: Build, depth: Depth): readonly string[] {
  const asked: readonly (readonly [string, () => unknown])[] = [
    ["list", () => build.list()],
    ["rod", () => build.rod()],
    ["csv", () => build.csv()],
    ["fixes", () => safeEdits(build.findings, fuzzed)],
  ];
  const more: readonly (readonly [string, () => unknown])[] = [
    ["markdown", () => build.markdown()],
    ["text", () => build.text()],
    [
      "plan",
      () => {
        const plan = build.plan({ steps: 4 });
        return [build.planDocument(plan), build.planText(plan), build.buying(plan)];
      },
    ],
    ["drawings", () => atOnce(build.drawings()).map(drawingView)],
    ["left", () => build.left()],
    ["rescue", () => build.rescue()],
    ["day", () => build.dayText(build.day({ steps: 2 }))],
  ];
  return (depth === "all" ? [...asked, ...more] : asked).flatMap(([what, act]) => {
    const seen = attempt(what, act);
    return typeof seen === "string" && seen.startsWith(`${what} threw: `) ? [seen] : [];
  });
}

function faultsOfFinding(finding: Finding, textOf: (uri: string) => string | undefined): readonly string[] {
  const { code, message, reason, remedy, span, related, fixes } = finding;
  const faults: string[] = [];
  // Both are how the program says that it failed: not for a text, whatever it is.
  if (code === "tool/check-failed") faults.push(`${code}: ${message}`);
  if (message === "this file could not be read") faults.push(`the parser threw`);
  if ([message, reason, remedy].some((text) => text.trim() === "")) faults.push(`${code} says nothing`);
  if (/\b(undefined|NaN|\[object|null)\b/.test(`${message}${remedy}`) && !/"[^"]*(undefined|NaN|null)/.test(message))
    faults.push(`${code} speaks of nothing: ${message}`);
  const spans = [
    span,
    ...related.map((one) => one.span),
    ...fixes.flatMap(({ edits }) => edits.map((edit) => edit.span)),
  ];
  for (const place of spans) {
    const fault = faultOfSpan(place, textOf(place.uri));
    if (fault !== undefined) faults.push(`${code} at ${JSON.stringify(place)}: ${fault}`);
  }
  return faults;
}

function faultOfSpan(span: Span, text: string | undefined): string | undefined {
  if (text === undefined) return "in no file";
  const { start, end, line, column, endLine, endColumn } = span;
  if (!(0 <= start && start <= end && end <= text.length)) return "outside the text";
  const starts = lineStarts(text);
  if (starts[line]! + column !== start) return "line and column are of another place than its start";
  if (starts[endLine]! + endColumn !== end) return "line and column are of another place than its end";
  return undefined;
}

let lastText = "";
let lastStarts: readonly number[] = [0];

function lineStarts(text: string): readonly number[] {
  if (text !== lastText) {
    lastText = text;
    lastStarts = [0, ...[...text.matchAll(/\r\n|\r|\n/g)].map((match) => match.index + match[0].length)];
  }
  return lastStarts;
}

/** What a text means; blanks in what is kept of the text itself are left out. */
function meaning(text: string): string {
  return gist(lower(text, fuzzed)).replace(/"text":"(?:[^"\\]|\\.)*"/g, (said) => said.replace(/(\s|\\[tnr])+/g, ""));
}

function faultsOfFormat(text: string): readonly string[] {
  const format = (of: string): string => edited(of, formatEdits(fuzzed, of, { indent: "  " }));
  const once = attempt("format", () => format(text));
  if (once.startsWith("format threw: ")) return [once];
  if (once === text) return [];
  const faults: string[] = [];
  if (meaning(once) !== meaning(text)) faults.push("formatted, the text means something else");
  if (format(once) !== once) faults.push("formatted twice is not formatted once");
  return faults;
}
