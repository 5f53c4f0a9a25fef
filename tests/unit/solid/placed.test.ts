import { describe, expect, test } from "vitest";
import { roughVolume } from "../../../language/solid/box.ts";
import { dryFit } from "../../../language/solid/dry-fit.ts";
import { built } from "../../support/built.ts";
import { solidCalled, troubles } from "./support.ts";

const shop = `inches
sheet ply { called 3/4  measures 3/4  size 48 x 96  density 36 }
sheet thin { called 1/4  measures 1/4  size 48 x 96 }
board oak { thick 3/4  wide 6, 8  long 96  species white oak }
slides runner { mount side  lengths 10 to 28 by 2  clearance 1/2  above 1/4  below 1/4  behind 1/2 }
grooves { wide 1/4  deep 3/8 }
`;

function fitOf(text: string) {
  const { context, model } = built(shop + text).derivation;
  return dryFit(context, model);
}

describe("places and volumes worked by hand", () => {
  const fit = fitOf(`
case one {
  wide 30  high 20  deep 16  panels ply  back thin in rabbet 3/8  kick 3 high 2 deep
  frame oak { stiles 2  rails 1 1/2  down { opening drawer 6  rail  opening below rest } }
}
box for drawer { sides ply  bottom thin in groove 1/4 up 1/2  corners rabbet 3/8  slides runner }
front for drawer { overlay 1/2  frame oak 2 wide  panel thin }
`);
  const rough = (id: string) => solidCalled(fit, id).bounds.rough;

  test("the case stands behind its frame, on its kick", () => {
    expect(rough("case one/side (1)")).toEqual([0, 0.75, 0, 20, 0.75, 16]);
    expect(rough("case one/side (2)")).toEqual([29.25, 30, 0, 20, 0.75, 16]);
    expect(rough("case one/bottom")).toEqual([0.75, 29.25, 3, 3.75, 0.75, 15.75]);
    expect(rough("case one/top")).toEqual([0.75, 29.25, 19.25, 20, 0.75, 15.75]);
    expect(rough("case one/back")).toEqual([0.375, 29.625, 0, 20, 15.75, 16]);
    expect(rough("case one/kick")).toEqual([0, 30, 0, 3, 2, 2.75]);
    expect(rough("case one/stile (1)")).toEqual([0, 2, 3, 20, 0, 0.75]);
    expect(rough("case one/mid rail")).toEqual([2, 28, 11, 12.5, 0, 0.75]);
  });

  test("the box hangs in the middle of its opening, the front over it", () => {
    // The opening runs from 2 to 28 and from 12 1/2 to 18 1/2; box 25 wide, 5 1/2 high, on a slide of 14.
    expect(rough("box drawer/side (1)")).toEqual([2.5, 3.25, 12.75, 18.25, 0, 14]);
    expect(rough("box drawer/front")).toEqual([2.875, 27.125, 12.75, 18.25, 0, 0.75]);
    expect(rough("box drawer/back")).toEqual([2.875, 27.125, 12.75, 18.25, 13.25, 14]);
    // 23 1/2 inside and twice 1/4, less a play of 1/16: 23 15/16 wide.
    expect(rough("box drawer/bottom")).toEqual([3.03125, 26.96875, 13.25, 13.5, 0.53125, 13.46875]);
    expect(rough("front drawer/stile (1)")).toEqual([1.5, 3.5, 12, 19, -0.75, 0]);
    expect(rough("front drawer/rail (1)")).toEqual([3.125, 26.875, 17, 19, -0.75, 0]);
    expect(rough("front drawer/panel")[4]).toBe(-0.5);
  });

  test("volumes are those of the outlines less what is cut away", () => {
    const volume = (id: string) => roughVolume(solidCalled(fit, id).pieces);
    // Side: less a notch 2 x 3, and a rabbet 1/4 x 3/8 along its back.
    expect(volume("case one/side (1)")).toBeCloseTo(0.75 * 20 * 15.25 - 0.75 * 2 * 3 - 0.25 * 0.375 * 20, 10);
    // Box side: less two rabbets 3/4 x 3/8 at its ends, and a groove 1/4 x 1/4 along it that crosses both.
    const rabbets = 2 * 0.75 * 0.375 * 5.5;
    expect(volume("box drawer/side (1)")).toBeCloseTo(0.75 * 5.5 * 14 - rabbets - 0.25 * 0.25 * (14 - 2 * 0.75), 10);
    // Stile of the front: less a groove 1/4 x 3/8 along it. Its rail has a groove as well, and two tongues of 3/8.
    expect(volume("front drawer/stile (1)")).toBeCloseTo(2 * 7 * 0.75 - 0.25 * 0.375 * 7, 10);
    const tongues = 2 * 0.375 * 0.25 * (2 - 0.375);
    expect(volume("front drawer/rail (1)")).toBeCloseTo(2 * 23 * 0.75 - 0.25 * 0.375 * 23 + tongues, 10);
  });

  test("weight follows from volume and density", () => {
    const shelf = fitOf("part plank { from ply  long 48  wide 36 }").assemblies;
    // 48 x 36 x 3/4 = 1296 cubic inches, at 36 lb per cubic foot 27 lb.
    expect(shelf).toEqual([{ of: "part plank", volume: 1296, pounds: 27 }]);
  });

  test("and all of it goes together", () => {
    expect(troubles(fit)).toEqual([]);
  });
});

describe("the rear face", () => {
  const fit = fitOf(`
case one {
  wide 30  high 8  deep 40  panels ply
  frame oak { stiles 2  rails 1 1/2  opening near }
  rear { frame oak { stiles 2  rails 1 1/2  across { opening far 10  stile  opening other rest } } }
}
box for near, far { sides ply  bottom thin under  corners screws  slides runner 18 }
front for near, far { slab ply }
`);

  test("is laid as seen from behind", () => {
    // 10 wide from the left stile seen from behind: from 28 down to 18.
    expect(solidCalled(fit, "box far/side (1)").bounds.rough.slice(0, 2)).toEqual([26.75, 27.5]);
    expect(solidCalled(fit, "box far/front").bounds.rough.slice(4)).toEqual([39.25, 40]);
    expect(solidCalled(fit, "front far/slab").bounds.rough.slice(4)).toEqual([40, 40.75]);
    expect(troubles(fit)).toEqual([]);
  });

  test("drawers that come from both faces must share the depth", () => {
    const deeper = fitOf(`
case one { wide 30  high 8  deep 36  panels ply  opening near  rear { opening far } }
box for near { sides ply  bottom thin under  corners screws  slides runner 20 }
box for far { sides ply  bottom thin under  corners screws  slides runner 18 }
`);
    // 20 and 18 are 2 more than 36.
    expect(deeper.opposed.map(({ a, b, by }) => [a.of, b.of, by])).toEqual([["box near", "box far", { n: 2n, d: 1n }]]);
  });
});
