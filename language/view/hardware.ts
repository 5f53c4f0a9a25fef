import type { HardwareItem } from "../derive/hardware.ts";
import type { Model } from "../derive/model.ts";
import { ownersText } from "./owners.ts";
import type { RodTable } from "./types.ts";

/** What is bought and not cut: how many, and what for. */
export function hardwareTable(model: Model): RodTable {
  const left = "left" as const;
  return {
    id: "hardware",
    title: "Hardware",
    columns: [
      { title: "how many", align: "right" },
      { title: "what", align: left },
      { title: "size", align: left },
      { title: "for", align: left },
    ],
    rows: model.hardware.map((item) => ({
      cells: [
        countText(item),
        item.name === item.kind ? item.name : `${item.name} (${item.kind})`,
        item.size,
        ownersText(item.owners),
      ],
      target: undefined,
    })),
    note: "Counts of screws, dowels, pins and edging, and the sizes of screws that the file does not name, are common practice; buy a few more.",
  };
}

export function countText({ quantity, unit }: HardwareItem): string {
  return `${quantity} ${unitText(quantity, unit)}`;
}

/** The unit behind a quantity of it: `1 foot`, `12.2 feet`, `0 sheets`. */
export function unitText(quantity: number, unit: string): string {
  if (quantity === 1) return unit;
  return unit === "foot" ? "feet" : `${unit}s`;
}
