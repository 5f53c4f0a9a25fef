import { describe, expect, test } from "vitest";
import { mixedText } from "../../../language/core/length.ts";
import type { Build } from "../../../language/service.ts";
import { built, machiningOf, partOf, partsOf } from "../../support/built.ts";

const shop = `inches
sheet ply     { called 3/4  measures 23/32  size 48 x 96 }
sheet quarter { called 1/4  measures 7/32   size 48 x 96 }
board oak     { thick 3/4  wide 5 1/2  long 96 }
edging band   { thick 1/32 }
`;
const store = "case store { wide 36  high 30  deep 12  panels ply  back quarter applied";
const shelf = (how: string, face = "opening one"): Build =>
  built(`${shop}${store}  ${face} }\nshelf in one { from ply  ${how} }`);
const sizes = (how: string, face?: string) => partsOf(shelf(how, face), "shelf one");

// Between the sides 36 − 2 × 23/32 = 34 9/16; before the back 12 − 7/32 = 11 25/32.
describe("a shelf", () => {
  test("in dados is longer by both of them, 1/4 in deep where their depth is not said", () => {
    // 34 9/16 + 2 × 3/8 = 35 5/16; + 2 × 1/4 = 35 1/16
    expect(sizes("in dado 3/8  fixed")).toEqual(["1 shelf 35 5/16 x 11 25/32"]);
    expect(sizes("in dado  fixed")).toEqual(["1 shelf 35 1/16 x 11 25/32"]);
    // Nothing else in the list says that they are to be cut.
    expect(partOf(shelf("in dado 3/8  fixed"), "shelf one", "shelf").note).toBe(
      "its ends stand in dados 3/8 in deep: cut them where it is to stand",
    );
  });

  test("on pins lies loose between the sides, dado or not", () => {
    // 34 9/16 − 2 × 1/16 = 34 7/16; 11 25/32 − 1/4 = 11 17/32
    expect(sizes("in dado 3/8  adjustable")).toEqual(["1 shelf 34 7/16 x 11 17/32"]);
  });

  test("is narrower by the edging on its front, and by no other", () => {
    // 11 25/32 − 1/32 = 11 3/4
    const edged = shelf("fixed  edging band on front");
    expect(partsOf(edged, "shelf one")).toEqual(["1 shelf 34 9/16 x 11 3/4"]);
    const [edging] = partOf(edged, "shelf one", "shelf").machining;
    expect(edging).toMatchObject({ kind: "edging", where: "front edge", note: "band" });
    expect(sizes("fixed  edging band on back")).toEqual(["1 shelf 34 9/16 x 11 25/32"]);
    expect(partOf(shelf("fixed"), "shelf one", "shelf").machining).toEqual([]);
  });

  test("stands back only by what is said where it is fixed", () => {
    // 11 25/32 − 1/2
    expect(sizes("fixed  set 1/2")).toEqual(["1 shelf 34 9/16 x 11 9/32"]);
    expect(sizes("fixed")).toEqual(["1 shelf 34 9/16 x 11 25/32"]);
  });

  test("behind a face frame is as long as the case is wide inside, and stands behind the frame", () => {
    // The opening 36 − 2 × 2 = 32 and twice 2 − 23/32 behind the stiles: 34 9/16; 11 25/32 − 3/4 = 11 1/32
    expect(sizes("fixed", "frame oak { stiles 2  opening one }")).toEqual(["1 shelf 34 9/16 x 11 1/32"]);
  });

  test("beside a partition behind a stile reaches to it", () => {
    // Openings (36 − 3 × 2) ÷ 2 = 15; behind the outer stile 2 − 23/32 = 41/32, before the partition (2 − 23/32) ÷ 2 = 41/64:
    // 15 + 82/64 + 41/64 = 16 59/64, which is half of 34 9/16 − 23/32
    const face = "partitions ply  frame oak { stiles 2  across { opening one  stile  opening two } }";
    expect(sizes("fixed", face)).toEqual(["1 shelf 16 59/64 x 11 1/32"]);
  });

  test("says where its pins go: in rows of 32 mm, or as it is written", () => {
    const note = (how: string) => partOf(shelf(how), "shelf one", "shelf").note;
    // 32 mm and 37 mm, which are on no rule of inches
    expect(note("adjustable")).toBe(
      "pins in rows of holes 32 mm apart, front row 37 mm behind the front edge of the sides",
    );
    expect(note("adjustable  rows 2")).toMatch(/^pins in rows of holes 2 in apart, /);
    expect(note("fixed")).toBeUndefined();
  });

  test("shows its top", () => {
    expect(partOf(shelf("fixed"), "shelf one", "shelf").face).toBe("top");
    expect(machiningOf(partOf(shelf("fixed"), "shelf one", "shelf"))).toEqual([]);
  });

  test("stands as high as is said, as many as heights are said, and says where their dados go", () => {
    const at = (how: string, face?: string) => {
      const { solids } = shelf(how, face).dryFit()!.placement;
      return solids
        .filter(({ part }) => part.of === "shelf one")
        .map(({ bounds }) => [mixedText(bounds.y.from), mixedText(bounds.y.to)]);
    };
    // The floor of the opening is 23/32 up, on the bottom of the case: 12 23/32 less its own 23/32, and so on.
    expect(sizes("fixed  at 12, 20")).toEqual(["2 shelf 34 9/16 x 11 25/32"]);
    expect(at("fixed  at 12, 20")).toEqual([
      ["12", "12 23/32"],
      ["20", "20 23/32"],
    ]);
    expect(sizes("fixed  at 12, 20  count 3")).toEqual(["2 shelf 34 9/16 x 11 25/32"]);
    const idle = shelf("fixed  at 12, 20  count 3").findings.filter(({ code }) => code === "statement/no-effect");
    expect(idle.map(({ message }) => message)).toEqual([
      '"count" makes no difference here: there are as many shelves as heights are said',
    ]);
    expect(partOf(shelf("in dado  fixed  at 12, 20"), "shelf one", "shelf").note).toBe(
      "its ends stand in dados 1/4 in deep, their upper edges 12 in, 20 in above the floor of the opening",
    );
    // Behind a rail of 1 1/2 whose upper edge is the floor of the opening above it: 30 − 1 1/2 − 10 = 18 1/2.
    const stacked = "frame oak { stiles 2  rails 1 1/2  down { opening one 10  rail  opening two } }";
    expect(at("fixed  at 0", stacked)).toEqual([["17 25/32", "18 1/2"]]);
  });

  test("lies behind the rail under a drawer, and clashes with it any higher", () => {
    const stacked = "partitions ply  frame oak { stiles 2  rails 1 1/2  down { opening one 10  rail  opening two } }";
    const codes = (how: string) =>
      built(`${shop}${store}  ${stacked} }
slides run { mount side  extension full  lengths 8 to 20 by 2  clearance 1/2  above 1/4  below 1/4  behind 1/2 }
box for one { sides ply  bottom quarter in groove 1/4  corners screws  slides run }
shelf in one { from ply  ${how} }`).findings.map(({ code }) => code);
    expect(codes("fixed  at 0").filter((code) => /^opening\/box|^dryfit|^motion/.test(code))).toEqual([]);
    expect(codes("fixed  at 5")).toContain("dryfit/clash");
    expect(codes("fixed")).toContain("opening/box-and-shelf");
  });
});
