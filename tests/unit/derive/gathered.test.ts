import { describe, expect, test } from "vitest";
import type { Machining, Part } from "../../../language/core/part.ts";
import { startOfFile } from "../../../language/core/span.ts";
import { gathered } from "../../../language/derive/parts.ts";
import { inch } from "../../support/built.ts";

const groove: Machining = { kind: "groove", where: "inside face", wide: inch("1/4"), deep: inch("3/8"), count: 1 };
const side: Part = {
  id: "box a/side",
  name: "side",
  of: "box a",
  quantity: 2,
  stock: "ply",
  stockKind: "sheet",
  length: inch("20"),
  width: inch("5"),
  thickness: inch("3/4"),
  grain: "long",
  machining: [groove],
  source: startOfFile("file:///a.scant"),
};
const rows = (...parts: readonly Part[]) => gathered(parts).map(({ id, quantity }) => `${quantity} ${id}`);

describe("parts of one owner and name", () => {
  test("that are alike are counted together, wherever they stand in the list", () => {
    const other: Part = { ...side, id: "box a/back", name: "back" };
    expect(rows(side, other, { ...side, quantity: 3 })).toEqual(["5 box a/side", "2 box a/back"]);
    // An equal size from somewhere else is the same size.
    expect(rows(side, { ...side, length: inch("40/2") })).toEqual(["4 box a/side"]);
    expect(rows(side, { ...side, machining: [{ ...groove, wide: inch("2/8") }] })).toEqual(["4 box a/side"]);
  });

  const unlike: readonly [string, Partial<Part>][] = [
    ["stock", { stock: "oak" }],
    ["length", { length: inch("19") }],
    ["width", { width: inch("4") }],
    ["thickness", { thickness: inch("1/2") }],
    ["grain", { grain: "across" }],
    ["what it is cut to fit", { cutToFit: "take it from the case" }],
    ["note", { note: "pins" }],
    ["the strip it comes from", { matched: { group: "strip", place: 0, along: "grain" } }],
    ["machining, of which there is none", { machining: [] }],
    ["machining, of which there is more", { machining: [groove, groove] }],
    ["kind of machining", { machining: [{ ...groove, kind: "dado" }] }],
    ["place of machining", { machining: [{ ...groove, where: "outside face" }] }],
    ["count of machining", { machining: [{ ...groove, count: 2 }] }],
    ["note on machining", { machining: [{ ...groove, note: "bottom" }] }],
    ["width of machining", { machining: [{ ...groove, wide: inch("1/2") }] }],
    ["depth of machining", { machining: [{ ...groove, deep: inch("1/2") }] }],
    ["distance of machining", { machining: [{ ...groove, from: inch("1/2") }] }],
  ];
  test.each(unlike)("that differ in %s stand apart, the second with a number", (_what, change) => {
    expect(rows(side, { ...side, ...change })).toEqual(["2 box a/side", "2 box a/side 2"]);
    expect(rows({ ...side, ...change }, side)).toEqual(["2 box a/side", "2 box a/side 2"]);
  });

  test("of other owners or names stand apart without a number", () => {
    expect(rows(side, { ...side, of: "box b", id: "box b/side" })).toEqual(["2 box a/side", "2 box b/side"]);
  });

  test("of three shapes are numbered one after the other", () => {
    expect(rows(side, { ...side, note: "one" }, { ...side, note: "two" })).toEqual([
      "2 box a/side",
      "2 box a/side 2",
      "2 box a/side 3",
    ]);
  });
});
