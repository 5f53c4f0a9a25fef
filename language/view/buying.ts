import { sizesText } from "../ascut/findings/words.ts";
import { gatheredBy } from "../core/gather.ts";
import { toText } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import type { CutPlan } from "../plan/cut-plan.ts";
import { unitText } from "./hardware.ts";
import { wrap } from "./wrap.ts";

/** One thing to buy, for one build file or for several together. */
export interface BuyLine {
  readonly what: string;
  readonly size: string;
  /** Lines of one key name the same thing, in whatever units their files speak. */
  readonly key: string;
  readonly quantity: number;
  /** One of it: `sheet`, `pair`, `foot`. */
  readonly unit: string;
  /** How many more of it are wanted that lie in the rack. */
  readonly inRack?: number;
  /** In the files' own money; missing where no price is written. */
  readonly cost: number | undefined;
  readonly note: string;
}

/** What one build wants from the yard and the hardware shelf: new sheets less those in the rack, boards by size, hardware. */
export function buyLines(context: Context, model: Model, plan: CutPlan): readonly BuyLine[] {
  const stocks = plan.stocks.flatMap((stock): readonly BuyLine[] => {
    const fresh = stock.sheets.filter(({ offcut }) => !offcut);
    const bySize = gatheredBy(fresh, ({ width, height }) => `${toText(width)} ${toText(height)}`);
    let inRack = stock.inRack;
    return [...bySize].map(([exact, sheets]) => {
      const [{ width, height, price }, count] = [sheets[0]!, sheets.length];
      const taken = Math.min(inRack, count);
      inRack -= taken;
      const quantity = count - taken;
      return {
        what: stock.stock.name,
        // As it is sold, and not as the tape would read it.
        size: sizesText(context, width, height),
        key: [stock.stock.kind, stock.stock.name, toText(stock.stock.thickness.value), exact].join(" "),
        quantity,
        unit: stock.stock.kind,
        cost: price === undefined ? undefined : Math.round(price * quantity * 100) / 100,
        ...rackNote(taken),
      };
    });
  });
  const hardware = model.hardware
    .filter((item) => item.kind !== "glue")
    .map(
      (item): BuyLine => ({
        what: item.name,
        size: item.size,
        key: `${item.name}|${item.size}|${item.unit}`,
        quantity: item.quantity,
        unit: item.unit,
        cost: item.cost,
        note: item.because,
      }),
    );
  return [...stocks, ...hardware];
}

/** Lines of several builds added up where they name the same thing of the same size. */
export function boughtTogether(lists: readonly (readonly BuyLine[])[]): readonly BuyLine[] {
  const byKey = new Map<string, BuyLine>();
  for (const line of lists.flat()) {
    const before = byKey.get(line.key);
    byKey.set(
      line.key,
      before === undefined
        ? line
        : {
            ...before,
            quantity: round(before.quantity + line.quantity),
            cost: sum(before.cost, line.cost),
            ...(before.inRack === undefined ? {} : rackNote(before.inRack + (line.inRack ?? 0))),
          },
    );
  }
  return [...byKey.values()];
}

function rackNote(inRack: number): Pick<BuyLine, "inRack" | "note"> {
  return { inRack, note: inRack === 0 ? "" : `${inRack} more from the rack` };
}

function sum(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined || b === undefined ? undefined : round(a + b);
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

/** The list for a terminal, at most 80 columns wide; the total says how many lines have no price. */
export function buyText(title: string, lines: readonly BuyLine[]): string {
  const rows = lines.filter((line) => 0 < line.quantity || line.note !== "");
  const priced = rows.filter((line) => line.cost !== undefined);
  const body = rows.flatMap((line) => {
    const cost = line.cost === undefined ? "" : line.cost.toFixed(2);
    const head = `${String(line.quantity).padStart(6)} ${unitText(line.quantity, line.unit).padEnd(7)} `;
    const [first = "", ...rest] = wrap(
      [line.what, line.size, line.note === "" ? "" : `(${line.note})`].filter((text) => text !== "").join("  "),
      54,
    );
    return [
      `${head}${first.padEnd(54)} ${cost.padStart(9)}`.trimEnd(),
      ...rest.map((text) => `${" ".repeat(head.length)}${text}`),
    ];
  });
  const total = priced.reduce((all, line) => all + (line.cost ?? 0), 0);
  const unpriced = rows.length - priced.length;
  const foot = [
    `${"in all".padStart(70)} ${total.toFixed(2).padStart(9)}`,
    ...(unpriced === 0
      ? []
      : [
          `${unpriced} ${unpriced === 1 ? "line has" : "lines have"} no price; write costs AMOUNT to count ${unpriced === 1 ? "it" : "them"} in.`,
        ]),
  ];
  const list = rows.length === 0 ? ["Nothing is to buy."] : [...body, "", ...foot];
  return `${[...wrap(title, 80), "", ...list].join("\n")}\n`;
}
