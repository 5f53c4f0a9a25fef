import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { applied } from "../../../language/fit/fix-all.ts";
import { findingsOf, mainFile } from "../../support/carets.ts";

const shop = readFileSync(fileURLToPath(new URL("../../fixtures/findings/shop.scant", import.meta.url)), "utf8");
const head = 'inches\nuse "shop.scant"\n';

const found = (text: string, ...codes: readonly string[]) =>
  findingsOf(
    new Map([
      [mainFile, head + text],
      ["shop.scant", shop],
    ]),
  ).filter(({ code }) => codes.includes(code));
/** The codes, of those asked for, that a text has. */
const codes = (text: string, ...asked: readonly string[]) => found(text, ...asked).map(({ code }) => code);
/** The text after each fix of the first finding of a code. */
const mended = (text: string, code: string) =>
  (found(text, code)[0]?.fixes ?? []).map(({ edits }) => applied(head + text, edits).slice(head.length));

describe("fronts beside and above each other", () => {
  const near = ["front/collide", "front/tight-gap"];
  // Rails of 1 1/2 lie between a and b, c and d; a stile of 2 between the columns.
  const grid = (fronts: string, stile = "") => `case one {
  wide 40  high 30  deep 20  panels ply
  frame oak { stiles 2  rails 1 1/2  across { down { opening a  rail  opening b } stile ${stile} down { opening c  rail  opening d } } }
}
${fronts}`;
  const over = (openings: string, overlay: string) => `front for ${openings} { overlay ${overlay}  slab ply }\n`;

  test("keep 1/16, are remarked below that and cannot overlap", () => {
    // Over the rail 1 1/2 − 2 × 23/32 = 1/16; − 2 × 47/64 = 1/32; − 2 × 3/4 = 0; − 2 × 49/64 = −1/32
    expect(["23/32", "47/64", "3/4", "49/64"].map((overlay) => codes(grid(over("a, b", overlay)), ...near))).toEqual([
      [],
      ["front/tight-gap"],
      ["front/tight-gap"],
      ["front/collide"],
    ]);
    // Over the stile 2 − 2 × 31/32 = 1/16; 63/64: 1/32; 1 1/64: −1/32
    expect(["31/32", "63/64", "1 1/64"].map((overlay) => codes(grid(over("a, c", overlay)), ...near))).toEqual([
      [],
      ["front/tight-gap"],
      ["front/collide"],
    ]);
    expect(found(grid(over("a, c", "1 1/64")), ...near)[0]?.message).toBe(
      '"front a" and "front c" overlap by 1/32 in over a member of 2 in',
    );
    expect(found(grid(over("a, b", "3/4")), ...near)[0]?.message).toBe(
      '"front a" and "front b" are 0 in apart over a member of 1 1/2 in',
    );
  });

  test("that only come near at their corners do not meet", () => {
    // 1/32 apart both ways: a is at the top left, d at the bottom right
    expect(codes(grid(over("a, d", "47/64"), "1 1/2"), ...near)).toEqual([]);
    expect(codes(grid(over("a, d", "49/64"), "1 1/2"), ...near)).toEqual(["front/collide"]);
  });

  test("on two faces, in two cases or inset do not come near each other", () => {
    const rear = `case one { wide 40  high 30  deep 20  frame oak { opening a }  rear { frame oak { opening b } } }\n`;
    expect(codes(rear + over("a, b", "1/2"), ...near)).toEqual([]);
    const two = "case one { wide 40  high 30  deep 20  frame oak { opening a } }\ncase two like one { opening b }\n";
    expect(codes(two + over("a, b", "1/2"), ...near)).toEqual([]);
    expect(codes(grid(`${over("a", "3/4")}front for b { inset  slab ply }\n`), ...near)).toEqual([]);
  });

  test("are given an overlay that leaves 3 mm between them, in each place where one is written", () => {
    // (1 1/2 − 3 mm) ÷ 2 = 0.691, down to 11/16 on a tape read to 1/32; the stile of 2: 0.941, 15/16
    expect(mended(grid(over("a, b", "7/8")), "front/collide")).toEqual([grid(over("a, b", "11/16"))]);
    expect(mended(grid(over("a", "7/8") + over("b", "3/4")), "front/collide")).toEqual([
      grid(over("a", "11/16") + over("b", "11/16")),
    ]);
    expect(mended(grid(over("a", "1/2, 1 right") + over("c", "1/2, 1 1/8 left")), "front/collide")).toEqual([
      grid(over("a", "1/2, 15/16 right") + over("c", "1/2, 15/16 left")),
    ]);
  });

  test("of which one overlay is not written are found where the other is, and not changed", () => {
    // Over the rail 1 1/2 − 1 1/8 − 1/2 = −1/8
    const text = grid(`${over("a", "1 1/8")}front for b { slab ply }\n`);
    const [finding] = found(text, ...near);
    expect([finding?.code, finding?.fixes]).toEqual(["front/collide", []]);
    expect((head + text).slice(finding!.span.start, finding!.span.end)).toBe("1 1/8");
  });
});

describe("a front and the edge of its case", () => {
  const one = (fronts: string) => `case one {
  wide 40  high 30  deep 20  panels ply  top panel thin  across { opening a  partition  opening b }
}
${fronts}`;
  const over = (words: string) => `front for a { overlay ${words}  slab ply }\n`;
  const code = "front/beyond-case";

  test("may cover all of what stands there and no more, on each side by itself", () => {
    // Sides and bottom are 23/32, the top 15/32; the partition at the right is no edge of the case.
    expect(found(one(over("23/32, 15/32 top, 1/4 right")), code)).toEqual([]);
    const sides = ["left", "bottom", "top"].map((side) => found(one(over(`1/4, 3/4 ${side}`)), code)[0]?.message ?? "");
    expect(sides).toEqual([
      "an overlay of 3/4 in reaches 1/32 in past the left of the case, which has 23/32 in there",
      "an overlay of 3/4 in reaches 1/32 in past the bottom of the case, which has 23/32 in there",
      "an overlay of 3/4 in reaches 9/32 in past the top of the case, which has 15/32 in there",
    ]);
    expect(found(one(over("1/4, 3/8 right")), code)).toEqual([]);
  });

  test("is given what leaves the usual reveal; where no overlay is written there is none to change", () => {
    // 23/32 less the reveal of 1.5 mm is 0.66: 21/32
    expect(mended(one(over("1/4, 1 left")), code)).toEqual([one(over("1/4, 21/32 left"))]);
    const narrow = "case one { wide 40  high 30  deep 20  frame oak { stiles 3/8  rails 2  opening a } }\n";
    const [finding] = found(`${narrow}front for a { slab ply }\n`, code);
    expect([finding?.fixes, finding?.remedy]).toEqual([[], "Make it 3/8 in at most: write overlay LENGTH."]);
  });
});

describe("an inset front", () => {
  const opening = (readings: string) => `opening a { ${readings}  deep 20 }\n`;

  test("has 1/16 round it, written or not, and a pair's gap is between its leaves", () => {
    const gap = (words: string, kind = "front") =>
      codes(`${opening("wide 15  high 20")}${kind} for a { inset  ${words}  slab ply }`, "front/inset-tight");
    expect([gap("gap 1/16"), gap("gap 3/64"), gap("")]).toEqual([[], ["front/inset-tight"], []]);
    expect(gap("gap 1/32  pair  hinged left", "door")).toEqual([]);
    expect(gap("gap 1/32 round, 1/8 between  pair", "door")).toEqual(["front/inset-tight"]);
    expect(gap("gap 1/16 round, 1/32 between  pair", "door")).toEqual([]);
  });

  test("of a pair is told where its gaps say a place that it has not, and words that no gap takes", () => {
    const said = (kind: string, words: string) =>
      found(`${opening("wide 15  high 20")}${kind} for a { ${words}  slab ply }`, "statement/no-effect").map(
        ({ message }) => message,
      );
    expect(said("door", "inset  pair  gap 3/32 round, 1/8 between")).toEqual([]);
    expect(said("front", "inset  gap 3/32 round, 1/8 between")).toEqual([
      '"between" makes no difference here: only a pair, or full overlays, have a gap between them',
    ]);
    expect(said("door", "overlay 1/2  pair  gap 3/32 round, 1/8 between")).toEqual([
      '"round" makes no difference here: only an inset front has a gap round it',
    ]);
    const notHere = (words: string) =>
      found(`${opening("wide 15  high 20")}front for a { inset  ${words}  slab ply }`, "statement/not-here");
    expect(notHere("gap 1/16 left").map(({ message, reason }) => [message, reason])).toEqual([
      ['"gap" has no "left"', "It is said of: round, between."],
    ]);
  });

  test("of a pair stays open at its outer edges by the sum of both leaves and what is between them", () => {
    const least = (wide: string) =>
      found(
        `${opening(`wide ${wide}  high 20`)}door for a { inset  pair  gap 1/16 round, 1/8 between  slab ply }`,
        "fit/inset-gap",
      ).map(({ message }) => /comes to (.*) in to/.exec(message)?.[1]);
    // each leaf (15 − 1/8 − 1/8) ÷ 2 = 7 3/8; a 64th more of each and 1/8 less of the opening: 1/16 − 1/64 − 1/16
    expect([least("15 ± 1/64"), least("15 ± 1/8")]).toEqual([[], ["-1/64"]]);
  });

  test("wants an opening that is no more uneven than its gap, in width and in height", () => {
    const uneven = (readings: string, words = "") =>
      found(`${opening(readings)}front for a { inset  ${words}  slab ply }`, "front/inset-uneven").map(
        ({ message }) => message,
      );
    expect(uneven("wide 15, 15 1/16  high 20, 20 1/16")).toEqual([]);
    expect(uneven("wide 15, 15 5/64  high 20")).toEqual([
      '"a" is 5/64 in wider here than elsewhere, more than the gap of 1/16 in',
    ]);
    expect(uneven("wide 15  high 20, 20 1/8")).toEqual([
      '"a" is 1/8 in higher here than elsewhere, more than the gap of 1/16 in',
    ]);
    expect(uneven("wide 15  high 20, 20 1/8", "gap 1/8")).toEqual([]);
  });
});

describe("a door's hinges", () => {
  const opening = "opening a { wide 15  high 20  deep 23 }\n";
  const door = (words: string, hinges = "") => `${hinges}${opening}door for a { ${words} }\n`;

  test("have their cups 3 to 8 mm from the edge", () => {
    const bored = (bore: string) =>
      found(`hinges new { cup 35mm  bore ${bore} }`, "door/cup-from-edge").map(({ message }) => message);
    expect([bored("3mm"), bored("8mm")]).toEqual([[], []]);
    expect(bored("2.5mm")[0]).toMatch(/is nearer to it than is usual$/);
    expect(bored("8.5mm")[0]).toMatch(/is farther from it than is usual$/);
  });

  test("are shallower than the door, 13 mm where nothing else is said", () => {
    const cut = (deep: string, stock: string) =>
      codes(
        `sheet exact { measures 1/2 }\n${door(`slab ${stock}  hinged left  hinges new`, `hinges new { cup 35mm  ${deep} }\n`)}`,
        "door/cup-through",
      );
    // 13 mm = 0.512 in
    expect([cut("", "ply"), cut("", "exact"), cut("deep 11mm", "exact"), cut("deep 1/2", "exact")]).toEqual([
      [],
      ["door/cup-through"],
      [],
      ["door/cup-through"],
    ]);
  });

  test("reach no groove: of the stile, or of the rail where the door turns on its top or bottom", () => {
    // 5 mm and 35 mm are 1.575 in; a member of 2 has 1 5/8 before its groove of 3/8, one of 1 7/8 only 1 1/2.
    const cut = (hinged: string, members: string) =>
      codes(door(`frame oak 2 wide  ${members}  panel quarter  hinged ${hinged}  hinges cup`), "door/cup-meets-groove");
    expect([cut("left", ""), cut("left", "stiles 1 7/8"), cut("top", "stiles 1 7/8")]).toEqual([
      [],
      ["door/cup-meets-groove"],
      [],
    ]);
    expect([cut("top", "rails 1 7/8"), cut("bottom", "rails 1 7/8"), cut("right", "rails 1 7/8")]).toEqual([
      ["door/cup-meets-groove"],
      ["door/cup-meets-groove"],
      [],
    ]);
  });

  test("are for inset or for overlay, as the door is", () => {
    const rack = "hinges set-in { cup 35mm  inset }\nhinges bare { cup 35mm }\n";
    const kind = (words: string, name: string) =>
      codes(door(`slab ply  hinged left  ${words}  hinges ${name}`, rack), "door/hinge-kind");
    expect([kind("inset", "cup"), kind("inset", "set-in"), kind("inset", "bare")]).toEqual([
      ["door/hinge-kind"],
      [],
      [],
    ]);
    expect([kind("overlay 1/2", "cup"), kind("overlay 1/2", "set-in"), kind("overlay 1/2", "bare")]).toEqual([
      [],
      ["door/hinge-kind"],
      [],
    ]);
    // Each is offered what is made for it.
    const titles = (words: string, name: string) =>
      found(door(`slab ply  hinged left  ${words}  hinges ${name}`, rack), "door/hinge-kind")[0]?.fixes.map(
        ({ title }) => title,
      );
    expect(titles("inset", "cup")).toEqual(['Use "set-in"']);
    expect(titles("overlay 1/2", "set-in")).toEqual(['Use "bare"', 'Use "cup"']);
  });

  test("are made for the overlay at the edge where they sit, give or take the 1/16 that they are turned by", () => {
    const off = (words: string) =>
      found(door(`slab ply  hinges cup  ${words}`), "door/hinge-overlay").map(({ message }) => message);
    expect([off("hinged left  overlay 9/16"), off("hinged left  overlay 7/16")]).toEqual([[], []]);
    expect(off("hinged left  overlay 37/64")).toHaveLength(1);
    expect(off("hinged left  overlay 27/64")).toHaveLength(1);
    // The other edges do not matter, unless there is a leaf at each.
    expect(off("hinged left  overlay 1/2, 3/4 right, 3/4 top")).toEqual([]);
    expect(off("hinged right  overlay 1/2, 3/4 right")[0]).toMatch(/this door has 3\/4 in at its right$/);
    expect(off("pair  gap 1/8  hinged left  overlay 1/2, 3/4 right")[0]).toMatch(/this door has 3\/4 in at its right$/);
  });

  test("are as many as height and weight want, each leaf by itself", () => {
    const few = (words: string, size = "wide 24  high 30") =>
      found(
        `opening a { ${size}  deep 23 }\ndoor for a { overlay 1/2  hinged left  ${words} }\n`,
        "door/too-few-hinges",
      );
    // Of oak 25 x 31 x 3/4 it weighs 16 lb: three, where its height alone has two.
    expect(few("slab oak  hinges cup").map(({ message }) => message)).toEqual([
      "2 hinges carry this door of 31 in and 16 lb; 3 are usual",
    ]);
    expect(few("slab oak  hinges cup 3")).toEqual([]);
    expect(few("pair  gap 1/8  slab oak  hinges cup")).toEqual([]);
    expect(few("slab oak")).toEqual([]);
    const text = (count: string) =>
      `opening a { wide 24  high 30  deep 23 }\ndoor for a { overlay 1/2  hinged left  slab oak  hinges cup${count} }\n`;
    expect(mended(text(""), "door/too-few-hinges")).toEqual([text(" 3")]);
    expect(mended(text(" 2"), "door/too-few-hinges")).toEqual([text(" 3")]);
  });

  test("a rail in the middle is for framed doors over 60", () => {
    const tall = (high: string, words: string, kind = "door") =>
      codes(
        `opening a { wide 15  high ${high}  deep 23 }\n${kind} for a { inset  gap 0  hinged left  ${words} }\n`,
        "door/tall-without-mid-rail",
      );
    const frame = "frame oak 2 wide  panel quarter";
    expect([tall("60", frame), tall("60 1/32", frame)]).toEqual([[], ["door/tall-without-mid-rail"]]);
    expect([tall("70", `${frame}  mid rails 1`), tall("70", `${frame}  mid stiles 1`)]).toEqual([
      [],
      ["door/tall-without-mid-rail"],
    ]);
    expect([tall("70", "slab ply"), tall("70", frame, "front")]).toEqual([[], []]);
  });

  test("an edge to turn on is asked of doors alone", () => {
    const unhinged = (kind: string, words = "") =>
      codes(`${opening}${kind} for a { slab ply  ${words} }`, "door/unhinged");
    expect([unhinged("door"), unhinged("front"), unhinged("door", "hinged top")]).toEqual([["door/unhinged"], [], []]);
  });
});

describe("a door on hinges at its edge", () => {
  const code = "door/cannot-clear";
  const row = (doors: string, stile = "1 23/32") => `hinges butt { overlay 1/2 }
case one {
  wide 60  high 30  deep 20  panels ply
  frame oak { stiles 2  rails 2  across { opening a  stile ${stile}  opening b  stile ${stile}  opening c } }
}
${doors}`;
  const front = (openings: string) => `front for ${openings} { overlay 1/2  slab ply }\n`;
  const door = (words: string) => `door for b { overlay 1/2  slab ply  ${words} }\n`;

  test("needs its own thickness beside it", () => {
    // 1 23/32 − 2 × 1/2 = 23/32, as thick as it is; 1 11/16 leaves 11/16
    expect(found(row(front("a") + door("hinged left  hinges butt")), code)).toEqual([]);
    expect(found(row(front("a") + door("hinged left  hinges butt"), "1 11/16"), code)).toHaveLength(1);
    expect(found(row(front("c") + door("hinged right  hinges butt"), "1 11/16"), code)).toHaveLength(1);
  });

  test("only where it turns, and not on cup hinges or its top", () => {
    for (const words of [
      "hinged right  hinges butt",
      "hinged left  hinges cup",
      "hinged top  hinges butt",
      "hinged left",
    ])
      expect(found(row(front("a") + door(words), "1 1/2"), code)).toEqual([]);
  });

  test("is turned round where the other side is free, and told what else would do where it is not", () => {
    const near = row(front("a") + door("hinged left  hinges butt"), "1 1/2");
    expect(mended(near, code)).toEqual([near.replace("hinged left", "hinged right")]);
    const between = found(row(front("a, c") + door("hinged left  hinges butt"), "1 1/2"), code)[0];
    expect([between?.fixes, between?.remedy]).toEqual([[], "Use cup hinges, or leave 23/32 in between them."]);
    const pair = found(row(front("a") + door("hinged left  pair  gap 1/8  hinges butt"), "1 1/2"), code)[0];
    expect(pair?.fixes).toEqual([]);
  });

  test("is not hindered by what stands above or below it", () => {
    const column = `hinges butt { overlay 1/2 }
case one { wide 60  high 60  deep 20  panels ply
  frame oak { stiles 2  rails 2  across { down { opening a  rail  opening d }  stile 1 1/2  down { opening b  rail  opening c } } }
}
`;
    expect(found(`${column}${front("d, c")}${door("hinged left  hinges butt")}`, code)).toEqual([]);
    expect(found(`${column}${front("a, c")}${door("hinged left  hinges butt")}`, code)).toHaveLength(1);
  });
});

describe("fronts at an inside corner", () => {
  const code = "front/inside-corner";
  const corner = (sink: string, range: string) =>
    `case sink { wide 30  high 30  deep 20  panels ply  ${sink}  opening pots }
case range { wide 30  high 30  deep 20  panels ply  ${range}  frame oak { stiles 2  rails 1 1/2  opening spoons } }
front for pots   { overlay 19/32  slab ply  pulls 1 }
front for spoons { overlay 1/2  slab ply }
`;

  test("are told of once, whether one case says the corner or both do", () => {
    const said = (text: string) => found(text, code).map(({ message }) => message);
    const once = said(corner("corner right range", ""));
    expect(once).toHaveLength(2);
    expect(said(corner("", "corner left sink")).toSorted()).toEqual(once.toSorted());
    expect(said(corner("corner right range", "corner left sink")).toSorted()).toEqual(once.toSorted());
  });

  test("are cleared by a wider frame where there is one, else by a filler", () => {
    // pots is 1/8 from the corner, spoons stands 23/32 out; spoons is 1 1/2 from it, the pull of pots 23/32 + 1 1/4 out
    expect(found(corner("corner right range", ""), code).map(({ remedy }) => remedy)).toEqual([
      'Make the left end of the frame of "range" 15/32 in wider, or put a filler as wide between the two.',
      'Put a filler 19/32 in wide at the right end of "sink".',
    ]);
  });
});
