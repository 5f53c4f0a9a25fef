import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Area, Hatch, Point } from "../../../language/draw/display-list.ts";
import { corners } from "../../../language/draw/display-list.ts";
import { hatchLines } from "../../../language/draw/hatch.ts";

const kinds: readonly Hatch[] = ["solid", "ply", "core", "grain", "metal", "existing"];

const area = (points: readonly Point[], hatch: Hatch, along: Point): Area => ({
  kind: "area",
  points,
  hatch,
  along,
  weight: "heavy",
});

describe("hatching", () => {
  it("stays inside a rectangle, whichever way it lies", () => {
    const size = fc.double({ min: 0.3, max: 150, noNaN: true });
    const place = fc.double({ min: -200, max: 200, noNaN: true });
    fc.assert(
      fc.property(
        place,
        place,
        size,
        size,
        fc.constantFrom(...kinds),
        fc.boolean(),
        (x, y, wide, high, hatch, level) => {
          const points = corners({ x, y }, { x: x + wide, y: y + high });
          for (const { from, to } of hatchLines(area(points, hatch, level ? { x: 1, y: 0 } : { x: 0, y: 1 }))
            .stretches) {
            for (const point of [from, to]) {
              expect(point.x).toBeGreaterThan(x - 1e-6);
              expect(point.x).toBeLessThan(x + wide + 1e-6);
              expect(point.y).toBeGreaterThan(y - 1e-6);
              expect(point.y).toBeLessThan(y + high + 1e-6);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it("leaves the hollow of a grooved piece clear", () => {
    const grooved = [
      { x: 0, y: 0 },
      { x: 30, y: 0 },
      { x: 30, y: 8 },
      { x: 20, y: 8 },
      { x: 20, y: 12 },
      { x: 30, y: 12 },
      { x: 30, y: 20 },
      { x: 0, y: 20 },
    ];
    const { stretches } = hatchLines(area(grooved, "solid", { x: 1, y: 0 }));
    expect(stretches.length).toBeGreaterThan(10);
    for (const { from, to } of stretches) {
      const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
      expect(20.01 < middle.x && 8.01 < middle.y && middle.y < 11.99).toBe(false);
    }
  });

  it("tells the materials apart without colour", () => {
    const points = corners({ x: 0, y: 0 }, { x: 40, y: 6 });
    const drawn = kinds.map((kind) => JSON.stringify(hatchLines(area(points, kind, { x: 1, y: 0 })).stretches));
    expect(new Set(drawn).size).toBe(kinds.length);
    for (const lines of drawn) expect(lines).not.toBe("[]");
  });

  it("is the same every time", () => {
    const points = corners({ x: 0, y: 0 }, { x: 40, y: 30 });
    const make = () => hatchLines(area(points, "grain", { x: 1, y: 0 }));
    expect(make()).toEqual(make());
  });
});
