import type { AstNode, CstNode } from "langium";
import { AstUtils, GrammarAST, isCompositeCstNode } from "langium";
import type { Edit, Finding, Severity } from "../core/finding.ts";
import type { Units } from "../core/length.ts";
import { placeIn, type Span, type Stretch, startOfFile, type Word } from "../core/span.ts";
import { detached } from "./detached.ts";

/** What lowering carries along: the file, its units, and the findings made on the way. */
export interface Reader {
  readonly uri: string;
  readonly text: string;
  readonly units: Units;
  readonly findings: Finding[];
  /** What the places that are read move with. */
  readonly stretch: Stretch;
}

/** What stands at a place of the file that is read, as a text of its own. */
export function textAt(reader: Reader, { start, end }: Span): string {
  return detached(reader.text.slice(start, end));
}

/** Half a file leaves fields of the tree unset whatever their type says; this says so to the compiler. */
export function maybe<T>(field: T): T | undefined {
  return field;
}

export function spanOf(reader: Reader, node: AstNode): Span {
  return spanOfCst(reader, node.$cstNode);
}

/** The place of one field of a node, or of the node where the field is not in the text. */
export function spanOfField(reader: Reader, node: AstNode, field: string, index?: number): Span {
  const places = node.$cstNode === undefined ? [] : (fieldsOf(node.$cstNode).get(field) ?? []);
  return spanOfCst(reader, places[index ?? 0] ?? node.$cstNode);
}

type Fields = ReadonlyMap<string, readonly CstNode[]>;

/** The places of each node's fields, gathered once: looking for one field walks all that belongs to the node. */
const gathered = new WeakMap<CstNode, Fields>();

function fieldsOf(node: CstNode): Fields {
  const known = gathered.get(node);
  if (known !== undefined) return known;
  const fields = new Map<string, CstNode[]>();
  if (isCompositeCstNode(node)) {
    for (const child of node.content) gather(child, node.astNode, fields);
  }
  gathered.set(node, fields);
  return fields;
}

function gather(node: CstNode, element: AstNode, fields: Map<string, CstNode[]>): void {
  const field = fieldAt(node.grammarSource);
  if (field !== undefined) {
    const places = fields.get(field);
    if (places === undefined) fields.set(field, [node]);
    else places.push(node);
  } else if (isCompositeCstNode(node) && node.astNode === element) {
    for (const child of node.content) gather(child, element, fields);
  }
}

/** The field that each place of the grammar fills, if any. */
const filled = new WeakMap<GrammarAST.AbstractElement, string | null>();

function fieldAt(source: CstNode["grammarSource"]): string | undefined {
  if (source === undefined) return undefined;
  let field = filled.get(source);
  if (field === undefined) {
    field = AstUtils.getContainerOfType(source, GrammarAST.isAssignment)?.feature ?? null;
    filled.set(source, field);
  }
  return field ?? undefined;
}

/** A field as a word with its place; `undefined` where the text has none. */
export function wordOf(reader: Reader, node: AstNode, field: string, text: string | undefined): Word | undefined {
  return text === undefined || text === "" ? undefined : { text, span: spanOfField(reader, node, field) };
}

export function wordsOf(reader: Reader, node: AstNode, field: string, texts: readonly string[]): readonly Word[] {
  return texts.map((text, index) => ({ text, span: spanOfField(reader, node, field, index) }));
}

function spanOfCst(reader: Reader, node: CstNode | undefined): Span {
  const [first, last] = [leafOf(node, "first"), leafOf(node, "last")];
  if (first === undefined || last === undefined || Number.isNaN(first.offset) || Number.isNaN(last.end))
    return startOfFile(reader.uri);
  const { start } = first.range;
  const { end } = last.range;
  // What the parser put in to go on with stands nowhere.
  const to = end.line < start.line ? start : end;
  return placeIn(reader.stretch, {
    uri: reader.uri,
    start: first.offset,
    end: last.end,
    line: start.line,
    column: start.character,
    endLine: to.line,
    endColumn: to.character,
  });
}

/** The first or last word under a node, comments passed over. The tree tells the same, but goes down it anew for each of six questions. */
function leafOf(node: CstNode | undefined, which: "first" | "last"): CstNode | undefined {
  let at = node;
  while (at !== undefined && isCompositeCstNode(at)) {
    const { content } = at;
    const seen = (one: CstNode): boolean => !one.hidden;
    at = which === "first" ? (content.find(seen) ?? content[0]) : (content.findLast(seen) ?? content.at(-1));
  }
  return at;
}

/** Places from offsets, for the problems that have no node. The lines are found once for all of them. */
export function placesIn(uri: string, text: string): (start: number, end: number) => Span {
  const starts = [0, ...[...text.matchAll(/\r\n|\r|\n/g)].map((match) => match.index + match[0].length)];
  const placeOf = (offset: number): { readonly line: number; readonly column: number } => {
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low, column: offset - starts[low]! };
  };
  return (start, end) => {
    const [from, to] = [placeOf(start), placeOf(Math.max(start, end))];
    return { uri, start, end, line: from.line, column: from.column, endLine: to.line, endColumn: to.column };
  };
}

interface Said {
  readonly code: string;
  readonly severity: Severity;
  readonly span: Span;
  readonly message: string;
  readonly reason: string;
  readonly remedy: string;
  readonly related?: Finding["related"];
  /** Safe unless it is said that it may change what was meant. */
  readonly fix?: { readonly title: string; readonly edits: readonly Edit[]; readonly safe?: boolean };
}

export function report(reader: Reader, said: Said): void {
  const { fix, related = [], ...rest } = said;
  reader.findings.push({ ...rest, related, fixes: fix === undefined ? [] : [{ safe: true, ...fix }] });
}
