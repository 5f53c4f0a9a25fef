import { describe, expect, test } from "vitest";
import type { HardwareItem } from "../../../language/derive/hardware.ts";
import type { Build } from "../../../language/service.ts";
import { built } from "../../support/built.ts";

const shop = `inches
sheet ply     { called 3/4  measures 23/32  size 48 x 96 }
sheet thin    { called 1/2  measures 15/32  size 48 x 96 }
board oak     { thick 3/4  wide 5 1/2  long 96 }
slides runner { mount side  lengths 10 to 28 by 2  clearance 1/2  above 1/4  below 1/4  behind 1/2  costs 21.50 }
hinges cup    { cup 35mm  bore 5mm  costs 3 }
opening left  { wide 15 1/2  high 6  deep 22 }
opening right { wide 15 1/2  high 6  deep 22 }
`;
const wanted = (text: string, kind?: HardwareItem["kind"]) => itemsOf(built(`${shop}${text}`), kind);
function itemsOf(build: Build, kind?: HardwareItem["kind"]): readonly string[] {
  return build.derivation.model.hardware
    .filter((item) => kind === undefined || item.kind === kind)
    .map(
      ({ name, size, quantity, unit, owners, cost }) =>
        `${quantity} ${unit} ${[name, size].filter((text) => text !== "").join(" ")} for ${owners.join(", ")}` +
        (cost === undefined ? "" : `: ${cost}`),
    );
}

describe("a box wants", () => {
  test("a pair of slides, three screws in each of their four members, and screws for what is screwed", () => {
    // Corners of 5 1/2 are screwed every three inches, twice each: 4 × 2. Round the bottom 2 × (14 1/2 + 20) = 69, every 6: 12.
    expect(wanted("box for left { sides ply  bottom thin under  slides runner }")).toEqual([
      "1 pair runner 20 for box left: 21.5",
      "12 piece pan-head #8 × 5/8 in for box left",
      "8 piece wood screw #8 × 1 1/4 in for box left",
      "12 piece flat-head #6 × 1 in for box left",
    ]);
  });

  test("no screws where its bottom lies in grooves or its corners hold themselves, but glue for them", () => {
    // Tails at both ends of two sides and pins at both ends of two ends: each part says it once.
    expect(wanted("box for left { sides ply  bottom thin in groove 1/4  corners dovetails  slides runner }")).toEqual([
      "1 pair runner 20 for box left: 21.5",
      "12 piece pan-head #8 × 5/8 in for box left",
      "4 joint wood glue for box left",
    ]);
  });

  test("a screw more in each corner for every three inches begun", () => {
    const corner = (high: string) => wanted(`box for left { sides ply  slides runner  high ${high} }`, "screws")[1];
    expect([corner("2"), corner("6"), corner("6 1/64")]).toEqual([
      "8 piece wood screw #8 × 1 1/4 in for box left",
      "8 piece wood screw #8 × 1 1/4 in for box left",
      "12 piece wood screw #8 × 1 1/4 in for box left",
    ]);
  });

  test("nothing without a slide that fits", () => {
    expect(wanted("opening low { wide 12  high 6  deep 5 }\nbox for low { sides ply  slides runner }")).toEqual([]);
  });

  test("what equal boxes want together, counted in one line", () => {
    const both = wanted("box for left, right { sides ply  slides runner }");
    expect(both).toEqual([
      "2 pair runner 20 for box left, box right: 43",
      "24 piece pan-head #8 × 5/8 in for box left, box right",
      "16 piece wood screw #8 × 1 1/4 in for box left, box right",
    ]);
    // Of another length they are another thing to buy.
    const unlike = wanted("box for left { sides ply  slides runner }\nbox for right { sides ply  slides runner 18 }");
    expect(unlike.filter((line) => line.includes("pair"))).toEqual([
      "1 pair runner 20 for box left: 21.5",
      "1 pair runner 18 for box right: 21.5",
    ]);
  });

  test("its slides at a price by the pair or by the piece, of which a pair has two", () => {
    const priced = (price: string) =>
      wanted(`slides other like runner { costs ${price} }\nbox for left { sides ply  slides other }`, "slides");
    expect([priced("9"), priced("9 per pair"), priced("9 per piece")].flat()).toEqual([
      "1 pair other 20 for box left: 9",
      "1 pair other 20 for box left: 9",
      "1 pair other 20 for box left: 18",
    ]);
  });

  test("the screws that its slides name, by their gauge and length", () => {
    const named = `screws flat { gauge #6  long 5/8  costs 4 per 100 }
      slides other like runner { screws flat }
      box for left { sides ply  slides other }`;
    // 12 of a hundred for 4: 0.48
    expect(wanted(named, "screws")[0]).toBe("12 piece flat #6 × 5/8 in for box left: 0.48");
  });

  test("pocket screws by the thickness of its sides, or those of the shop", () => {
    const box = "box for left { sides ply  slides runner  corners pocket screws }";
    // 23/32 into 23/32: 1 1/4 in, as the table of pocket screws has it for 3/4 stock
    expect(wanted(box, "screws")[1]).toBe("8 piece pocket screw 1 1/4 in for box left");
    const named = "screws coarse { gauge #8  long 1 1/4  costs 6 per 100 }\npockets { screws coarse }\n";
    expect(wanted(`${named}${box}`, "screws")[1]).toBe("8 piece coarse #8 × 1 1/4 in for box left: 0.48");
  });

  test("screws by diameter and millimetres in a file of millimetres, what it states being kept", () => {
    const metric = (sides: string, corners: string, more = "") =>
      itemsOf(
        built(`millimetres
          sheet ply { measures 18 }  sheet thin { measures 12 }  slides s { mount side  lengths 400, 450 ${more === "" ? "" : "screws own"} }
          ${more}
          opening left { wide 400  high 150  deep 500 }
          box for left { sides ${sides}  bottom thin under  slides s  corners ${corners} }
          front for left { slab ply }`),
        "screws",
      );
    // box 400 − 25.4 wide, 150 − 12.7 high: 2 screws in 76 mm; 2 × (374.6 + 450) round the bottom, every 152.4: 11
    expect(metric("ply", "screws")).toEqual([
      "12 piece pan-head 4 × 16 mm for box left",
      "8 piece wood screw 4 × 30 mm for box left",
      "11 piece flat-head 3.5 × 25 mm for box left",
      "4 piece wood screw 4 × 25 mm, from inside the box for front left",
    ]);
    expect(metric("thin", "dovetails")[0]).toBe("12 piece pan-head 4 × 12 mm for box left");
    // 1 1/4 in is 31.75 mm, and sold as 32
    expect(metric("ply", "pocket screws")[1]).toBe("8 piece pocket screw 32 mm for box left");
    const own = (words: string) => metric("ply", "dovetails", `screws own { ${words} }`)[0];
    expect(own("thick 3.5  long 16")).toBe("12 piece own 3.5 × 16 mm for box left");
    expect(own("gauge #6  long 16")).toBe("12 piece own #6 × 16 mm for box left");
    expect(own("thick 3.5")).toBe("12 piece own 3.5 mm for box left");
  });

  test("shorter screws for the slides of thin sides", () => {
    // 15/32 is less than 5/8: a screw of 1/2, through the metal of the slide, stays in it.
    expect(wanted("box for left { sides thin  slides runner }", "screws")[0]).toMatch(/pan-head #8 × 1\/2 in/);
  });

  test("four screws for each of its mounts", () => {
    const mounts = wanted(
      "opening bay { wide 20  high 6  deep 22  beside 23/32 }\nbox for bay { sides ply  slides runner }",
      "screws",
    );
    expect(mounts.at(-1)).toBe("8 piece wood screw into case or frame, by the thickness packed for box bay");
  });
});

describe("a front wants", () => {
  const door = (properties: string, kind?: HardwareItem["kind"]) =>
    wanted(`opening tall { wide 12  high 50 }\ndoor for tall { slab ply  hinged left  ${properties} }`, kind);

  test("hinges by its height, or as many as are written, for each leaf", () => {
    // 51 high with its overlays: 3 up to 60
    expect(door("hinges cup", "hinges")).toEqual(["3 piece cup for door tall: 9"]);
    expect(door("hinges cup 2", "hinges")).toEqual(["2 piece cup for door tall: 6"]);
    expect(door("hinges cup 2  pair  gap 1/8", "hinges")).toEqual(["4 piece cup for door tall: 12"]);
    expect(door("", "hinges")).toEqual([]);
  });

  test("its hinges at a price by the piece or by the pair", () => {
    const priced = (price: string) =>
      wanted(
        `opening tall { wide 12  high 50 }\nhinges butt { cup 35mm  costs ${price} }
        door for tall { slab ply  hinged left  hinges butt 4 }`,
        "hinges",
      );
    expect([priced("3"), priced("3 per piece"), priced("3 per pair")].flat()).toEqual([
      "4 piece butt for door tall: 12",
      "4 piece butt for door tall: 12",
      "4 piece butt for door tall: 6",
    ]);
  });

  test("its pulls for each leaf", () => {
    expect(door("pulls 1", "pulls")).toEqual(["1 piece pull for door tall"]);
    expect(door("pulls 1  pair  gap 1/8", "pulls")).toEqual(["2 piece pull for door tall"]);
    expect(door("pulls 0", "pulls")).toEqual([]);
    expect(door("", "pulls")).toEqual([]);
  });

  test("four screws where it is the front of a drawer", () => {
    expect(wanted("front for left { slab ply }", "screws")).toEqual([
      "4 piece wood screw #8 × 1 in, from inside the box for front left",
    ]);
    expect(door("", "screws")).toEqual([]);
  });

  test("glue for its frame's joints and none for its panel", () => {
    // Two tongues at each of two rails; the panel's own rabbet is not glued.
    expect(wanted("door for left { overlay 1/2  frame oak 2 wide  panel thin  hinged left }", "glue")).toEqual([
      "4 joint wood glue for door left",
    ]);
  });
});

describe("a shelf wants", () => {
  const shelves = (text: string) =>
    wanted(
      `opening one { wide 30  high 20  deep 12 }
    opening two { wide 30  high 20  deep 12 }
    ${text}`,
      "pins",
    );

  test("four pins where it is adjustable", () => {
    expect(shelves("shelf in one { from ply  adjustable  count 3 }")).toEqual([
      "12 piece shelf pin 5 mm for shelf one",
    ]);
    expect(shelves("shelf in one { from ply  fixed }")).toEqual([]);
  });

  test("four pins where it is like an adjustable one", () => {
    expect(shelves("shelf in one { from ply  adjustable }\nshelf in two like one { }")).toEqual([
      "8 piece shelf pin 5 mm for shelf one, shelf two",
    ]);
  });
});

describe("a framed case wants", () => {
  const store = (joint: string) =>
    wanted(
      `case store { wide 36  high 30  deep 12  panels ply  frame oak { stiles 2  rails 2  ${joint}  down { opening one  rail  opening two } } }`,
      "screws",
    );

  test("pocket screws for each end of its rails, unless they are tenoned or dowelled", () => {
    // Two rails and one mid rail, two screws at each end: 12. Both pieces are 3/4 thick, however wide the stile is, and
    // 3/4 to 3/4 takes 1 1/4 (common practice, no source).
    expect(store("")).toEqual(["12 piece pocket screw 1 1/4 in for case store"]);
    expect(store("joint tenon 1")).toEqual([]);
    expect(store("joint dowels")).toEqual([]);
  });
});

describe("what panels and rails are joined with is bought:", () => {
  const panels = (joint: string) =>
    `case store { wide 36  high 30  deep 20  panels ply  joint ${joint}  across { opening one  partition  opening two } }`;

  test("pocket screws at most eight inches apart across the ends of bottom, top and partitions", () => {
    // 20 deep: 19 between the outer two, which is more than twice eight, so four at each end; three panels, two ends.
    expect(wanted(panels("pocket screws"), "screws")).toEqual(["24 piece pocket screw 1 1/4 in for case store"]);
    expect(wanted(panels("dado 1/4"), "screws")).toEqual([]);
  });

  test("dowels for panels, for rails of face frames and for those of doors", () => {
    const frame = "case low { wide 36  high 30  deep 12  panels ply  frame oak { stiles 2  rails 2  joint dowels } }";
    const door = "door for one { overlay 3/8  frame oak 2 wide  panel thin  joint dowels  hinged left  hinges cup }";
    expect(wanted(panels("dowels"), "dowels")).toEqual(["24 piece dowels 3/8 × 1 1/2 in for case store"]);
    expect(wanted(frame, "dowels")).toEqual(["8 piece dowels 3/8 × 1 1/2 in for case low"]);
    expect(wanted(`opening one { wide 14  high 20  deep 12 }\n${door}`, "dowels")).toEqual([
      "8 piece dowels 3/8 × 1 1/2 in for door one",
    ]);
  });
});

describe("edging", () => {
  const bands = (band: string, text: string) =>
    itemsOf(built(`${shop}edging band { thick 1/32  ${band} }\n${text}`), "edging");

  test("is a tenth more than the edges that have it, to a tenth of a foot", () => {
    // 2 × (13 + 7 − 2 × 1/16): the core of 12 15/16 x 6 15/16 all round, 39 3/4; a tenth more is 43.725 in = 3.64 ft, up to 3.7
    expect(bands("", "front for left { wide 13  high 7  slab ply  edging band }")).toEqual([
      "3.7 foot band 1/32 for front left",
    ]);
    // Two shelves' fronts of 30: 66 in = 5.5 ft
    expect(
      bands(
        "",
        "opening one { wide 30  high 20  deep 12 }\nshelf in one { from ply  fixed  count 2  edging band on front }",
      ),
    ).toEqual(["5.5 foot band 1/32 for shelf one"]);
    // A part's own front of 20 and left end of 10: 30 and a tenth
    expect(bands("", "part lid { from ply  long 20  wide 10 1/32  edging band on front, left }")[0]).toMatch(
      /^2\.8 foot/,
    );
  });

  test("on the left of a door runs up its height, on the left of a drawer front up its own", () => {
    // Up a door of 50: 55 in = 4.58 ft. Up a drawer front of 10: 11 in = 0.92 ft. Along the top of a door of 10: the same.
    const front = (kind: string, edge: string, wide: string, high: string) =>
      bands("", `${kind} for left { wide ${wide}  high ${high}  slab ply  edging band on ${edge}  hinged left }`)[0];
    expect(front("door", "left", "10", "50")).toMatch(/^4\.6 foot/);
    expect(front("door", "left, right", "10", "50")).toMatch(/^9\.2 foot/);
    expect(front("door", "top", "10", "50")).toMatch(/^1 foot/);
    expect(front("front", "left", "50", "10")).toMatch(/^1 foot/);
    expect(front("front", "top", "50", "10")).toMatch(/^4\.6 foot/);
  });

  test("costs by the foot where nothing else is said, in whatever units the file is", () => {
    // 120 in and a tenth are 11 ft, or 3.3528 m: 3.4 to a tenth
    const part = "part strip { from ply  long 120  wide 2  edging band on front }";
    expect(bands("costs 0.50", part)).toEqual(["11 foot band 1/32 for part strip: 5.5"]);
    expect(bands("costs 0.50 per foot", part)).toEqual(["11 foot band 1/32 for part strip: 5.5"]);
    // 11 ft = 3.3528 m at 2
    expect(bands("costs 2 per metre", part)).toEqual(["11 foot band 1/32 for part strip: 6.71"]);
    // What a foot of a roll costs is not known.
    expect(bands("costs 30 per piece", part)).toEqual(["11 foot band 1/32 for part strip"]);
    const metric = (costs: string) =>
      itemsOf(
        built(`millimetres
          sheet ply { measures 18 }  edging band { thick 0.6  costs ${costs} }
          part strip { from ply  long 3048  wide 50  edging band on front }`),
        "edging",
      );
    // 3.048 m and a tenth, 3.4 m in all; 3.4 m are 11.15 ft
    expect(metric("2 per metre")).toEqual(["3.4 metre band 0.6 for part strip: 6.8"]);
    expect(metric("0.50")).toEqual(["3.4 metre band 0.6 for part strip: 5.58"]);
  });
});

describe("prices", () => {
  test("of screws are for a hundred where nothing else is said", () => {
    const cost = (costs: string) =>
      wanted(
        `screws flat { gauge #6  long 5/8  costs ${costs} }
        slides other like runner { screws flat }
        box for left, right { sides ply  slides other  corners dovetails }`,
        "screws",
      )[0];
    // 24 screws
    expect(cost("5")).toBe("24 piece flat #6 × 5/8 in for box left, box right: 1.2");
    expect(cost("5 per 50")).toBe("24 piece flat #6 × 5/8 in for box left, box right: 2.4");
    expect(cost("0.10 per piece")).toBe("24 piece flat #6 × 5/8 in for box left, box right: 2.4");
  });
});
