import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dimensionRow, isTight, spread } from "../../../language/draw/dimension.ts";
import type { Text } from "../../../language/draw/display-list.ts";

const isText = (item: { readonly kind: string }): item is Text => item.kind === "text";

describe("a row of dimensions", () => {
  it("keeps labels apart, in their order, and where they want to be when there is room", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -500, max: 500, noNaN: true }), { maxLength: 30 }), (places) => {
        const wanted = [...places].sort((a, b) => a - b);
        const given = spread(wanted, 4);
        given.slice(1).forEach((place, index) => {
          expect(place - given[index]!).toBeGreaterThan(4 - 1e-6);
        });
        const roomy = wanted.map((_, index) => index * 10);
        expect(spread(roomy, 4)).toEqual(roomy);
      }),
    );
  });

  it("spreads two labels of one place evenly about it", () => {
    expect(spread([10, 10], 4)).toEqual([8, 12]);
  });

  it("shows every size once, level over a level line, upwards along an upright one", () => {
    const stretches = [
      { from: 0, to: 30, label: "11 3/4" },
      { from: 30, to: 31, label: "1/4" },
      { from: 31, to: 60, label: "9" },
    ];
    const across = dimensionRow({ run: "across", at: 10, edge: 0 }, stretches).filter(isText);
    expect(across.map((item) => [item.text, item.turn])).toEqual([
      ["11 3/4", "level"],
      ["9", "level"],
      ["1/4", "up"],
    ]);
    const up = dimensionRow({ run: "up", at: -10, edge: 0 }, stretches).filter(isText);
    expect(up.map((item) => [item.text, item.turn])).toEqual([
      ["11 3/4", "up"],
      ["9", "up"],
      ["1/4", "level"],
    ]);
    expect(isTight(stretches[1]!)).toBe(true);
  });

  it("puts a tight size at the end of a level row outside it", () => {
    const items = dimensionRow({ run: "across", at: 10, edge: 0 }, [
      { from: 0, to: 40, label: "16" },
      { from: 40, to: 41, label: "3/8" },
    ]).filter(isText);
    const outside = items.find((item) => item.text === "3/8")!;
    expect(outside.turn).toBe("level");
    expect(outside.at.x).toBeGreaterThan(41);
  });

  it("draws nothing for nothing", () => {
    expect(dimensionRow({ run: "across", at: 10, edge: 0 }, [])).toEqual([]);
    expect(dimensionRow({ run: "across", at: 10, edge: 0 }, [{ from: 3, to: 3, label: "0" }])).toEqual([]);
  });
});
