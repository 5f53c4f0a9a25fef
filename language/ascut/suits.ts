import type { Part } from "../core/part.ts";
import { equal, less, multiply } from "../core/rational.ts";
import type { Stock } from "../derive/model.ts";
import { stockKey } from "./rack.ts";
import type { Job, Spare } from "./spares.ts";
import type { Wanted } from "./wanted.ts";

/** One piece that is still to be cut. */
export interface Target {
  readonly job: Job;
  readonly wanted: Wanted;
  readonly part: Part;
  readonly stock: Stock;
}

/** Whether the part can be cut from the spare: of the same stock and thickness, its grain the right way, and large enough. */
export function suits(spare: Spare, { part, stock }: Target): boolean {
  if (stockKey(spare.stock) !== stockKey(stock) || !equal(spare.thickness, part.thickness.value)) return false;
  const { along, across } = lyingOf(part);
  const straight = !less(spare.along, along) && !less(spare.across, across);
  const turned = mayTurn(spare, part) && !less(spare.along, across) && !less(spare.across, along);
  // What is spoiled somewhere must lose something somewhere.
  const isWhole = equal(multiply(spare.along, spare.across), multiply(along, across));
  return (straight || turned) && (spare.isSure || !isWhole);
}

/** A part's size along the grain and across it. */
export function lyingOf({ grain, length, width }: Part): Pick<Spare, "along" | "across"> {
  return grain === "across"
    ? { along: width.value, across: length.value }
    : { along: length.value, across: width.value };
}

/** Whether the part may lie either way in the spare. */
export function mayTurn({ stock, grain }: Spare, part: Part): boolean {
  return isPlain(stock) || part.grain === "none" || grain === "none";
}

function isPlain(stock: Stock): boolean {
  return stock.kind === "sheet" && stock.block.grain?.value === "none";
}

/** What must be so for the part to serve; nothing where it certainly does. */
export function providedFor(spare: Spare, part: Part): readonly string[] {
  const unwanted = spare.worked.filter((kind) => !part.machining.some((made) => made.kind === kind));
  return [
    ...(spare.isSure ? [] : ["what is spoiled falls away"]),
    ...(unwanted.length === 0 ? [] : [`no ${unwanted.join(" or ")} is left in it`]),
    // A part that may lie either way was cut either way.
    ...(spare.grain === "none" && part.grain !== "none" && !isPlain(spare.stock) ? ["its grain runs as it must"] : []),
    ...(part.matched === undefined ? [] : ["its grain need not run on through its row"]),
  ];
}
