import type {
  Allow,
  Choice,
  Count,
  EdgedMeasure,
  Fitting,
  Given,
  GivenList,
  GivenSize,
  Joint,
  Percent,
  Price,
  StockUse,
  Weight,
} from "../core/design.ts";
import type { Span, Word } from "../core/span.ts";
import type { BlockWord } from "../core/vocabulary.ts";
import { article, belongsIn, propertiesOf } from "../core/vocabulary.ts";
import type * as ast from "../generated/ast.ts";
import { lowerExpr, lowerMeasure } from "./lower-expr.ts";
import type { Reader } from "./reader.ts";
import { maybe, report, spanOf, spanOfField, wordOf, wordsOf } from "./reader.ts";

type KeyedProperty = Exclude<ast.Property, ast.Allow | ast.LayoutItem>;

/** The properties of one block by their first word, with those in the wrong place reported and set aside. */
export interface Bag {
  readonly reader: Reader;
  readonly block: BlockWord;
  readonly byKey: ReadonlyMap<string, readonly KeyedProperty[]>;
}

/** Properties that may well stand several times in one block. */
const repeatable = new Set(["edging", "mid", "corner", "wall"]);

export function bagOf(reader: Reader, block: BlockWord, properties: readonly ast.Property[]): Bag {
  const byKey = new Map<string, KeyedProperty[]>();
  for (const property of properties) {
    if (isUnkeyed(property)) {
      if (property.$type !== "Allow" && !laidOut.has(block)) reportLayout(reader, block, property);
      continue;
    }
    const key = keyOf(property);
    if (key === undefined) continue;
    if (!propertiesOf(block).has(key)) {
      reportMisplaced(reader, block, property, key);
      continue;
    }
    const before = byKey.get(key) ?? [];
    if (0 < before.length && !repeatable.has(key)) {
      reportTwice(reader, { text: key, span: spanOfField(reader, property, "key") }, spanOf(reader, before[0]!));
    }
    byKey.set(key, [...before, property]);
  }
  return { reader, block, byKey };
}

/** Blocks in which openings are laid out. */
const laidOut = new Set<BlockWord>(["case", "rear", "face frame"]);

function reportLayout(reader: Reader, block: BlockWord, item: ast.LayoutItem): void {
  const field = item.$type === "Split" ? "direction" : item.$type === "Member" ? "kind" : "word";
  report(reader, {
    code: "statement/not-here",
    severity: "error",
    span: spanOfField(reader, item, field),
    message: `${article(block)} is not laid out`,
    reason: "Openings and what stands between them are laid out in a case, its face frame or its rear.",
    remedy: "Move it there, or take it out.",
  });
}

function isUnkeyed(property: ast.Property): property is ast.Allow | ast.LayoutItem {
  return ["Allow", "Split", "Member", "OpeningItem", "OpeningsItem"].includes(property.$type);
}

function keyOf(property: KeyedProperty): string | undefined {
  return maybe(property.key as string);
}

function reportMisplaced(reader: Reader, block: BlockWord, property: KeyedProperty, key: string): void {
  const homes = belongsIn(key);
  const span = spanOfField(reader, property, "key");
  // One corner, several corners: a word that is said of another block with an s more or less.
  const meant = [`${key}s`, key.replace(/s$/, "")].find((word) => word !== key && propertiesOf(block).has(word));
  report(reader, {
    code: "statement/not-here",
    severity: "error",
    span,
    message: `${article(block)} has no "${key}"`,
    reason: `It is said of: ${homes.join(", ")}.`,
    ...(meant === undefined ? {} : { fix: { title: `Write ${meant}`, edits: [{ span, text: meant }], safe: false } }),
    remedy: `${meant === undefined ? "" : `Write ${meant} if that is meant. `}Take it out, or move it to the block that it belongs to. ${article(block)} takes: ${[...propertiesOf(block).keys()].join(", ")}.`,
  });
}

/** What is said twice where it can be said once. */
export function reportTwice(reader: Reader, { text, span }: Word, first: Span): void {
  report(reader, {
    code: "statement/said-twice",
    severity: "error",
    span,
    message: `"${text}" is said twice here`,
    reason: "Only the first counts, and whoever reads the file may go by the second.",
    remedy: "Keep the one that is right.",
    related: [{ span: first, message: "said here first" }],
  });
}

function find<T extends KeyedProperty["$type"]>(
  bag: Bag,
  type: T,
  key: string,
): Extract<KeyedProperty, { $type: T }> | undefined {
  const first = bag.byKey.get(key)?.find((property) => property.$type === type);
  return first as Extract<KeyedProperty, { $type: T }> | undefined;
}

function keyWord(bag: Bag, property: KeyedProperty): Word {
  return { text: keyOf(property) ?? "", span: spanOfField(bag.reader, property, "key") };
}

/** The property's one measure; further ones are reported, since only some sizes take several readings. */
export function given(bag: Bag, key: string): Given | undefined {
  const list = givenList(bag, key);
  const first = list?.values[0];
  if (list === undefined || first === undefined) return undefined;
  const second = list.values[1];
  if (second?.measure.value.kind === "name" && second.measure.value.path.length === 1) {
    reportUnknownWord(bag, second.measure.span, second.measure.text);
  } else if (second !== undefined) {
    report(bag.reader, {
      code: "statement/one-size",
      severity: "error",
      span: second.measure.span,
      message: `"${key}" takes one size here`,
      reason: "Several readings are taken of openings as they stand; a thing that is still to be made has one size.",
      remedy: "Keep the size that it should get.",
    });
  }
  return { key: list.key, measure: first.measure };
}

/** A word behind a size that takes no second one is a property misspelt, or one that there is not. */
function reportUnknownWord({ reader, block }: Bag, span: Span, text: string): void {
  report(reader, {
    code: "statement/unknown-word",
    severity: "error",
    span,
    message: `${article(block)} has no "${text}"`,
    reason: "No block has a property of this name.",
    remedy: `Check the spelling. ${article(block)} takes: ${[...propertiesOf(block).keys()].join(", ")}.`,
  });
}

export function givenList(bag: Bag, key: string): GivenList | undefined {
  const property = find(bag, "MeasureProperty", key);
  if (property === undefined) return undefined;
  const values = property.values.flatMap((value): EdgedMeasure[] => {
    const measure = lowerMeasure(bag.reader, maybe(value.measure));
    const edge = wordOf(bag.reader, value, "edge", value.edge);
    if (edge !== undefined && !(edgesOf[key] ?? sides).includes(edge.text)) reportEdge(bag.reader, key, edge);
    return measure === undefined ? [] : [{ measure, edge }];
  });
  return values.length === 0 ? undefined : { key: keyWord(bag, property), values };
}

/** Where a reading was taken can be said behind it. */
const sides: readonly string[] = ["left", "right", "top", "bottom", "front", "back"];

/** What can stand behind the measures of a property that are kept apart by it. */
const edgesOf: Readonly<Record<string, readonly string[]>> = {
  overlay: ["left", "right", "top", "bottom"],
  beside: ["left", "right"],
  gap: ["round", "between"],
};

function reportEdge(reader: Reader, key: string, { span, text }: Word): void {
  const known = (edgesOf[key] ?? sides).join(", ");
  report(reader, {
    code: "statement/not-here",
    severity: "error",
    span,
    message: `"${key}" has no "${text}"`,
    reason: `It is said of: ${known}.`,
    remedy: `Write one of ${known}, or take it out.`,
  });
}

export function givenSize(bag: Bag, key: string): GivenSize | undefined {
  const property = find(bag, "SizeProperty", key);
  const first = lowerMeasure(bag.reader, maybe(property?.first));
  const second = lowerMeasure(bag.reader, maybe(property?.second));
  if (property === undefined || first === undefined || second === undefined) return undefined;
  return { key: keyWord(bag, property), first, second };
}

export function flag(bag: Bag, key: string): Word | undefined {
  const property = find(bag, "FlagProperty", key);
  return property === undefined ? undefined : keyWord(bag, property);
}

export function choice<T extends string>(bag: Bag, key: string): Choice<T> | undefined {
  const property = find(bag, "ChoiceProperty", key);
  if (property === undefined || maybe(property.choice) === undefined) return undefined;
  return {
    key: keyWord(bag, property),
    value: property.choice as T,
    span: spanOfField(bag.reader, property, "choice"),
  };
}

export function count(bag: Bag, key: string): Count | undefined {
  const property = find(bag, "CountProperty", key);
  if (property === undefined || maybe(property.count) === undefined) return undefined;
  return { key: keyWord(bag, property), value: lowerExpr(bag.reader, property.count, spanOf(bag.reader, property)) };
}

/** A number of degrees. */
export function angle(bag: Bag, key: string): Count | undefined {
  const property = find(bag, "AngleProperty", key);
  if (property === undefined || maybe(property.amount) === undefined) return undefined;
  return { key: keyWord(bag, property), value: lowerExpr(bag.reader, property.amount, spanOf(bag.reader, property)) };
}

export function weight(bag: Bag, key: string): Weight | undefined {
  const property = find(bag, "WeightProperty", key);
  if (property === undefined || maybe(property.amount) === undefined) return undefined;
  const amount = lowerExpr(bag.reader, property.amount, spanOf(bag.reader, property));
  return { key: keyWord(bag, property), amount, unit: maybe(property.unit) ?? "lb" };
}

export function percent(bag: Bag, key: string): Percent | undefined {
  const property = find(bag, "PercentProperty", key);
  if (property === undefined || maybe(property.amount) === undefined) return undefined;
  return { key: keyWord(bag, property), amount: lowerExpr(bag.reader, property.amount, spanOf(bag.reader, property)) };
}

export function price(bag: Bag, key: string): Price | undefined {
  const property = find(bag, "PriceProperty", key);
  if (property === undefined || maybe(property.amount) === undefined) return undefined;
  const per = property.per === "boardfoot" ? "board foot" : property.per;
  return {
    key: keyWord(bag, property),
    amount: lowerExpr(bag.reader, property.amount, spanOf(bag.reader, property)),
    per,
  };
}

export function stockUse(bag: Bag, key: string): StockUse | undefined {
  return stockUses(bag, key)[0];
}

export function stockUses(bag: Bag, key: string): readonly StockUse[] {
  const properties = (bag.byKey.get(key) ?? []).filter((property) => property.$type === "StockProperty");
  return properties.flatMap((property): StockUse[] => {
    const stocks = wordsOf(bag.reader, property, "stocks", property.stocks);
    const fittings = property.fittings.flatMap((fitting) => lowerFitting(bag.reader, fitting));
    return stocks.length === 0 ? [] : [{ key: keyWord(bag, property), stocks, fittings }];
  });
}

function lowerFitting(reader: Reader, node: ast.Fitting): readonly Fitting[] {
  const word = fittingWord(node);
  if (word === undefined) return [];
  return [
    {
      word,
      depth: lowerMeasure(reader, node.depth),
      up: lowerMeasure(reader, node.up),
      edges: wordsOf(reader, node, "edges", node.edges),
      span: spanOf(reader, node),
    },
  ];
}

function fittingWord(node: ast.Fitting): Fitting["word"] | undefined {
  if (node.word === "in") return maybe(node.housing);
  if (node.word === "from") return "from behind";
  return node.word === "flush" ? "flush back" : maybe(node.word);
}

const joints: Record<string, Joint["kind"]> = { pocketscrews: "pocket screws" };

export function joint(bag: Bag): Joint | undefined {
  const property = find(bag, "JointProperty", "joint");
  const said = maybe(property?.joint);
  if (property === undefined || said === undefined) return undefined;
  return {
    key: keyWord(bag, property),
    kind: joints[said] ?? (said as Joint["kind"]),
    depth: lowerMeasure(bag.reader, property.depth),
    span: spanOfField(bag.reader, property, "joint"),
  };
}

/** A property of a shape that only one block has. */
export function only<T extends KeyedProperty["$type"]>(
  bag: Bag,
  type: T,
  key: string,
): { readonly node: Extract<KeyedProperty, { $type: T }>; readonly key: Word } | undefined {
  const node = find(bag, type, key);
  return node === undefined ? undefined : { node, key: keyWord(bag, node) };
}

export function allOf<T extends KeyedProperty["$type"]>(
  bag: Bag,
  type: T,
  key: string,
): readonly { readonly node: Extract<KeyedProperty, { $type: T }>; readonly key: Word }[] {
  const nodes = (bag.byKey.get(key) ?? []).filter((property) => property.$type === type);
  return nodes.map((node) => ({ node: node as Extract<KeyedProperty, { $type: T }>, key: keyWord(bag, node) }));
}

export function lowerAllow(reader: Reader, node: ast.Allow, scope: Allow["scope"]): Allow | undefined {
  const code = wordOf(reader, node, "code", maybe(node.code));
  if (code === undefined) return undefined;
  const reason = wordOf(reader, node, "reason", unquote(node.reason));
  if (reason === undefined) {
    report(reader, {
      code: "statement/allow-without-reason",
      severity: "warning",
      span: spanOf(reader, node),
      message: `"${code.text}" is allowed without a reason`,
      reason: "Whoever opens the file next year must see why it was let pass.",
      remedy: 'Write the reason behind it in quotation marks: allow code "reason".',
    });
  }
  return { code, reason, scope, span: spanOf(reader, node) };
}

/** The text inside quotation marks, closed or not. */
export function unquote(text: string | undefined): string | undefined {
  if (text === undefined) return undefined;
  return text.replace(/^"/, "").replace(/"$/, "");
}
