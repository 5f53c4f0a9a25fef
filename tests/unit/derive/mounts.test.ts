import { describe, expect, test } from "vitest";
import type { MountModel } from "../../../language/derive/model.ts";
import type { Build } from "../../../language/service.ts";
import { allParts, built, errorsOf, exact } from "../../support/built.ts";
import { sheets } from "../../support/store.ts";

const shop = `${sheets}board oak     { thick 3/4  wide 5 1/2  long 96 }
slides runner { mount side  lengths 10 to 28 by 2  clearance 1/2  above 1/4  below 1/4  behind 1/2 }
`;
const mountsOf = (build: Build): readonly MountModel[] => build.derivation.model.mounts;
/** Each mount as `left of one, two: ply + thin, 1/16 left; 22 x 2 1/2, middle 3 up`. */
const said = (build: Build): readonly string[] =>
  mountsOf(build).map(
    ({ side, openings, layers, left, long, high, at }) =>
      `${side} of ${openings.map((opening) => opening.name.text).join(", ")}: ${layers.map((stock) => stock.name).join(" + ")}, ` +
      `${exact(left)} left; ${exact(long)} x ${exact(high)}, middle ${exact(at)} up`,
  );
const mountParts = (build: Build) => allParts(build).filter((part) => /mount/.test(part.name));

describe("in an opening that stands already", () => {
  const bay = (beside: string, box = "", stocks = "") =>
    built(`${shop}${stocks}
      opening bay { wide 20  high 6  deep 22  beside ${beside} }
      box for bay { sides ply  slides runner  ${box} }`);

  test("each slide has packing as thick as the case side lies back, or as near under as the sheets come", () => {
    // 1 1/4 = 40/32: 23 + 15 = 38. 3/4 = 24/32: 23. The box is 5 1/2 high, 1/4 up: its middle 1/4 + 2 3/4 = 3.
    // A mount is 3/4 higher than its slide of 1 3/4, and as long as the opening is deep.
    expect(said(bay("1 1/4 left, 3/4 right"))).toEqual([
      "left of bay: ply + thin, 1/16 left; 22 x 2 1/2, middle 3 up",
      "right of bay: ply, 1/32 left; 22 x 2 1/2, middle 3 up",
    ]);
  });

  test("flush with the edge there is nothing to fill, and where it is not known nothing is made", () => {
    expect(said(bay("0"))).toEqual([]);
    expect(said(bay("0 left, 15/32 right"))).toEqual(["right of bay: thin, 0 left; 22 x 2 1/2, middle 3 up"]);
    const flat = built(`${shop}opening bay { wide 20  high 6  deep 22 }\nbox for bay { sides ply  slides runner }`);
    expect(said(flat)).toEqual([]);
  });

  test("the slide may hang at a height that is written, and be of another height", () => {
    expect(said(bay("15/32", "at 2"))[0]).toBe("left of bay: thin, 0 left; 22 x 2 1/2, middle 2 up");
    const high = built(`${shop.replace("mount side", "mount side  high 2 1/4")}
      opening bay { wide 20  high 6  deep 22  beside 15/32 }
      box for bay { sides ply  slides runner }`);
    expect(said(high)[0]).toBe("left of bay: thin, 0 left; 22 x 3, middle 3 up");
  });

  test("slides that are not screwed to the sides need none", () => {
    const under = built(`${shop}slides low { mount under  lengths 9 to 30 by 3 }
      opening bay { wide 20  high 6  deep 22  beside 1 }
      box for bay { sides thin  slides low }`);
    expect(said(under)).toEqual([]);
  });

  test("a box that cannot be made has none", () => {
    const build = built(`${shop}opening bay { wide 20  high 6  beside 1 }\nbox for bay { sides ply  slides runner }`);
    expect(errorsOf(build)).toEqual(["opening/no-depth"]);
    expect(said(build)).toEqual([]);
  });

  test("where even the thinnest sheet is too thick, all is left and nothing is cut", () => {
    const build = bay("5/32");
    expect(said(build)).toEqual([
      "left of bay: , 5/32 left; 22 x 2 1/2, middle 3 up",
      "right of bay: , 5/32 left; 22 x 2 1/2, middle 3 up",
    ]);
    expect(mountParts(build)).toEqual([]);
  });

  test("packing comes from sheets, from those that are named where some are", () => {
    // Boards are not taken: 3/4 would be filled by oak.
    expect(said(bay("3/4"))[0]).toMatch(/^left of bay: ply, 1\/32 left/);
    // 3 × 7/32 = 21/32 of 24/32
    expect(said(bay("3/4", "packing quarter"))[0]).toMatch(/^left of bay: quarter \+ quarter \+ quarter, 3\/32 left/);
  });

  test("the thickest layer comes first, in whatever order the sheets are named", () => {
    // 1 1/4: 23/32 and 15/32
    for (const packing of ["ply, thin", "thin, ply"])
      expect(said(bay("1 1/4", `packing ${packing}`))[0]).toMatch(/^left of bay: ply \+ thin, 1\/16 left/);
    expect(mountParts(bay("1 1/4", "packing thin, ply"))[0]?.note).toMatch(/^3\/4 \+ 1\/2 measures /);
  });

  test("the fewest layers fill it, of equals the cheaper, and never more than four", () => {
    const half =
      "sheet dear { measures 1/2  costs 90 }\nsheet cheap { measures 1/2  costs 40 }\nsheet fourth { measures 1/4 }\n";
    for (const packing of ["dear, cheap, fourth", "fourth, cheap, dear"])
      expect(said(bay("1/2", `packing ${packing}`, half))[0]).toMatch(/^left of bay: cheap, 0 left/);
    expect(said(bay("1 1/4", "packing fourth", half))[0]).toMatch(
      /^left of bay: fourth \+ fourth \+ fourth \+ fourth, 1\/4 left/,
    );
  });

  test("its parts say what they are glued up from, what is to shim, and where the slide goes", () => {
    const parts = mountParts(bay("1 1/4 left, 23/32 right"));
    expect(parts.map(({ of, name, quantity, stock }) => `${quantity} ${name} of ${of}: ${stock}`)).toEqual([
      "1 mount of box bay: ply",
      "1 mount of box bay: thin",
      "1 mount of box bay: ply",
    ]);
    expect(parts.map((part) => part.note)).toEqual([
      "3/4 + 1/2 measures 1 3/16 of 1 1/4: shim 1/16; slide's middle 3 above the floor of the opening",
      "3/4 + 1/2 measures 1 3/16 of 1 1/4: shim 1/16; slide's middle 3 above the floor of the opening",
      "3/4 measures 23/32 of 23/32: no shim; slide's middle 3 above the floor of the opening",
    ]);
  });

  test("a shim thinner than the finest mark is not read off as nought", () => {
    // 31/64 − 15/32 = 1/64
    expect(mountParts(bay("31/64", "packing thin"))[0]?.note).toMatch(/: shim under 1\/32; /);
  });

  test("a sheet without a label goes by its name", () => {
    const build = bay("1/2", "packing bare", "sheet bare { measures 1/2 }\n");
    expect(mountParts(build)[0]?.note).toMatch(/^bare measures 1\/2 of 1\/2: no shim/);
  });
});

describe("behind a face frame", () => {
  // Stiles of 2 before sides of 23/32: 1 9/32 = 41/32 to fill, of which ply and thin are 38/32.
  const chest = (layout: string, boxes: string, more = "") =>
    built(`${shop}
      case chest { wide 24  high 30  deep 24  panels ply  back quarter applied  ${more}
        frame oak { stiles 2  rails 1 1/2  ${layout} } }
      ${boxes}`);
  const box = (openings: string, more = "") => `box for ${openings} { sides thin  slides runner  ${more} }`;

  test("a mount runs from the frame to the back", () => {
    // 24 − 7/32 − 3/4 = 23 1/32. The opening is 30 − 3 = 27 high: 1/4 + (27 − 1/2) ÷ 2 = 13 1/2.
    expect(said(chest("opening one", box("one")))).toEqual([
      "left of one: ply + thin, 3/32 left; 23 1/32 x 2 1/2, middle 13 1/2 up",
      "right of one: ply + thin, 3/32 left; 23 1/32 x 2 1/2, middle 13 1/2 up",
    ]);
  });

  test("packing may be named for the whole case, and for a box besides", () => {
    // 5 × 7/32 would be 35/32, but four layers are the most: 28/32, 13/32 left. 2 × 15/32 = 30/32, 11/32 left.
    const build = (more: string) => chest("opening one", box("one", more), "packing quarter");
    expect(said(build(""))[0]).toMatch(/^left of one: quarter \+ quarter \+ quarter \+ quarter, 13\/32 left/);
    expect(said(build("packing thin"))[0]).toMatch(/^left of one: thin \+ thin, 11\/32 left/);
  });

  describe("slides one above the other", () => {
    // Openings 2 high: boxes 1 1/2, their slides' middles 1/4 + 3/4 = 1 up, so that a mount of 2 1/2 stands 1/4 beyond its opening.
    const pair = (rail: string, order = "upper, lower") =>
      chest(`down { opening rest-1  rail  opening upper 2  rail ${rail}  opening lower 2 }`, box(order));

    test("have a mount each where these do not meet, or just meet", () => {
      expect(said(pair("1/2"))).toEqual([
        "left of upper: ply + thin, 3/32 left; 23 1/32 x 2 1/2, middle 1 up",
        "right of upper: ply + thin, 3/32 left; 23 1/32 x 2 1/2, middle 1 up",
        "left of lower: ply + thin, 3/32 left; 23 1/32 x 2 1/2, middle 1 up",
        "right of lower: ply + thin, 3/32 left; 23 1/32 x 2 1/2, middle 1 up",
      ]);
    });

    test("share one that is as much higher where theirs would run into each other", () => {
      // A rail of 1/4: from 1/4 below the lower opening to 2 + 1/4 + 2 1/4 = 4 1/2 above its floor, 4 3/4 high in all.
      // Its middle is 2 1/8 above the lower floor, and 1/8 below the upper, which is 2 1/4 higher.
      expect(said(pair("1/4"))).toEqual([
        "left of upper, lower: ply + thin, 3/32 left; 23 1/32 x 4 3/4, middle -1/8 up",
        "right of upper, lower: ply + thin, 3/32 left; 23 1/32 x 4 3/4, middle -1/8 up",
      ]);
      expect(said(pair("1/4", "lower, upper"))).toEqual([
        "left of lower, upper: ply + thin, 3/32 left; 23 1/32 x 4 3/4, middle 2 1/8 up",
        "right of lower, upper: ply + thin, 3/32 left; 23 1/32 x 4 3/4, middle 2 1/8 up",
      ]);
    });

    test("three in a row share one, though the outer two do not meet", () => {
      const build = chest(
        "down { opening a  rail  opening b 2  rail 1/4  opening c 2  rail 1/4  opening d 2 }",
        box("b, c, d"),
      );
      // From 1/4 below d to 1/4 above b: 3 × 2 + 2 × 1/4 + 2 × 1/4 = 7
      expect(mountsOf(build).map(({ openings, high }) => [openings.length, exact(high)])).toEqual([
        [3, "7"],
        [3, "7"],
      ]);
    });

    test("say which openings one mount serves, and each slide's height", () => {
      const [part] = mountParts(pair("1/4"));
      expect(part?.note).toMatch(/; slide's middle 1 above the floor of the opening; serves upper and lower$/);
      const unlike = chest(
        "down { opening rest-1  rail  opening upper 2 1/2  rail 1/8  opening lower 2 }",
        box("upper, lower"),
      );
      // 1/4 + (2 1/2 − 1/2) ÷ 2 = 1 1/4
      expect(mountParts(unlike)[0]?.note).toMatch(
        /; slides' middles 1 1\/4 above the floor of upper, 1 above the floor of lower; serves upper and lower$/,
      );
    });

    test("are explained by the slides that it serves", () => {
      const { high } = mountsOf(pair("1/4"))[0]!;
      if (high.origin.kind !== "derived") throw new Error("it is derived");
      expect(Object.keys(high.origin.inputs)).toEqual(["slide in upper", "slide in lower", "mount of one slide"]);
      for (const name of Object.keys(high.origin.inputs)) expect(high.origin.rule.formula).toContain(`{${name}}`);
    });
  });

  test("openings beside each other have mounts of their own at each wall", () => {
    const build = chest("across { opening one  stile  opening two }", box("one, two"), "partitions ply");
    // Before a partition of 23/32 behind the middle stile (2 − 23/32) ÷ 2 = 41/64: thin, 11/64 left.
    expect(said(build).map((text) => text.replace(/;.*/, ""))).toEqual([
      "left of one: ply + thin, 3/32 left",
      "right of one: thin, 11/64 left",
      "left of two: thin, 11/64 left",
      "right of two: ply + thin, 3/32 left",
    ]);
  });

  test("a wide opening over two narrow ones shares its walls with that one of them that stands at the same wall", () => {
    const build = chest(
      "down { opening rest-1  rail  opening top 2  rail 1/4  across 2 { opening one  stile  opening two } }",
      box("top, one, two"),
      "partitions ply",
    );
    expect(said(build).map((text) => text.replace(/:.*/, ""))).toEqual([
      "left of top, one",
      "right of top, two",
      "right of one",
      "left of two",
    ]);
  });

  test("without a partition one mount in the middle is as thick as the stile is wide, and serves both", () => {
    const build = chest("across { opening one  stile  opening two }", box("one, two"));
    // 2 = 64/32: 23 + 23 + 15 = 61
    expect(said(build).map((text) => text.replace(/;.*/, ""))).toEqual([
      "left of one: ply + thin, 3/32 left",
      "middle of one, two: ply + ply + thin, 3/32 left",
      "right of two: ply + thin, 3/32 left",
    ]);
    const middle = mountParts(build).filter((part) => part.name === "middle mount");
    expect(middle.map(({ quantity, stock }) => [quantity, stock])).toEqual([
      [2, "ply"],
      [1, "thin"],
    ]);
    expect(middle[0]?.note).toMatch(/; serves one and two$/);
  });

  test("in a case that opens to both sides a mount is no longer than its own box", () => {
    const build = built(`${shop}
      case chest { wide 24  high 30  deep 24  panels ply
        frame oak { stiles 2  opening one }
        rear { frame ply { stiles 2  opening two } } }
      box for one { sides thin  slides runner 10 }
      box for two { sides thin  slides runner 12 }`);
    // 10 − 3/4 and 12 − 23/32: what lies behind each face's own frame
    expect(said(build).map((text) => text.replace(/^(\S+ of \S+:).*; (.*) x .*$/, "$1 $2"))).toEqual([
      "left of one: 9 1/4",
      "right of one: 9 1/4",
      "left of two: 11 9/32",
      "right of two: 11 9/32",
    ]);
  });
});
