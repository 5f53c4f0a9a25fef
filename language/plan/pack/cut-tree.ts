import type { Layout } from "./layout.ts";
import type { Held, Panel, Prepared } from "./prepare.ts";
import type { CutPiece, Placement, UsedSheet } from "./problem.ts";
import { ALONG_X, LEAF, type Node } from "./tree.ts";

/** A box in the grown coordinates of the search: one kerf wider and higher than the piece it stands for. */
type Box = { readonly x: number; readonly y: number; readonly w: number; readonly h: number };

/** The sheet with real coordinates: kerf and trim put back, and the tree of cuts written out. */
export function usedSheet(layout: Layout, panel: Panel, prepared: Prepared): UsedSheet {
  const edge = panel.offcut ? 0 : prepared.trim;
  const writer = pieceWriter(prepared, edge);
  const cuts = writer({ x: 0, y: 0, w: layout.w, h: layout.h }, layout.root);
  const placed: Placement[] = [];
  collectParts(cuts, placed);
  return { stock: panel.stock.id, width: panel.stock.width, height: panel.stock.height, placed, cuts };
}

function collectParts(piece: CutPiece, into: Placement[]): void {
  const { x, y, width, height, content } = piece;
  if (content.kind === "part") into.push({ part: content.part, x, y, width, height, turned: content.turned });
  if (content.kind === "cut") for (const inner of content.pieces) collectParts(inner, into);
}

function pieceWriter(prepared: Prepared, edge: number): (box: Box, node: Node | undefined) => CutPiece {
  const { kerf, held, blanks } = prepared;

  function rectangle(box: Box): Omit<CutPiece, "content"> {
    return { x: box.x + edge, y: box.y + edge, width: box.w - kerf, height: box.h - kerf };
  }

  /** What is left over falls off first, the larger remainder before the smaller, so that it stays in one piece. */
  function write(box: Box, node: Node | undefined): CutPiece {
    if (node === undefined) return { ...rectangle(box), content: { kind: "remainder" } };
    const overX = box.w - node.w;
    const overY = box.h - node.h;
    const way = overX === 0 && overY === 0 ? undefined : overY * box.w <= overX * box.h ? "x" : "y";
    const along = node.along === ALONG_X ? "x" : "y";
    if (way !== undefined && (node.along === LEAF || along !== way)) return row(box, way, [node], write);
    if (node.along !== LEAF) return writeRow(box, along, node.kids);
    const turned = node.w !== blanks.w[node.item] || node.h !== blanks.h[node.item];
    return writeHeld(box, held[node.item]!, turned);
  }

  /**
   * Pieces side by side, and at the end those that are cut together: one cut takes them down to their breadth while they
   * hang together, and they are cut to length after. One by one, each would be cut to length first and then need a cut
   * of its own, which is more work and leaves short pieces to rip.
   */
  function writeRow(box: Box, along: "x" | "y", nodes: readonly Node[]): CutPiece {
    const { single, together } = gathered(nodes, along);
    const kids: Row[] = [...single.map((node) => [node]), ...together].map((inside) => {
      const length = inside.reduce((sum, node) => sum + lengthOf(node, along), 0);
      return along === "x" ? { inside, w: length, h: box.h } : { inside, w: box.w, h: length };
    });
    const last = kids.at(-1);
    const rest = kids.reduce((left, kid) => left - lengthOf(kid, along), lengthOf(box, along));
    // A short end stays on what is cut to length last in any case: to cut it off before would be a setting more.
    if (last !== undefined && 1 < last.inside.length && 0 < rest && rest <= lengthOf(last, along))
      kids[kids.length - 1] = along === "x" ? { ...last, w: last.w + rest } : { ...last, h: last.h + rest };
    return row(box, along, kids, (at, { inside }) => {
      const [first, second] = inside;
      if (second === undefined) return write(at, first);
      const size = along === "x" ? { w: at.w, h: first!.h } : { w: first!.w, h: at.h };
      return row(at, along === "x" ? "y" : "x", [size], (narrow) => writeRow(narrow, along, inside));
    });
  }

  function writeHeld(box: Box, one: Held, turned: boolean): CutPiece {
    const parts = one.parts.map((part) => {
      const w = (turned ? part.height : part.width) + kerf;
      const h = (turned ? part.width : part.height) + kerf;
      return { id: part.id, w, h };
    });
    type Sized = (typeof parts)[number];
    const single = (at: Box, part: Sized): CutPiece => {
      if (part.w < at.w) return row(at, "x", [part], single);
      if (part.h < at.h) return row(at, "y", [part], single);
      return { ...rectangle(at), content: { kind: "part", part: part.id, turned } };
    };
    if (parts.length === 1) return single(box, parts[0]!);
    const along = (one.along === "x") === turned ? "y" : "x";
    return row(box, along, parts, single);
  }

  /** Pieces one after another; a remainder thinner than the blade is dust and is not written. */
  function row<Kid extends { readonly w: number; readonly h: number }>(
    box: Box,
    along: "x" | "y",
    kids: readonly Kid[],
    inner: (at: Box, kid: Kid) => CutPiece,
  ): CutPiece {
    const pieces: CutPiece[] = [];
    let offset = 0;
    for (const kid of kids) {
      pieces.push(inner(strip(box, along, offset, along === "x" ? kid.w : kid.h), kid));
      offset += along === "x" ? kid.w : kid.h;
    }
    const rest = (along === "x" ? box.w : box.h) - offset;
    if (kerf < rest) pieces.push(write(strip(box, along, offset, rest), undefined));
    return { ...rectangle(box), content: { kind: "cut", along, pieces } };
  }

  return write;
}

function strip(box: Box, along: "x" | "y", offset: number, length: number): Box {
  return along === "x" ? { ...box, x: box.x + offset, w: length } : { ...box, y: box.y + offset, h: length };
}

type Size = { readonly w: number; readonly h: number };

/** A piece of a row, or several that are cut together, with what the row gives them of itself. */
type Row = Size & { readonly inside: readonly Node[] };

function lengthOf({ w, h }: Size, along: "x" | "y"): number {
  return along === "x" ? w : h;
}

/**
 * The pieces of a row that are cut by themselves, and those that are cut together: all of one breadth, less than that of
 * the row. Equal sizes stand beside each other, the largest first: one setting then serves several cuts.
 */
function gathered(
  nodes: readonly Node[],
  along: "x" | "y",
): { readonly single: readonly Node[]; readonly together: readonly (readonly Node[])[] } {
  const sorted = nodes.slice().sort((a, b) => lengthOf(b, along) - lengthOf(a, along));
  const breadth = ({ w, h }: Node): number => (along === "x" ? h : w);
  const widest = Math.max(...sorted.map(breadth));
  const narrow = [...new Set(sorted.map(breadth))].filter((one) => one < widest);
  const together = narrow.map((one) => sorted.filter((node) => breadth(node) === one)).filter((all) => 1 < all.length);
  return { single: sorted.filter((node) => !together.some((all) => all.includes(node))), together };
}
