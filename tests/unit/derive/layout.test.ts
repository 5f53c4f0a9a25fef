import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sum } from "../../../language/core/rational.ts";
import { built, errorsOf, exact, openingOf } from "../../support/built.ts";

const face = (layout: string) =>
  built(`inches
  board oak { thick 3/4 }
  case low { wide 40  high 24  deep 12  frame oak { stiles 2  rails 2  ${layout} } }`);
const size = (layout: string, name: string) => {
  const { wide, high } = openingOf(face(layout), name);
  return `${exact(wide)} x ${exact(high)}`;
};

// The clear size of the face is 36 x 20.
describe("a face is divided", () => {
  test("into one opening", () => expect(size("opening a", "a")).toBe("36 x 20"));

  test("across, from left to right", () => {
    expect(size("across { opening a 10  stile  opening b rest }", "b")).toBe("24 x 20");
    expect(size("across { opening a 10  stile 3  opening b }", "b")).toBe("23 x 20");
    expect(size("across { opening a  stile  opening b  stile  opening c }", "b")).toBe(
      "32/3 x 20".replace("32/3", "10 2/3"),
    );
  });

  test("down, from top to bottom", () => {
    const layout = "down { opening a 6  rail  opening b  rail 1  opening c equal }";
    // 20 − 6 − 2 − 1 = 11, halved
    expect([size(layout, "a"), size(layout, "b"), size(layout, "c")]).toEqual(["36 x 6", "36 x 5 1/2", "36 x 5 1/2"]);
    const { rect } = openingOf(face(layout), "a");
    // the first lies at the top: 24 − 2 − 6 = 16 up
    expect(
      [rect!.x, rect!.y].map((value) => exact({ value, origin: openingOf(face(layout), "a").wide.origin })),
    ).toEqual(["2", "16"]);
  });

  test("in divisions of divisions", () => {
    const layout =
      "across { down 12 { opening a 5  rail  across { opening b  stile 1  opening c } }  stile  opening d }";
    // b: (12 − 1) ÷ 2 wide, 20 − 5 − 2 high
    expect([size(layout, "a"), size(layout, "b"), size(layout, "d")]).toEqual(["12 x 5", "5 1/2 x 13", "22 x 20"]);
  });

  test("by several openings in one line, with the member between each two of them", () => {
    // (20 − 3 × 1) ÷ 4
    expect(size("down { openings p-1 to p-4 equal, rails 1 }", "p-3")).toBe("36 x 4 1/4");
    // without members they meet
    expect(size("down { openings p-1 to p-4 }", "p-3")).toBe("36 x 5");
    // a size for each
    expect(errorsOf(face("down { openings p-1, p-2 9, rails }"))).toEqual([]);
    expect(size("down { openings p-1, p-2 9, rails }", "p-2")).toBe("36 x 9");
  });

  test("so that it is filled: too much and too little are said", () => {
    expect(errorsOf(face("across { opening a 20  stile  opening b 14 }"))).toEqual([]);
    expect(errorsOf(face("across { opening a 20  stile  opening b 14 1/64 }"))).toEqual(["layout/too-much"]);
    expect(errorsOf(face("across { opening a 20  stile  opening b 13 63/64 }"))).toEqual(["layout/too-little"]);
    expect(errorsOf(face("across { opening a 34  stile  opening b }"))).toEqual(["layout/too-much"]);
    expect(errorsOf(face("across { opening a 33 63/64  stile  opening b }"))).toEqual([]);
  });

  test("so that the openings next to a wrong division still stand", () => {
    const build = face("across { down 10 { opening a 30  rail  opening b }  stile  opening c }");
    expect(errorsOf(build)).toEqual(["layout/too-much"]);
    expect(exact(openingOf(build, "c").wide)).toBe("24");
  });

  test("so that sizes and members always add up to the whole", () => {
    const share = fc.oneof(
      fc.constant(""),
      fc.constant("equal"),
      fc.integer({ min: 1, max: 40 }).map((n) => `${n}/16`),
    );
    fc.assert(
      fc.property(
        fc.array(share, { minLength: 2, maxLength: 6 }).filter((all) => all.some((one) => !one.endsWith("16"))),
        (shares) => {
          const items = shares.map((one, index) => `opening o-${index} ${one}`).join("  stile 1/2  ");
          const { openings, cases } = face(`across { ${items} }`).derivation.model;
          const inner = cases[0]!.members.filter((member) => member.kind === "stile").slice(2);
          const total = sum([
            ...openings.map((opening) => opening.wide.value),
            ...inner.map((member) => member.width.value),
          ]);
          expect(total).toEqual({ n: 36n, d: 1n });
        },
      ),
      { numRuns: 40 },
    );
  });
});
