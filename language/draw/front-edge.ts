import type { Length } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import { add, equal, over, subtract, times, zero } from "../core/rational.ts";
import type { FrontModel } from "../derive/model.ts";
import type { Desk } from "./desk.ts";
import type { Hatch } from "./display-list.ts";
import { madeOf } from "./place/solid.ts";

/** The sizes of a frame's edge with what goes into it; y counts from the front face backwards. */
export interface Edge {
  readonly stile: Length;
  readonly thick: Length;
  readonly groove: { readonly from: Length; readonly to: Length; readonly deep: Length };
  readonly panel:
    | {
        readonly from: Length;
        readonly to: Length;
        /** Where its edge is thinner. */
        readonly tongueTo: Length;
        readonly float: Length;
        readonly hatch: Hatch;
      }
    | undefined;
  readonly tongue: Length | undefined;
}

/** The edge of a framed front; `undefined` for one without a groove. */
export function edgeOf(desk: Desk, front: FrontModel): Edge | undefined {
  const part = (name: RegExp): Part | undefined => front.parts.find((one) => name.test(one.name));
  const [stile, rail, panel] = [part(/^stile$/), part(/rail$/), part(/^panel$/)];
  const groove = machined(stile, "groove");
  if (stile === undefined || groove?.wide === undefined || groove.deep === undefined) return undefined;
  const thick = stile.thickness.value;
  const wide = groove.wide.value;
  const from =
    groove.from === undefined ? over(subtract(thick, wide), 2) : subtract(thick, add(groove.from.value, wide));
  const deep = groove.deep.value;
  return {
    stile: stile.width.value,
    thick,
    groove: { from, to: add(from, wide), deep },
    panel: panel === undefined ? undefined : panelEdge(desk, front, stile, panel, from, deep),
    tongue: machined(rail, "tongue")?.deep?.value,
  };
}

function machined(part: Part | undefined, kind: Machining["kind"]): Machining | undefined {
  return part?.machining.find((one) => one.kind === kind);
}

/** A panel lies against the front of the groove; what is too thick for it is taken off at the back. */
function panelEdge(desk: Desk, front: FrontModel, stile: Part, panel: Part, from: Length, deep: Length): Edge["panel"] {
  const to = add(from, panel.thickness.value);
  const rabbet = machined(panel, "rabbet")?.deep?.value ?? zero;
  const midStiles = front.parts.find((one) => one.name === "mid stile");
  const midRails = front.parts.find((one) => one.name === "mid rail")?.quantity ?? 0;
  const count = Math.round((midStiles?.quantity ?? 0) / front.leaves / (midRails / front.leaves + 1));
  const clear = subtract(front.wide.value, times(stile.width.value, 2));
  const cell = over(subtract(clear, times(midStiles?.width.value ?? zero, count)), count + 1);
  const up = (front.whole.grain?.value ?? (front.block.kind === "door" ? "long" : "across")) !== "across";
  const across = up ? panel.width.value : panel.length.value;
  return {
    from,
    to,
    tongueTo: subtract(to, rabbet),
    float: over(subtract(add(cell, times(deep, 2)), across), 2),
    hatch: madeOf(desk.model.stocks.get(panel.stock)),
  };
}

/** Whether two edges are made with the same settings. */
export function sameEdge(a: Edge, b: Edge): boolean {
  const of = ({ stile, thick, groove, panel, tongue }: Edge): readonly Length[] => [
    stile,
    thick,
    groove.from,
    groove.to,
    groove.deep,
    panel?.from ?? zero,
    panel?.to ?? zero,
    panel?.tongueTo ?? zero,
    panel?.float ?? zero,
    tongue ?? zero,
  ];
  const others = of(b);
  return of(a).every((length, index) => equal(length, others[index]!)) && a.panel?.hatch === b.panel?.hatch;
}
