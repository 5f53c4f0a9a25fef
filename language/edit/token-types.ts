import { vocabulary } from "../core/vocabulary.ts";
import type { TextToken } from "../syntax/text-tokens.ts";
import type { Occurrence } from "./names.ts";
import { isSpelled } from "./names.ts";
import type { Outline } from "./outline.ts";
import { blocksOf } from "./outline.ts";

/**
 * What a word is to its reader. `keyword` begins or ties a statement, `property` says something of a block, `enumMember`
 * is one of several choices, `unit` follows a number, `type` is a thing with a name where it is given, `variable` is a
 * name where it is used, and a length where it is given.
 */
export const tokenTypes = [
  "keyword",
  "property",
  "enumMember",
  "unit",
  "type",
  "variable",
  "number",
  "string",
  "comment",
  "operator",
] as const;
export const tokenModifiers = ["declaration"] as const;

export interface TypedToken {
  readonly line: number;
  readonly column: number;
  readonly length: number;
  readonly type: (typeof tokenTypes)[number];
  readonly declaration: boolean;
}

/** The words of a text with what each is, in order; those of several lines once for each line. */
export function typedTokens(outline: Outline, own: readonly Occurrence[]): readonly TypedToken[] {
  const given = new Map(own.filter(isSpelled).map((one) => [one.span.start, one]));
  const heads = new Set([...outline.items.map(({ key }) => key), ...blocksOf(outline).map(({ head }) => head)]);
  return outline.tokens.flatMap((token, index) => {
    const name = token.kind === "name" ? given.get(token.start) : undefined;
    const type = typeOf(outline, token, index, name, heads);
    return type === undefined ? [] : perLine(token, type, name?.given === true);
  });
}

function typeOf(
  outline: Outline,
  token: TextToken,
  index: number,
  name: Occurrence | undefined,
  heads: ReadonlySet<number>,
): TypedToken["type"] | undefined {
  switch (token.kind) {
    case "word":
      return wordType(outline, token.text, index, heads);
    case "name":
      return name?.given === true && name.kind !== "length" ? "type" : "variable";
    case "number":
    case "gauge":
      return "number";
    case "text":
      return "string";
    case "unit":
      return "unit";
    case "comment":
      return "comment";
    case "sign":
      return token.text === "," || token.text === "." ? undefined : "operator";
    default:
      return undefined;
  }
}

function wordType({ tokens }: Outline, text: string, index: number, heads: ReadonlySet<number>): TypedToken["type"] {
  if (text === "x") return "operator";
  // `sheet ply {` begins a statement; `costs 52 per sheet` and `slides runner` say something.
  if (heads.has(index) || tokens[index - 1]?.text === "false") return "keyword";
  return wordClass(text);
}

function perLine(token: TextToken, type: TypedToken["type"], declaration: boolean): readonly TypedToken[] {
  if (token.line === token.endLine)
    return [{ line: token.line, column: token.column, length: token.text.length, type, declaration }];
  return token.text
    .split(/\r\n|\r|\n/)
    .flatMap((text, at) =>
      text === ""
        ? []
        : [{ line: token.line + at, column: at === 0 ? token.column : 0, length: text.length, type, declaration }],
    );
}

/** What begins a statement or a block, and what ties names to it. */
const controlWords: ReadonlySet<string> = new Set(
  (
    "project inches millimetres read use let allow lift offcut case opening openings saw grooves pockets place times box front door false " +
    "shelf part cut frame rear across down rail stile partition for spanning like to of by per at from up in on"
  ).split(" "),
);

/** Words that say something of a block: those of the vocabulary, and what can follow them that has a size itself. */
const propertyWords: ReadonlySet<string> = new Set([
  ...Object.keys(vocabulary),
  ...Object.values(vocabulary).flatMap(({ properties }) => Object.keys(properties)),
  ...["tenon", "reach"],
]);

/** What a word of the language is to its reader wherever it stands. A test holds this to the colours of the editor's own grammar. */
export function wordClass(text: string): "keyword" | "property" | "enumMember" {
  if (controlWords.has(text)) return "keyword";
  // A joint first of all, and a property beside that.
  if (text === "mitred") return "enumMember";
  return propertyWords.has(text) ? "property" : "enumMember";
}
