import type { Length } from "../core/length.ts";
import type { Grain, Machining, Part } from "../core/part.ts";
import { equal, isPositive } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Span } from "../core/span.ts";
import type { Context } from "./context.ts";
import { found } from "./context.ts";
import type { Stock } from "./model.ts";

export interface PartPlan {
  readonly name: string;
  readonly of: string;
  readonly quantity: number;
  readonly stock: Stock | undefined;
  readonly length: Sourced<Length> | undefined;
  readonly width: Sourced<Length> | undefined;
  readonly thickness?: Sourced<Length>;
  readonly grain?: Grain;
  readonly machining?: readonly Machining[];
  readonly face?: string;
  readonly cutToFit?: string;
  readonly note?: string;
  readonly matched?: NonNullable<Part["matched"]>;
  readonly source: Span;
}

/** The part, where its stock and sizes are known; a size that came out at nought or less is a finding instead. */
export function partsFrom(context: Context, plan: PartPlan): readonly Part[] {
  const { stock, length, width } = plan;
  if (stock === undefined || length === undefined || width === undefined || plan.quantity === 0) return [];
  if (!isPositive(length.value) || !isPositive(width.value)) {
    found(context, {
      code: "part/no-size",
      severity: "error",
      span: plan.source,
      message: `nothing is left for the ${plan.name} of ${plan.of}`,
      reason: "What stands around it takes all the room there is.",
      remedy: "Make the whole larger, or the members and joints round it smaller.",
    });
    return [];
  }
  const { thickness = stock.thickness, grain = grainOf(stock), machining = [], ...rest } = plan;
  return [
    {
      ...rest,
      id: `${plan.of}/${plan.name}`,
      stock: stock.name,
      stockKind: stock.kind,
      length,
      width,
      thickness,
      grain,
      machining,
    },
  ];
}

function grainOf(stock: Stock): Grain {
  if (stock.kind !== "sheet") return "long";
  if (stock.block.grain !== undefined) return stock.block.grain.value === "none" ? "none" : "long";
  return stock.block.core?.text === "mdf" ||
    stock.block.core?.text === "hardboard" ||
    stock.block.core?.text === "particle"
    ? "none"
    : "long";
}

/** Parts of one owner and name that are alike, counted together; unlike ones get a number behind their id. */
export function gathered(parts: readonly Part[]): readonly Part[] {
  const rows: Part[] = [];
  for (const part of parts) {
    const alike = rows.findIndex((row) => row.of === part.of && row.name === part.name && sameShape(row, part));
    if (0 <= alike) rows[alike] = { ...rows[alike]!, quantity: rows[alike]!.quantity + part.quantity };
    else rows.push(part);
  }
  const seen = new Map<string, number>();
  return rows.map((row) => {
    const number = (seen.get(row.id) ?? 0) + 1;
    seen.set(row.id, number);
    return number === 1 ? row : { ...row, id: `${row.id} ${number}` };
  });
}

/** Whether two parts are cut and machined alike. */
export function sameShape(a: Part, b: Part): boolean {
  return (
    a.stock === b.stock &&
    a.grain === b.grain &&
    a.cutToFit === b.cutToFit &&
    a.note === b.note &&
    equal(a.length.value, b.length.value) &&
    equal(a.width.value, b.width.value) &&
    equal(a.thickness.value, b.thickness.value) &&
    a.matched?.group === b.matched?.group &&
    a.machining.length === b.machining.length &&
    a.machining.every((one, index) => sameMachining(one, b.machining[index]!))
  );
}

function sameMachining(a: Machining, b: Machining): boolean {
  const same = (x: Sourced<Length> | undefined, y: Sourced<Length> | undefined): boolean =>
    x === undefined || y === undefined ? x === y : equal(x.value, y.value);
  return (
    a.kind === b.kind &&
    a.where === b.where &&
    a.count === b.count &&
    a.note === b.note &&
    same(a.wide, b.wide) &&
    same(a.deep, b.deep) &&
    same(a.from, b.from)
  );
}
