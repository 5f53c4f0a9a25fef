import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Body, Seen, SeenLine, SeenScene } from "../../../language/draw/exploded-hidden.ts";
import { areaOf, onSheet, seenFrom, seenScene } from "../../../language/draw/exploded-hidden.ts";
import type { Block, Spot } from "../../../language/draw/exploded-shape.ts";
import { shapeOf } from "../../../language/draw/exploded-shape.ts";

const block = (from: Spot, to: Spot): Block => ({ from, to });
const body = (...blocks: readonly Block[]): Body => ({ ...shapeOf(blocks), marks: [] });
const scene = (...bodies: readonly Body[]): SeenScene => seenScene(bodies, []);
const longOf = (lines: readonly SeenLine[]): number =>
  lines.reduce((sum, { from, to }) => {
    const [a, b] = [onSheet(from), onSheet(to)];
    return sum + Math.hypot(a.x - b.x, a.y - b.y);
  }, 0);
const areaSeen = (seen: SeenScene, index: number): number =>
  seen.bodies[index]!.regions.reduce((sum, { points }) => sum + areaOf(points), 0);

describe("isometric projection", () => {
  // ISO 5456-3: in isometric axonometry the three axes lie 120° from one another, all at the same scale.
  it("draws each axis at its true length, x and z at 30° to the level, y upright", () => {
    const at = (spot: Spot): { readonly x: number; readonly y: number } => onSheet(seenFrom(spot));
    for (const [spot, degrees] of [
      [[10, 0, 0], 30],
      [[0, 0, 10], -30],
      [[0, 10, 0], -90],
    ] as const) {
      const { x, y } = at(spot);
      expect(Math.hypot(x, y)).toBeCloseTo(10, 9);
      expect((Math.atan2(y, x) * 180) / Math.PI).toBeCloseTo(degrees, 9);
    }
  });
});

describe("the shape of boxes", () => {
  it("of one box has three faces and nine edges, six of them on its outline", () => {
    const { faces, edges } = shapeOf([block([0, 0, 0], [3, 2, 1])]);
    expect(faces).toHaveLength(3);
    expect(edges.filter(({ kind }) => kind === "outline")).toHaveLength(6);
    expect(edges.filter(({ kind }) => kind === "inner")).toHaveLength(3);
  });

  it("of one box in two is that of the whole: no seam", () => {
    const sorted = (blocks: readonly Block[]): readonly string[] =>
      shapeOf(blocks)
        .edges.map((edge) => JSON.stringify(edge))
        .sort();
    const halves = [block([0, 0, 0], [1, 2, 1]), block([1, 0, 0], [3, 2, 1])];
    expect(sorted(halves)).toEqual(sorted([block([0, 0, 0], [3, 2, 1])]));
  });

  it("of a box with a rabbet in its upper front edge has the rabbet's own faces and corner", () => {
    // 4 wide, 2 high, 2 deep; the rabbet takes the upper half of the front half.
    const { faces, edges } = shapeOf([block([0, 0, 0], [4, 1, 2]), block([0, 1, 1], [4, 2, 2])]);
    const tops = faces.filter(({ way }) => way === 1);
    expect(tops.map(({ at }) => at).sort()).toEqual([1, 2]);
    const fronts = faces.filter(({ way }) => way === 2);
    expect(fronts.map(({ at }) => at).sort()).toEqual([0, 1]);
    // Where the rabbet's floor meets its wall, both are seen.
    expect(edges).toContainEqual({ from: [0, 1, 1], to: [4, 1, 1], kind: "inner" });
    // The end is an L: 2 by 2 without 1 by 1.
    const ends = faces.filter(({ way }) => way === 0);
    expect(ends.reduce((sum, { from, to }) => sum + (to[0] - from[0]) * (to[1] - from[1]), 0)).toBe(3);
  });
});

describe("hidden lines", () => {
  it("leave one box alone whole: nine edges of its sizes", () => {
    const seen = scene(body(block([0, 0, 0], [3, 2, 1])));
    expect(seen.bodies[0]!.edges).toHaveLength(9);
    expect(longOf(seen.bodies[0]!.edges)).toBeCloseTo(3 * (3 + 2 + 1), 6);
  });

  it("hide all of a box that stands behind a larger one, and nothing of the larger one", () => {
    // Along the line of sight (1, 1, -1) from the small one to the eye stands the large one.
    const seen = scene(body(block([4, 4, 4], [5, 5, 5])), body(block([6, 5, -3], [14, 13, 2])));
    expect(seen.bodies[0]!.regions).toEqual([]);
    expect(seen.bodies[0]!.edges).toEqual([]);
    expect(seen.bodies[1]!.edges).toHaveLength(9);
    expect([...seen.bodies[0]!.under]).toEqual([1]);
  });

  it("cut a line off where a nearer face begins", () => {
    // A rod from left to right behind a post: seen from above at (0, 0), it passes under the post's face from x = 2 to 4.
    const post = body(block([2, -20, -1], [4, 20, 0]));
    const rod = { from: [0, 0, 6] as const, to: [20, 0, 6] as const };
    const parts = seenScene([post], [rod]).lines[0]!;
    // The post spans x + z from 1 to 4 on the sheet (its right end reaches back to z = 0), the rod lies at x + 6.
    expect(parts).toHaveLength(1);
    expect(parts[0]!.from.across).toBeCloseTo(6, 6);
    const nearer = { from: [-8, 0, 6] as const, to: [20, 0, 6] as const };
    const both = seenScene([post], [nearer]).lines[0]!;
    expect(both).toHaveLength(2);
    expect(both[0]!.to.across).toBeCloseTo(1, 3);
    expect(both[1]!.from.across).toBeCloseTo(4, 3);
  });

  it("order three boxes that each lie over the next in a ring", () => {
    // No order of whole boxes is right for these: each hides some of the next.
    const ring = [
      body(block([0, 0, 0], [10, 1, 1])),
      body(block([9, 1, -4], [10, 2, 7])),
      body(block([5, -6, 6], [6, 5, 7])),
    ];
    const apart = ring.map((one) => areaSeen(scene(one), 0));
    const seen = scene(...ring);
    const shown = ring.map((_, index) => areaSeen(seen, index));
    expect(shown[0]).toBeLessThan(apart[0]!);
    for (const [index, area] of shown.entries()) expect(area).toBeLessThanOrEqual(apart[index]! + 1e-6);
  });

  it("draw both edges where two boxes lie flush, and no line of what is between them", () => {
    const seen = scene(body(block([0, 0, 0], [2, 2, 2])), body(block([2, 0, 0], [4, 2, 2])));
    // The left one's right end is against the other and not seen.
    expect(seen.bodies[0]!.regions.filter(({ face }) => face.way === 0)).toEqual([]);
    expect(longOf(seen.bodies[1]!.edges)).toBeCloseTo(18, 3);
    expect(areaSeen(seen, 1)).toBeCloseTo(3 * 8, 3);
  });

  it("cut two boxes that stand in one another where their faces meet", () => {
    // The smaller one comes 1 out of the larger one's front: 2 wide, 2 high and 1 deep of it is seen, each face twice
    // its area in these steps of the sheet.
    const seen = scene(body(block([0, 0, 0], [4, 4, 4])), body(block([1, 1, -1], [3, 3, 1])));
    expect(areaSeen(seen, 1)).toBeCloseTo(2 * (2 * 2 + 2 * 1 + 2 * 1), 2);
    // Of the front is hidden what the 2 by 2 sweeps when it is moved 1 down and 1 to the left: 4 and twice 2.
    const front = seen.bodies[0]!.regions.filter(({ face }) => face.way === 2);
    expect(front.reduce((sum, { points }) => sum + areaOf(points), 0)).toBeCloseTo(2 * (16 - 8), 2);
  });

  // An independent answer for any scene: which face a line of sight meets first.
  it("show at every place on the sheet the face that a line of sight meets first", () => {
    const size = fc.integer({ min: 1, max: 6 });
    const place = fc.integer({ min: 0, max: 12 });
    const any = fc
      .tuple(place, place, place, size, size, size)
      .map(([x, y, z, a, b, c]) => block([x, y, z], [x + a, y + b, z + c]));
    fc.assert(
      fc.property(
        fc.array(any, { minLength: 1, maxLength: 6 }),
        fc.array(fc.tuple(fc.nat(997), fc.nat(991)), { minLength: 20, maxLength: 20 }),
        (blocks, places) => {
          const seen = scene(...blocks.map((one) => body(one)));
          for (const [i, j] of places) {
            const at = { across: (i / 997) * 40 + 0.00317, down: (j / 991) * 60 - 42 + 0.00713 };
            const shown = seen.bodies.flatMap(({ regions }, index) =>
              regions.filter(({ points }) => holds(points, at)).map(({ face }) => `${index} ${face.way}`),
            );
            const [first, second] = hitsOf(blocks, at);
            // Of faces that are as near as one another either may be shown.
            if (first !== undefined && second !== undefined && first.near - second.near < 0.01) continue;
            expect(shown).toEqual(first === undefined ? [] : [`${first.index} ${first.way}`]);
          }
        },
      ),
      { numRuns: 150, seed: 7 },
    );
  });

  it("draw an edge exactly where no box stands before it", () => {
    const size = fc.integer({ min: 1, max: 6 });
    const place = fc.integer({ min: 0, max: 10 });
    const any = fc
      .tuple(place, place, place, size, size, size)
      .map(([x, y, z, a, b, c]) => block([x, y, z], [x + a, y + b, z + c]));
    fc.assert(
      fc.property(fc.array(any, { minLength: 2, maxLength: 5 }), (blocks) => {
        const seen = scene(...blocks.map((one) => body(one)));
        for (const [index, one] of blocks.entries()) {
          for (const { from, to } of shapeOf([one]).edges) {
            for (const share of [0.137, 0.418, 0.803]) {
              const spot = from.map((start, way) => start + (to[way]! - start) * share) as unknown as Spot;
              const at = seenFrom(spot);
              const near = spot[0] + spot[1] - spot[2];
              const hits = hitsOf(blocks, at);
              // A place on an edge of another box is drawn by that one, whether it is hidden here or not.
              if (blocks.some((other, number) => number !== index && isOnEdge(other, at))) continue;
              const isHidden = hits.some((hit) => near + 0.01 < hit.near);
              const isShown = seen.bodies[index]!.edges.some((line) => passes(line, at));
              expect(isShown).toBe(!isHidden);
            }
          }
        }
      }),
      { numRuns: 150, seed: 11 },
    );
  });
});

interface Hit {
  readonly index: number;
  readonly way: number;
  readonly near: number;
}

/** Every visible face that a line of sight meets, nearest first; worked out from the line itself. */
function hitsOf(blocks: readonly Block[], { across, down }: Seen): readonly Hit[] {
  // One spot on the line: z = 0, so x = across, and y from down; the line goes on along (1, 1, -1).
  const start: Spot = [across, (across - down) / 2, 0];
  const hits = blocks.flatMap(({ from, to }, index): readonly Hit[] => {
    let [enter, leave, way] = [-Infinity, Infinity, -1];
    for (const one of [0, 1, 2] as const) {
      const step = one === 2 ? -1 : 1;
      const times = [(from[one] - start[one]) / step, (to[one] - start[one]) / step].sort((a, b) => a - b);
      enter = Math.max(enter, times[0]!);
      if (times[1]! < leave) [leave, way] = [times[1]!, one];
    }
    return enter < leave ? [{ index, way, near: start[0] + start[1] + 3 * leave }] : [];
  });
  return [...hits].sort((a, b) => b.near - a.near);
}

function holds(points: readonly Seen[], at: Seen): boolean {
  const turns = points.map((a, index) => {
    const b = points[(index + 1) % points.length]!;
    return (b.across - a.across) * (at.down - a.down) - (b.down - a.down) * (at.across - a.across);
  });
  return turns.every((turn) => 0 < turn) || turns.every((turn) => turn < 0);
}

function isOnEdge(one: Block, at: Seen): boolean {
  return shapeOf([one]).edges.some(({ from, to }) => passes({ from: seenFrom(from), to: seenFrom(to) }, at));
}

function passes({ from, to }: SeenLine, at: Seen): boolean {
  const [x, y] = [to.across - from.across, to.down - from.down];
  const off = Math.abs(x * (at.down - from.down) - y * (at.across - from.across)) / Math.hypot(x, y);
  const along = (x * (at.across - from.across) + y * (at.down - from.down)) / (x * x + y * y);
  return off < 1e-3 && -1e-3 < along && along < 1.001;
}
