import type {
  Allow,
  Block,
  BoardBlock,
  Count,
  EdgingBlock,
  GroovesBlock,
  HingesBlock,
  LengthSeries,
  LiftStatement,
  NamedBlock,
  OffcutStatement,
  OpeningBlock,
  PartBlock,
  PlaceBlock,
  PocketsBlock,
  SawBlock,
  ScrewsBlock,
  SheetBlock,
  SlidesBlock,
  TimesBlock,
} from "../core/design.ts";
import { behind, spanFrom, spanUpTo, type Word } from "../core/span.ts";
import type { BlockWord } from "../core/vocabulary.ts";
import type * as ast from "../generated/ast.ts";
import type { Bag } from "./bag.ts";
import {
  angle,
  bagOf,
  choice,
  count,
  flag,
  given,
  givenList,
  givenSize,
  lowerAllow,
  only,
  percent,
  price,
  stockUse,
  stockUses,
  unquote,
  weight,
} from "./bag.ts";
import { lowerExpr, lowerMeasure } from "./lower-expr.ts";
import type { Reader } from "./reader.ts";
import { maybe, spanOf, spanOfField, wordOf } from "./reader.ts";

/** A block with its head and the place where a property can be added. */
export function blockOf(reader: Reader, node: ast.NamedBlock | ast.FillBlock | ast.PartBlock | ast.ShopBlock): Block {
  const span = spanOf(reader, node);
  const open = spanOfField(reader, node, "open");
  const allows = node.properties.flatMap((property): Allow[] => {
    const allow = property.$type === "Allow" ? lowerAllow(reader, property, span) : undefined;
    return allow === undefined ? [] : [allow];
  });
  return { span, head: open.start < span.start ? span : spanUpTo(span, open), open: behind(open), allows };
}

/** Nothing can be made of a block that has no name yet. */
function named(reader: Reader, node: ast.NamedBlock | ast.PartBlock): NamedBlock | undefined {
  const name = wordOf(reader, node, "name", maybe(node.name));
  const like = node.$type === "NamedBlock" ? wordOf(reader, node, "like", node.like) : undefined;
  return name === undefined ? undefined : { ...blockOf(reader, node), name, like };
}

function lowered<T>(
  reader: Reader,
  node: ast.NamedBlock | ast.PartBlock,
  word: BlockWord,
  make: (base: NamedBlock, bag: Bag) => T,
): readonly T[] {
  const base = named(reader, node);
  return base === undefined ? [] : [make(base, bagOf(reader, word, node.properties))];
}

export function lowerSheet(reader: Reader, node: ast.NamedBlock): readonly SheetBlock[] {
  return lowered(reader, node, "sheet", (base, bag) => ({
    ...base,
    kind: "sheet",
    called: given(bag, "called"),
    measures: givenList(bag, "measures"),
    size: givenSize(bag, "size"),
    costs: price(bag, "costs"),
    have: count(bag, "have"),
    grain: choice(bag, "grain"),
    faces: count(bag, "faces"),
    density: count(bag, "density"),
    core: chosenWord(bag, "core"),
  }));
}

export function lowerBoard(reader: Reader, node: ast.NamedBlock): readonly BoardBlock[] {
  return lowered(reader, node, "board", (base, bag) => ({
    ...base,
    kind: "board",
    called: given(bag, "called"),
    thick: givenList(bag, "thick"),
    wide: givenList(bag, "wide"),
    long: givenList(bag, "long"),
    species: speciesOf(bag),
    moisture: percent(bag, "moisture"),
    sawn: choice(bag, "sawn"),
    costs: price(bag, "costs"),
    have: count(bag, "have"),
    rough: flag(bag, "rough"),
    density: count(bag, "density"),
  }));
}

function speciesOf(bag: Bag): Word | undefined {
  const found = only(bag, "SpeciesProperty", "species");
  if (found === undefined || found.node.words.length === 0) return undefined;
  const first = spanOfField(bag.reader, found.node, "words", 0);
  const last = spanOfField(bag.reader, found.node, "words", found.node.words.length - 1);
  return {
    text: found.node.words.join(" "),
    span: spanFrom(first, last),
  };
}

function chosenWord(bag: Bag, key: string): Word | undefined {
  const found = choice<string>(bag, key);
  return found === undefined ? undefined : { text: found.value, span: found.span };
}

export function lowerEdging(reader: Reader, node: ast.NamedBlock): readonly EdgingBlock[] {
  return lowered(reader, node, "edging", (base, bag) => ({
    ...base,
    kind: "edging",
    thick: given(bag, "thick"),
    wide: given(bag, "wide"),
    long: given(bag, "long"),
    costs: price(bag, "costs"),
  }));
}

export function lowerSlides(reader: Reader, node: ast.NamedBlock): readonly SlidesBlock[] {
  return lowered(reader, node, "slides", (base, bag) => ({
    ...base,
    kind: "slides",
    mount: choice(bag, "mount"),
    extension: choice(bag, "extension"),
    lengths: seriesOf(bag),
    clearance: given(bag, "clearance"),
    above: given(bag, "above"),
    below: given(bag, "below"),
    behind: given(bag, "behind"),
    high: given(bag, "high"),
    travel: given(bag, "travel"),
    longer: given(bag, "longer"),
    inside: given(bag, "inside"),
    thickest: given(bag, "thickest"),
    carries: weight(bag, "carries"),
    screws: screwsOf(bag),
    costs: price(bag, "costs"),
  }));
}

function seriesOf(bag: Bag): LengthSeries | undefined {
  const found = only(bag, "LengthsProperty", "lengths");
  if (found === undefined || maybe(found.node.first) === undefined) return undefined;
  const span = spanOf(bag.reader, found.node);
  const lower = (node: ast.Expression | undefined) =>
    node === undefined ? undefined : lowerExpr(bag.reader, node, span);
  return {
    key: found.key,
    first: lowerExpr(bag.reader, found.node.first, span),
    last: lower(found.node.last),
    step: lower(found.node.step),
    more: found.node.more.map((more) => lowerExpr(bag.reader, more, span)),
    span,
  };
}

export function screwsOf(bag: Bag): Word | undefined {
  const found = only(bag, "ScrewsProperty", "screws");
  return found === undefined ? undefined : wordOf(bag.reader, found.node, "name", maybe(found.node.name));
}

export function lowerHinges(reader: Reader, node: ast.NamedBlock): readonly HingesBlock[] {
  return lowered(reader, node, "hinges", (base, bag) => ({
    ...base,
    kind: "hinges",
    cup: given(bag, "cup"),
    overlay: given(bag, "overlay"),
    bore: given(bag, "bore"),
    deep: given(bag, "deep"),
    inset: flag(bag, "inset"),
    opens: angle(bag, "opens"),
    costs: price(bag, "costs"),
  }));
}

export function lowerScrews(reader: Reader, node: ast.NamedBlock): readonly ScrewsBlock[] {
  return lowered(reader, node, "screws", (base, bag) => {
    const gauge = only(bag, "GaugeProperty", "gauge");
    return {
      ...base,
      kind: "screws",
      gauge: gauge === undefined ? undefined : wordOf(reader, gauge.node, "gauge", maybe(gauge.node.gauge)),
      thick: given(bag, "thick"),
      long: given(bag, "long"),
      costs: price(bag, "costs"),
    };
  });
}

export function lowerStandingOpening(reader: Reader, node: ast.NamedBlock): readonly OpeningBlock[] {
  return lowered(reader, node, "opening", (base, bag) => ({
    ...base,
    kind: "opening",
    wide: givenList(bag, "wide"),
    high: givenList(bag, "high"),
    deep: givenList(bag, "deep"),
    beside: givenList(bag, "beside"),
  }));
}

export function lowerPart(reader: Reader, node: ast.PartBlock): readonly PartBlock[] {
  return lowered(reader, node, "part", (base, bag) => ({
    ...base,
    kind: "part",
    from: stockUse(bag, "from"),
    long: given(bag, "long"),
    wide: given(bag, "wide"),
    thick: given(bag, "thick"),
    count: count(bag, "count"),
    grain: choice(bag, "grain"),
    edging: stockUses(bag, "edging"),
  }));
}

export function lowerSaw(reader: Reader, node: ast.ShopBlock): SawBlock {
  const bag = bagOf(reader, "saw", node.properties);
  const table = (only(bag, "TableProperty", "table")?.node.sides ?? []).flatMap((side) => {
    const reach = lowerMeasure(reader, maybe(side.reach));
    return reach === undefined ? [] : [{ side: side.side, reach }];
  });
  return {
    ...blockOf(reader, node),
    kind: "saw",
    kerf: given(bag, "kerf"),
    trim: given(bag, "trim"),
    table,
    jointer: given(bag, "jointer"),
    planer: given(bag, "planer"),
  };
}

export function lowerGrooves(reader: Reader, node: ast.ShopBlock): GroovesBlock {
  const bag = bagOf(reader, "grooves", node.properties);
  return { ...blockOf(reader, node), kind: "grooves", wide: given(bag, "wide"), deep: given(bag, "deep") };
}

export function lowerPockets(reader: Reader, node: ast.ShopBlock): PocketsBlock {
  const bag = bagOf(reader, "pockets", node.properties);
  return {
    ...blockOf(reader, node),
    kind: "pockets",
    apart: given(bag, "apart"),
    edge: given(bag, "edge"),
    thinnest: given(bag, "thinnest"),
    narrowest: given(bag, "narrowest"),
    screws: screwsOf(bag),
  };
}

export function lowerPlace(reader: Reader, node: ast.ShopBlock): PlaceBlock {
  const bag = bagOf(reader, "place", node.properties);
  return {
    ...blockOf(reader, node),
    kind: "place",
    shop: percent(bag, "shop"),
    driest: percent(bag, "driest"),
    dampest: percent(bag, "dampest"),
  };
}

export function lowerTimes(reader: Reader, node: ast.ShopBlock): TimesBlock {
  const bag = bagOf(reader, "times", node.properties);
  const minutes = (key: string): Count | undefined => {
    const found = only(bag, "TimeProperty", key);
    if (found === undefined || maybe(found.node.amount) === undefined) return undefined;
    return { key: found.key, value: lowerExpr(reader, found.node.amount, spanOf(reader, found.node)) };
  };
  return {
    ...blockOf(reader, node),
    kind: "times",
    breakdown: minutes("breakdown"),
    setting: minutes("setting"),
    sawing: minutes("sawing"),
  };
}

export function lowerLift(reader: Reader, node: ast.Lift): readonly LiftStatement[] {
  if (maybe(node.weight) === undefined) return [];
  const span = spanOf(reader, node);
  const key = { text: "lift", span: spanOfField(reader, node, "word") };
  return [
    {
      amount: { key, amount: lowerExpr(reader, node.weight, span), unit: maybe(node.unit) ?? "lb" },
      reach: lowerMeasure(reader, node.reach),
      low: lowerMeasure(reader, node.low),
      high: lowerMeasure(reader, node.high),
      span,
    },
  ];
}

export function lowerOffcut(reader: Reader, node: ast.Offcut | ast.CutOffcut): readonly OffcutStatement[] {
  const stock = wordOf(reader, node, "stock", maybe(node.stock));
  if (stock === undefined) return [];
  return [
    {
      stock,
      first: lowerMeasure(reader, maybe(node.first)),
      second: lowerMeasure(reader, maybe(node.second)),
      from: node.$type === "Offcut" ? wordOf(reader, node, "job", unquote(maybe(node.job))) : undefined,
      span: spanOf(reader, node),
    },
  ];
}
