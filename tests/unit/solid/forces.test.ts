import { describe, expect, test } from "vitest";
import { toNumber } from "../../../language/core/rational.ts";
import type { DryFit } from "../../../language/solid/dry-fit.ts";
import { built } from "../../support/built.ts";

const shop = `inches
sheet ply { called 3/4  measures 3/4  size 48 x 96  density 36 }
sheet thin { called 1/4  measures 1/4  size 48 x 96  density 36 }
board oak { thick 3/4  wide 6, 8  long 96  species white oak  sawn flat  moisture 8% }
slides runner { mount side  lengths 10 to 28 by 2  clearance 1/2  behind 1/2  carries 100 lb }
place { shop 8%  driest 6%  dampest 12% }
grooves { wide 1/4  deep 3/8 }
`;

const fitOf = (text: string): DryFit => built(shop + text).dryFit()!;

describe("wood over the seasons", () => {
  test("a panel's room is measured where it lies, and its movement is that of Eq. 13-2", () => {
    const [panel] = fitOf(`
opening left { wide 15  high 20 }
door for left { overlay 1/2  frame oak 2 wide  panel oak solid  float 1/8  hinged left }
`).movement.floating;
    // The cell is 12 wide, the panel 12 + 2 x 3/8 - 2 x 1/8 = 12 1/2. White oak, C_T 0.00365 (Wood Handbook, Table 13-5).
    expect(panel!.grows).toBeCloseTo(12.5 * 0.00365 * 4, 10);
    expect(panel!.shrinks).toBeCloseTo(12.5 * 0.00365 * 2, 10);
    expect(panel!.spare).toBeCloseTo(1 / 8 - (12.5 * 0.00365 * 4) / 2, 10);
    expect(panel!.held).toBeCloseTo(3 / 8 - 2 / 8 - 12.5 * 0.00365 * 2, 10);
  });

  test("a solid top on sides that do not move is held across its grain, one on solid sides is not", () => {
    const held = (panels: string): readonly string[] =>
      fitOf(
        `case one { wide 24  high 20  deep 16  panels ${panels}  back thin  top panel oak }`,
      ).movement.restrained.map(({ solid, by }) => `${solid.part.name} by ${by.part.name}`);
    expect(new Set(held("ply"))).toEqual(new Set(["top by side"]));
    // Sides of the same wood move as the top does.
    expect(held("oak").filter((line) => line === "top by side")).toEqual([]);
  });
});

describe("loads", () => {
  test("a rail under a slide in its middle bends by PL³/48EI and shear", () => {
    const rail = fitOf(`
slides middle { mount centre  lengths 10 to 28 by 2  clearance 1/8  behind 1/2 }
case one { wide 40  high 20  deep 16  panels ply  back thin
  frame oak { stiles 2  rails 1 1/2  down { opening drawer 6  rail  opening below rest } } }
box for drawer { sides ply  bottom thin under  corners screws  slides middle  holds 60 lb }
`).loads.bending.find(({ kind }) => kind === "rail")!;
    // Wood Handbook, Table 9-1: k_b 1/48, k_s 1/4; white oak 1.78 million psi, G a sixteenth of it.
    const [e, inertia, area] = [1.78e6, (0.75 * 1.5 ** 3) / 12, (5 / 6) * 0.75 * 1.5];
    expect(rail.span).toBe(36);
    expect(rail.sag).toBeCloseTo(
      (rail.load * 36 ** 3) / (48 * e * inertia) + (rail.load * 36) / (4 * (e / 16) * area),
      8,
    );
    expect(rail.longest()).toBeGreaterThan(36);
  });

  test("a shelf is shown with the longest span that its load allows, and that span just holds", () => {
    const shelf = (wide: number) =>
      fitOf(
        `opening left { wide ${wide}  high 20  deep 12 }\nshelf in left { from ply  adjustable  gap 0  set 0  holds 60 lb }`,
      ).loads.bending[0]!;
    const longest = shelf(30).longest()!;
    expect(shelf(Math.floor(longest * 16) / 16).sag).toBeLessThanOrEqual(Math.floor(longest * 16) / 16 / 144);
    const over = Math.ceil(longest * 16 + 1) / 16;
    expect(over / 144).toBeLessThan(shelf(over).sag);
  });
});

describe("a chest that stands on the floor", () => {
  const fit = fitOf(`
case one { wide 24  high 30  deep 20  panels ply  back thin  kick 4 high 3 deep  down { openings a-1 to a-2 equal } }
box for a-1 to a-2 { sides ply  bottom thin under  corners screws  slides runner  holds 30 lb }
front for a-1 to a-2 { slab ply }
`);
  const [standing] = fit.standing;
  const [shut, empty, loaded] = standing!.balances;

  test("is balanced about the front of its kick, and drawers carry their weight out by their travel", () => {
    const drawers = fit.assemblies.filter(({ of }) => /^(box|front) /.test(of));
    const moved = drawers.reduce((sum, { pounds }) => sum + pounds, 0);
    expect(standing!.mass).toBeCloseTo(
      fit.assemblies.reduce((sum, { pounds }) => sum + pounds, 0),
      10,
    );
    expect(shut!.behind - empty!.behind).toBeCloseTo((moved * 18) / standing!.mass, 10);
    expect(loaded!.pounds - empty!.pounds).toBeCloseTo(60, 10);
    // Each load lies in the middle of a box of 18 that has come out by 18, before a kick whose face is at 2 1/4.
    const total = standing!.mass + 60;
    expect(loaded!.behind).toBeCloseTo((empty!.behind * standing!.mass + 60 * (9 - 18 - 2.25)) / total, 10);
    expect(shut!.high).toBeCloseTo(empty!.high, 10);
  });

  test("its storage is counted as the guidance counts it", () => {
    const volume = fit.model.boxes.reduce((sum, { inside, slides }) => {
      const height = toNumber(inside!.high.value) + toNumber(slides.above.value) - 1 / 8;
      return sum + (height * toNumber(inside!.wide.value) * toNumber(inside!.deep.value)) / 1728;
    }, 0);
    expect(standing!.volume).toBeCloseTo(volume, 10);
    expect(standing!.scope?.tall).toBe(true);
  });

  test("a case without a kick, not said to stand free, is not judged", () => {
    expect(fitOf("case one { wide 24  high 30  deep 20  panels ply  opening a }").standing).toEqual([]);
  });
});

describe("lifting", () => {
  test("whole sheets, assemblies and parts are weighed, heaviest first, against what is written", () => {
    const { limit, lifts } = fitOf("lift 30 lb\npart plank { from ply  long 48  wide 24 }").handling;
    // 48 x 96 x 3/4 at 36 lb per cubic foot is 72 lb, 24 x 48 a quarter of it.
    expect(limit).toBe(30);
    expect(lifts.slice(0, 1)).toEqual([{ kind: "sheet", of: "ply", pounds: 72, index: 72 / 30 }]);
    expect(lifts.find(({ of }) => of === "part plank")).toEqual({
      kind: "assembly",
      of: "part plank",
      pounds: 18,
      index: 0.6,
    });
  });

  test("a reach lowers the limit by the lifting equation", () => {
    // 51 x 10/20 x (1 - 0.0075 x 20) x (0.82 + 1.8/30) x 0.95 for a fair grip low down.
    expect(fitOf("lift 40 lb reach 20 from 10 up 40").handling.limit).toBeCloseTo(51 * 0.5 * 0.85 * 0.88 * 0.95, 10);
    expect(fitOf("lift 40 lb").handling.equation).toBeUndefined();
    expect(fitOf("").handling.limit).toBe(51);
  });
});
