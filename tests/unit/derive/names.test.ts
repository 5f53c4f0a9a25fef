import { describe, expect, test } from "vitest";
import { nearest } from "../../../language/derive/names.ts";
import { layersFor } from "../../../language/derive/packing.ts";
import { built, errorsOf, exact, inch, machiningOf, openingOf, partOf, partsOf } from "../../support/built.ts";

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
    for (const word of ["thick", "thickness", "measures"])
      expect(wide(`${text} opening left { wide 10 + ply.${word}  high 6 }`)).toBe("10 23/32");
    // Stated in several places, a size is read where it was measured first.
    expect(
      wide(`sheet two { measures 1/2  size 48 x 96 }  board oak { thick 3/4  wide 5 1/2, 7 }
      opening left { wide 2 * oak.wide  high 6 }`),
    ).toBe("11");
    for (const lost of [
      "ply.weight",
      "right.weight",
      "lost.width",
      "low.box.width",
      "right.box.width",
      "right.lid.width",
    ])
      expect(errorsOf(built(`${shop}${text} opening left { wide ${lost}  high 6 }`))).toEqual(["name/unknown-length"]);
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

describe("what hangs on itself", () => {
  const codes = (text: string) => errorsOf(built(`${shop}opening left { wide 12  high 6  deep 22 }\n${text}`));

  test("is found at a box, a front, a door and a case that read their own size", () => {
    expect(codes("box for left { sides ply  slides runner  high left.box.wide }")).toEqual(["length/circular"]);
    expect(codes("front for left { slab ply  high left.front.wide }")).toEqual(["length/circular"]);
    expect(codes("door for left { slab ply  hinged left  high left.door.wide }")).toEqual(["length/circular"]);
    expect(codes("case low { wide inner.width + 2  high 20  deep 12  panels ply  opening inner }")).toEqual([
      "length/circular",
    ]);
  });

  test("and a size taken through more names than any drawing has, ends as a finding", () => {
    const chain = (count: number) =>
      Array.from({ length: count }, (_, at) => `let a${at} = ${at + 1 < count ? `a${at + 1}` : "12"}`).join("\n");
    const build = (count: number) => built(`${shop}${chain(count)}\nopening left { wide a0  high 6 }`);
    expect(exact(openingOf(build(100), "left").wide)).toBe("12");
    const [finding] = build(101).findings.filter(({ severity }) => severity === "error");
    expect(finding).toMatchObject({
      code: "length/too-far",
      message: 'a size is taken from "a100" through more than 100 names',
    });
    expect(errorsOf(build(5_000))).toEqual(["length/too-far"]);
  });

  test("is not what reads another size of the same thing", () => {
    expect(codes("box for left { sides ply  slides runner  high left.high - 1 }")).toEqual([]);
    // A front may read the box behind it, and a box the front before it.
    expect(
      codes("box for left { sides ply  slides runner }\nfront for left { slab ply  high left.box.high + 1  wide 13 }"),
    ).toEqual([]);
    expect(
      codes("box for left { sides ply  slides runner  high left.front.high - 2 }\nfront for left { slab ply }"),
    ).toEqual([]);
    expect(
      codes(
        "box for left { sides ply  slides runner  high left.door.high - 2 }\ndoor for left { slab ply  hinged left }",
      ),
    ).toEqual([]);
  });

  test("is said once for each name that is read, and the rest still stands", () => {
    const build = built(`${shop}let a = b + 1\nlet b = a + 1
      opening one { wide a  high 6 }  opening two { wide 12  high b }  opening three { wide 12  high 6 }`);
    expect(errorsOf(build).filter((code) => code === "length/circular").length).toBeLessThan(4);
    expect(exact(openingOf(build, "three").wide)).toBe("12");
  });

  test("a length that is not finished is the parser's finding and no other", () => {
    const build = built(`${shop}let a =\nopening one { wide a + 1  high 6 }`);
    expect(errorsOf(build).filter((code) => !code.startsWith("syntax/"))).toEqual([]);
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

describe("like, of lists and of what is a block's own", () => {
  test("a list is taken over where none is written, and replaced where one is", () => {
    const build = built(`${shop}edging band { thick 1/32 }  edging thick-band { thick 1/8 }
      opening a { wide 12  high 6 }  opening b { wide 12  high 6 }  opening c { wide 12  high 6 }
      front for a { overlay 1/2  slab ply  edging band }
      front for b like a { }
      front for c like a { edging thick-band }`);
    // 13 − 2 × 1/32 by 7 − 2 × 1/32; 13 − 2 × 1/8 by 7 − 2 × 1/8
    expect(["a", "b", "c"].map((name) => partsOf(build, `front ${name}`)[0])).toEqual([
      "1 slab 12 15/16 x 6 15/16",
      "1 slab 12 15/16 x 6 15/16",
      "1 slab 12 3/4 x 6 3/4",
    ]);
  });

  test("a case takes over neither openings nor a rear face, which would have names twice", () => {
    const build = built(`${shop}
      case left { wide 30  high 20  deep 12  panels ply  opening one  rear { opening two } }
      case right like left { high 24  opening three }`);
    expect(errorsOf(build)).toEqual([]);
    expect(build.derivation.model.cases.map((one) => one.openings.map(({ name }) => name.text))).toEqual([
      ["one", "two"],
      ["three"],
    ]);
    // 24 − 2 × 23/32
    expect(exact(openingOf(build, "three").high)).toBe("22 9/16");
  });

  test("a case with a frame of its own takes over the members that it does not say", () => {
    const build = built(`${shop}board oak { thick 3/4 }
      case left { wide 30  high 20  deep 12  frame oak { stiles 2  rails 3  joint tenon 1  opening one } }
      case right like left { frame oak { rails 1  opening two } }`);
    // 30 − 4 + 2 = 28
    expect(partsOf(build, "case right")).toEqual(["2 stile 20 x 2", "2 rail 28 x 1"]);
  });

  test("hinges and screws like others have what those have", () => {
    const build = built(`${shop}hinges cup { cup 35mm  bore 5mm  costs 3 }  hinges more like cup { costs 4 }
      screws flat { gauge #6  long 1 }  screws short like flat { long 5/8 }
      slides other like runner { screws short }
      opening a { wide 12  high 6  deep 22 }
      box for a { sides ply  slides other  corners dovetails }
      door for a { slab ply  hinged left  hinges more 2 }`);
    expect(errorsOf(build)).toEqual([]);
    const { hardware } = build.derivation.model;
    expect(hardware.find(({ kind }) => kind === "screws")?.size).toBe("#6 × 5/8 in");
    expect(hardware.find(({ kind }) => kind === "hinges")?.cost).toBe(8);
    const cup = partOf(build, "door a", "slab").machining.find(({ kind }) => kind === "cup");
    // 5 mm and half of 35 mm: 22.5 mm
    expect(exact(cup!.from!)).toBe("225/254");
  });
});

describe("hand-stated parts", () => {
  test("are listed as they are stated, less their edging", () => {
    const build = built(`${shop}edging band { thick 1/32 }
      part ledger { from ply  long 18  wide 1 1/2  count 2 }
      part top { from ply  long 30  wide 12  edging band on front, left  grain across }`);
    expect(partsOf(build, "part ledger")).toEqual(["2 ledger 18 x 1 1/2"]);
    expect(partsOf(build, "part top")).toEqual(["1 top 29 31/32 x 11 31/32"]);
    expect(machiningOf(partOf(build, "part top", "top"))).toEqual(["edging front, left edge"]);
    expect(partOf(build, "part top", "top").grain).toBe("across");
  });

  test("with edging all round lose it at every edge, and keep a thickness of their own", () => {
    const build = built(`${shop}edging band { thick 1/32 }
      part lid { from ply  long 30  wide 12  thick 1/2  edging band }`);
    // 30 − 2 × 1/32 by 12 − 2 × 1/32
    expect(partsOf(build, "part lid")).toEqual(["1 lid 29 15/16 x 11 15/16"]);
    expect(machiningOf(partOf(build, "part lid", "lid"))).toEqual(["edging all edges"]);
    expect(exact(partOf(build, "part lid", "lid").thickness)).toBe("1/2");
    // On one end or one side only that one.
    const one = (edge: string) =>
      partsOf(
        built(`${shop}edging band { thick 1/32 }\npart lid { from ply  long 30  wide 12  edging band on ${edge} }`),
        "part lid",
      );
    expect(["left", "right", "front", "back"].map(one)).toEqual([
      ["1 lid 29 31/32 x 12"],
      ["1 lid 29 31/32 x 12"],
      ["1 lid 30 x 11 31/32"],
      ["1 lid 30 x 11 31/32"],
    ]);
  });

  test("of which a size cannot be known are left out, with one finding", () => {
    for (const [wrong, code] of [
      ["from lost  long 18  wide 2", "name/unknown-stock"],
      ["from ply  long lost  wide 2", "name/unknown-length"],
      ["from ply  long 18  wide 0", "length/not-positive"],
    ] as const) {
      const build = built(`${shop}part ledger { ${wrong} }`);
      expect([partsOf(build, "part ledger"), errorsOf(build)]).toEqual([[], [code]]);
    }
  });
});

describe("a name that there is not", () => {
  const finding = (text: string) =>
    built(`inches\n${text}\npart one { from plyy  long 20  wide 10 }`).findings.find(
      ({ code }) => code === "name/unknown-stock",
    )!;
  const sheets = (...names: readonly string[]) => names.map((name) => `sheet ${name} { measures 1/2 }`).join("\n");

  test("is told with those that there are, eight of them at most, and the one that was likely meant", () => {
    const near = finding(sheets("birch", "ply"));
    expect([near.severity, near.reason, near.remedy]).toEqual([
      "error",
      "These are described: birch, ply.",
      'Write "ply", or describe "plyy".',
    ]);
    expect(near.fixes.map(({ title, edits }) => [title, edits[0]?.text])).toEqual([["Write ply", "ply"]]);
    const far = finding(sheets("maple"));
    expect([far.remedy, far.fixes]).toEqual(["Describe it, or write a name that is described.", []]);
    const many = ["aa", "bb", "cc", "dd", "ee", "ff", "gg", "hh", "ii"];
    expect(finding(sheets(...many.slice(0, 8))).reason).toBe("These are described: aa, bb, cc, dd, ee, ff, gg, hh.");
    expect(finding(sheets(...many)).reason).toBe("These are described: aa, bb, cc, dd, ee, ff, gg, hh and 1 more.");
    expect(finding("").reason).toBe("No stock is described in this file or the files it uses.");
  });
});

describe("how sizes are read off", () => {
  test("is a 32nd of an inch or a millimetre where the file does not say, and what it says where it does", () => {
    const step = (text: string) => built(text).derivation.context.reading.step;
    expect([step("inches"), step("inches\nread to 1/64"), step("millimetres\nread to 1/2")]).toEqual([
      inch("1/32").value,
      inch("1/64").value,
      // Half of 5/127 in
      inch("5/254").value,
    ]);
    expect(step("millimetres")).toEqual(inch("5/127").value);
    expect(errorsOf(built("inches\nread to 0"))).toEqual(["length/not-positive"]);
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
