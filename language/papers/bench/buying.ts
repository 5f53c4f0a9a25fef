import type { BenchSection } from "../../view/bench.ts";
import { buyLines } from "../../view/buying.ts";
import { unitText } from "../../view/hardware.ts";
import type { PaperDesk } from "../desk.ts";
import { columns, section } from "./section.ts";

/** What the plan and the hardware want from the yard, with what it comes to where prices are written. */
export function buyingPart(desk: PaperDesk): BenchSection {
  if (desk.plan === undefined) return section("buying", {});
  const lines = buyLines(desk.context, desk.model, desk.plan).filter((line) => 0 < line.quantity || line.note !== "");
  const priced = lines.filter(({ cost }) => cost !== undefined);
  const total = priced.reduce((sum, { cost }) => sum + (cost ?? 0), 0);
  const unpriced = lines.length - priced.length;
  const foot = [
    ...(priced.length === 0 ? [] : [`${total.toFixed(2)} in all for what has a price.`]),
    ...(unpriced === 0 ? [] : [`${counted(unpriced, "line has", "lines have")} no price: write costs and an amount.`]),
  ];
  return section("buying", {
    tables: [
      {
        id: "buying",
        title: "To buy",
        columns: columns({ figures: "how many" }, "unit", "what", "size", { figures: "cost" }, "note"),
        rows: lines.map(({ quantity, unit, what, size, cost, note }) => ({
          cells: [
            String(quantity),
            unitText(quantity, unit),
            what,
            size,
            cost === undefined ? "" : cost.toFixed(2),
            note,
          ],
          target: undefined,
        })),
        note: foot.join(" "),
      },
    ],
  });
}

function counted(count: number, one: string, more: string): string {
  return `${count} ${count === 1 ? one : more}`;
}
