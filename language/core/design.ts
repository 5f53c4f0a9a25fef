import type { Expr, Measure } from "./expr.ts";
import type { Finding } from "./finding.ts";
import type { Units } from "./length.ts";
import type { Span, Word } from "./span.ts";

/**
 * A design is what build files say, as plain data: words, measures and their places, nothing looked up and nothing
 * worked out. Any field may be missing, since half a file gives half a design.
 */
export interface Design {
  readonly uri: string;
  readonly project: Word | undefined;
  readonly units: Units;
  /** The `read to` step, if one is written. */
  readonly reading: Measure | undefined;
  readonly sheets: readonly SheetBlock[];
  readonly boards: readonly BoardBlock[];
  readonly edgings: readonly EdgingBlock[];
  readonly offcuts: readonly OffcutStatement[];
  /** Offcuts that the plan of this very job leaves over: they lie in the rack once it is cut, and are not there for its own parts. */
  readonly leavings: readonly OffcutStatement[];
  readonly slides: readonly SlidesBlock[];
  readonly hinges: readonly HingesBlock[];
  readonly screws: readonly ScrewsBlock[];
  readonly lets: readonly LetStatement[];
  readonly shop: ShopBlocks;
  readonly cases: readonly CaseBlock[];
  readonly openings: readonly OpeningBlock[];
  readonly boxes: readonly BoxBlock[];
  readonly fronts: readonly FrontBlock[];
  readonly shelves: readonly ShelfBlock[];
  readonly parts: readonly PartBlock[];
  readonly cuts: readonly CutRecord[];
  readonly brokenDown: readonly BrokenDown[];
  readonly usedOffcuts: readonly OffcutStatement[];
  readonly cutBlocks: readonly CutBlock[];
  readonly allows: readonly Allow[];
  readonly uses: readonly UseStatement[];
  /** What was wrong with the text itself. */
  readonly findings: readonly Finding[];
}

/** Fields that any block has. `open` is the place just behind its opening bracket, where a property can be written. */
export interface Block {
  readonly span: Span;
  readonly head: Span;
  readonly open: Span;
  readonly allows: readonly Allow[];
}

export interface NamedBlock extends Block {
  readonly name: Word;
  /** The block of its kind that everything it does not say itself is taken over from. */
  readonly like: Word | undefined;
}

/** A property with one measure: the measure and the property's first word. */
export interface Given {
  readonly key: Word;
  readonly measure: Measure;
}

/** Several readings of one size, or one measure for each edge named. */
export interface GivenList {
  readonly key: Word;
  readonly values: readonly EdgedMeasure[];
}

export interface EdgedMeasure {
  readonly measure: Measure;
  readonly edge: Word | undefined;
}

export interface GivenSize {
  readonly key: Word;
  readonly first: Measure;
  readonly second: Measure;
}

/** A choice among fixed words. */
export interface Choice<T extends string> {
  readonly key: Word;
  readonly value: T;
  readonly span: Span;
}

export interface Count {
  readonly key: Word;
  readonly value: Expr;
}

export interface Price {
  readonly key: Word;
  readonly amount: Expr;
  /** `board foot`, `foot`, `metre`, `piece`, `sheet`, `pair`, or a number of pieces; missing: the natural one. */
  readonly per: string | undefined;
}

export interface Weight {
  readonly key: Word;
  readonly amount: Expr;
  readonly unit: "lb" | "kg";
}

export interface Percent {
  readonly key: Word;
  readonly amount: Expr;
}

/** Stocks in order of preference, and how the part made of them is held. */
export interface StockUse {
  readonly key: Word;
  readonly stocks: readonly Word[];
  readonly fittings: readonly Fitting[];
}

export interface Fitting {
  readonly word:
    | "applied"
    | "under"
    | "solid"
    | "centred"
    | "between"
    | "flush back"
    | "from behind"
    | "rabbet"
    | "groove"
    | "dado"
    | "on";
  readonly depth: Measure | undefined;
  readonly up: Measure | undefined;
  /** For `on`: the edges named; none means all. */
  readonly edges: readonly Word[];
  readonly span: Span;
}

export interface LetStatement {
  readonly name: Word;
  readonly value: Measure | undefined;
  readonly span: Span;
}

export interface UseStatement {
  readonly path: Word;
  readonly span: Span;
}

export interface Allow {
  readonly code: Word;
  readonly reason: Word | undefined;
  /** What it silences: the block it stands in, or the whole file. */
  readonly scope: Span | undefined;
  readonly span: Span;
}

export interface SheetBlock extends NamedBlock {
  readonly kind: "sheet";
  readonly called: Given | undefined;
  readonly measures: GivenList | undefined;
  readonly size: GivenSize | undefined;
  readonly costs: Price | undefined;
  readonly have: Count | undefined;
  readonly grain: Choice<"long" | "across" | "none"> | undefined;
  readonly faces: Count | undefined;
  readonly density: Count | undefined;
  readonly core: Word | undefined;
}

export interface BoardBlock extends NamedBlock {
  readonly kind: "board";
  readonly called: Given | undefined;
  readonly thick: GivenList | undefined;
  readonly wide: GivenList | undefined;
  readonly long: GivenList | undefined;
  readonly species: Word | undefined;
  readonly moisture: Percent | undefined;
  readonly sawn: Choice<"flat" | "quarter"> | undefined;
  readonly costs: Price | undefined;
  readonly have: Count | undefined;
  readonly rough: Word | undefined;
  readonly density: Count | undefined;
}

export interface EdgingBlock extends NamedBlock {
  readonly kind: "edging";
  readonly thick: Given | undefined;
  readonly wide: Given | undefined;
  readonly long: Given | undefined;
  readonly costs: Price | undefined;
}

export interface OffcutStatement {
  readonly stock: Word;
  readonly first: Measure | undefined;
  readonly second: Measure | undefined;
  /** The title of the job whose plan leaves it over; missing where it simply lies in the rack. */
  readonly from?: Word | undefined;
  readonly span: Span;
}

export type Mount = "side" | "under" | "centre";
export type Extension = "standard" | "full" | "over";

export interface SlidesBlock extends NamedBlock {
  readonly kind: "slides";
  readonly mount: Choice<Mount> | undefined;
  readonly extension: Choice<Extension> | undefined;
  readonly lengths: LengthSeries | undefined;
  readonly clearance: Given | undefined;
  readonly above: Given | undefined;
  readonly below: Given | undefined;
  readonly behind: Given | undefined;
  readonly high: Given | undefined;
  readonly travel: Given | undefined;
  readonly longer: Given | undefined;
  readonly inside: Given | undefined;
  readonly thickest: Given | undefined;
  readonly carries: Weight | undefined;
  readonly screws: Word | undefined;
  readonly costs: Price | undefined;
}

/** `10 to 28 by 2`, or a list. */
export interface LengthSeries {
  readonly key: Word;
  readonly first: Expr;
  readonly last: Expr | undefined;
  readonly step: Expr | undefined;
  readonly more: readonly Expr[];
  readonly span: Span;
}

export interface HingesBlock extends NamedBlock {
  readonly kind: "hinges";
  readonly cup: Given | undefined;
  readonly overlay: Given | undefined;
  readonly bore: Given | undefined;
  readonly deep: Given | undefined;
  readonly inset: Word | undefined;
  /** In degrees. */
  readonly opens: Count | undefined;
  readonly costs: Price | undefined;
}

export interface ScrewsBlock extends NamedBlock {
  readonly kind: "screws";
  readonly gauge: Word | undefined;
  readonly thick: Given | undefined;
  readonly long: Given | undefined;
  readonly costs: Price | undefined;
}

export interface ShopBlocks {
  readonly saw: readonly SawBlock[];
  readonly grooves: readonly GroovesBlock[];
  readonly pockets: readonly PocketsBlock[];
  readonly places: readonly PlaceBlock[];
  readonly times: readonly TimesBlock[];
  readonly lifts: readonly LiftStatement[];
}

export interface SawBlock extends Block {
  readonly kind: "saw";
  readonly kerf: Given | undefined;
  readonly trim: Given | undefined;
  readonly table: readonly { readonly side: string; readonly reach: Measure }[];
  readonly jointer: Given | undefined;
  readonly planer: Given | undefined;
}

export interface GroovesBlock extends Block {
  readonly kind: "grooves";
  readonly wide: Given | undefined;
  readonly deep: Given | undefined;
}

export interface PocketsBlock extends Block {
  readonly kind: "pockets";
  readonly apart: Given | undefined;
  readonly edge: Given | undefined;
  readonly thinnest: Given | undefined;
  readonly narrowest: Given | undefined;
  readonly screws: Word | undefined;
}

export interface PlaceBlock extends Block {
  readonly kind: "place";
  readonly shop: Percent | undefined;
  readonly driest: Percent | undefined;
  readonly dampest: Percent | undefined;
}

/** Minutes that the maker says each kind of work takes. */
export interface TimesBlock extends Block {
  readonly kind: "times";
  readonly breakdown: Count | undefined;
  readonly setting: Count | undefined;
  readonly sawing: Count | undefined;
}

export interface LiftStatement {
  readonly amount: Weight;
  readonly reach: Measure | undefined;
  readonly low: Measure | undefined;
  readonly high: Measure | undefined;
  readonly span: Span;
}

/** What a part of a layout takes: a size, the rest, an equal share, or nothing said. */
export type Share =
  | { readonly kind: "size"; readonly measure: Measure; readonly span: Span }
  | { readonly kind: "rest"; readonly span: Span }
  | { readonly kind: "equal"; readonly span: Span };

export type LayoutItem = SplitItem | MemberItem | OpeningItem;

export interface SplitItem {
  readonly kind: "split";
  readonly direction: "across" | "down";
  readonly share: Share | undefined;
  readonly items: readonly LayoutItem[];
  readonly word: Word;
  readonly span: Span;
}

export interface MemberItem {
  readonly kind: "rail" | "stile" | "partition";
  readonly width: Measure | undefined;
  readonly word: Word;
}

export interface OpeningItem {
  readonly kind: "opening";
  readonly name: Word;
  readonly share: Share | undefined;
  readonly deep: GivenList | undefined;
  readonly span: Span;
}

export interface CaseBlock extends NamedBlock {
  readonly kind: "case";
  readonly wide: GivenList | undefined;
  readonly high: GivenList | undefined;
  readonly deep: GivenList | undefined;
  readonly panels: StockUse | undefined;
  readonly back: StockUse | undefined;
  readonly bottom: StockUse | undefined;
  readonly partitions: StockUse | undefined;
  readonly packing: StockUse | undefined;
  readonly edging: readonly StockUse[];
  readonly top: TopUse | undefined;
  readonly kick: { readonly key: Word; readonly high: Measure; readonly deep: Measure } | undefined;
  readonly nailers: { readonly key: Word; readonly wide: Measure; readonly from: Word | undefined } | undefined;
  readonly joint: Joint | undefined;
  readonly frame: FaceFrame | undefined;
  readonly layout: readonly LayoutItem[];
  readonly rear:
    | { readonly frame: FaceFrame | undefined; readonly layout: readonly LayoutItem[]; readonly span: Span }
    | undefined;
  readonly freestanding: Word | undefined;
  /** The cases that it meets at inside corners. */
  readonly meets: readonly { readonly side: "left" | "right"; readonly with: Word; readonly key: Word }[];
  readonly onWall: Word | undefined;
  readonly walls: readonly WallUse[];
}

/** A wall beside a case: how far from its outside, what stands out of it, how far past the face it runs. */
export interface WallUse {
  readonly key: Word;
  readonly side: "left" | "right";
  readonly away: Measure;
  readonly trim: Measure | undefined;
  readonly past: Measure | undefined;
}

export interface TopUse {
  readonly key: Word;
  readonly choice: "panel" | "stretchers" | "none";
  readonly stock: Word | undefined;
  readonly wide: Measure | undefined;
}

export interface Joint {
  readonly key: Word;
  readonly kind: "pocket screws" | "tenon" | "dowels" | "tongue" | "mitred" | "glue" | "dado" | "screws";
  readonly depth: Measure | undefined;
  readonly span: Span;
}

export interface FaceFrame {
  readonly word: Word;
  readonly stock: Word;
  readonly stiles: Given | undefined;
  readonly rails: Given | undefined;
  readonly joint: Joint | undefined;
  readonly layout: readonly LayoutItem[];
  readonly span: Span;
}

/** An opening that stands alone, as measured on site. */
export interface OpeningBlock extends NamedBlock {
  readonly kind: "opening";
  readonly wide: GivenList | undefined;
  readonly high: GivenList | undefined;
  readonly deep: GivenList | undefined;
  readonly beside: GivenList | undefined;
}

export interface FillBlock extends Block {
  /** The openings it fills, ranges spelled out; `text` of each is the opening's name. */
  readonly openings: readonly Word[];
  readonly like: Word | undefined;
}

export type CornerKind =
  | "pocket screws"
  | "screws"
  | "nails"
  | "rabbet"
  | "dado"
  | "dovetails"
  | "half-blind dovetails"
  | "fingers"
  | "mitred";

export interface Corners {
  readonly key: Word;
  readonly kind: CornerKind;
  readonly depth: Measure | undefined;
  /** Front and back run full width and the sides stand between them. */
  readonly endsOverSides: boolean;
  readonly span: Span;
}

export interface BoxBlock extends FillBlock {
  readonly kind: "box";
  readonly sides: StockUse | undefined;
  readonly front: StockUse | undefined;
  readonly back: StockUse | undefined;
  readonly bottom: StockUse | undefined;
  readonly packing: StockUse | undefined;
  readonly corners: Corners | undefined;
  readonly slides: { readonly key: Word; readonly name: Word; readonly length: Expr | undefined } | undefined;
  readonly wide: Given | undefined;
  readonly high: Given | undefined;
  readonly deep: Given | undefined;
  readonly at: Given | undefined;
  readonly lap: Given | undefined;
  readonly play: Given | undefined;
  readonly holds: Weight | undefined;
  readonly dividers: Dividers | undefined;
}

export interface Dividers {
  readonly key: Word;
  readonly count: Expr;
  readonly direction: "along" | "across";
  readonly from: Word | undefined;
}

export interface DoorFrame {
  readonly key: Word;
  readonly stock: Word;
  readonly width: Measure | undefined;
  readonly span: Span;
}

export interface FrontBlock extends FillBlock {
  readonly kind: "front" | "door" | "false front";
  /** One front over all its openings together. */
  readonly spanning: boolean;
  readonly overlay: GivenList | undefined;
  readonly fullOverlay: Word | undefined;
  readonly inset: Word | undefined;
  readonly reveal: Given | undefined;
  /** Each `round`, `between` or neither. */
  readonly gap: GivenList | undefined;
  readonly pair: Word | undefined;
  readonly slab: StockUse | undefined;
  readonly frame: DoorFrame | undefined;
  readonly panel: StockUse | undefined;
  readonly stiles: Given | undefined;
  readonly rails: GivenList | undefined;
  readonly joint: Joint | undefined;
  readonly mitred: Word | undefined;
  readonly float: Given | undefined;
  readonly mid: readonly MidMembers[];
  readonly edging: readonly StockUse[];
  readonly grain: Choice<"long" | "across" | "none"> | undefined;
  readonly matched: Word | undefined;
  readonly hinged: Choice<"left" | "right" | "top" | "bottom"> | undefined;
  readonly hinges: { readonly key: Word; readonly name: Word; readonly count: Expr | undefined } | undefined;
  /** In degrees. */
  readonly opens: Count | undefined;
  readonly pulls: Count | undefined;
  readonly wide: Given | undefined;
  readonly high: Given | undefined;
}

export interface MidMembers {
  readonly key: Word;
  readonly which: "rails" | "stiles";
  readonly count: Expr;
}

export interface ShelfBlock extends FillBlock {
  readonly kind: "shelf";
  readonly from: StockUse | undefined;
  readonly adjustable: Word | undefined;
  readonly fixed: Word | undefined;
  readonly holds: Weight | undefined;
  readonly count: Count | undefined;
  readonly edging: readonly StockUse[];
  readonly rows: Given | undefined;
  /** How high the upper face of each is above the floor of the opening. */
  readonly at: GivenList | undefined;
  readonly set: Given | undefined;
  readonly gap: Given | undefined;
}

export interface PartBlock extends NamedBlock {
  readonly kind: "part";
  readonly from: StockUse | undefined;
  readonly long: Given | undefined;
  readonly wide: Given | undefined;
  readonly thick: Given | undefined;
  readonly count: Count | undefined;
  readonly grain: Choice<"long" | "across" | "none"> | undefined;
  readonly edging: readonly StockUse[];
}

/** Where a `cut` block stands, its closing bracket counted in where there is one. */
export interface CutBlock {
  readonly span: Span;
}

/** Pieces of one part that exist: `front inks rail 2 at 13 11/16`. */
export interface CutRecord {
  /** `box`, `front`, `false front`, `case`, ... */
  readonly owner: Word;
  readonly of: Word;
  /** Missing for a part that is stated by hand, which is named by `of`. */
  readonly part: Word | undefined;
  readonly count: Expr;
  /** Length and width as measured; missing: as derived. */
  readonly at: Measure | undefined;
  readonly wide: Measure | undefined;
  readonly stock: Word | undefined;
  readonly spoiled: Word | undefined;
  readonly span: Span;
}

/** Whole sheets or boards that are whole no longer: `sheet birch-18 1`. */
export interface BrokenDown {
  readonly kind: "sheet" | "board";
  readonly stock: Word;
  readonly count: Expr;
  readonly span: Span;
}
