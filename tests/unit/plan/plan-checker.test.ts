import { describe, expect, test } from "vitest";
import { packSheets } from "../../../language/plan/pack/pack-sheets.ts";
import type { CutPiece, Placement, SheetPlan, SheetProblem, UsedSheet } from "../../../language/plan/pack/problem.ts";
import { checkSheetPlan } from "../../support/plan-checker.ts";

const problem: SheetProblem = {
  sheets: [{ id: "ply", width: 100, height: 60, cost: 5, have: 3 }],
  kerf: 2,
  trim: 1,
  parts: [
    { id: "side", width: 40, height: 30, quantity: 2, turn: "fixed" },
    { id: "shelf", width: 20, height: 50, quantity: 1, turn: "free" },
    { id: "left", width: 10, height: 12, quantity: 1, turn: "fixed", group: "fronts" },
    { id: "right", width: 14, height: 12, quantity: 1, turn: "fixed", group: "fronts" },
  ],
};
const plan = packSheets(problem, { steps: 200 });

describe("the checker of plans", () => {
  test("passes a good plan", () => {
    expect(checkSheetPlan(problem, plan)).toEqual([]);
    expect(plan.sheets.length).toBe(1);
  });

  test("finds a part outside the sheet", () => {
    expect(faults(moved("side", 90, 0))).toContain("side lies outside the sheet");
  });

  test("finds parts that overlap", () => {
    const shelf = placedOf("shelf");
    expect(faults(withPlaced((one) => (one.part === "right" ? { ...one, x: shelf.x, y: shelf.y } : one)))).toContain(
      "overlap",
    );
  });

  test("finds parts without room for the blade", () => {
    const wide = { ...problem, kerf: 3 };
    expect(checkSheetPlan(wide, plan).join("\n")).toContain("no room for the blade");
  });

  test("finds a part turned against its grain", () => {
    const turned = withPlaced((one) =>
      one.part === "left" ? { ...one, turned: true, width: one.height, height: one.width } : one,
    );
    expect(faults(turned)).toContain("left is turned against its grain");
  });

  test("finds a part of the wrong size, and a part nobody asked for", () => {
    expect(faults(withPlaced((one) => (one.part === "left" ? { ...one, width: 9 } : one)))).toContain(
      "left is not of its size",
    );
    expect(faults(withPlaced((one) => (one.part === "left" ? { ...one, part: "lid" } : one)))).toContain(
      "no part is called lid",
    );
  });

  test("finds a missing part and one too many", () => {
    const sheet = plan.sheets[0]!;
    const fewer = { ...plan, sheets: [{ ...sheet, placed: sheet.placed.filter((one) => one.part !== "shelf") }] };
    expect(faults(fewer)).toContain("shelf: 0 placed, 0 not, 1 wanted");
    const more = { ...plan, sheets: [sheet, sheet] };
    expect(faults(more)).toContain("shelf: 2 placed, 0 not, 1 wanted");
  });

  test("finds more sheets than there are, an unknown sheet, and false totals", () => {
    const sheet = plan.sheets[0]!;
    expect(faults({ ...plan, sheets: [sheet, sheet, sheet, sheet] })).toContain("4 of ply used, 3 there");
    expect(faults({ ...plan, sheets: [{ ...sheet, stock: "oak" }] })).toContain("no stock is called oak");
    expect(faults({ ...plan, sheetsUsed: 2 })).toContain("1 new sheets used, 2 said");
    expect(faults({ ...plan, cost: 4 })).toContain("the sheets cost 5, 4 said");
    expect(faults({ ...plan, lowerBound: 2 })).toContain("the bound is false");
  });

  test("finds a layout that no straight cuts can free", () => {
    const pinwheel: SheetProblem = {
      sheets: [{ id: "ply", width: 30, height: 30, cost: 1 }],
      kerf: 0,
      trim: 0,
      parts: [{ id: "blade", width: 20, height: 10, quantity: 4, turn: "free" }],
    };
    const at = (x: number, y: number, turned: boolean): Placement => {
      const size = turned ? { width: 10, height: 20 } : { width: 20, height: 10 };
      return { part: "blade", x, y, ...size, turned };
    };
    const placed = [at(0, 0, false), at(20, 0, true), at(10, 20, false), at(0, 10, true)];
    const cuts: CutPiece = { x: 0, y: 0, width: 30, height: 30, content: { kind: "remainder" } };
    const sheet: UsedSheet = { stock: "ply", width: 30, height: 30, placed, cuts };
    const found = faults({ ...plan, sheets: [sheet], sheetsUsed: 1, cost: 1, lowerBound: 1, costBound: 1 }, pinwheel);
    expect(found).toContain("no straight cuts through the whole piece can free all parts");
    expect(found).not.toContain("overlap");
  });

  test("finds a tree of cuts that gives other parts, or pieces that do not add up", () => {
    const sheet = plan.sheets[0]!;
    const nothing: CutPiece = { ...sheet.cuts, content: { kind: "remainder" } };
    expect(faults({ ...plan, sheets: [{ ...sheet, cuts: nothing }] })).toContain("does not give the parts placed");
    const { content } = sheet.cuts;
    if (content.kind !== "cut") throw new Error("the example must be cut");
    const short: CutPiece = { ...sheet.cuts, content: { ...content, pieces: content.pieces.slice(0, -1) } };
    expect(faults({ ...plan, sheets: [{ ...sheet, cuts: short }] })).toContain("do not add up");
    const swapped: CutPiece = { ...sheet.cuts, content: { ...content, along: content.along === "x" ? "y" : "x" } };
    expect(faults({ ...plan, sheets: [{ ...sheet, cuts: swapped }] })).toContain("is not what the cut leaves");
    const grown: CutPiece = { ...sheet.cuts, width: sheet.cuts.width + 1 };
    expect(faults({ ...plan, sheets: [{ ...sheet, cuts: grown }] })).toContain("does not begin with the trimmed sheet");
  });

  test("finds a matched row out of order, out of line, and on two sheets", () => {
    const left = placedOf("left");
    const right = placedOf("right");
    const exchanged = withPlaced((one) =>
      one.part === "left"
        ? { ...one, x: left.x + right.width + 2 }
        : one.part === "right"
          ? { ...one, x: left.x }
          : one,
    );
    expect(faults(exchanged)).toContain("row fronts is not in its order");
    expect(faults(moved("right", 0, 1))).toContain("row fronts is not cut from one strip");
    const sheet = plan.sheets[0]!;
    const apart = [
      { ...sheet, placed: sheet.placed.filter((one) => one.part !== "left") },
      { ...sheet, placed: sheet.placed.filter((one) => one.part === "left") },
    ];
    expect(faults({ ...plan, sheets: apart })).toContain("row fronts is spread over 2 sheets");
  });
});

function faults(broken: SheetPlan, of: SheetProblem = problem): string {
  return checkSheetPlan(of, broken).join("\n");
}

function placedOf(part: string): Placement {
  const found = plan.sheets[0]?.placed.find((one) => one.part === part);
  if (found === undefined) throw new Error(`${part} is not in the plan`);
  return found;
}

function withPlaced(change: (one: Placement) => Placement): SheetPlan {
  return { ...plan, sheets: plan.sheets.map((sheet) => ({ ...sheet, placed: sheet.placed.map(change) })) };
}

function moved(part: string, dx: number, dy: number): SheetPlan {
  return withPlaced((one) => (one.part === part ? { ...one, x: one.x + dx, y: one.y + dy } : one));
}
