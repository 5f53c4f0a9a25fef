import { isQuantity } from "./cited.ts";
import { type Movement, movement, type RingDirection } from "./movement.ts";
import type { Species } from "./species-table.ts";

/** A solid panel loose in grooves: its size across the grain when made, the moistures in percent, the groove's depth and the float left each side. */
export type FloatingPanel = {
  readonly size: number;
  readonly species: Species;
  readonly direction: RingDirection;
  readonly madeAt: number;
  readonly driest: number;
  readonly wettest: number;
  readonly grooveDepth: number;
  readonly float: number;
};

/** What the seasons do to the panel, in the unit of its size; `held` is what stays in each groove at the driest, centred or pushed to one side. */
export type FloatResult = {
  readonly growth: number;
  readonly shrinkage: number;
  readonly floatNeeded: number;
  readonly spareFloat: number;
  readonly heldCentred: number;
  readonly heldPushed: number;
  readonly wet: Movement;
  readonly dry: Movement;
};

/**
 * Float a solid panel needs each side and what its grooves still hold when it is driest; a negative `spareFloat` bursts the frame, a negative `heldPushed`
 * lets an edge slip out. Undefined for negative input or a wood whose movement is unknown.
 */
export function panelFloat(panel: FloatingPanel): FloatResult | undefined {
  if (!isQuantity(panel.grooveDepth) || !isQuantity(panel.float)) return undefined;
  const from = panel.madeAt;
  const wet = movement({ ...panel, from, to: panel.wettest });
  const dry = movement({ ...panel, from, to: panel.driest });
  if (wet === undefined || dry === undefined) return undefined;
  const growth = Math.max(0, wet.change, dry.change);
  const shrinkage = Math.max(0, -dry.change, -wet.change);
  const floatNeeded = growth / 2;
  return {
    growth,
    shrinkage,
    floatNeeded,
    spareFloat: panel.float - floatNeeded,
    heldCentred: panel.grooveDepth - panel.float - shrinkage / 2,
    heldPushed: panel.grooveDepth - 2 * panel.float - shrinkage,
    wet,
    dry,
  };
}
