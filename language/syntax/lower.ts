import type { Allow, Design, LetStatement, UseStatement } from "../core/design.ts";
import type { Measure } from "../core/expr.ts";
import type { Finding } from "../core/finding.ts";
import { joinDesigns } from "../core/join-designs.ts";
import type { Units } from "../core/length.ts";
import { placeIn, type Span, type Stretch, startOfFile } from "../core/span.ts";
import type * as ast from "../generated/ast.ts";
import { lowerAllow, unquote } from "./bag.ts";
import { lowerCase } from "./lower-case.ts";
import { lowerCuts } from "./lower-cut.ts";
import { lowerExpr, lowerMeasure } from "./lower-expr.ts";
import { lowerBox, lowerFront, lowerShelf } from "./lower-fill.ts";
import {
  lowerBoard,
  lowerEdging,
  lowerGrooves,
  lowerHinges,
  lowerLift,
  lowerOffcut,
  lowerPart,
  lowerPlace,
  lowerPockets,
  lowerSaw,
  lowerScrews,
  lowerSheet,
  lowerSlides,
  lowerStandingOpening,
  lowerTimes,
} from "./lower-stock.ts";
import { type Piece, parse, piecesOf, type SyntaxProblem } from "./parser.ts";
import type { Reader } from "./reader.ts";
import { maybe, placesIn, spanOf, spanOfField, textAt, wordOf } from "./reader.ts";

/** Longer than any build file; longer text is not read, so that the editor stays quick. */
export const longestFile = 2_000_000;

/** A build file as a design. Total: any text gives a design, with findings for what could not be read. */
export function lower(text: string, uri: string): Design {
  return lowerAgain(text, uri, undefined).design;
}

/** A text as it was read, piece by piece, so that the next text need read only what is new in it. */
export interface Lowered {
  readonly design: Design;
  readonly pieces: readonly LoweredPiece[];
}

interface LoweredPiece {
  readonly print: Print;
  /** Where it stands now; what was made of it moves with this. */
  readonly stretch: Stretch;
  readonly design: Design;
  readonly problems: readonly Finding[];
  readonly units: readonly UnitsSaid[];
}

/** By which a piece is known again: pieces that are alike here are read alike. */
interface Print {
  readonly text: string;
  readonly column: number;
  /** Which words are names is settled by the whole file. */
  readonly types: readonly number[];
  readonly isLast: boolean;
}

interface UnitsSaid {
  readonly unit: Units;
  readonly span: Span;
}

/**
 * As `lower`, after an earlier text of the same file. What is made of a piece that has not changed is the same objects as
 * before, moved to where they stand now: whoever holds `before`, or something that was made of it, holds moved places too.
 */
export function lowerAgain(text: string, uri: string, before: Lowered | undefined): Lowered {
  if (longestFile < text.length) {
    const empty = lowerAgain("", uri, undefined);
    return { ...empty, design: { ...empty.design, findings: [tooLong(uri, text)] } };
  }
  const { pieces, problems } = piecesOf(text);
  const known = knownAgain(text, pieces, before?.pieces ?? []);
  const parsed = pieces.map((piece, at): ParsedPiece => known[at] ?? parsedPiece(text, uri, piece));
  const units = parsed.flatMap((piece) => piece.units);
  const unit = units[0]?.unit ?? "inches";
  // Bare numbers mean something else now: nothing of what was made of them holds.
  if (before !== undefined && before.design.units !== unit) return lowerAgain(text, uri, undefined);
  const lowered = parsed.map((piece) => ("design" in piece ? piece : loweredPiece(text, uri, unit, piece)));
  const place = problems.length === 0 ? undefined : placesIn(uri, text);
  const broken = [
    ...problems.map((problem) => unreadable(problem, place!(problem.start, problem.end))),
    ...lowered.flatMap((piece) => piece.problems),
  ];
  const designs = lowered.map(({ design }) => design);
  const joined = joinDesigns(designs, {
    uri,
    project: designs.find(({ project }) => project !== undefined)?.project,
    units: unit,
    reading: designs.find(({ reading }) => reading !== undefined)?.reading,
  });
  const findings = [...atMost(broken, mostProblems), ...unitsTwice(units), ...joined.findings];
  return { design: { ...joined, findings }, pieces: lowered };
}

type ParsedPiece =
  | LoweredPiece
  | {
      readonly print: Print;
      readonly stretch: Stretch;
      readonly statements: readonly ast.Statement[];
      readonly problems: readonly Finding[];
      readonly units: readonly UnitsSaid[];
    };

/** The pieces at the start and at the end that are as they were, moved to where they are now. */
function knownAgain(
  text: string,
  pieces: readonly Piece[],
  before: readonly LoweredPiece[],
): readonly (LoweredPiece | undefined)[] {
  const known: (LoweredPiece | undefined)[] = pieces.map(() => undefined);
  const most = Math.min(pieces.length, before.length);
  const take = (at: number, old: LoweredPiece): boolean => {
    const print = printOf(text, pieces[at]!);
    if (!isAlike(print, old.print)) return false;
    // With the new print: the old one holds on to the text that it was taken from.
    known[at] = { ...old, print };
    return true;
  };
  let head = 0;
  while (head < most && take(head, before[head]!)) head++;
  for (let back = 1; head + back <= most; back++) {
    if (!take(pieces.length - back, before[before.length - back]!)) break;
  }
  for (const [at, piece] of known.entries())
    if (piece !== undefined) Object.assign(piece.stretch, startOf(pieces[at]!));
  return known;
}

function printOf(text: string, { tokens, isLast }: Piece): Print {
  const [first, last] = [tokens[0], tokens.at(-1)];
  return {
    text:
      first === undefined || last === undefined
        ? ""
        : text.slice(first.startOffset, last.startOffset + last.image.length),
    column: first?.startColumn ?? 1,
    types: tokens.map(({ tokenTypeIdx }) => tokenTypeIdx),
    isLast,
  };
}

function isAlike(a: Print, b: Print): boolean {
  return (
    a.text === b.text &&
    a.column === b.column &&
    a.isLast === b.isLast &&
    a.types.length === b.types.length &&
    a.types.every((type, at) => type === b.types[at])
  );
}

function startOf({ tokens }: Piece): Stretch {
  return { offset: tokens[0]?.startOffset ?? 0, line: (tokens[0]?.startLine ?? 1) - 1 };
}

function parsedPiece(text: string, uri: string, piece: Piece): ParsedPiece {
  const { statements, problems } = parse(text, piece);
  const stretch = startOf(piece);
  const place = problems.length === 0 ? undefined : placesIn(uri, text);
  const reader: Reader = { uri, text, units: "inches", findings: [], stretch };
  return {
    print: printOf(text, piece),
    stretch,
    statements,
    problems: problems.map((one) => unreadable(one, placeIn(stretch, place!(one.start, one.end)))),
    units: of(statements, "Units").map((node) => ({ unit: node.unit, span: spanOf(reader, node) })),
  };
}

function loweredPiece(
  text: string,
  uri: string,
  units: Units,
  { statements, ...piece }: Exclude<ParsedPiece, LoweredPiece>,
): LoweredPiece {
  const reader: Reader = { uri, text, units, findings: [], stretch: piece.stretch };
  return { ...piece, design: designOf(reader, statements) };
}

/** More than anyone reads; what follows is most often the same slip over and over. */
const mostProblems = 500;

function atMost(problems: readonly Finding[], most: number): readonly Finding[] {
  const further = problems.length - most;
  if (further <= 0) return problems;
  const last = problems[most - 1]!;
  return [...problems.slice(0, most - 1), { ...last, message: `${last.message}; ${further} more places follow` }];
}

function unreadable({ code, message, reason, remedy, instead }: SyntaxProblem, span: Span): Finding {
  return {
    code,
    severity: "error",
    span,
    message,
    reason: reason ?? "This part of the file cannot be read; all else is still worked out.",
    remedy: remedy ?? "Finish the line, or take out what is too much.",
    related: [],
    fixes: instead === undefined ? [] : [{ title: `Write ${instead}`, edits: [{ span, text: instead }], safe: false }],
  };
}

function designOf(reader: Reader, statements: readonly ast.Statement[]): Design {
  const named = (kind: ast.NamedBlock["kind"]) => of(statements, "NamedBlock").filter((block) => block.kind === kind);
  const fills = of(statements, "FillBlock");
  const shop = (kind: ast.ShopBlock["kind"]) => of(statements, "ShopBlock").filter((block) => block.kind === kind);
  return {
    uri: reader.uri,
    project: projectOf(reader, statements),
    units: reader.units,
    reading: readingOf(reader, statements),
    sheets: named("sheet").flatMap((node) => lowerSheet(reader, node)),
    boards: named("board").flatMap((node) => lowerBoard(reader, node)),
    edgings: named("edging").flatMap((node) => lowerEdging(reader, node)),
    offcuts: of(statements, "Offcut").flatMap((node) => lowerOffcut(reader, node)),
    leavings: [],
    slides: named("slides").flatMap((node) => lowerSlides(reader, node)),
    hinges: named("hinges").flatMap((node) => lowerHinges(reader, node)),
    screws: named("screws").flatMap((node) => lowerScrews(reader, node)),
    lets: of(statements, "Let").flatMap((node) => lowerLet(reader, node)),
    shop: {
      saw: shop("saw").map((node) => lowerSaw(reader, node)),
      grooves: shop("grooves").map((node) => lowerGrooves(reader, node)),
      pockets: shop("pockets").map((node) => lowerPockets(reader, node)),
      places: shop("place").map((node) => lowerPlace(reader, node)),
      times: shop("times").map((node) => lowerTimes(reader, node)),
      lifts: of(statements, "Lift").flatMap((node) => lowerLift(reader, node)),
    },
    cases: named("case").flatMap((node) => lowerCase(reader, node)),
    openings: named("opening").flatMap((node) => lowerStandingOpening(reader, node)),
    boxes: fills.filter((node) => node.kind === "box").map((node) => lowerBox(reader, node)),
    fronts: fills.filter((node) => isFront(node)).map((node) => lowerFront(reader, node)),
    shelves: fills.filter((node) => node.kind === "shelf").map((node) => lowerShelf(reader, node)),
    parts: of(statements, "PartBlock").flatMap((node) => lowerPart(reader, node)),
    ...lowerCuts(reader, of(statements, "CutBlock")),
    allows: of(statements, "Allow").flatMap((node): Allow[] => {
      const allow = lowerAllow(reader, node, undefined);
      return allow === undefined ? [] : [allow];
    }),
    uses: of(statements, "Use").flatMap((node) => lowerUse(reader, node)),
    findings: reader.findings,
  };
}

function of<T extends ast.Statement["$type"]>(
  statements: readonly ast.Statement[],
  type: T,
): readonly Extract<ast.Statement, { $type: T }>[] {
  return statements.filter((node): node is Extract<ast.Statement, { $type: T }> => node.$type === type);
}

function isFront(node: ast.FillBlock): boolean {
  return node.kind === "front" || node.kind === "door" || node.kind === "false";
}

function unitsTwice(said: readonly UnitsSaid[]): readonly Finding[] {
  const [first] = said;
  const other = said.find(({ unit }) => unit !== first?.unit);
  if (first === undefined || other === undefined) return [];
  return [
    {
      code: "statement/units-twice",
      severity: "error",
      span: other.span,
      message: `this file already speaks in ${first.unit}`,
      reason: "Bare numbers can mean one unit only.",
      remedy: "Keep one of the two, and write the unit on numbers of the other.",
      related: [{ span: first.span, message: "said here first" }],
      fixes: [],
    },
  ];
}

function projectOf(reader: Reader, statements: readonly ast.Statement[]): Design["project"] {
  const node = of(statements, "Project")[0];
  return node === undefined ? undefined : wordOf(reader, node, "title", unquote(maybe(node.title)));
}

function readingOf(reader: Reader, statements: readonly ast.Statement[]): Measure | undefined {
  const node = of(statements, "ReadTo")[0];
  if (node === undefined || maybe(node.step) === undefined) return undefined;
  const span = spanOfField(reader, node, "step");
  return {
    value: lowerExpr(reader, node.step, span),
    plus: undefined,
    minus: undefined,
    to: undefined,
    units: reader.units,
    text: textAt(reader, spanOf(reader, node.step)),
    span,
  };
}

function lowerLet(reader: Reader, node: ast.Let): readonly LetStatement[] {
  const name = wordOf(reader, node, "name", maybe(node.name));
  if (name === undefined) return [];
  return [{ name, value: lowerMeasure(reader, maybe(node.value)), span: spanOf(reader, node) }];
}

function lowerUse(reader: Reader, node: ast.Use): readonly UseStatement[] {
  const text = unquote(maybe(node.path));
  if (text === undefined) return [];
  return [{ path: { text, span: spanOfField(reader, node, "path") }, span: spanOf(reader, node) }];
}

function tooLong(uri: string, text: string): Finding {
  return {
    code: "syntax/too-long",
    severity: "error",
    span: startOfFile(uri),
    message: `this file has ${text.length} characters`,
    reason: `A build file may have ${longestFile}; a longer one is not read, so that the editor stays quick.`,
    remedy: 'Move cases into files of their own and use them: use "file.scant".',
    related: [],
    fixes: [],
  };
}
