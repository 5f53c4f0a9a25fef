import type { GrammarAST as Ast, Grammar, LangiumCoreServices, LexerResult } from "langium";
import { DefaultLexer, DefaultTokenBuilder, GrammarAST, RegExpUtils } from "langium";

import { breakBeforeKeys } from "./break-before-key.ts";
import { closeBlocks } from "./close-blocks.ts";
import { readDecimalCommas } from "./decimal-comma.ts";
import { withinLimits } from "./limits.ts";
import { skipBetween } from "./skip-between.ts";
import { endsJoint } from "./tokens.ts";

type AbstractElement = Ast.AbstractElement;
type AbstractRule = Ast.AbstractRule;

type Token = LexerResult["tokens"][number];

/** What may stand right behind a word of the language. */
export interface Follow {
  readonly keywords: ReadonlySet<string>;
  readonly name: boolean;
  readonly count: boolean;
  /** Whether nothing need follow. */
  readonly open: boolean;
}

/**
 * Words of the trade make good names (`let gap`, `opening shelf`), so a word of the language is a name where only a
 * name can stand: behind a word that asks for one, on the same line. The line decides, so that a half-written `sides`
 * does not swallow the property below it. Where a length may stand too, the word must have been given as a name.
 */
export class WordLexer extends DefaultLexer {
  private readonly follows: ReadonlyMap<string, Follow>;
  private readonly starters: ReadonlySet<string>;
  private readonly free: ReadonlySet<string>;
  /** The words of properties that have measures, each of which may have an edge. */
  private readonly measured: ReadonlySet<string>;
  private readonly idType: Token["tokenType"];

  constructor(services: LangiumCoreServices) {
    super(services);
    this.follows = followTable(services.Grammar);
    this.starters = firstOfRule(
      services.Grammar.rules.find((rule) => rule.name === "Statement"),
      0,
    ).keywords;
    this.measured = firstOfRule(
      services.Grammar.rules.find((rule) => rule.name === "MeasureProperty"),
      0,
    ).keywords;
    this.free = freeWords(services.Grammar);
    this.idType = this.definition["ID"]!;
  }

  /** The words of a text as they stand, names told apart from words of the language; comments are `hidden`. */
  words(text: string): LexerResult {
    const result = super.tokenize(text);
    this.nameWords(result.tokens);
    return result;
  }

  private given: readonly Token[] | undefined;

  /** Runs a parser that asks for the tokens of a text and gets these: a piece of that text, read by itself. */
  giving<T>(tokens: readonly Token[], run: () => T): T {
    this.given = tokens;
    try {
      return run();
    } finally {
      this.given = undefined;
    }
  }

  override tokenize(text: string): LexerResult {
    if (this.given !== undefined) return { tokens: [...this.given], errors: [], hidden: [] };
    const result = this.words(text);
    const closed = closeBlocks(readDecimalCommas(result), this.definition["}"]!);
    const { tokens, errors } = withinLimits(skipBetween(closed, this.starters));
    const broken = breakBeforeKeys(tokens, this.measured, this.definition["BREAK"]!);
    return { ...result, tokens: [...broken], errors: [...errors] };
  }

  private nameWords(tokens: readonly Token[]): void {
    const given = givenNames(tokens);
    tokens.forEach((token, index) => {
      const before = tokens[index - 1];
      if (before === undefined || !/^[A-Za-z]/.test(token.image)) return;
      if (token.tokenType !== this.idType) {
        const after = tokens[index + 1];
        const listed = before.image === "," && tokens[index - 2]?.tokenType === this.idType;
        const isName = listed ? this.isListed(before, token, after, given) : this.isName(tokens, index, given);
        if (!isName) return;
      }
      if (token.tokenType !== this.idType) this.retag(token);
    });
  }

  private isName(tokens: readonly Token[], index: number, given: ReadonlySet<string>): boolean {
    const [before, token, after] = [tokens[index - 1]!, tokens[index]!, tokens[index + 1]];
    if (before.image === ".") return true;
    if (before.startLine !== token.startLine || before.tokenType === this.idType) return false;
    if (endsJoint(tokens, index - 1)) return false;
    // `sheet quarter {` gives a name, though `per sheet` needs none behind it.
    if (givesName.has(before.image) && after?.image === "{") return true;
    if (after?.image === "." && after.startOffset === token.startOffset + token.image.length) return true;
    const follow = this.follows.get(before.image);
    if (follow === undefined || !follow.name || follow.keywords.has(token.image)) return false;
    // A word that only ever stands behind another word is no property that follows an unfinished one.
    if (follow.count || follow.open) return given.has(token.image) || !this.free.has(token.image);
    return true;
  }

  /** Behind a name and a comma: the next name of a list, unless `openings a, b, rails 2` goes on to what is between. */
  private isListed(before: Token, token: Token, after: Token | undefined, given: ReadonlySet<string>): boolean {
    if (before.startLine !== token.startLine) return false;
    if (after !== undefined && goesOn.has(after.image)) return true;
    return given.has(token.image) && !between.has(token.image);
  }

  private retag(token: Token): void {
    token.tokenType = this.idType;
    token.tokenTypeIdx = this.idType.tokenTypeIdx!;
  }
}

/**
 * Puts two terminals before the words that they would otherwise lose to: the `x` of `48x96`, which as a word would take
 * the figures behind it for the rest of a name, and the sign of a tolerance, which would be read as arithmetic.
 */
export class WordTokenBuilder extends DefaultTokenBuilder {
  override buildTokens(
    ...input: Parameters<DefaultTokenBuilder["buildTokens"]>
  ): ReturnType<DefaultTokenBuilder["buildTokens"]> {
    const tokens = super.buildTokens(...input);
    if (!Array.isArray(tokens)) return tokens;
    const isFirst = ({ name }: (typeof tokens)[number]): boolean => name === "BY" || name === "TOLERANCE_SIGN";
    return [...tokens.filter(isFirst), ...tokens.filter((token) => !isFirst(token))];
  }

  private readonly beginnings = new Map<unknown, RegExp>();

  /** As the one that it takes the place of, which makes the expression of each terminal anew for each word. */
  protected override findLongerAlt(
    ...[keyword, terminals]: Parameters<DefaultTokenBuilder["findLongerAlt"]>
  ): ReturnType<DefaultTokenBuilder["findLongerAlt"]> {
    return terminals.filter(({ PATTERN }) => {
      if (!(PATTERN instanceof RegExp)) return false;
      const begun = this.beginnings.get(PATTERN) ?? RegExpUtils.partialRegExp(`^${PATTERN.source}$`);
      this.beginnings.set(PATTERN, begun);
      return 0 < (begun.exec(keyword.value)?.[0].length ?? 0);
    });
  }
}

const between = new Set(["rails", "stiles", "partitions"]);
const goesOn = new Set(["{", ",", "like", "to"]);

const givesName = new Set([
  "let",
  "sheet",
  "board",
  "edging",
  "slides",
  "hinges",
  "screws",
  "case",
  "opening",
  "openings",
  "part",
]);

/** The words that some block or `let` gives as names, wherever it stands: a thing may be used before it is described. */
function givenNames(tokens: readonly Token[]): ReadonlySet<string> {
  const given = new Set<string>();
  tokens.forEach((token, index) => {
    const [before, after] = [tokens[index - 1], tokens[index + 1]];
    if (before === undefined || before.startLine !== token.startLine || !givesName.has(before.image)) return;
    const opens = after !== undefined && ["{", "=", "like"].includes(after.image);
    if (opens || before.image.startsWith("opening")) given.add(token.image);
  });
  return given;
}

/** For each word of the grammar, what can stand right behind it. Read off the grammar, so it cannot fall behind. */
export function followTable(grammar: Grammar): ReadonlyMap<string, Follow> {
  const table = new Map<string, Follow>();
  for (const rule of grammar.rules) {
    if (GrammarAST.isParserRule(rule)) collect(rule.definition, emptyFollow, table);
  }
  return table;
}

/** Every word that can stand behind something other than another word, or begin a rule. */
function freeWords(grammar: Grammar): ReadonlySet<string> {
  const free = new Set<string>();
  for (const rule of grammar.rules) if (GrammarAST.isParserRule(rule)) gatherFree(rule.definition, false, free);
  return free;
}

/** Gathers the free words of an element, given whether a word stands before it; says whether it ends in a word. */
function gatherFree(element: AbstractElement, behindWord: boolean, free: Set<string>): boolean {
  if (GrammarAST.isKeyword(element)) {
    if (!behindWord) free.add(element.value);
    return true;
  }
  if (GrammarAST.isAssignment(element)) return gatherFree(element.terminal, behindWord, free);
  if (GrammarAST.isAlternatives(element)) {
    return element.elements.map((choice) => gatherFree(choice, behindWord, free)).every((ends) => ends);
  }
  if (!GrammarAST.isGroup(element)) return false;
  return element.elements.reduce((behind, part) => {
    const ends = gatherFree(part, behind, free);
    return optional(part) ? ends && behind : ends;
  }, behindWord);
}

const emptyFollow: Follow = { keywords: new Set(), name: false, count: false, open: true };

/** Records the follows inside an element, given what follows it; returns what the element can begin with. */
function collect(element: AbstractElement, after: Follow, table: Map<string, Follow>): Follow {
  const looped = repeats(element) ? union(first(element, 0), after) : after;
  if (GrammarAST.isKeyword(element)) {
    table.set(element.value, union(table.get(element.value) ?? { ...emptyFollow, open: false }, looped));
  } else if (GrammarAST.isAssignment(element)) {
    collect(element.terminal, looped, table);
  } else if (GrammarAST.isAlternatives(element)) {
    for (const choice of element.elements) collect(choice, looped, table);
  } else if (GrammarAST.isGroup(element)) {
    let following = looped;
    for (const part of [...element.elements].reverse()) following = collect(part, following, table);
  }
  return sequence(first(element, 0), after);
}

/** What an element can begin with. */
function first(element: AbstractElement, depth: number): Follow {
  const known = firsts.get(element);
  if (known !== undefined) return known;
  const inner = firstOnce(element, depth);
  const all = optional(element) ? { ...inner, open: true } : inner;
  firsts.set(element, all);
  return all;
}

function firstOnce(element: AbstractElement, depth: number): Follow {
  if (GrammarAST.isKeyword(element)) return { ...emptyFollow, keywords: new Set([element.value]), open: false };
  if (GrammarAST.isAssignment(element)) return first(element.terminal, depth);
  if (GrammarAST.isAlternatives(element)) {
    return union(...element.elements.map((choice) => first(choice, depth)));
  }
  if (GrammarAST.isGroup(element)) return firstOfGroup(element.elements, depth);
  if (GrammarAST.isRuleCall(element)) return firstOfRule(element.rule.ref, depth);
  return emptyFollow;
}

/** Stops at the first part that must be there: looking further would visit the whole grammar over and over. */
function firstOfGroup(parts: readonly AbstractElement[], depth: number): Follow {
  const [head, ...rest] = parts;
  if (head === undefined) return emptyFollow;
  const start = first(head, depth);
  return start.open ? sequence(start, firstOfGroup(rest, depth)) : start;
}

function firstOfRule(rule: AbstractRule | undefined, depth: number): Follow {
  if (GrammarAST.isTerminalRule(rule)) {
    return { ...emptyFollow, name: rule.name === "ID", count: rule.name === "COUNT", open: false };
  }
  // The grammar has no left recursion; the bound only guards against a rule added by mistake.
  if (!GrammarAST.isParserRule(rule) || 24 < depth) return emptyFollow;
  const known = firsts.get(rule) ?? first(rule.definition, depth + 1);
  firsts.set(rule, known);
  return known;
}

/** What each rule and each element can begin with: they are asked from many places, whenever a program starts. */
const firsts = new WeakMap<AbstractElement | AbstractRule, Follow>();

function sequence(head: Follow, rest: Follow): Follow {
  return head.open ? { ...union(head, rest), open: rest.open } : head;
}

function union(...all: readonly Follow[]): Follow {
  const keywords = new Set<string>();
  for (const one of all) for (const word of one.keywords) keywords.add(word);
  return {
    keywords,
    name: all.some(({ name }) => name),
    count: all.some(({ count }) => count),
    open: all.some(({ open }) => open),
  };
}

function optional(element: AbstractElement): boolean {
  return element.cardinality === "?" || element.cardinality === "*";
}

function repeats(element: AbstractElement): boolean {
  return element.cardinality === "+" || element.cardinality === "*";
}
