import type { Span } from "../core/span.ts";
import type { Outline, OutlineItem } from "./outline.ts";
import { headOf, spanOfItem, spanOfTokens } from "./places.ts";

export type SymbolKind =
  | "project"
  | "use"
  | "length"
  | "stock"
  | "hardware"
  | "shop"
  | "case"
  | "opening"
  | "fill"
  | "part";

/** A line of the outline that an editor shows beside a text. */
export interface TextSymbol {
  readonly name: string;
  readonly detail: string;
  readonly kind: SymbolKind;
  readonly span: Span;
  /** What is marked when the symbol is chosen; inside `span`. */
  readonly nameSpan: Span;
  readonly children: readonly TextSymbol[];
}

/** The symbols of a file, openings below their case. */
export function symbolsOf(uri: string, outline: Outline): readonly TextSymbol[] {
  return outline.items.flatMap((item) => symbolOf(uri, outline, item) ?? []);
}

function symbolOf(uri: string, outline: Outline, item: OutlineItem): TextSymbol | undefined {
  const head = headOf(outline, item);
  const [first, ...rest] = head;
  const kind = kinds[first?.text ?? ""];
  if (first === undefined || kind === undefined) return undefined;
  const name = rest.find((token) => token.kind === "name" || token.kind === "text");
  const words = wordsOf(outline, item);
  return {
    name: kind === "fill" || kind === "shop" || name === undefined ? words : name.text.replaceAll('"', ""),
    detail:
      kind === "fill" || kind === "shop" || name === undefined ? "" : words.slice(0, words.indexOf(name.text)).trim(),
    kind,
    span: spanOfItem(uri, outline, item),
    nameSpan:
      name === undefined || kind === "fill"
        ? spanOfTokens(uri, first, head.at(-1) ?? first)
        : spanOfTokens(uri, name, name),
    children: first.text === "case" ? openingsIn(uri, outline, item) : [],
  };
}

function wordsOf(outline: Outline, item: OutlineItem): string {
  const [first, last] = [headOf(outline, item)[0], headOf(outline, item).at(-1)];
  if (first === undefined || last === undefined) return "";
  return outline.text.slice(first.start, last.end).replace(/\s+/g, " ");
}

function openingsIn(uri: string, outline: Outline, item: OutlineItem): readonly TextSymbol[] {
  return (item.block?.items ?? []).flatMap((inner): readonly TextSymbol[] => {
    const [key, ...rest] = headOf(outline, inner);
    if (key?.text !== "opening" && key?.text !== "openings") return openingsIn(uri, outline, inner);
    const names = rest.filter((token) => token.kind === "name");
    const [first, last] = [names[0], names.at(-1)];
    if (first === undefined || last === undefined) return [];
    return [
      {
        name: outline.text.slice(first.start, last.end).replace(/\s+/g, " "),
        detail: key.text,
        kind: "opening",
        span: spanOfItem(uri, outline, inner),
        nameSpan: spanOfTokens(uri, first, last),
        children: [],
      },
    ];
  });
}

const kinds: Readonly<Record<string, SymbolKind>> = {
  project: "project",
  use: "use",
  let: "length",
  sheet: "stock",
  board: "stock",
  edging: "stock",
  offcut: "stock",
  slides: "hardware",
  hinges: "hardware",
  screws: "hardware",
  saw: "shop",
  grooves: "shop",
  pockets: "shop",
  place: "shop",
  times: "shop",
  lift: "shop",
  case: "case",
  opening: "opening",
  box: "fill",
  front: "fill",
  door: "fill",
  false: "fill",
  shelf: "fill",
  part: "part",
  cut: "shop",
};
