import type { LayoutItem, MemberItem, OpeningItem, Share, SplitItem } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import { withUnit } from "../core/length.ts";
import { add, compare, isPositive, less, over, subtract, sum, zero } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { derived } from "../core/sourced.ts";
import type { Span } from "../core/span.ts";
import type { Context } from "./context.ts";
import { found, size } from "./context.ts";
import type { Bound, Rect, Side } from "./model.ts";

/** A space being divided: its clear size, where it lies, and what bounds it. */
export interface Space {
  readonly wide: Sourced<Length>;
  readonly high: Sourced<Length>;
  readonly at: { readonly x: Length; readonly y: Length };
  readonly bounds: Readonly<Record<Side, Bound>>;
}

export interface PlacedOpening extends Space {
  readonly item: OpeningItem;
}

export interface PlacedMember {
  readonly item: MemberItem;
  /** The clear length that it spans. */
  readonly span: Sourced<Length>;
  readonly width: Sourced<Length>;
  readonly rect: Rect;
  readonly upright: boolean;
}

export interface Layout {
  readonly openings: readonly PlacedOpening[];
  readonly members: readonly PlacedMember[];
}

/** What a layout needs to know of its face. */
export interface Face {
  /** The width of a member for which none is written. */
  readonly widthOf: (item: MemberItem) => Sourced<Length> | undefined;
  /** What a member between two openings means for the opening at its side. */
  readonly boundOf: (item: MemberItem, width: Sourced<Length>) => Bound;
  /** The words for a member that stands and for one that lies, for messages. */
  readonly upright: "stile" | "partition";
}

const nothing: Layout = { openings: [], members: [] };

/** Divides a space by its layout items; what does not add up is a finding, and the rest of the layout stands. */
export function layOut(context: Context, face: Face, space: Space, items: readonly LayoutItem[]): Layout {
  const [first, ...rest] = items;
  if (first === undefined) return nothing;
  // A face with one opening, or one split, needs no outer "across".
  if (rest.length === 0 && first.kind === "opening")
    return { openings: [{ ...space, item: whole(context, first, space) }], members: [] };
  if (rest.length === 0 && first.kind === "split") return split(context, face, space, first);
  const [second] = rest;
  if (second === undefined) return memberAlone(context, first.kind, spanOfItem(first));
  found(context, {
    code: "layout/two-roots",
    severity: "error",
    span: second.kind === "opening" ? second.name.span : second.word.span,
    message: "this face is laid out twice over",
    reason: "A face is divided either across or down first; only the first division is used.",
    remedy: "Put both into one: across { ... } from left to right, or down { ... } from top to bottom.",
  });
  return layOut(context, face, space, [first]);
}

function memberAlone(context: Context, kind: LayoutItem["kind"], span: Span): Layout {
  found(context, {
    code: "layout/member-alone",
    severity: "error",
    span,
    message: `this ${kind} stands between nothing`,
    reason: "A member stands between two openings; across or down say which way they lie.",
    remedy: "Write across { opening NAME  stile  opening NAME } or down { opening NAME  rail  opening NAME }.",
  });
  return nothing;
}

/** An opening that fills a whole face has no share to take. */
function whole(context: Context, item: OpeningItem, space: Space): OpeningItem {
  if (item.share?.kind === "size") {
    const written = size(context, item.share.measure);
    if (
      written !== undefined &&
      compare(written.value, space.high.value) !== 0 &&
      compare(written.value, space.wide.value) !== 0
    ) {
      found(context, {
        code: "layout/only-one",
        severity: "warning",
        span: item.share.span,
        message: `"${item.name.text}" fills this face alone; the size is not used`,
        reason: "A size takes effect where a face is divided.",
        remedy: "Take the size out, or divide the face with across or down.",
      });
    }
  }
  return item;
}

function split(context: Context, face: Face, space: Space, node: SplitItem): Layout {
  const across = node.direction === "across";
  const items = node.items.filter((item) => fits(context, face, item, across));
  const extent = across ? space.wide : space.high;
  const sizes = extents(context, face, extent, items, node);
  if (sizes === undefined) return nothing;
  const layouts: Layout[] = [];
  let from = zero;
  items.forEach((item, index) => {
    const size = sizes[index]!;
    const at = across
      ? { x: add(space.at.x, from), y: space.at.y }
      : { x: space.at.x, y: subtract(add(space.at.y, space.high.value), add(from, size.value)) };
    from = add(from, size.value);
    if (item.kind === "opening" || item.kind === "split") {
      const before = memberBeside(face, items, sizes, index - 1);
      const after = memberBeside(face, items, sizes, index + 1);
      const bounds = across
        ? { ...space.bounds, left: before ?? space.bounds.left, right: after ?? space.bounds.right }
        : { ...space.bounds, top: before ?? space.bounds.top, bottom: after ?? space.bounds.bottom };
      const inner: Space = { wide: across ? size : space.wide, high: across ? space.high : size, at, bounds };
      layouts.push(
        item.kind === "split" ? split(context, face, inner, item) : { openings: [{ ...inner, item }], members: [] },
      );
    } else {
      const span = across ? space.high : space.wide;
      const rect = { ...at, wide: across ? size.value : span.value, high: across ? span.value : size.value };
      layouts.push({ openings: [], members: [{ item, span, width: size, rect, upright: across }] });
    }
  });
  return {
    openings: layouts.flatMap((layout) => layout.openings),
    members: layouts.flatMap((layout) => layout.members),
  };
}

/** A rail lies and a stile stands: in the wrong division it would run along the openings instead of between them. */
function fits(context: Context, face: Face, item: LayoutItem, across: boolean): boolean {
  if (item.kind === "opening" || item.kind === "split") return true;
  if ((item.kind === "rail") !== across) return true;
  const right = across ? face.upright : "rail";
  found(context, {
    code: "layout/wrong-member",
    severity: "error",
    span: item.word.span,
    message: `a ${item.kind} cannot stand in ${across ? '"across"' : '"down"'}`,
    reason:
      "Stiles and partitions stand between openings side by side; rails lie between openings one above the other.",
    remedy: `Write ${right}, or divide the other way.`,
    fixes: [{ title: `Write ${right}`, edits: [{ span: item.word.span, text: right }], safe: false }],
  });
  return false;
}

function memberBeside(
  face: Face,
  items: readonly LayoutItem[],
  sizes: readonly Sourced<Length>[],
  index: number,
): Bound | undefined {
  const item = items[index];
  const width = sizes[index];
  if (item === undefined || width === undefined) return undefined;
  if (item.kind === "opening" || item.kind === "split") return nothingBetween;
  return face.boundOf(item, width);
}

/** Two openings that meet with no member between them. */
const nothingBetween: Bound = { member: undefined, outer: false, beside: undefined, shared: false };

interface Claim {
  readonly item: LayoutItem;
  readonly label: string;
  readonly size: Sourced<Length> | undefined;
  readonly share: Share | undefined;
}

/** The extent of each item along the split. `undefined` where they cannot be worked out. */
function extents(
  context: Context,
  face: Face,
  whole: Sourced<Length>,
  items: readonly LayoutItem[],
  node: SplitItem,
): readonly Sourced<Length>[] | undefined {
  const claims = items.map((item, index) => claimOf(context, face, item, index));
  const fixed = claims.filter((claim) => claim.size !== undefined);
  const open = claims.filter((claim) => claim.size === undefined);
  const taken = sum(fixed.map((claim) => claim.size!.value));
  const left = subtract(whole.value, taken);
  if (open.length === 0 && items.length !== 0) return allGiven(context, whole, left, claims, node);
  if (items.length === 0) return [];
  if (!isPositive(left)) {
    tooMuch(context, whole, left, claims, open);
    return undefined;
  }
  const each = shareOf(whole, fixed, open.length);
  return claims.map((claim) => claim.size ?? each);
}

function claimOf(context: Context, face: Face, item: LayoutItem, index: number): Claim {
  if (item.kind !== "opening" && item.kind !== "split") {
    const width = size(context, item.width) ?? face.widthOf(item);
    return {
      item,
      label: `${item.kind} ${index + 1}`,
      size: width ?? { value: zero, origin: missing(item.word.span) },
      share: undefined,
    };
  }
  const label = item.kind === "opening" ? item.name.text : `${item.direction} ${index + 1}`;
  const given = item.share?.kind === "size" ? size(context, item.share.measure) : undefined;
  return { item, label, size: given, share: item.share };
}

function missing(span: Span): Sourced<Length>["origin"] {
  return { kind: "written", span, text: "0" };
}

/** What is left over by the fixed sizes, shared among those that take it. */
function shareOf(whole: Sourced<Length>, fixed: readonly Claim[], sharers: number): Sourced<Length> {
  const inputs: Record<string, Sourced<Length>> = { "clear size": whole };
  for (const claim of fixed) inputs[claim.label] = claim.size!;
  const taken = fixed.map((claim) => ` − {${claim.label}}`).join("");
  const rest = `{clear size}${taken}`;
  return derived(
    {
      gives: sharers === 1 ? "the rest" : `one of ${sharers} equal shares`,
      formula: sharers === 1 ? rest : `(${rest}) ÷ ${sharers}`,
      tag: "geometry",
    },
    inputs,
    ({ "clear size": all, ...taken }) => over(subtract(all!, sum(Object.values(taken))), sharers),
  );
}

/** All sizes are given: they must add up to the whole. */
function allGiven(
  context: Context,
  whole: Sourced<Length>,
  left: Length,
  claims: readonly Claim[],
  node: SplitItem,
): readonly Sourced<Length>[] | undefined {
  if (less(left, zero)) {
    tooMuch(context, whole, left, claims, []);
    return undefined;
  }
  if (isPositive(left)) {
    const last = claims.filter((claim) => claim.share !== undefined).at(-1);
    found(context, {
      code: "layout/too-little",
      severity: "error",
      span: last?.share?.span ?? node.word.span,
      message: `these sizes leave ${withUnit(left, context.units)} of the ${withUnit(whole.value, context.units)} over`,
      reason: "A frame has no gaps: its members and openings fill it.",
      remedy: 'Give one of them "rest", or make the sizes add up.',
      fixes:
        last?.share === undefined
          ? []
          : [{ title: 'Write "rest"', edits: [{ span: last.share.span, text: "rest" }], safe: false }],
    });
  }
  return claims.map((claim) => claim.size!);
}

/** More is asked for than there is: said at the largest size asked for, the likeliest slip. */
function tooMuch(
  context: Context,
  whole: Sourced<Length>,
  left: Length,
  claims: readonly Claim[],
  open: readonly Claim[],
): void {
  const asked = claims.filter((claim) => claim.share?.kind === "size" && claim.size !== undefined);
  const culprit = [...asked].sort((a, b) => compare(b.size!.value, a.size!.value))[0];
  const span = culprit?.share?.span ?? spanOfItem(open[0]?.item ?? claims[0]!.item);
  if (!isPositive(whole.value)) {
    nothingToDivide(context, whole, claims);
    return;
  }
  const over = subtract(zero, left);
  const amount = isPositive(over)
    ? `ask for ${withUnit(over, context.units)} more than the ${withUnit(whole.value, context.units)} that there are`
    : `take all of the ${withUnit(whole.value, context.units)}: nothing is left for "${open[0]?.label ?? ""}"`;
  found(context, {
    code: "layout/too-much",
    severity: "error",
    span,
    message: `the sizes of this division ${amount}`,
    reason: "Members and openings share the clear size of the space that they divide.",
    remedy: isPositive(over)
      ? `Make them ${withUnit(over, context.units)} smaller together, or the case larger.`
      : "Make one of the given sizes smaller.",
    related: open
      .slice(0, 1)
      .map((claim) => ({ span: spanOfItem(claim.item), message: "this is to take what is left" })),
  });
}

/** What stands round the space takes all of it: no size in it is the culprit. */
function nothingToDivide(context: Context, whole: Sourced<Length>, claims: readonly Claim[]): void {
  const lacking = subtract(zero, whole.value);
  const more = isPositive(lacking) ? `, and ${withUnit(lacking, context.units)} more` : "";
  found(context, {
    code: "layout/too-much",
    severity: "error",
    span: spanOfItem(claims[0]!.item),
    message: `nothing is left to divide here: what stands round it takes all the room there is${more}`,
    reason: "Members and openings share the clear size of the space that they divide.",
    remedy: "Make the members round it narrower, or the case larger.",
  });
}

function spanOfItem(item: LayoutItem): Span {
  return item.kind === "opening" ? item.name.span : item.word.span;
}
