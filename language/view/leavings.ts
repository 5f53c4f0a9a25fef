import { stockKey } from "../ascut/rack.ts";
import type { Job } from "../ascut/spares.ts";
import type { OffcutStatement } from "../core/design.ts";
import type { Measure } from "../core/expr.ts";
import { titleOf, writtenTitle } from "../core/file-name.ts";
import { exactText, type Length, readOff } from "../core/length.ts";
import { startOfFile } from "../core/span.ts";
import type { CutPlan } from "../plan/cut-plan.ts";
import { keptOffcuts } from "../plan/keep.ts";

/** A piece that the plan of one of several jobs leaves over, and that a later one can be cut from. */
export interface Leaving {
  /** Of the stock: see `stockKey`. */
  readonly stock: string;
  /** Across the grain and along it, as the tape reads them. */
  readonly width: Length;
  readonly height: Length;
  /** The title of the job that leaves it. */
  readonly from: string;
}

/** What a plan leaves over that is worth a place in the rack. */
export function leavingsOf({ context }: Pick<Job, "context">, plan: CutPlan): readonly Leaving[] {
  const keys = new Map(plan.stocks.map(({ stock }) => [stock.name, stockKey(stock)]));
  return keptOffcuts(context, plan).map(({ stock, node }) => ({
    stock: keys.get(stock)!,
    width: readOff(node.width, context.reading),
    height: readOff(node.height, context.reading),
    from: titleOf(context.design),
  }));
}

/**
 * A job with what the jobs before it leave over, beside what lies in the rack. What the rack states as left over by one of
 * the jobs is what an earlier plan of it left: that plan is made anew here.
 */
export function withLeavings(job: Job, jobs: readonly Job[], leavings: readonly Leaving[]): Job["context"] {
  const { context, model } = job;
  const titles = new Set(jobs.map((one) => writtenTitle(one.context.design)));
  const stated = context.design.offcuts.filter(({ from }) => from === undefined || !titles.has(from.text));
  const names = new Map([...model.stocks.values()].map((stock) => [stockKey(stock), stock.name]));
  const left = leavings.flatMap((one): readonly OffcutStatement[] => {
    const name = names.get(one.stock);
    return name === undefined ? [] : [statementOf(context.design.uri, name, one)];
  });
  return { ...context, design: { ...context.design, offcuts: [...stated, ...left] } };
}

function statementOf(uri: string, stock: string, { width, height, from }: Leaving): OffcutStatement {
  const span = startOfFile(uri);
  const measure = (length: Length): Measure => ({
    value: { kind: "number", value: length, unit: "in", units: "inches", span },
    plus: undefined,
    minus: undefined,
    to: undefined,
    units: "inches",
    text: exactText(length, "inches"),
    span,
  });
  return {
    stock: { text: stock, span },
    first: measure(width),
    second: measure(height),
    from: { text: from, span },
    span,
  };
}
