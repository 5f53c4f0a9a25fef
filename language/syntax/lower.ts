import type { AstNode } from "langium";
import type { Allow, Design, LetStatement, UseStatement } from "../core/design.ts";
import type { Measure } from "../core/expr.ts";
import type { Finding } from "../core/finding.ts";
import type { Units } from "../core/length.ts";
import { startOfFile } from "../core/span.ts";
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
import { parse, type SyntaxProblem } from "./parser.ts";
import type { Reader } from "./reader.ts";
import { maybe, placesIn, report, spanOf, spanOfField, wordOf } from "./reader.ts";

/** Longer than any build file; longer text is not read, so that the editor stays quick. */
export const longestFile = 2_000_000;

/** A build file as a design. Total: any text gives a design, with findings for what could not be read. */
export function lower(text: string, uri: string): Design {
  const findings: Finding[] = [];
  if (longestFile < text.length) findings.push(tooLong(uri, text));
  const parsed = parse(longestFile < text.length ? "" : text);
  const statements = parsed.file.statements;
  const reader: Reader = { uri, text, units: unitsOf(statements), findings };
  reportProblems(reader, parsed.problems);
  checkUnits(reader, statements);
  return designOf(reader, statements);
}

/** More than anyone reads; what follows is most often the same slip over and over. */
const mostProblems = 500;

function reportProblems(reader: Reader, problems: readonly SyntaxProblem[]): void {
  if (problems.length === 0) return;
  const place = placesIn(reader.uri, reader.text);
  const further = problems.length - mostProblems;
  problems.slice(0, mostProblems).forEach(({ code, start, end, message }, index) => {
    const more = index === mostProblems - 1 && 0 < further ? `; ${further} more places follow` : "";
    report(reader, {
      code,
      severity: "error",
      span: place(start, end),
      message: `${message}${more}`,
      reason: "This part of the file cannot be read; all else is still worked out.",
      remedy: "Finish the line, or take out what is too much.",
    });
  });
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

function unitsOf(statements: readonly ast.Statement[]): Units {
  return of(statements, "Units")[0]?.unit ?? "inches";
}

function checkUnits(reader: Reader, statements: readonly ast.Statement[]): void {
  const said = of(statements, "Units");
  const other = said.find((node) => node.unit !== said[0]?.unit);
  if (other === undefined) return;
  report(reader, {
    code: "statement/units-twice",
    severity: "error",
    span: spanOf(reader, other),
    message: `this file already speaks in ${reader.units}`,
    reason: "Bare numbers can mean one unit only.",
    remedy: "Keep one of the two, and write the unit on numbers of the other.",
    related: [{ span: spanOf(reader, said[0]!), message: "said here first" }],
  });
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
    text: textAt(reader, node.step),
    span,
  };
}

function textAt(reader: Reader, node: AstNode): string {
  const span = spanOf(reader, node);
  return reader.text.slice(span.start, span.end);
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
