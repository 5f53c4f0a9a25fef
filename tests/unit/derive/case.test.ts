import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { built, errorsOf, exact, machiningOf, openingOf, partOf, partsOf } from "../../support/built.ts";
import { stock, store } from "../../support/store.ts";

const example = (name: string) => readFileSync(new URL(`../../../examples/${name}.scant`, import.meta.url), "utf8");

const parts = (properties: string) => partsOf(store(properties), "case store");

describe("the plan chest of the sample", () => {
  const build = built(example("print-room"), { "rack.scant": example("rack") });

  test("its frame: stiles full height, rails between them (AWS 4.4.6.10.1.6)", () => {
    const frame = partsOf(build, "case chest").filter((text) => /stile|rail/.test(text));
    // face 34 1/2 − 4 = 30 1/2 high; between stiles 48 − 4 = 44; columns 18 and 44 − 18 − 2 = 24, each 30 1/2 − 3 = 27 1/2 high
    expect(frame).toEqual([
      "2 stile 30 1/2 x 2",
      "2 rail 44 x 1 1/2",
      "1 mid rail 18 x 1 1/2",
      "1 mid stile 27 1/2 x 2",
      "3 mid rail 24 x 1 1/2",
    ]);
  });

  test("its openings share what the members leave", () => {
    const size = (name: string) =>
      [openingOf(build, name).wide, openingOf(build, name).high, openingOf(build, name).deep!].map(exact).join(" x ");
    // rollers 27 1/2 − 6 − 1 1/2 = 20; plans (27 1/2 − 3 × 1 1/2) ÷ 4 = 5 3/4; deep 26 − 15/32 = 25 17/32
    expect([size("inks"), size("rollers"), size("plan-1"), size("plan-4")]).toEqual([
      "18 x 6 x 25 17/32",
      "18 x 20 x 25 17/32",
      "24 x 5 3/4 x 25 17/32",
      "24 x 5 3/4 x 25 17/32",
    ]);
  });

  test("its panels: sides full height, the back in their rabbets", () => {
    const panels = partsOf(build, "case chest").filter((text) => !/stile|rail/.test(text));
    // sides 26 − 3/4 deep; bottom 48 − 2 × 45/64 = 46 19/32 by 25 1/4 − 15/32; back 48 − 2 × (45/64 − 24/64) = 47 11/32
    expect(panels).toContain("2 side 34 1/2 x 25 1/4");
    expect(panels).toContain("1 bottom 46 19/32 x 24 25/32");
    expect(panels).toContain("1 back 34 1/2 x 47 11/32");
    expect(panels).toContain("1 kick 48 x 4");
  });

  test("its boxes, fronts and door follow", () => {
    // 24 − 1 = 23 wide, 5 3/4 − 1/2 = 5 1/4 high, the longest not over 25 1/32: 24; sides 5 1/4 − 15/32 = 4 25/32; ends 23 − 1 13/32
    expect(partsOf(build, "box plan-1").slice(0, 4)).toEqual([
      "2 side 24 x 4 25/32",
      "1 front 21 19/32 x 4 25/32",
      "1 back 21 19/32 x 4 25/32",
      "1 bottom 24 x 23",
    ]);
    // 25 x 6 3/4: rails 25 − 4 + 3/4; panel 21 3/4 − 1/16 by 6 3/4 − 4 + 3/4 − 1/16
    expect(partsOf(build, "front plan-1")).toEqual([
      "2 stile 6 3/4 x 2",
      "2 rail 21 3/4 x 2",
      "1 panel 21 11/16 x 3 7/16",
    ]);
    expect(partsOf(build, "door rollers").slice(0, 2)).toEqual(["2 stile 21 x 2", "2 rail 15 3/4 x 2"]);
  });

  test("an edge lies the stile less the panel before the case side, and a stile between has one mount for both", () => {
    expect(exact(openingOf(build, "inks").bounds.left.beside!)).toBe("1 19/64");
    expect(openingOf(build, "inks").bounds.right).toMatchObject({ shared: true });
  });

  test("a 2 in packing from 3/4 + 1/2 + 3/4 that measures 1 7/8 leaves 1/8 to shim", () => {
    // 45/64 + 15/32 + 45/64 = 120/64
    const middle = build.derivation.model.mounts.find((mount) => mount.side === "middle");
    expect(middle?.layers.map((layer) => layer.name)).toEqual(["birch-18", "birch-18", "birch-12"]);
    expect([middle!.need, middle!.built, middle!.left].map(exact)).toEqual(["2", "1 7/8", "1/8"]);
  });

  test("changing what one sheet measures changes what hangs on it and nothing else", () => {
    const other = built(example("print-room").replace("measures 15/32", "measures 1/2"), {
      "rack.scant": example("rack"),
    });
    const [before, after] = [build, other].map((one) =>
      one.derivation.model.parts.map((part) =>
        [part.id, exact(part.length), exact(part.width), exact(part.thickness)].join(" "),
      ),
    );
    const changed = before!
      .filter((line) => !after!.includes(line))
      .map((line) =>
        line
          .split(" ")
          .slice(0, -3)
          .join(" ")
          .replace(/( \d+\/\d+| \d+)+$/, ""),
      );
    // The frame, the stiles and rails of the fronts and the door do not hang on the thickness of the thin sheet.
    expect(changed.filter((id) => /stile|rail|kick|slab/.test(id))).toEqual([]);
    expect(changed.some((id) => id.startsWith("box plan-1/side"))).toBe(true);
  });
});

describe("a frameless case", () => {
  // t = 23/32, inside 36 − 1 7/16 = 34 9/16
  test("with its back applied", () => {
    expect(parts("back quarter applied  opening one")).toEqual([
      "2 side 30 x 11 25/32",
      "1 bottom 34 9/16 x 11 25/32",
      "1 top 34 9/16 x 11 25/32",
      "1 back 30 x 36",
    ]);
  });

  test("with its back in rabbets", () => {
    // 36 − 2 × (23/32 − 12/32) = 35 5/16
    const build = store("back quarter in rabbet 3/8  opening one");
    expect(partsOf(build, "case store")).toEqual([
      "2 side 30 x 12",
      "1 bottom 34 9/16 x 11 25/32",
      "1 top 34 9/16 x 11 25/32",
      "1 back 30 x 35 5/16",
    ]);
    expect(machiningOf(partOf(build, "case store", "side"))).toEqual([
      "rabbet inside face, back edge, 7/32 wide, 3/8 deep",
    ]);
  });

  test("with its back in grooves, 1/2 in from the back edge", () => {
    // 34 9/16 + 2 × 1/4 − 1/16 = 35; before it 12 − (1/2 + 7/32) = 11 9/32
    const build = store("back quarter in groove 1/4  opening one");
    expect(partsOf(build, "case store")).toEqual([
      "2 side 30 x 12",
      "1 bottom 34 9/16 x 11 9/32",
      "1 top 34 9/16 x 11 9/32",
      "1 back 30 x 35",
    ]);
    expect(exact(openingOf(build, "one").deep!)).toBe("11 9/32");
  });

  test("without a back", () => {
    expect(parts("opening one")).toEqual(["2 side 30 x 12", "1 bottom 34 9/16 x 12", "1 top 34 9/16 x 12"]);
  });

  test("housed in dados: longer by both of them", () => {
    expect(parts("joint dado 1/4  opening one")[1]).toBe("1 bottom 35 1/16 x 12");
    expect(machiningOf(partOf(store("joint dado 1/4  opening one"), "case store", "side"))[0]).toMatch(
      /^dado inside face, 23\/32 wide, 1\/4 deep/,
    );
  });

  test("its top may be stretchers or nothing", () => {
    expect(parts("top stretchers 3  opening one").at(-1)).toBe("2 stretcher 34 9/16 x 3");
    expect(parts("top stretchers  opening one").at(-1)).toBe("2 stretcher 34 9/16 x 4");
    expect(parts("top none  opening one")).toHaveLength(2);
    expect(parts("top panel thin  opening one").at(-1)).toBe("1 top 34 9/16 x 12");
    expect(partOf(store("top panel thin  opening one"), "case store", "top").stock).toBe("thin");
    // open at the top: 30 − 23/32
    expect(exact(openingOf(store("top none  opening one"), "one").high)).toBe("29 9/32");
  });

  test("a kick is notched into the sides, and takes the openings' height", () => {
    const build = store("kick 4 high 3 deep  opening one");
    expect(partsOf(build, "case store")).toContain("1 kick 36 x 4");
    expect(machiningOf(partOf(build, "case store", "side"))).toEqual(["notch front bottom corner, 3 wide, 4 deep"]);
    // 30 − 4 − 2 × 23/32 = 24 9/16
    expect(exact(openingOf(build, "one").high)).toBe("24 9/16");
  });

  test("a partition stands between bottom and top, and its thickness comes off the openings", () => {
    const build = store(
      "back quarter applied  partitions thin  across { opening one 12  partition  opening two rest }",
    );
    // 30 − 1 7/16 = 28 9/16 high; two: 34 9/16 − 12 − 15/32 = 22 3/32
    expect(partsOf(build, "case store")).toContain("1 partition 28 9/16 x 11 25/32");
    expect(exact(openingOf(build, "two").wide)).toBe("22 3/32");
    // housed: 28 9/16 + 2 × 1/4
    const housed = store("joint dado 1/4  across { opening one  partition  opening two }");
    expect(partsOf(housed, "case store")).toContain("1 partition 29 1/16 x 12");
  });

  test("nailers: two, and a third above 60 in (AWS 4.4.18)", () => {
    expect(parts("nailers 3 1/2  opening one").at(-1)).toBe("2 nailer 34 9/16 x 3 1/2");
    const tall = built(
      `${stock}case store { wide 36  high 61  deep 12  panels ply  nailers 3 1/2 from oak  opening one }`,
    );
    expect(partsOf(tall, "case store").at(-1)).toBe("3 nailer 34 9/16 x 3 1/2");
    expect(partOf(tall, "case store", "nailer").stock).toBe("oak");
  });

  test("edging comes off the front of what it is glued to", () => {
    expect(parts("edging band on front  opening one")).toEqual([
      "2 side 30 x 11 31/32",
      "1 bottom 34 9/16 x 11 31/32",
      "1 top 34 9/16 x 11 31/32",
    ]);
  });

  test("shelves: adjustable with play at both ends, fixed between the sides", () => {
    const shelf = (how: string) => {
      const build =
        built(`${stock}case store { wide 36  high 30  deep 12  panels ply  back quarter applied  opening one }
        shelf in one { from ply  ${how} }`);
      return partsOf(build, "shelf one");
    };
    // 34 9/16 − 2 × 1/16 = 34 7/16; 11 25/32 − 1/4 = 11 17/32
    expect(shelf("adjustable  count 2")).toEqual(["2 shelf 34 7/16 x 11 17/32"]);
    expect(shelf("adjustable  gap 1/8  set 1/2")).toEqual(["1 shelf 34 5/16 x 11 9/32"]);
    // what it is set back by is not said of a fixed one: flush with the front
    expect(shelf("fixed  set 0")).toEqual(["1 shelf 34 9/16 x 11 25/32"]);
  });
});

describe("a framed case", () => {
  const framed = (frame: string, more = "") => store(`${more}  frame oak { stiles 2  rails 1 1/2  ${frame} }`);

  test("tenons add their length at both ends, to rails and to what stands between", () => {
    const build = framed("joint tenon 1  across { opening one  stile  opening two }");
    // 36 − 4 + 2 = 34; 30 − 3 + 2 = 29
    expect(partsOf(build, "case store").slice(0, 3)).toEqual([
      "2 stile 30 x 2",
      "2 rail 34 x 1 1/2",
      "1 mid stile 29 x 2",
    ]);
  });

  test("1 1/2 members are what a frame has when nothing is said (NAVEDTRA 14045: 1 by 2 stock)", () => {
    expect(partsOf(store("frame oak { opening one }"), "case store").slice(0, 2)).toEqual([
      "2 stile 30 x 1 1/2",
      "2 rail 33 x 1 1/2",
    ]);
  });

  test("its panels stand behind the frame", () => {
    const build = framed("opening one", "back quarter applied");
    // sides 12 − 3/4 − 7/32 = 11 1/32; the opening is deep from the frame's face: 12 − 7/32
    expect(partsOf(build, "case store")).toContain("2 side 30 x 11 1/32");
    expect([openingOf(build, "one").deep!, openingOf(build, "one").behindFrame!].map(exact)).toEqual([
      "11 25/32",
      "11 1/32",
    ]);
  });

  test("a partition behind a stile lies half of their difference behind each edge", () => {
    const build = framed("across { opening one  stile  opening two }", "partitions ply");
    // (2 − 23/32) ÷ 2 = 41/64
    expect(exact(openingOf(build, "one").bounds.right.beside!)).toBe("41/64");
    expect(openingOf(build, "one").bounds.right.shared).toBe(false);
  });

  test("openings laid out beside the frame stand in it", () => {
    expect(errorsOf(store("frame oak { stiles 2 }  across { opening one  stile  opening two }"))).toEqual([]);
    // (36 − 3 × 2) ÷ 2 = 15
    expect(
      exact(openingOf(store("frame oak { stiles 2 }  across { opening one  stile  opening two }"), "one").wide),
    ).toBe("15");
    expect(errorsOf(store("frame oak { opening one }  opening two"))).toEqual(["layout/two-roots"]);
  });

  test("a rear face has a frame and openings of its own, in the same depth", () => {
    const build = store("frame oak { opening one }  rear { frame oak { opening two } }");
    // 12 − 2 × 3/4
    expect(partsOf(build, "case store")).toContain("2 side 30 x 10 1/2");
    expect([openingOf(build, "one").face, openingOf(build, "two").face]).toEqual(["front", "rear"]);
  });

  test("a case like another has its size and panels, and openings of its own", () => {
    const build =
      built(`${stock}case left { wide 36  high 30  deep 12  panels ply  frame oak { stiles 2  opening one } }
      case right like left { wide 24  across { opening two  stile  opening three } }`);
    expect(errorsOf(build)).toEqual([]);
    // (24 − 3 × 2) ÷ 2 = 9
    expect(exact(openingOf(build, "two").wide)).toBe("9");
    expect(partsOf(build, "case right")).toContain("2 side 30 x 11 1/4");
  });
});
