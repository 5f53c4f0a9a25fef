import { GrammarAST } from "langium";
import { languageServices } from "../../../language/syntax/parser.ts";
import type { Random } from "./random.ts";

/**
 * A text made by walking the grammar itself: whatever the grammar allows comes up sooner or later, a new form of it
 * without anyone thinking of it. Most of it makes no sense as furniture, and all of it must be borne.
 */
export function grammarText(random: Random, statements: number): string {
  const { Grammar } = languageServices();
  const entry = Grammar.rules.find((rule) => rule.name === "Statement");
  if (!GrammarAST.isParserRule(entry)) throw new Error("the grammar has no statements");
  const words: string[] = [];
  for (let made = 0; made < statements; made++) {
    const walk: Walk = { random, words, left: 60 + random.below(200) };
    say(walk, entry.definition, 0);
    words.push("\n");
  }
  return words.join(random.oneIn(12) ? "  " : " ").replaceAll(" \n ", "\n");
}

interface Walk {
  readonly random: Random;
  readonly words: string[];
  /** Words until everything that may be left out is. */
  left: number;
}

const deepest = 60;

function say(walk: Walk, element: GrammarAST.AbstractElement, depth: number): void {
  for (let times = timesOf(walk, element, depth); 0 < times; times--) sayOnce(walk, element, depth + 1);
}

function timesOf({ random, left }: Walk, { cardinality }: GrammarAST.AbstractElement, depth: number): number {
  const isTired = left <= 0 || deepest < depth;
  if (cardinality === "?") return isTired ? 0 : random.below(2);
  if (cardinality === "*") return isTired ? 0 : random.below(5);
  if (cardinality === "+") return isTired ? 1 : 1 + random.below(3);
  return 1;
}

function sayOnce(walk: Walk, element: GrammarAST.AbstractElement, depth: number): void {
  const { random, words } = walk;
  if (GrammarAST.isKeyword(element)) {
    walk.left--;
    words.push(element.value);
    if (element.value === "{" || element.value === "}" || random.oneIn(6)) words.push("\n");
  } else if (GrammarAST.isAssignment(element)) say(walk, element.terminal, depth);
  else if (GrammarAST.isAlternatives(element)) say(walk, alternativeOf(walk, element, depth), depth);
  else if (GrammarAST.isGroup(element)) for (const part of element.elements) say(walk, part, depth);
  else if (GrammarAST.isRuleCall(element)) call(walk, element.rule.ref, depth);
}

/** Deep down, or when enough has been said, only what leads to an end soon: the last is a number or a name. */
function alternativeOf(
  { random, left }: Walk,
  { elements }: GrammarAST.Alternatives,
  depth: number,
): GrammarAST.AbstractElement {
  return deepest < depth || left < -50 ? elements[0]! : random.pick(elements);
}

function call(walk: Walk, rule: GrammarAST.AbstractRule | undefined, depth: number): void {
  if (GrammarAST.isTerminalRule(rule)) {
    walk.left--;
    walk.words.push(terminal(walk.random, rule.name));
  } else if (GrammarAST.isParserRule(rule)) say(walk, rule.definition, depth);
}

function terminal(random: Random, name: string): string {
  switch (name) {
    case "ID":
      return random.pick(names);
    case "COUNT":
      return random.oneIn(40) ? random.pick(oddCounts) : random.pick(counts);
    case "STRING":
      return random.oneIn(30) ? random.pick(oddTexts) : random.pick(texts);
    case "GAUGE":
      return random.pick(["#8", "#6", "#10", "#99999999999"]);
    case "TOLERANCE_SIGN":
      return random.pick(["+", "-"]);
    case "BY":
      return "x";
    case "BREAK":
      // It stands in no text.
      return "";
    case "INCH_MARK":
      return random.pick(['"', "″"]);
    case "FOOT_MARK":
      return random.pick(["'", "′"]);
    default:
      throw new Error(`the grammar has a terminal ${name} that no text is known for`);
  }
}

/** Few, so that they meet: as stock, opening, length and case in one. */
const names = [
  ...["a", "b", "c", "d-1", "d-2", "d-4", "ply", "thin", "oak", "runner", "cup", "eights", "base", "gap"],
  ...["wide", "high", "deep", "w", "plywood", "é", "maple", "hard", "left-bay", "box", "x", "table"],
];
const counts = [
  ...["1", "2", "3", "4", "8", "12", "18", "22", "24", "30", "48", "96", "0", "1/2", "3/4", "3/8", "1/32", "23/32"],
  ...["13 3/4", "13-3/4", "0.709", ".5", "½", "13¾", "2 ⅞", "10", "20", "36", "34 1/2"],
];
const oddCounts = [
  "99999999999999999999999",
  "1/0",
  "0/0",
  "1/999999999999",
  "0.000000000001",
  "000",
  "241",
  "9".repeat(300),
];
const texts = ['"Chest"', '"rack.scant"', '"shop.scant"', '"the plinth steals an inch"'];
const oddTexts = [
  '"',
  '""',
  '"../rack.scant"',
  '"/etc/hosts"',
  '"main.scant"',
  '"file:///a.scant"',
  '"a\\b.scant"',
  '"📐"',
];
