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
    if (node.along !== LEAF) return row(box, along, longestFirst(node), write);
    const turned = node.w !== blanks.w[node.item] || node.h !== blanks.h[node.item];
    return writeHeld(box, held[node.item]!, turned);
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

/** Equal sizes beside each other, largest first: one setting then serves several cuts. */
function longestFirst(node: Node): Node[] {
  return node.kids.slice().sort((a, b) => (node.along === ALONG_X ? b.w - a.w : b.h - a.h));
}
