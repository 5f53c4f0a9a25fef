import type { CaseBlock, Design, FaceFrame, FillBlock, LayoutItem, NamedBlock, StockUse } from "../core/design.ts";
import type { NameExpr } from "../core/expr.ts";
import type { Span, Word } from "../core/span.ts";
import type { NameKind } from "../derive/names.ts";
import { readWords } from "../derive/readings.ts";

/** A name where it stands: given there, or used. Names in the middle of a range stand for the whole range's place. */
export interface Occurrence {
  readonly kind: NameKind;
  readonly text: string;
  readonly span: Span;
  readonly given: boolean;
}

/** Every name of a build's files, given and used. */
export interface NameIndex {
  readonly all: readonly Occurrence[];
  /** The name whose letters hold the place, its end counted in. */
  at(uri: string, offset: number): Occurrence | undefined;
  of(kind: NameKind, text: string): readonly Occurrence[];
}

/** The index of the names of some files, as one build sees them together. */
export function nameIndex(designs: readonly Design[]): NameIndex {
  const raw = designs.flatMap(rawOf);
  const given = new Map<string, Set<string>>();
  for (const { kind, text, given: gives } of raw) {
    if (gives && kind !== "path") given.set(text, (given.get(text) ?? new Set()).add(kind));
  }
  const all = raw.map(
    (one): Occurrence => (one.kind === "path" ? { ...one, kind: pathKind(one, given) } : (one as Occurrence)),
  );
  const byName = new Map<string, Occurrence[]>();
  for (const one of all) {
    const key = `${one.kind} ${one.text}`;
    const before = byName.get(key);
    if (before === undefined) byName.set(key, [one]);
    else before.push(one);
  }
  return {
    all,
    at: (uri, offset) =>
      all.find((one) => isSpelled(one) && one.span.uri === uri && one.span.start <= offset && offset <= one.span.end),
    of: (kind, text) => byName.get(`${kind} ${text}`) ?? [],
  };
}

/** Whether the place holds the name itself, and not the range that it stands in the middle of. */
export function isSpelled({ span, text }: Pick<Occurrence, "span" | "text">): boolean {
  return span.end - span.start === text.length;
}

interface Raw {
  /** `path` is the thing whose size is read: what it is depends on what is given. */
  readonly kind: NameKind | "path";
  readonly text: string;
  readonly span: Span;
  readonly given: boolean;
  /** The words that are read of it. */
  readonly reads?: readonly string[];
}

/** The same order in which readings are looked up: openings and cases for sizes, then stocks and hardware. */
function pathKind({ text, reads = [] }: Raw, given: ReadonlyMap<string, ReadonlySet<string>>): NameKind {
  const kinds = given.get(text);
  const sized = 1 < reads.length || readWords[reads[0] ?? ""] !== undefined;
  const order: readonly NameKind[] = sized
    ? ["opening", "case", "stock", "slides", "hinges"]
    : ["stock", "slides", "hinges", "opening", "case"];
  return order.find((kind) => kinds?.has(kind)) ?? "opening";
}

const known = new WeakMap<Design, readonly Raw[]>();

function rawOf(design: Design): readonly Raw[] {
  const before = known.get(design);
  if (before !== undefined) return before;
  const found: Raw[] = [];
  const put = (kind: Raw["kind"], word: Word | undefined, given = false): void => {
    if (word !== undefined) found.push({ kind, text: word.text, span: word.span, given });
  };
  gatherBlocks(design, put);
  for (const use of stockUsesIn(design)) for (const word of use.stocks) put("stock", word);
  for (const { path } of nameExprsIn(design)) {
    const [first, ...rest] = path;
    if (first === undefined) continue;
    if (rest.length === 0) put("length", first);
    else
      found.push({
        kind: "path",
        text: first.text,
        span: first.span,
        given: false,
        reads: rest.map((word) => word.text),
      });
  }
  const sorted = found.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
  known.set(design, sorted);
  return sorted;
}

type Put = (kind: Raw["kind"], word: Word | undefined, given?: boolean) => void;

const gives = true;

function gatherBlocks(design: Design, put: Put): void {
  const named = (kind: NameKind, blocks: readonly NamedBlock[]): void => {
    for (const block of blocks) {
      put(kind, block.name, gives);
      put(kind, block.like);
    }
  };
  named("stock", [...design.sheets, ...design.boards, ...design.edgings]);
  named("slides", design.slides);
  named("hinges", design.hinges);
  named("screws", design.screws);
  named("case", design.cases);
  named("opening", design.openings);
  named("part", design.parts);
  for (const { name } of design.lets) put("length", name, gives);
  for (const { stock } of [...design.offcuts, ...design.usedOffcuts, ...design.brokenDown]) put("stock", stock);
  for (const { screws } of [...design.slides, ...design.shop.pockets]) put("screws", screws);
  for (const block of design.cases) gatherCase(block, put);
  gatherFills(design, put);
  for (const { owner, of, stock } of design.cuts) {
    put(owner.text === "case" ? "case" : owner.text === "part" ? "part" : "opening", of);
    put("stock", stock);
  }
}

function gatherCase({ frame, rear, layout, top, nailers }: CaseBlock, put: Put): void {
  const items = (all: readonly LayoutItem[]): void => {
    for (const item of all) {
      if (item.kind === "opening") put("opening", item.name, gives);
      if (item.kind === "split") items(item.items);
    }
  };
  const face = (of: FaceFrame | undefined, beside: readonly LayoutItem[]): void => {
    put("stock", of?.stock);
    items(of?.layout ?? []);
    items(beside);
  };
  face(frame, layout);
  if (rear !== undefined) face(rear.frame, rear.layout);
  put("stock", top?.stock);
  put("stock", nailers?.from);
}

function gatherFills({ boxes, fronts, shelves }: Design, put: Put): void {
  const fills: readonly FillBlock[] = [...boxes, ...fronts, ...shelves];
  for (const { openings, like } of fills) {
    for (const name of openings) put("opening", name);
    put("opening", like);
  }
  for (const { slides, dividers } of boxes) {
    put("slides", slides?.name);
    put("stock", dividers?.from);
  }
  for (const { frame, hinges } of fronts) {
    put("stock", frame?.stock);
    put("hinges", hinges?.name);
  }
}

function stockUsesIn(design: Design): readonly StockUse[] {
  const found: StockUse[] = [];
  visit(design, (value) => {
    if (Array.isArray(value["stocks"])) found.push(value as unknown as StockUse);
  });
  return found;
}

function nameExprsIn(design: Design): readonly NameExpr[] {
  const found: NameExpr[] = [];
  visit(design, (value) => {
    if (value["kind"] === "name" && Array.isArray(value["path"])) found.push(value as unknown as NameExpr);
  });
  return found;
}

/** Every object of a design, each once: openings of one line share their share. Findings and places say nothing of names. */
export function visit(design: Design, see: (value: Readonly<Record<string, unknown>>) => void): void {
  const seen = new Set<object>();
  const go = (value: unknown): void => {
    if (typeof value !== "object" || value === null || seen.has(value)) return;
    seen.add(value);
    if (!Array.isArray(value)) see(value as Record<string, unknown>);
    for (const [key, inner] of Object.entries(value)) if (!skipped.has(key)) go(inner);
  };
  go({ ...design, findings: [] });
}

const skipped = new Set(["span", "head", "open", "scope", "uri", "text", "units"]);
