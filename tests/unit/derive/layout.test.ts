import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mixedText } from "../../../language/core/length.ts";
import { sum } from "../../../language/core/rational.ts";
import type { Rect } from "../../../language/derive/model.ts";
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

  test("says so where the members round it leave nothing to divide", () => {
    // 40 − 2 × 21 = −2
    const build = built(`inches\nboard oak { thick 3/4  wide 24  long 96 }\nsheet ply { called 3/4  measures 23/32 }
      case low { wide 40  high 24  deep 12  panels ply  frame oak { stiles 21  rails 2  across { opening a  stile  opening b } } }`);
    expect(build.findings.filter(({ code }) => code === "layout/too-much").map(({ message }) => message)).toEqual([
      "nothing is left to divide here: what stands round it takes all the room there is, and 2 in more",
    ]);
  });

  test("from the left and from the bottom, so that each opening and member has its place", () => {
    const build = face("across { opening a 10  stile 3  down { opening b 8  rail  opening c } }");
    const place = ({ x, y, wide, high }: Rect) => [x, y, wide, high].map(mixedText).join(" ");
    // a: 2 from the left, 2 up. Beside it 36 − 10 − 3 = 23; b at the top, 24 − 2 − 8 = 14 up; c 20 − 8 − 2 = 10 high.
    expect(["a", "b", "c"].map((name) => place(openingOf(build, name).rect!))).toEqual([
      "2 2 10 20",
      "15 14 23 8",
      "15 2 23 10",
    ]);
    const members = build.derivation.model.cases[0]!.members.map(({ kind, rect }) => `${kind} ${place(rect)}`);
    expect(members).toEqual([
      "stile 0 0 2 24",
      "stile 38 0 2 24",
      "rail 2 0 36 2",
      "rail 2 22 36 2",
      "stile 12 2 3 20",
      "rail 15 12 23 2",
    ]);
  });

  test("above the kick where there is one", () => {
    const build = built(`inches
      board oak { thick 3/4 }
      case low { wide 40  high 24  deep 12  kick 4 high 3 deep  frame oak { stiles 2  rails 2  opening a } }`);
    const { rect, high } = openingOf(build, "a");
    // 24 − 4 − 2 × 2 = 16 high, 4 + 2 = 6 up
    expect([mixedText(rect!.y), exact(high)]).toEqual(["6", "16"]);
    const stile = build.derivation.model.cases[0]!.members[0]!;
    expect([mixedText(stile.rect.y), exact(stile.length)]).toEqual(["4", "20"]);
  });

  test("and says how: what is left over, or an equal share of it", () => {
    const formulaOf = (layout: string, name: string) => {
      const { origin } = openingOf(face(layout), name).wide;
      return origin.kind === "derived" ? [origin.rule.gives, origin.rule.formula] : [];
    };
    expect(formulaOf("across { opening a 10  stile  opening b }", "b")).toEqual([
      "the rest",
      "{clear size} − {a} − {stile 2}",
    ]);
    expect(formulaOf("across { opening a  stile 1  opening b  stile 1  opening c 4 }", "a")).toEqual([
      "one of 2 equal shares",
      "({clear size} − {stile 2} − {stile 4} − {c}) ÷ 2",
    ]);
  });

  test("a size that the only opening of a face has anyway is not said to be of no use", () => {
    const codes = (layout: string) => face(layout).findings.map(({ code }) => code);
    expect(codes("opening a 36")).not.toContain("layout/only-one");
    expect(codes("opening a 20")).not.toContain("layout/only-one");
    expect(codes("opening a 21")).toContain("layout/only-one");
  });

  test("too little offers to give the last what is left", () => {
    const finding = face("across { opening a 20  stile  opening b 13 }").findings.find(
      ({ code }) => code === "layout/too-little",
    );
    expect(finding?.fixes.map(({ title, edits }) => [title, edits.map(({ text }) => text)])).toEqual([
      ['Write "rest"', ["rest"]],
    ]);
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
