import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ratio } from "../../../language/core/rational.ts";
import { type Build, createWorkspace } from "../../../language/service.ts";
import { dryFit } from "../../../language/solid/dry-fit.ts";
import { built } from "../../support/built.ts";
import { design } from "./design.ts";
import { refitted, troubles } from "./support.ts";

const folder = fileURLToPath(new URL("../../../examples/", import.meta.url));
const names = readdirSync(folder).filter((name) => name.endsWith(".scant"));

function example(name: string): Build {
  const workspace = createWorkspace({ root: undefined });
  for (const one of names) workspace.set(`file:///examples/${one}`, readFileSync(folder + one, "utf8"));
  return workspace.build(`file:///examples/${name}`);
}

describe("the examples", () => {
  test.each(names)("%s goes together: nothing clashes, all faces meet, all that moves runs free", (name) => {
    const { context, model } = example(name).derivation;
    const fit = dryFit(context, model);
    expect(troubles({ ...fit, gaps: fit.gaps.filter(({ how }) => how !== "pins") })).toEqual([]);
    const placed = new Set(fit.placement.solids.map(({ part }) => part.id));
    const byHand = model.parts.filter(({ of }) => of.startsWith("part "));
    expect(model.parts.filter(({ id }) => !placed.has(id))).toEqual(byHand);
  });

  test("the largest is fitted well within a breath", () => {
    const { context, model } = example("print-room.scant").derivation;
    const times = Array.from({ length: 7 }, () => {
      const start = performance.now();
      dryFit(context, model);
      return performance.now() - start;
    }).sort((a, b) => a - b);
    expect(times[3]!).toBeLessThan(150);
  });
});

describe("designs drawn by chance", () => {
  test("always go together", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (seed) => {
        const build = built(design(seed));
        expect(build.whole).toBe(true);
        expect(build.derivation.model.boxes.every(({ parts }) => 0 < parts.length)).toBe(true);
        expect(troubles(build.dryFit()!)).toEqual([]);
        expect(build.dryFit()!.placement.unplaced).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test("are the same for the same seed", () => {
    expect(design(7)).toBe(design(7));
    expect(design(7)).not.toBe(design(8));
  });

  test("no point of a case lies in two parts", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1_000_000 }),
        fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })),
        (seed, chance) => {
          const { solids } = built(design(seed)).dryFit()!.placement;
          const within = (point: readonly number[], { rough }: { readonly rough: readonly number[] }): boolean =>
            point.every((at, axis) => rough[2 * axis]! < at && at < rough[2 * axis + 1]!);
          const next = (): number => chance.next().value as number;
          for (let shot = 0; shot < 400; shot++) {
            // A point in some part, and by the outlines, tongues and cuts themselves not in any other.
            const aimed = solids[Math.floor(next() * 0.999 * solids.length)]!;
            const { rough } = aimed.outline;
            const point = [0, 1, 2].map(
              (axis) => rough[2 * axis]! + next() * (rough[2 * axis + 1]! - rough[2 * axis]!),
            );
            const holders = solids.filter(
              ({ frame, outline, added, cuts }) =>
                frame === aimed.frame &&
                [outline, ...added].some((box) => within(point, box)) &&
                !cuts.some((box) => within(point, box)),
            );
            expect(holders.length).toBeLessThan(2);
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});

const shop = `inches
sheet ply { called 3/4  measures 3/4  size 48 x 96 }
sheet thin { called 1/4  measures 1/4  size 48 x 96 }
board oak { thick 3/4  wide 6, 8  long 96  species white oak }
slides runner { mount side  lengths 10 to 28 by 2  clearance 1/2  behind 1/2 }
grooves { wide 1/4  deep 3/8 }
case one {
  wide 30  high 20  deep 16  panels ply  back thin in rabbet 3/8  kick 3 high 2 deep  partitions ply
  frame oak { stiles 2  rails 1 1/2  across { opening drawer 12  stile  opening beside rest } }
}
box for drawer { sides ply  bottom thin in groove 1/4 up 1/2  corners rabbet 3/8  slides runner }
front for drawer { overlay 1/2  frame oak 2 wide  panel thin }
shelf in beside { from ply  fixed }
`;

describe("one size an eighth of an inch off", () => {
  const build = built(shop);
  const eighth = { longer: ratio(1, 8), shorter: ratio(-1, 8) };

  test("fits as it is derived", () => {
    expect(troubles(build.dryFit()!)).toEqual([]);
  });

  test.each([
    // A part that is longer runs into what it ends at: 1/8 x its width of 15 x its thickness of 3/4.
    ["case one/bottom", "length", "longer", "clash: case one/bottom, case one/side (2): 45/32"],
    ["case one/bottom", "length", "shorter", "gap: case one/bottom, case one/side (2): joined 1/8"],
    ["case one/partition", "length", "longer", "clash: case one/top, case one/partition: 45/32"],
    ["case one/partition", "length", "shorter", "gap: case one/partition, case one/top: joined 1/8"],
    ["case one/rail", "length", "longer", "clash: case one/rail (1), case one/stile (2): 9/64"],
    ["case one/rail", "length", "shorter", "gap: case one/rail (1), case one/stile (2): joined 1/8"],
    ["case one/mid stile", "length", "shorter", "gap: case one/mid stile, case one/rail (2): joined 1/8"],
    ["case one/back", "width", "longer", "clash: case one/back, case one/side (2): 5/8"],
    ["case one/back", "width", "shorter", "gap: case one/back, case one/side (2): joined 1/8"],
    // Past its rabbet 1/8 x (3/4 x 13 1/2, less a groove of 1/4 x 1/4).
    ["box drawer/front", "length", "longer", "clash: box drawer/front, box drawer/side (2): 161/128"],
    ["box drawer/front", "length", "shorter", "gap: box drawer/front, box drawer/side (2): joined 1/8"],
    // A play of 1/16 forgives half of it: 1/32 into the groove's floor at each edge.
    ["box drawer/bottom", "width", "longer", "clash: box drawer/side (1), box drawer/bottom: 25/256"],
    ["front drawer/rail", "length", "longer", "clash: front drawer/rail (1), front drawer/stile (2): 45/256"],
    ["front drawer/rail", "length", "shorter", "gap: front drawer/rail (1), front drawer/stile (2): joined 1/8"],
    ["shelf beside/shelf", "length", "longer", "clash: case one/partition, shelf beside/shelf: 45/64"],
  ] as const)("%s, %s %s", (id, size, way, expected) => {
    const found = troubles(refitted(build, id, size, eighth[way]));
    expect(found).toContain(expected);
  });
});
