import { describe, expect, test } from "vitest";
import { nearest } from "../../../language/derive/names.ts";
import { layersFor } from "../../../language/derive/packing.ts";
import { built, errorsOf, exact, inch, openingOf, partsOf } from "../../support/built.ts";

const shop = `inches
sheet ply { called 3/4  measures 23/32 }
slides runner { lengths 10 to 28 by 2  clearance 1/2  above 1/4  below 1/4  behind 1/2 }
`;
const wide = (text: string, name = "left") => exact(openingOf(built(`${shop}${text}`), name).wide);

describe("named lengths and readings", () => {
  test("a length may be used before it is named, and hang on others", () => {
    expect(wide("opening left { wide w - 2 * gap  high 6 }\nlet w = base + 1/4\nlet gap = 3/32\nlet base = 12")).toBe(
      "12 1/16",
    );
  });

  test("sizes of openings, cases and stocks are read by name, by noun or adjective", () => {
    const text = `opening right { wide 14 1/2  high 6  deep 20 }
      case low { wide 30  high 20  deep 12  panels ply  opening inner }`;
    expect(wide(`${text} opening left { wide right.width + 1  high right.high }`)).toBe("15 1/2");
    expect(wide(`${text} opening left { wide right.deep  high 6 }`)).toBe("20");
    expect(wide(`${text} opening left { wide low.width / 2  high 6 }`)).toBe("15");
    // 30 − 2 × 23/32 = 28 9/16
    expect(wide(`${text} opening left { wide inner.width  high 6 }`)).toBe("28 9/16");
    expect(wide(`${text} opening left { wide 10 + ply.thickness  high 6 }`)).toBe("10 23/32");
    expect(wide(`${text} opening left { wide 10 + runner.clearance  high 6 }`)).toBe("10 1/2");
  });

  test("boxes and fronts can be read once their openings are known", () => {
    const text = `opening left { wide 15 1/2  high 6  deep 22 } opening right { wide 15 1/2  high 6  deep 22 }
      box for left { sides ply  slides runner } box for right { sides ply  slides runner  wide left.box.width }
      front for left { overlay 1/2  slab ply } front for right { slab ply  wide left.front.width + 1 }`;
    const build = built(shop + text);
    expect(errorsOf(build)).toEqual([]);
    expect(build.derivation.model.boxes.map((box) => exact(box.wide))).toEqual(["14 1/2", "14 1/2"]);
    expect(build.derivation.model.fronts.map((front) => exact(front.wide))).toEqual(["16 1/2", "17 1/2"]);
  });

  test("a front that reads a box does not hide an inset front from the slide", () => {
    const build =
      built(`${shop}opening left { wide 15 1/2  high 6  deep 22 1/2 } opening right { wide 17  high 6  deep 22 }
      front for right { slab ply  wide left.box.width }
      front for left { inset  slab ply }
      box for left { sides ply  slides runner }`);
    // 22 1/2 − 1/2 − 23/32 takes a 20, not a 22
    expect(exact(build.derivation.model.boxes[0]!.deep)).toBe("20");
  });

  test.each([
    ["let a = b\nlet b = c\nlet c = a\nopening left { wide a  high 6 }"],
    ["let a = a + 1\nopening left { wide a  high 6 }"],
    ["opening left { wide right.high  high 6 } opening right { wide 6  high left.width }"],
    ["opening left { wide left.high  high 6 }"],
    ["case low { wide 30  high 20  deep inner.width  panels ply  opening inner }"],
    [
      "opening left { wide left.box.width  high 6  deep 20 } box for left { sides ply  slides runner  wide left.width }",
    ],
    [
      "opening left { wide 15  high 6  deep 20 } box for left { sides ply  slides runner  wide left.front.width } front for left { slab ply  wide left.box.width }",
    ],
  ])("a circle ends as a finding: %s", (text) => {
    expect(errorsOf(built(shop + text))).toContain("length/circular");
  });

  test("what there is not is said at the name, once", () => {
    const build = built(`${shop}let a = lost + 1\nopening left { wide a  high a }`);
    expect(build.findings.filter((finding) => finding.code === "name/unknown-length").length).toBeLessThanOrEqual(3);
    expect(errorsOf(build)).toContain("name/unknown-length");
  });

  test("every number that hangs on a name knows where it was written", () => {
    const { wide: size } = openingOf(built(`${shop}let gap = 3/32\nopening left { wide 12 - gap  high 6 }`), "left");
    expect(size.origin).toMatchObject({
      kind: "derived",
      inputs: { gap: { origin: { kind: "written", text: "3/32" } } },
    });
  });
});

describe("like", () => {
  const openings =
    "opening a { wide 15 1/2  high 6  deep 22 } opening b { wide 15 1/2  high 6  deep 22 } opening c { wide 15 1/2  high 6  deep 22 }";

  test("takes over all that is not said, along a chain", () => {
    const build = built(`${shop}${openings}
      box for c like b { high 4 }
      box for b like a { slides runner 18 }
      box for a { sides ply  slides runner 20  corners dovetails }`);
    expect(errorsOf(build)).toEqual([]);
    // c: slides as b, corners as a, height its own
    expect(partsOf(build, "box c")).toEqual(["2 side 18 x 4", "1 front 14 1/2 x 4", "1 back 14 1/2 x 4"]);
    expect(partsOf(build, "box a")[0]).toBe("2 side 20 x 5 1/2");
  });

  test("in a circle is a finding, and what is said still counts", () => {
    const build = built(`${shop}${openings}
      box for a like b { sides ply  slides runner } box for b like a { }`);
    expect(errorsOf(build)).toEqual(["name/like-circle", "name/like-circle"]);
    expect(partsOf(build, "box a")).toHaveLength(3);
  });

  test("holds for stocks, hardware and openings too", () => {
    const build = built(`${shop}sheet other like ply { size 48 x 96 }
      slides short like runner { lengths 10, 12 }
      opening b like a { wide 12 } opening a { wide 15 1/2  high 6  deep 22 }
      box for b { sides other  slides short }`);
    expect(errorsOf(build)).toEqual([]);
    // 12 − 1 = 11 wide, less 1 7/16; a 12 is the longest sold
    expect(partsOf(build, "box b")).toEqual(["2 side 12 x 5 1/2", "1 front 9 9/16 x 5 1/2", "1 back 9 9/16 x 5 1/2"]);
  });
});

describe("hand-stated parts", () => {
  test("are listed as they are stated, less their edging", () => {
    const build = built(`${shop}edging band { thick 1/32 }
      part ledger { from ply  long 18  wide 1 1/2  count 2 }
      part top { from ply  long 30  wide 12  edging band on front, left  grain across }`);
    expect(partsOf(build, "part ledger")).toEqual(["2 ledger 18 x 1 1/2"]);
    expect(partsOf(build, "part top")).toEqual(["1 top 29 31/32 x 11 31/32"]);
  });
});

describe("the nearest name", () => {
  test("is one slip away, or a third of its letters", () => {
    const given = ["runner", "birch-18", "birch-12", "oak"];
    expect(["runer", "ruNner", "birch18", "birch-13", "oka", "maple", ""].map((text) => nearest(text, given))).toEqual([
      "runner",
      "runner",
      "birch-18",
      "birch-18",
      undefined,
      undefined,
      undefined,
    ]);
  });
});

describe("packing", () => {
  const sheet = (name: string, thick: string, costs?: string) => {
    const price = costs === undefined ? "" : `costs ${costs}`;
    const build = built(`inches sheet ${name} { measures ${thick} ${price} }`);
    return build.derivation.model.stocks.get(name)!;
  };
  const layers = (need: string, ...sheets: ReturnType<typeof sheet>[]) =>
    layersFor(inch(need).value, sheets).map((layer) => layer.name);
  const [full, half, quarter] = [sheet("full", "45/64"), sheet("half", "15/32"), sheet("quarter", "7/32")];

  test("comes nearest to the need without standing proud", () => {
    // 45 + 45 + 30 of 128/64
    expect(layers("2", full, half)).toEqual(["full", "full", "half"]);
    // with a quarter sheet, 14/64: 30 + 3 × 14 = 72, 45 + 2 × 30 + 14 = 119, 45 + 45 + 14 + 14 = 118, 4 × 30 = 120, 45 + 45 + 30 = 120
    expect(layers("2", full, half, quarter)).toEqual(["full", "full", "half"]);
    // 83/64: 45 + 30 = 75; 30 + 30 + 14 = 74; 45 + 14 + 14 = 73
    expect(layers("83/64", full, half, quarter)).toEqual(["full", "half"]);
  });

  test("is nothing where the thinnest sheet is too thick, and exact where it can be", () => {
    expect(layers("1/8", full, half, quarter)).toEqual([]);
    expect(layers("15/32", full, half, quarter)).toEqual(["half"]);
  });

  test("takes the fewest layers among equals, then the least valuable", () => {
    expect(layers("1", sheet("thick", "1"), sheet("thin", "1/2"))).toEqual(["thick"]);
    expect(layers("1/2", sheet("dear", "1/2", "90"), sheet("cheap", "1/2", "40"))).toEqual(["cheap"]);
  });
});
