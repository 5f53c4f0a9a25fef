import type { Design } from "../../core/design.ts";
import type { NumberExpr } from "../../core/expr.ts";
import type { Edit } from "../../core/finding.ts";
import type { Units } from "../../core/length.ts";
import { decimalText, inUnits, mixedText, toMillimetres } from "../../core/length.ts";
import type { Rational } from "../../core/rational.ts";
import { behind, startOfFile } from "../../core/span.ts";
import type { TextToken } from "../../syntax/text-tokens.ts";
import type { LengthRoot } from "../lengths.ts";
import { bareLengths, lengthRoots } from "../lengths.ts";
import { spanOfItem, spanOfTokens } from "../places.ts";
import type { Scene } from "../scene.ts";
import type { Offer } from "./action.ts";

/** Writes a whole file in the other units, every length exactly as it was; offered on the word that says them. */
export const otherUnits: Offer = ({ scene, start, end }) => {
  const own = scene.designs.find((design) => design.uri === scene.uri);
  if (own === undefined || own.findings.some(({ code }) => code === "statement/units-twice")) return [];
  if (own.findings.some(({ code }) => code.startsWith("syntax/"))) return [];
  const words = unitsWords(scene);
  const [first] = scene.outline.tokens;
  const isHere =
    words.length === 0 ? start <= (first?.end ?? 0) : words.some((word) => word.start <= end && start <= word.end);
  if (!isHere) return [];
  const to = own.units === "inches" ? "millimetres" : "inches";
  return [{ title: `Write this file in ${to}`, kind: "rewrite", edits: inOtherUnits(scene, own, to) }];
};

/** Most files say it once; saying it again changes nothing. */
function unitsWords({ outline: { items, tokens } }: Scene): readonly TextToken[] {
  return items.map(({ key }) => tokens[key]!).filter(({ text }) => text === "inches" || text === "millimetres");
}

function inOtherUnits(scene: Scene, design: Design, to: Units): readonly Edit[] {
  const numbers = lengthRoots(design).flatMap((root) => rootEdits(scene, design, root, to));
  return [...unitsEdits(scene, to), ...numbers];
}

/** The statement itself; a file that has none is in inches. */
function unitsEdits(scene: Scene, to: Units): readonly Edit[] {
  const { uri, outline } = scene;
  const said = unitsWords(scene).map((word) => ({ span: spanOfTokens(uri, word, word), text: to }));
  if (0 < said.length) return said;
  const project = outline.items.find(({ key }) => outline.tokens[key]!.text === "project");
  if (project === undefined) return [{ span: startOfFile(uri), text: `${to}\n` }];
  return [{ span: behind(spanOfItem(uri, outline, project)), text: `\n${to}` }];
}

function rootEdits(scene: Scene, design: Design, { expr, measure }: LengthRoot, to: Units): readonly Edit[] {
  // The step that sizes are read to stays what it is: only its unit is said.
  const keepsUnit = measure === design.reading && measure !== undefined;
  if (expr.kind === "number" && expr.unit !== undefined) return withoutUnit(scene, expr, to);
  return bareLengths(expr).map((number) => ({
    span: number.span,
    text: apart(scene, number, keepsUnit ? withOldUnit(scene, number) : turned(scene, number, to)),
  }));
}

/** `18 mm` in a file that comes to be in millimetres. Inside arithmetic a unit may decide what is a count, and stays. */
function withoutUnit(scene: Scene, number: NumberExpr, to: Units): readonly Edit[] {
  const text = scene.text.slice(number.span.start, number.span.end);
  const [, count] = (to === "millimetres" ? /^([\d./ ]+?)\s*mm$/ : /^([\d./ ]+?)\s*(?:in|"|″)$/).exec(text) ?? [];
  return count === undefined ? [] : [{ span: number.span, text: apart(scene, number, count) }];
}

function withOldUnit(scene: Scene, { span, units }: NumberExpr): string {
  return `${scene.text.slice(span.start, span.end)} ${units === "inches" ? "in" : "mm"}`;
}

/** Finer than any calliper reads. */
const mostDecimals = 6;

/** The number in the other units where those can write it exactly; else as it is, with its unit. */
function turned(scene: Scene, number: NumberExpr, to: Units): string {
  const length = inUnits(number.value, number.units);
  if (to === "millimetres") {
    const count = toMillimetres(length);
    return isDecimal(count, mostDecimals) ? decimalText(count, mostDecimals) : withOldUnit(scene, number);
  }
  // A size that no tape shows is no more exact as a fraction than with its own unit.
  if (length.d <= 64n && (length.d & (length.d - 1n)) === 0n) return mixedText(length);
  return isDecimal(length, mostInches) ? decimalText(length, mostInches) : withOldUnit(scene, number);
}

const mostInches = 4;

/** Whether so many decimals write a number exactly. */
function isDecimal({ d }: Rational, places: number): boolean {
  return 10n ** BigInt(places) % d === 0n;
}

/** `48x96`: with a unit the sign between two figures must stand by itself. */
function apart({ text }: Scene, { span }: NumberExpr, written: string): string {
  const isSign = (sign: string | undefined): boolean => sign === "x" || sign === "×";
  return `${isSign(text[span.start - 1]) ? " " : ""}${written}${isSign(text[span.end]) ? " " : ""}`;
}
