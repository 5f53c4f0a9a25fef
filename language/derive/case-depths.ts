import type { Fitting } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Sourced } from "../core/sourced.ts";
import type { CaseFrame } from "./case.ts";
import { size } from "./context.ts";
import { fallback } from "./defaults.ts";
import { less } from "./rules/less.ts";
import { plus } from "./rules/plus.ts";

/** How deep things are in a case, and how its back is held. */
export interface CaseDepths {
  /** Width of the sides. */
  readonly sides: Sourced<Length>;
  /** Width of bottom, top, partitions and fixed shelves. */
  readonly inner: Sourced<Length>;
  /** From the face of the case to its back's inside: what an opening has. */
  readonly clear: Sourced<Length>;
  readonly back: {
    readonly kind: "applied" | "rabbet" | "groove";
    readonly depth: Sourced<Length> | undefined;
    /** From the back edge of the sides to a groove. */
    readonly from?: Sourced<Length>;
  };
}

export function caseDepths(frame: CaseFrame): CaseDepths {
  const fitting = frame.block.back?.fittings.find(
    (one) => one.word === "applied" || one.word === "rabbet" || one.word === "groove",
  );
  const faces = [frame.frame, frame.rearFrame].reduce(
    (deep, stock) => (stock === undefined ? deep : less(deep, stock.thickness)),
    frame.deep,
  );
  const back = frame.back?.thickness;
  if (back === undefined)
    return {
      sides: faces,
      inner: faces,
      clear: beforeNailers(frame, frame.deep),
      back: { kind: "applied", depth: undefined },
    };
  const kind = kindOf(fitting);
  const depth = size(frame.context, fitting?.depth);
  if (kind === "applied") {
    const sides = less(faces, back);
    const clear = beforeNailers(frame, less(frame.deep, back));
    return { sides, inner: sides, clear, back: { kind, depth: undefined } };
  }
  if (kind === "rabbet") {
    return {
      sides: faces,
      inner: less(faces, back),
      clear: beforeNailers(frame, less(frame.deep, back)),
      back: { kind, depth: depth ?? fallback("case.rabbet") },
    };
  }
  const from = ledge(frame);
  const set = plus(from, back);
  return {
    sides: faces,
    inner: less(faces, set),
    clear: less(frame.deep, set),
    back: { kind, depth: depth ?? fallback("case.groove"), from },
  };
}

/** Nailers lie behind a back in grooves: the ledge there is as deep as they are thick. */
function ledge(frame: CaseFrame): Sourced<Length> {
  return nailerThickness(frame) ?? fallback("case.grooveSet");
}

/** Before any other back they stand in the case, and what goes into it stops before them. */
function beforeNailers(frame: CaseFrame, clear: Sourced<Length>): Sourced<Length> {
  const thick = nailerThickness(frame);
  return thick === undefined ? clear : less(clear, thick);
}

function nailerThickness(frame: CaseFrame): Sourced<Length> | undefined {
  const { nailers } = frame.block;
  if (nailers === undefined) return undefined;
  return (nailers.from === undefined ? frame.panels : frame.stocks.get(nailers.from.text))?.thickness;
}

function kindOf(fitting: Fitting | undefined): "applied" | "rabbet" | "groove" {
  return fitting?.word === "rabbet" || fitting?.word === "groove" ? fitting.word : "applied";
}
