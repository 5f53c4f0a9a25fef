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
    note: "Counts of screws, pins and edging are common practice; buy a few more.",
  };
}

export function countText(item: HardwareItem): string {
  const unit = item.quantity === 1 ? item.unit : item.unit === "foot" ? "feet" : `${item.unit}s`;
  return `${item.quantity} ${unit}`;
}
