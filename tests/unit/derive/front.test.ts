import { describe, expect, test } from "vitest";
import { allParts, built, errorsOf, exact, machiningOf, partOf, partsOf } from "../../support/built.ts";
import { stock } from "../../support/store.ts";

const shop = `${stock}hinges cup    { cup 35mm  bore 5mm }
`;
const over = (opening: string, front: string) => built(`${shop}opening left { ${opening} }\n${front}`);
const slab = (front: string, opening = "wide 12  high 6") =>
  partsOf(over(opening, `front for left { slab ply  ${front} }`), "front left");

describe("the size of a front", () => {
  test("is the opening and an overlay at each edge, each edge as it is said", () => {
    expect(slab("overlay 1/2")).toEqual(["1 slab 13 x 7"]);
    // 12 + 1/2 + 3/8 = 12 7/8; 6 + 1/4 + 0 = 6 1/4
    expect(slab("overlay 1/2 left, 3/8 right, 1/4 top, 0 bottom")).toEqual(["1 slab 12 7/8 x 6 1/4"]);
    // one edge named, the others as the one without a name
    expect(slab("overlay 1/2, 1/4 top")).toEqual(["1 slab 13 x 6 3/4"]);
    // an opening that stands, nothing said: 1/2 all round
    expect(slab("")).toEqual(["1 slab 13 x 7"]);
  });

  test("is the opening less a gap at each edge where it is inset: 1/16 (NAVEDTRA 14045, ch. 5)", () => {
    expect(slab("inset")).toEqual(["1 slab 11 7/8 x 5 7/8"]);
    expect(slab("inset  gap 3/32")).toEqual(["1 slab 11 13/16 x 5 13/16"]);
  });

  test("goes by the smallest reading where it is inset and by the largest where it covers", () => {
    const uneven = "wide 12, 12 1/8, 12 1/16  high 6, 6 1/32, 6";
    expect(slab("inset", uneven)).toEqual(["1 slab 11 7/8 x 5 7/8"]);
    expect(slab("overlay 1/2", uneven)).toEqual(["1 slab 13 1/8 x 7 1/32"]);
  });

  test("of a pair is half of what the gap between them leaves", () => {
    // (24 + 1 − 1/8) ÷ 2 = 12 7/16
    const build = over("wide 24  high 20", "door for left { overlay 1/2  pair  gap 1/8  slab ply  hinged left }");
    expect(partsOf(build, "door left")).toEqual(["2 slab 21 x 12 7/16"]);
    // inset: 24 − 2 × 1/16 = 23 7/8, less the gap of 1/8, halved: 11 7/8; 20 − 1/8 = 19 7/8
    const inset = over("wide 24  high 20", "door for left { inset  pair  gap 1/8  slab ply  hinged left }");
    expect(partsOf(inset, "door left")).toEqual(["2 slab 19 7/8 x 11 7/8"]);
  });

  test("of an inset pair keeps the gap round it apart from the one between its leaves", () => {
    const leaves = (gap: string) =>
      partsOf(over("wide 24  high 20", `door for left { inset  pair  ${gap}  slab ply }`), "door left");
    // 24 − 2 × 3/32 = 23 13/16, less 1/8, halved: 11 27/32; 20 − 2 × 3/32 = 19 13/16
    expect(leaves("gap 3/32 round, 1/8 between")).toEqual(["2 slab 19 13/16 x 11 27/32"]);
    expect(leaves("gap 1/8 between, 3/32 round")).toEqual(["2 slab 19 13/16 x 11 27/32"]);
    expect(leaves("gap 1/8, 3/32 round")).toEqual(["2 slab 19 13/16 x 11 27/32"]);
    // only the one round it said: between the leaves 1/8
    expect(leaves("gap 3/32 round")).toEqual(["2 slab 19 13/16 x 11 27/32"]);
    // only the one between them said: 1/16 round
    expect(leaves("gap 1/8 between")).toEqual(["2 slab 19 7/8 x 11 7/8"]);
  });

  test("is what is stated, and an overlay that says otherwise is found", () => {
    expect(slab("wide 13 1/4  high 7")).toEqual(["1 slab 13 1/4 x 7"]);
    expect(errorsOf(over("wide 12  high 6", "front for left { slab ply  overlay 1/2  wide 13 1/4 }"))).toEqual([
      "size/disagree",
    ]);
  });
});

describe("full overlay", () => {
  const store = (doors: string) =>
    built(`${shop}
    case store { wide 30  high 20  deep 12  panels ply  across { opening a  partition  opening b } }
    ${doors}`);

  test("covers the case but for the reveals, and shares a partition less the gap", () => {
    const build = store("door for a, b { full-overlay  reveal 1/16  gap 1/8  slab ply  hinged left }");
    // openings: (30 − 3 × 23/32) ÷ 2 = 13 59/64; outside 23/32 − 1/16 = 42/64; inside (23/32 − 4/32) ÷ 2 = 19/64
    // wide 13 59/64 + 42/64 + 19/64 = 14 7/8; high 20 − 2 × 1/16 = 19 7/8
    expect(partsOf(build, "door a")).toEqual(["1 slab 19 7/8 x 14 7/8"]);
    expect(partsOf(build, "door b")).toEqual(["1 slab 19 7/8 x 14 7/8"]);
    // two doors, a gap and two reveals are the case again: 2 × 14 7/8 + 1/8 + 2 × 1/16 = 30
  });

  test("is what a frameless case has when nothing is said: 3 mm between faces, half of it at the outside", () => {
    const build = store("front for a { slab ply }");
    const [front] = build.derivation.model.fronts;
    // 23/32 − 1.5 mm = 23/32 − 15/254 = (2921 − 240) / 4064; (23/32 − 3 mm) ÷ 2 = (2921 − 480) / 8128
    expect([front!.overlays.left!, front!.overlays.right!].map(exact)).toEqual(["2681/4064", "2441/8128"]);
  });

  test("one front may span openings side by side, the member between them counted in", () => {
    const build = store("front spanning a, b { full-overlay  reveal 1/16  slab ply }");
    expect(partsOf(build, "front a+b")).toEqual(["1 slab 29 7/8 x 19 7/8"]);
    const { origin } = build.derivation.model.fronts[0]!.wide;
    const [width] = origin.kind === "derived" ? Object.values(origin.inputs) : [];
    expect(width?.origin.kind === "derived" && width.origin.rule.formula).toBe("from {a} to {b}, members counted in");
  });

  test("one door may span openings too, each with a box behind it", () => {
    const build = store("door spanning a, b { full-overlay  reveal 1/16  slab ply  hinged left }");
    expect(partsOf(build, "door a+b")).toEqual(["1 slab 19 7/8 x 29 7/8"]);
    expect(errorsOf(build)).toEqual([]);
  });

  test("a front may span openings side by side and one above the other, named in any order", () => {
    const build = built(`${shop}
      case store { wide 30  high 20  deep 12  panels ply
        across { opening a 8  partition  down { opening b 6  rail  opening c } } }
      front spanning c, a, b { overlay 1/2  slab ply }`);
    // 30 − 2 × 23/32 = 28 9/16 wide, 20 − 1 7/16 = 18 9/16 high, and an overlay of 1/2 at each edge
    expect(partsOf(build, "front c+a+b")).toEqual(["1 slab 29 9/16 x 19 9/16"]);
    // Of b and c alone: 28 9/16 − 8 − 23/32 = 19 27/32
    const column = built(`${shop}
      case store { wide 30  high 20  deep 12  panels ply
        across { opening a 8  partition  down { opening b 6  rail  opening c } } }
      front spanning c, b { full-overlay  reveal 1/16  gap 1/8  slab ply }`);
    // Left the partition's half less half the gap, 19/64; right 23/32 − 1/16 = 42/64: 19 54/64 + 61/64 = 20 51/64.
    // High: 18 9/16 + 2 × 42/64 = 19 7/8
    expect(partsOf(column, "front c+b")).toEqual(["1 slab 20 51/64 x 19 7/8"]);
  });
});

describe("frame and panel", () => {
  test("a front 17 x 20 1/4 of 2 wide members and a 3/8 tongue has stiles 20 1/4 and rails 13 3/4", () => {
    const build = over(
      "wide 16  high 19 1/4",
      "door for left { overlay 1/2  frame oak 2 wide  panel quarter  hinged left }",
    );
    // rails 17 − 2 × 2 + 2 × 3/8 = 13 3/4; ply floats 1/32 an edge: 17 − 4 + 3/4 − 1/16 = 13 11/16 by 20 1/4 − 4 + 3/4 − 1/16 = 16 15/16
    expect(partsOf(build, "door left")).toEqual([
      "2 stile 20 1/4 x 2",
      "2 rail 13 3/4 x 2",
      "1 panel 16 15/16 x 13 11/16",
    ]);
  });

  test("a door 15 x 24 with 2 1/4 members (facts by the identities of AWS frames): rails 11 1/4, solid panel 11 x 20", () => {
    const door = (grooves: string) =>
      partsOf(
        built(`${shop}${grooves} opening left { wide 14  high 23 }
        door for left { overlay 1/2  frame oak 2 1/4 wide  panel oak solid  float 1/8  hinged left }`),
        "door left",
      );
    expect(door("")).toEqual(["2 stile 24 x 2 1/4", "2 rail 11 1/4 x 2 1/4", "1 panel 20 x 11"]);
    // g = 7/16: 15 − 4 1/2 + 7/8 = 11 3/8
    expect(door("grooves { wide 1/4  deep 7/16 }")[1]).toBe("2 rail 11 3/8 x 2 1/4");
  });

  test("a solid panel has room for what its wood swells by: half at each edge, up to the next 1/64", () => {
    const door = (species: string, place = "") =>
      partOf(
        built(`inches ${place} board wood { thick 3/4  species ${species}  ${/sawn/.test(species) ? "" : "sawn flat"}  moisture 8 % }
        opening left { wide 15  high 20 }
        door for left { inset  gap 0  frame wood 2 wide  panel wood solid  hinged left }`),
        "door left",
        "panel",
      );
    // clear width 15 − 4 = 11; sugar maple flat-sawn 0.00353 (Wood Handbook, Table 13-5) from 8 to 12 %: 11 × 0.01412 = 0.1553,
    // half is 0.0777 = 4.97/64, up to 5/64: 11 + 3/4 − 2 × 5/64 = 11 19/32; along the grain 16 + 3/4 − 2 × 1/16 = 16 5/8
    const maple = door("hard maple", "place { shop 8 %  driest 6 %  dampest 12 % }");
    expect([exact(maple.length), exact(maple.width)]).toEqual(["16 5/8", "11 19/32"]);
    // wood that is as damp as it will get has the 1/16 that it needs to go in: 11 3/4 − 1/8
    expect(exact(door("hard maple", "place { shop 8 %  driest 6 %  dampest 8 % }").width)).toBe("11 5/8");
    // Quarter-sawn it moves by 0.00165 an inch and percent: 11 × 4 × 0.00165 = 0.0726, half is 0.0363 = 2.3/64, less than the 1/16.
    const quarter = door("hard maple  sawn quarter", "place { shop 8 %  driest 6 %  dampest 12 % }");
    expect(exact(quarter.width)).toBe("11 5/8");
    // an unknown wood has 1/8 (common practice, no source)
    expect(exact(door("moon wood").width)).toBe("11 1/2");
  });

  test("a panel flush with the back: the groove lies its rabbet's depth from the back face", () => {
    const build = over(
      "wide 16  high 19 1/4",
      "door for left { overlay 1/2  frame oak 2 wide  panel thin flush back  hinged left }",
    );
    // p − b = 15/32 − 8/32 = 7/32 deep, 3/8 wide; in front of the groove stay 3/4 − 15/32 = 9/32
    expect(machiningOf(partOf(build, "door left", "panel"))).toEqual(["rabbet back, all edges, 3/8 wide, 7/32 deep"]);
    expect(machiningOf(partOf(build, "door left", "stile"))).toEqual([
      "groove inner edge, off centre: front face marked, 1/4 wide, 3/8 deep, 7/32 from",
    ]);
    const centred = over(
      "wide 16  high 19 1/4",
      "door for left { overlay 1/2  frame oak 2 wide  panel thin  hinged left }",
    );
    expect(machiningOf(partOf(centred, "door left", "stile"))).toEqual([
      "groove inner edge, centred, 1/4 wide, 3/8 deep",
    ]);
    // a panel thinner than the cutter has a groove of its own thickness
    const thin = over(
      "wide 16  high 19 1/4",
      "door for left { overlay 1/2  frame oak 2 wide  panel quarter  hinged left }",
    );
    expect(machiningOf(partOf(thin, "door left", "stile"))).toEqual([
      "groove inner edge, centred, 7/32 wide, 3/8 deep",
    ]);
    expect(machiningOf(partOf(thin, "door left", "panel"))).toEqual([]);
  });

  test.each([
    // clear width 17 − 4 = 13
    ["", "13 3/4"],
    ["joint tongue", "13 3/4"],
    // 13 + 2 × 1 1/4 = 15 1/2
    ["joint tenon 1 1/4", "15 1/2"],
    ["joint dowels", "13"],
    ["joint pocket screws", "13"],
    // mitred: all at outside length
    ["mitred", "17"],
    ["joint mitred", "17"],
  ])("%s: rails %s", (joint, rail) => {
    const build = over(
      "wide 16  high 19 1/4",
      `door for left { overlay 1/2  frame oak 2 wide  panel quarter  hinged left  ${joint} }`,
    );
    expect(exact(partOf(build, "door left", "rail").length)).toBe(rail);
    expect(exact(partOf(build, "door left", "stile").length)).toBe("20 1/4");
  });

  test("mid rails and mid stiles divide the clear size evenly", () => {
    const door = (mid: string) =>
      partsOf(
        over("wide 19  high 40", `door for left { overlay 1/2  frame oak 2 wide  panel quarter  hinged left  ${mid} }`),
        "door left",
      );
    // clear 20 − 4 = 16 wide, 41 − 4 = 37 high; with one rail (37 − 2) ÷ 2 = 17 1/2, panel 17 1/2 + 3/4 − 1/16 = 18 3/16
    expect(door("mid rails 1")).toEqual([
      "2 stile 41 x 2",
      "2 rail 16 3/4 x 2",
      "1 mid rail 16 3/4 x 2",
      "2 panel 18 3/16 x 16 11/16",
    ]);
    // one stile: (16 − 2) ÷ 2 = 7, panel 7 11/16; it stands between the rails with a tongue at each end: 37 + 3/4
    expect(door("mid stiles 1")).toEqual([
      "2 stile 41 x 2",
      "2 rail 16 3/4 x 2",
      "1 mid stile 37 3/4 x 2",
      "2 panel 37 11/16 x 7 11/16",
    ]);
    // both: four panels, two mid stiles of 17 1/2 + 3/4
    expect(door("mid rails 1  mid stiles 1").slice(2)).toEqual([
      "1 mid rail 16 3/4 x 2",
      "2 mid stile 18 1/4 x 2",
      "4 panel 18 3/16 x 7 11/16",
    ]);
  });

  test("its members' ends are cut for their joint", () => {
    const ends = (joint: string, name = "rail") =>
      machiningOf(
        partOf(
          over(
            "wide 16  high 19 1/4",
            `door for left { overlay 1/2  frame oak 2 wide  panel quarter  hinged left  ${joint} }`,
          ),
          "door left",
          name,
        ),
      ).slice(1);
    expect(ends("")).toEqual(["tongue both ends, 3/8 deep, 2 times"]);
    expect(ends("joint tenon 1")).toEqual(["tenon both ends, 1 deep, 2 times"]);
    expect(ends("joint dowels")).toEqual(["holes both ends, 4 times"]);
    expect(ends("joint pocket screws")).toEqual(["pockets back, both ends, 4 times"]);
    expect([ends("mitred"), ends("mitred", "stile"), ends("", "stile")]).toEqual([
      ["mitre both ends"],
      ["mitre both ends"],
      [],
    ]);
    // A member between two panels is grooved on both edges.
    expect(
      machiningOf(
        partOf(
          over("wide 16  high 40", "door for left { frame oak 2 wide  panel quarter  hinged left  mid rails 1 }"),
          "door left",
          "mid rail",
        ),
      )[0],
    ).toBe("groove both edges, centred, 7/32 wide, 3/8 deep, 2 times");
  });

  test("two mid rails make three panels, and say how", () => {
    const build = over(
      "wide 19  high 40",
      "door for left { overlay 1/2  frame oak 2 wide  panel quarter  hinged left  mid rails 2 }",
    );
    // (37 − 2 × 2) ÷ 3 = 11, and 3/4 − 1/16 for the panel: 11 11/16
    expect(partsOf(build, "door left").at(-1)).toBe("3 panel 11 11/16 x 16 11/16");
    const { origin } = partOf(build, "door left", "panel").length;
    const [clear] = origin.kind === "derived" ? Object.values(origin.inputs) : [];
    expect(clear?.origin.kind === "derived" && clear.origin.rule.formula).toBe(
      "({clear size} − 2 × {member width}) ÷ 3",
    );
  });

  test("rails of two widths, and stiles of their own", () => {
    const build = over(
      "wide 16  high 19",
      "door for left { overlay 1/2  frame oak 2 wide  stiles 2 1/4  rails 2, 3  panel quarter  hinged left }",
    );
    // rails 17 − 4 1/2 + 3/4 = 13 1/4; panel high 20 − 5 + 3/4 − 1/16 = 15 11/16
    expect(partsOf(build, "door left")).toEqual([
      "2 stile 20 x 2 1/4",
      "1 top rail 13 1/4 x 2",
      "1 bottom rail 13 1/4 x 3",
      "1 panel 15 11/16 x 13 3/16",
    ]);
  });
});

describe("grain, edging and hinges", () => {
  test("grain runs up a door and along a drawer front, unless it is said otherwise", () => {
    const size = (kind: string, grain = "") =>
      partsOf(
        over("wide 12  high 20", `${kind} for left { overlay 1/2  slab ply  ${grain}  hinged left }`),
        `${kind} left`,
      )[0];
    expect(size("door")).toBe("1 slab 21 x 13");
    expect(size("front")).toBe("1 slab 13 x 21");
    expect(size("front", "grain long")).toBe("1 slab 21 x 13");
    expect(size("door", "grain across")).toBe("1 slab 13 x 21");
    expect(
      partOf(over("wide 12  high 20", "front for left { slab ply  grain none }"), "front left", "slab").grain,
    ).toBe("none");
  });

  test("edging comes off the core, at the edges that have it", () => {
    expect(slab("overlay 1/2  edging band")).toEqual(["1 slab 12 15/16 x 6 15/16"]);
    expect(slab("overlay 1/2  edging band on left, top")).toEqual(["1 slab 12 31/32 x 6 31/32"]);
    expect(slab("overlay 1/2  edging band on all")).toEqual(["1 slab 12 15/16 x 6 15/16"]);
    expect(slab("overlay 1/2  edging band on left  edging band on right")).toEqual(["1 slab 12 15/16 x 7"]);
  });

  test("a hinge that says no cup is let into the edge, and counted like any other", () => {
    const build = over(
      "wide 24  high 50",
      "hinges brass { inset }\ndoor for left { inset  slab ply  hinged left  hinges brass }",
    );
    expect(partOf(build, "door left", "slab").machining.map(({ kind, where, count }) => [kind, where, count])).toEqual([
      ["mortise", "left edge", 3],
    ]);
    expect(build.derivation.model.hardware.map(({ quantity, name }) => `${quantity} ${name}`)).toEqual(["3 brass"]);
    // Said to be bored, it has a cup though its size is not said.
    const bored = over(
      "wide 24  high 20",
      "hinges set-in { inset  bore 5mm }\ndoor for left { inset  slab ply  hinged left  hinges set-in }",
    );
    expect(partOf(bored, "door left", "slab").machining.map(({ kind }) => kind)).toEqual(["cup"]);
  });

  test("a hinged door has its cups, by its height, on the hinge side only", () => {
    const cups = (high: string, hinges = "hinges cup") =>
      partOf(
        over(`wide 12  high ${high}`, `door for left { inset  slab ply  hinged left  ${hinges} }`),
        "door left",
        "slab",
      ).machining.find((one) => one.kind === "cup");
    // C = B + 17.5 = 22.5 mm = 225/254 in; heights to 40, 60, 80 in take 2, 3, 4
    expect(exact(cups("30")!.from!)).toBe("225/254");
    expect([cups("30"), cups("50"), cups("70")].map((cup) => cup?.count)).toEqual([2, 3, 4]);
    expect(cups("30", "hinges cup 5")?.count).toBe(5);
    expect(cups("30", "")).toBeUndefined();
  });

  test("a pair of doors turns on its two outer edges without saying so", () => {
    const over24 = (words: string) =>
      over("wide 24  high 20", `door for left { overlay 1/2  pair  slab ply  hinges cup  ${words} }`);
    const cup = (words: string) =>
      partOf(over24(words), "door left", "slab").machining.find((one) => one.kind === "cup");
    expect([cup("")?.where, cup("")?.count]).toEqual(["back, left edge", 2]);
    expect(cup("")?.note).toMatch(/^hinge side only: the left leaf's left edge, the right leaf's right edge; /);
    expect(cup("hinged top")?.note).toMatch(/^hinge side only; /);
    expect(over24("").findings.filter(({ code }) => code === "door/unhinged")).toEqual([]);
  });

  test("has the cups of the hinges that it names, and none where it does not turn", () => {
    const cup = (words: string) =>
      partOf(
        built(`${shop}hinges small { cup 26mm  bore 4mm }\nopening left { wide 12  high 20 }
        door for left { inset  slab ply  ${words} }`),
        "door left",
        "slab",
      ).machining.find((one) => one.kind === "cup");
    // 26 mm = 130/127 in; 35 mm = 175/127 in
    expect([exact(cup("hinged left  hinges small")!.wide!), exact(cup("hinged left  hinges cup")!.wide!)]).toEqual([
      "1 3/127",
      "1 48/127",
    ]);
    expect(cup("hinged right  hinges small")?.where).toBe("back, right edge");
    expect(cup("hinges small")).toBeUndefined();
  });

  test("a false front is a front without a box", () => {
    expect(
      partsOf(over("wide 12  high 6", "false front for left { overlay 1/2  slab ply }"), "false front left"),
    ).toEqual(["1 slab 13 x 7"]);
  });

  test("matched fronts come from one strip, in their order", () => {
    const build = built(`${shop}
      case store { wide 20  high 30  deep 12  panels ply  down { openings d-1 to d-3 equal } }
      front for d-1 to d-3 { slab ply  matched }`);
    const fronts = allParts(build).filter((part) => part.name === "slab");
    expect(fronts.map((part) => part.matched?.place)).toEqual([0, 1, 2]);
    expect(new Set(fronts.map((part) => part.matched?.group)).size).toBe(1);
    // What another block says is another strip.
    const two = built(`${shop}
      case store { wide 20  high 30  deep 12  panels ply  down { openings d-1 to d-4 equal } }
      front for d-1, d-2 { slab ply  matched }  front for d-3, d-4 { slab ply  matched }`);
    expect(new Set(allParts(two).flatMap((part) => part.matched?.group ?? [])).size).toBe(2);
  });

  test("matched fronts follow each other along the grain or across it, as they stand", () => {
    const along = (kind: string, layout: string, more = "") => {
      const build = built(`${shop}
        case store { wide 20  high 30  deep 12  panels ply  ${layout} }
        ${kind} for a, b { slab ply  matched  hinged left  ${more} }`);
      return allParts(build)
        .map((part) => part.matched?.along)
        .filter((one) => one !== undefined);
    };
    const [column, row] = ["down { opening a  rail  opening b }", "across { opening a  partition  opening b }"];
    // Grain runs along drawer fronts: one below the other lies across it, side by side along it. On doors it is the other way.
    expect(along("front", column)).toEqual(["across", "across"]);
    expect(along("front", row)).toEqual(["grain", "grain"]);
    expect(along("door", column)).toEqual(["grain", "grain"]);
    expect(along("door", row)).toEqual(["across", "across"]);
    expect(along("front", column, "grain long")).toEqual(["grain", "grain"]);
    // Where openings stand that were measured on site is not known; they are taken to stand in a column.
    const onSite = built(`${shop}opening a { wide 12  high 6 }  opening b { wide 12  high 6 }
      front for a, b { slab ply  matched }`);
    expect(allParts(onSite).map((part) => part.matched?.along)).toEqual(["across", "across"]);
  });
});
