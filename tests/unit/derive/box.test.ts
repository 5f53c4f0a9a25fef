import { describe, expect, test } from "vitest";
import { boxesTable } from "../../../language/view/boxes.ts";
import { built, errorsOf, exact, machiningOf, metricPartsOf, partOf, partsOf } from "../../support/built.ts";

/** Stocks by their measured thickness, and the common side-mounted slide. */
const shop = `inches
sheet ply     { called 3/4  measures 23/32  size 48 x 96 }
sheet thin    { called 1/2  measures 15/32  size 48 x 96 }
sheet quarter { called 1/4  measures 7/32   size 48 x 96 }
board oak     { thick 3/4  wide 5 1/2  long 96  species white oak }
slides runner { mount side  lengths 10 to 28 by 2  clearance 1/2 +1/32 -0  above 1/4  below 1/4  behind 1/2 }
opening left  { wide 15 1/2  high 6  deep 22 }
`;
const box = (properties: string, more = "") =>
  built(`${shop}${more}\nbox for left { sides ply  slides runner  ${properties} }`);
const parts = (properties: string, more = "") => partsOf(box(properties, more), "box left");

describe("a box on the common side-mounted slides", () => {
  test("an opening 15 1/2 x 6 x 22 gives a box 14 1/2 x 5 1/2 on a 20 slide", () => {
    const [model] = box("").derivation.model.boxes;
    // 15 1/2 − 2 × 1/2 = 14 1/2;  6 − 1/4 − 1/4 = 5 1/2;  22 − 1/2 = 21 1/2, the longest of 10, 12 ... 28 not over it: 20
    expect([model!.wide, model!.high, model!.deep, model!.slides.length!].map(exact)).toEqual([
      "14 1/2",
      "5 1/2",
      "20",
      "20",
    ]);
  });

  test("its sides are 20 long, its front and back 14 1/2 less twice the stock", () => {
    // 14 1/2 − 2 × 23/32 = 14 16/32 − 1 14/32 = 13 2/32
    expect(parts("")).toEqual(["2 side 20 x 5 1/2", "1 front 13 1/16 x 5 1/2", "1 back 13 1/16 x 5 1/2"]);
  });

  test("the thickness that counts is the measured one: another reading changes front and back and nothing else", () => {
    const thick = partsOf(
      built(`${shop.replace("23/32", "45/64")}box for left { sides ply  slides runner }`),
      "box left",
    );
    // 14 1/2 − 2 × 45/64 = 14 32/64 − 1 26/64 = 13 6/64
    expect(thick).toEqual(["2 side 20 x 5 1/2", "1 front 13 3/32 x 5 1/2", "1 back 13 3/32 x 5 1/2"]);
  });
});

describe("the slide", () => {
  const deep = (depth: string, properties = "", more = "") => {
    const build = built(
      `${shop.replace("deep 22", `deep ${depth}`)}${more}\nbox for left { sides ply  slides runner ${properties} }`,
    );
    const [model] = build.derivation.model.boxes;
    return [model?.slides.length === undefined ? undefined : exact(model.slides.length), errorsOf(build)[0]];
  };

  test("is the longest of its series that goes in before the room behind", () => {
    expect(deep("22 1/2")).toEqual(["22", undefined]);
    expect(deep("22 31/64")).toEqual(["20", undefined]);
    expect(deep("40")).toEqual(["28", undefined]);
    expect(deep("10 1/4")).toEqual([undefined, "slide/none-fits"]);
  });

  test("is shorter by the thickness of an inset front", () => {
    const front = "front for left { inset  slab ply }";
    // 22 1/2 − 1/2 − 23/32 = 21 9/32: a 20; without the front 22
    expect(deep("22 1/2", "", front)).toEqual(["20", undefined]);
    // 22 1/2 + 23/32 = 23 7/32 is just enough for the 22 again
    expect(deep("23 7/32", "", front)).toEqual(["22", undefined]);
    expect(deep("22 1/2", "", "front for left { overlay 1/2  slab ply }")).toEqual(["22", undefined]);
  });

  test("is the one that is named, and is checked", () => {
    expect(deep("23 1/2", "18")).toEqual(["18", undefined]);
    expect(deep("23 1/2", "24")).toEqual(["24", "slide/too-long"]);
    expect(deep("23 1/2", "2 * 9")).toEqual(["18", undefined]);
  });

  test("of a list is chosen like one of a series, in whatever order it is written", () => {
    const build = built(
      `${shop.replace("lengths 10 to 28 by 2", "lengths 21, 9, 15, 12, 18")}box for left { sides ply  slides runner }`,
    );
    expect(exact(build.derivation.model.boxes[0]!.deep)).toBe("21");
  });

  test("of a series that cannot be counted through is the one that it begins with", () => {
    const series = (lengths: string) => {
      const build = built(`${shop.replace("lengths 10 to 28 by 2", lengths)}box for left { sides ply  slides runner }`);
      return [build.derivation.model.boxes[0]?.slides.series.map(exact), errorsOf(build)];
    };
    expect(series("lengths 14 to 10 by 2")).toEqual([["14"], ["slide/bad-series"]]);
    expect(series("lengths 14 to 18 by 0")).toEqual([["14"], ["slide/bad-series"]]);
    expect(series("lengths 0, 14")).toEqual([["14"], ["slide/bad-series"]]);
    expect(series("lengths 14 to 14 by 2")).toEqual([["14"], []]);
    // The last is taken where a step falls on it, and not where none does.
    expect(series("lengths 14 to 18 by 2")).toEqual([["14", "16", "18"], []]);
    expect(series("lengths 14 to 17 by 2")).toEqual([["14", "16"], []]);
  });

  test("of a bad series is said once, however many boxes use it", () => {
    const build = built(`${shop.replace("lengths 10 to 28 by 2", "lengths 0, 14")}
      opening right { wide 15 1/2  high 6  deep 22 }
      slides other like runner { }
      box for left { sides ply  slides runner }
      box for right { sides ply  slides other }`);
    expect(errorsOf(build)).toEqual(["slide/bad-series"]);
  });

  test("may have its travel said, which is its length otherwise", () => {
    const travel = (properties: string) =>
      exact(
        built(`${shop.replace("mount side", `mount side ${properties}`)}box for left { sides ply  slides runner }`)
          .derivation.model.boxes[0]!.slides.travel!,
      );
    expect([travel(""), travel("travel 16")]).toEqual(["20", "16"]);
  });

  test("of a standard extension keeps six inches inside, unless its travel is said", () => {
    const build = (properties: string) =>
      built(`${shop.replace("mount side", `mount side ${properties}`)}box for left { sides ply  slides runner }`);
    const travel = (properties: string) => exact(build(properties).derivation.model.boxes[0]!.slides.travel!);
    // AWS App. B: all but four to six inches: 20 − 6 = 14
    expect(["extension standard", "extension full", "extension over"].map(travel)).toEqual(["14", "20", "20"]);
    expect(travel("extension standard travel 16")).toBe("16");
    // 14 − 23/32 = 13 9/32 of the inside comes past the front of the case
    const { context, model } = build("extension standard").derivation;
    expect(boxesTable(context, model).rows[0]!.cells.at(-1)).toBe("13 9/32");
  });

  test("that is longer than its name needs that much more depth; the box on it does not", () => {
    const longer = `${shop.replace("mount side", "mount side longer 7/8")}`;
    const lengthIn = (depth: string) =>
      exact(
        built(`${longer.replace("deep 22", `deep ${depth}`)}box for left { sides ply  slides runner }`).derivation.model
          .boxes[0]!.slides.length!,
      );
    // 21 3/8 − 1/2 − 7/8 = 20; a 64th less leaves the 18
    expect(["21 3/8", "21 23/64"].map(lengthIn)).toEqual(["20", "18"]);
    const checked = (properties: string) =>
      errorsOf(built(`${longer}box for left { sides ply  slides runner ${properties} }`));
    // 22 − 1/2 = 21 1/2 for the box, 20 5/8 for the slide
    expect(["20", "22", "20 deep 21 1/2"].map(checked)).toEqual([[], ["slide/too-long"], []]);
  });
});

describe("sizes that are stated", () => {
  test("hold over what is derived", () => {
    const [model] = box("wide 14  high 5  deep 21").derivation.model.boxes;
    expect([model!.wide, model!.high, model!.deep].map(exact)).toEqual(["14", "5", "21"]);
  });

  test("a box may be deeper than its slide, never shorter, never longer than the room", () => {
    expect(errorsOf(box("deep 21 1/2"))).toEqual([]);
    expect(errorsOf(box("deep 19"))).toEqual(["slide/longer-than-box"]);
    expect(errorsOf(box("deep 21 9/16"))).toEqual(["box/too-deep"]);
  });
});

describe("corners", () => {
  // t = 23/32, W = 14 1/2, D = 20
  test.each([
    // W − 2t = 13 1/16
    ["screws", "20", "13 1/16", "13 1/16"],
    ["nails", "20", "13 1/16", "13 1/16"],
    ["pocket screws", "20", "13 1/16", "13 1/16"],
    // D − 2t = 18 9/16; front and back over the ends of the sides
    ["screws ends over sides", "18 9/16", "14 1/2", "14 1/2"],
    ["pocket screws ends over sides", "18 9/16", "14 1/2", "14 1/2"],
    // 13 1/16 + 2 × 3/8 = 13 13/16
    ["rabbet 3/8", "20", "13 13/16", "13 13/16"],
    ["rabbet", "20", "13 13/16", "13 13/16"],
    // the back alone: 13 1/16 + 2 × 1/4 = 13 9/16
    ["dado 1/4", "20", "13 1/16", "13 9/16"],
    ["dado", "20", "13 1/16", "13 9/16"],
    // 13 1/16 + 2 × 3/16 = 13 7/16; + 2 × 1/4 = 13 9/16
    ["dado 3/16", "20", "13 1/16", "13 7/16"],
    ["rabbet 1/4", "20", "13 9/16", "13 9/16"],
    ["dovetails", "20", "14 1/2", "14 1/2"],
    ["fingers", "20", "14 1/2", "14 1/2"],
    ["mitred", "20", "14 1/2", "14 1/2"],
    // 20 − 1/8 of lap left at the front
    ["half-blind dovetails", "19 7/8", "14 1/2", "14 1/2"],
    ["half-blind dovetails  lap 3/16", "19 13/16", "14 1/2", "14 1/2"],
  ])("%s: sides %s, front %s, back %s", (corners, side, front, back) => {
    expect(parts(`corners ${corners}`)).toEqual([
      `2 side ${side} x 5 1/2`,
      `1 front ${front} x 5 1/2`,
      `1 back ${back} x 5 1/2`,
    ]);
  });

  test("say at the bench what is cut", () => {
    const cut = (corners: string, name: string) => machiningOf(partOf(box(`corners ${corners}`), "box left", name));
    expect(cut("rabbet 3/8", "side")).toEqual(["rabbet inside face, both ends, 23/32 wide, 3/8 deep, 2 times"]);
    expect(cut("dado 1/4", "side")).toEqual(["dado inside face, back end, 23/32 wide, 1/4 deep"]);
    expect(cut("pocket screws", "front")).toEqual(["pockets outside face, both ends, 4 times"]);
    expect(cut("half-blind dovetails", "front")).toEqual(["tails both ends", "lap front, 1/8 deep"]);
    expect(cut("dovetails", "back")).toEqual(["tails both ends"]);
    expect(cut("screws", "side")).toEqual([]);
    for (const name of ["side", "front", "back"]) {
      expect(cut("mitred", name)).toEqual(["mitre both ends"]);
      expect(cut("fingers", name)).toEqual(["fingers both ends"]);
      expect(cut("dovetails", name)).toEqual(["tails both ends"]);
    }
    expect(cut("half-blind dovetails", "back")).toEqual(["tails both ends"]);
    expect(cut("half-blind dovetails", "side")).toEqual(["tails both ends"]);
    expect(cut("rabbet 3/8", "front")).toEqual([]);
    expect(cut("dado 1/4", "front")).toEqual([]);
  });
});

describe("bottoms", () => {
  test("under: as large as the box, the sides lower by it", () => {
    // 5 1/2 − 15/32 = 5 1/32
    expect(parts("bottom thin under")).toEqual([
      "2 side 20 x 5 1/32",
      "1 front 13 1/16 x 5 1/32",
      "1 back 13 1/16 x 5 1/32",
      "1 bottom 20 x 14 1/2",
    ]);
  });

  test("in a groove: the inside and both grooves, less its play", () => {
    // inside 13 1/16 x (20 − 1 7/16 = 18 9/16); + 2 × 1/4 − 1/16: 13 1/2 x 19
    const build = box("bottom thin in groove 1/4 up 3/8");
    expect(partsOf(build, "box left").at(-1)).toBe("1 bottom 19 x 13 1/2");
    expect(machiningOf(partOf(build, "box left", "side"))).toEqual([
      "groove inside face, bottom edge, 15/32 wide, 1/4 deep, 3/8 from",
    ]);
    expect(parts("bottom thin in groove 1/4  play 1/8").at(-1)).toBe("1 bottom 18 15/16 x 13 7/16");
  });

  test("slid in from behind: one groove, and under the back, which ends above it", () => {
    // deep 18 9/16 + 1/4 + 23/32 − 1/16 = 18 18/32 + 8/32 + 23/32 − 2/32 = 19 15/32; the back 5 1/2 − 3/8 − 15/32 = 4 21/32
    const build = box("bottom thin in groove 1/4 up 3/8 from behind");
    expect(partsOf(build, "box left")).toEqual([
      "2 side 20 x 5 1/2",
      "1 front 13 1/16 x 5 1/2",
      "1 back 13 1/16 x 4 21/32",
      "1 bottom 19 15/32 x 13 1/2",
    ]);
    expect(machiningOf(partOf(build, "box left", "back"))).toEqual([]);
  });

  test("in a rabbet: the inside and both rabbets", () => {
    // 13 1/16 + 3/4 = 13 13/16; 18 9/16 + 3/4 = 19 5/16
    const build = box("bottom thin in rabbet 3/8");
    expect(partsOf(build, "box left").at(-1)).toBe("1 bottom 19 5/16 x 13 13/16");
    for (const name of ["side", "front", "back"])
      expect(machiningOf(partOf(build, "box left", name))).toEqual([
        "rabbet inside face, bottom edge, 15/32 wide, 3/8 deep",
      ]);
  });

  test("of which nothing is said but their stock lie under", () => {
    expect(parts("bottom thin")).toEqual(parts("bottom thin under"));
    // Grain runs along a solid bottom, and does not matter in a sheet.
    expect(partOf(box("bottom oak under"), "box left", "bottom").grain).toBe("long");
    expect(partOf(box("bottom thin under"), "box left", "bottom").grain).toBe("none");
  });

  test("the inside is what they leave", () => {
    const inside = (properties: string) => {
      const sizes = box(properties).derivation.model.boxes[0]!.inside!;
      return [sizes.wide, sizes.deep, sizes.high].map(exact).join(" x ");
    };
    expect(inside("bottom thin under")).toBe("13 1/16 x 18 9/16 x 5 1/32");
    // 5 1/2 − 3/8 − 15/32 = 4 21/32
    expect(inside("bottom thin in groove 1/4 up 3/8")).toBe("13 1/16 x 18 9/16 x 4 21/32");
    expect(inside("bottom thin in rabbet 3/8")).toBe("13 1/16 x 18 9/16 x 5 1/32");
    expect(inside("")).toBe("13 1/16 x 18 9/16 x 5 1/2");
  });
});

describe("other parts and stocks", () => {
  test("front and back may be of other stock: butt joints are by the sides, the depth inside by both ends", () => {
    const build = box("front oak  back thin  bottom quarter in groove 3/16");
    // inside deep 20 − 3/4 − 15/32 = 18 25/32; bottom 18 25/32 + 3/8 − 1/16 = 19 3/32 by 13 1/16 + 5/16 = 13 3/8
    expect(partsOf(build, "box left").at(-1)).toBe("1 bottom 19 3/32 x 13 3/8");
    expect(["side", "front", "back"].map((name) => partOf(build, "box left", name).stock)).toEqual([
      "ply",
      "oak",
      "thin",
    ]);
  });

  test("dividers run along or across the inside", () => {
    expect(parts("bottom thin under  dividers 3").at(-1)).toBe("3 divider 18 9/16 x 5 1/32");
    expect(parts("bottom thin under  dividers 2 across from quarter").at(-1)).toBe("2 divider 13 1/16 x 5 1/32");
    expect(parts("bottom thin under  dividers 0")).toHaveLength(4);
    const stock = (words: string) => partOf(box(`dividers ${words}`), "box left", "divider").stock;
    expect([stock("2"), stock("2 from quarter")]).toEqual(["ply", "quarter"]);
  });

  test("under-mounted: 42 mm narrower inside than the opening, about an inch lower", () => {
    const slides = "slides low { mount under  lengths 9 to 30 by 3 }";
    const build = built(
      `${shop}${slides}\nbox for left { sides thin  slides low  bottom quarter in groove 1/4 up 1/2 }`,
    );
    const [model] = build.derivation.model.boxes;
    // 15 1/2 − 210/127 + 15/16 = 15 7/16 + 1 − 210/127 = (263 × 127 − 210 × 16) / 2032 = 30041/2032
    expect([exact(model!.wide), exact(model!.high), exact(model!.deep)]).toEqual(["14 1593/2032", "5", "21"]);
  });

  test("on a centre slide: as wide as goes in, and a width that is written is held to the same", () => {
    const build = (words: string) =>
      built(`${shop}slides middle { mount centre  lengths 10 to 28 by 2 }
      box for left { sides ply  slides middle  ${words} }`);
    // 15 1/2 − 2 × 1/16 = 15 3/8
    expect(exact(build("").derivation.model.boxes[0]!.wide)).toBe("15 3/8");
    expect(errorsOf(build("wide 15 3/8"))).toEqual([]);
    expect(errorsOf(build("wide 15 7/16"))).toEqual(["box/too-wide"]);
  });

  test("in millimetres, as the seed store has them", () => {
    const build = built(`millimetres
      sheet ply-12 { measures 11.8 }  sheet ply-6 { measures 5.9 }
      slides low { mount under  lengths 250 to 550 by 50  inside 42  above 11  below 14  behind 13 }
      opening left { wide 320  high 165  deep 380 }
      box for left { sides ply-12  bottom ply-6 in groove 6 up 13  corners rabbet 6  slides low }`);
    // wide 320 − 42 + 2 × 11.8 = 301.6; high 165 − 25 = 140; deep 350; ends 301.6 − 23.6 + 12 = 290
    // bottom 278 + 12 − 1/16 in (1 47/80 mm) by 350 − 23.6 + 12 − 1 47/80
    expect(metricPartsOf(build, "box left")).toEqual([
      "2 side 350 x 140",
      "1 front 290 x 140",
      "1 back 290 x 140",
      "1 bottom 336 13/16 x 288 33/80",
    ]);
  });

  test("a box that cannot be made is a finding, and takes no other with it", () => {
    const build = built(`${shop}opening right { wide 15 1/2  high 6  deep 22 }
      box for left { sides lost  slides runner }
      box for right { sides ply  slides runner }`);
    expect(errorsOf(build)).toEqual(["name/unknown-stock"]);
    expect(partsOf(build, "box left")).toEqual([]);
    expect(partsOf(build, "box right")).toHaveLength(3);
  });
});
