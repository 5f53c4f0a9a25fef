import { expect, test, vi } from "vitest";
import type { PlanDocument } from "../../language/view/types.ts";

vi.mock("vscode", () => ({}));
vi.mock("../../extension/preview/panel.ts", () => ({}));
vi.mock("../../extension/commands/build-file.ts", () => ({}));
vi.mock("../../extension/commands/folder.ts", () => ({}));

const { planSentence } = await import("../../extension/commands/plan-cuts.ts");

test("a plan of as few boards as are needed is not said to need at least so many: others might be cheaper", () => {
  const said = (used: number, lowerBound: number, proven: boolean): string => {
    const stock = { stock: "ash", kind: "board", used, lowerBound, proven, inRack: 0, buy: used, unplaced: [] };
    const plan = { stocks: [stock], unsized: [] } as unknown as PlanDocument;
    return planSentence(plan, (text, ...words) => text.replace(/\{(\d)\}/g, (_, at) => String(words[Number(at)])));
  };
  expect(said(2, 2, false)).toContain("not proven to be the cheapest");
  expect(said(3, 2, false)).toContain("at least 2");
  expect(said(2, 2, true)).toContain("no cheaper purchase is possible");
});
