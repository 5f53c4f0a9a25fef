import { describe, expect, test } from "vitest";
import { built, errorsOf, exact, openingOf, partsOf } from "../../support/built.ts";

const alcove = (readings: string) =>
  built(`inches
  sheet ply { measures 23/32 }
  slides runner { lengths 12 to 24 by 2  clearance 1/2  behind 1/2 }
  opening bay { ${readings} }
  box for bay { sides ply  slides runner }
  front for bay { overlay 3/8  slab ply }`);

describe("an opening that stands already", () => {
  const build = alcove(
    "wide 20 1/4, 20 3/16, 20 5/16  high 7 3/8, 7 7/16, 7 3/8  deep 23 1/2, 23 7/16, 23 1/2  beside 1 5/16 left, 1 1/4 right",
  );

  test("the smallest reading governs what goes in, the largest what covers it", () => {
    const bay = openingOf(build, "bay");
    expect([bay.wide, bay.widest, bay.high, bay.highest, bay.deep!].map(exact)).toEqual([
      "20 3/16",
      "20 5/16",
      "7 3/8",
      "7 7/16",
      "23 7/16",
    ]);
    // 20 3/16 − 1 = 19 3/16; 7 3/8 − 1/2 = 6 7/8; 23 7/16 − 1/2 = 22 15/16: a 22
    expect(build.derivation.model.boxes.map((box) => [box.wide, box.high, box.deep].map(exact))).toEqual([
      ["19 3/16", "6 7/8", "22"],
    ]);
    // 20 5/16 + 2 × 3/8 = 21 1/16; 7 7/16 + 3/4 = 8 3/16
    expect(partsOf(build, "front bay")).toEqual(["1 slab 21 1/16 x 8 3/16"]);
  });

  test("each edge may lie differently before the case side", () => {
    const { left, right, top } = openingOf(build, "bay").bounds;
    expect([left.beside, right.beside].map((one) => exact(one!))).toEqual(["1 5/16", "1 1/4"]);
    expect(top.beside).toBeUndefined();
    expect(openingOf(alcove("wide 20  high 7  deep 23  beside 1"), "bay").bounds.right.beside?.value.n).toBe(1n);
  });

  test("the governing size knows all its readings", () => {
    const { origin } = openingOf(build, "bay").wide;
    expect(origin.kind === "derived" && Object.values(origin.inputs).map((input) => exact(input as never))).toEqual([
      "20 1/4",
      "20 3/16",
      "20 5/16",
    ]);
  });

  test("an edge of which nothing is said stays unknown, and one without a name holds for the other", () => {
    const beside = (words: string) => {
      const { left, right } = openingOf(alcove(`wide 20  high 7  deep 23  ${words}`), "bay").bounds;
      return [left, right].map((bound) => bound.beside && exact(bound.beside));
    };
    expect(beside("beside 1 left")).toEqual(["1", undefined]);
    expect(beside("beside 1, 3/4 right")).toEqual(["1", "3/4"]);
    expect(beside("")).toEqual([undefined, undefined]);
    expect(openingOf(alcove("wide 20  high 7  deep 23  beside 1"), "bay").framed).toBe(true);
    expect(openingOf(alcove("wide 20  high 7  deep 23"), "bay").framed).toBe(false);
  });

  test("the governing size says what it is", () => {
    const said = (size: "wide" | "highest") => {
      const { origin } = openingOf(build, "bay")[size];
      return origin.kind === "derived" ? [origin.rule.gives, origin.rule.formula] : [];
    };
    expect(said("wide")).toEqual(["smallest width measured", "the smallest of {reading 1}, {reading 2}, {reading 3}"]);
    expect(said("highest")).toEqual([
      "largest height measured",
      "the largest of {reading 1}, {reading 2}, {reading 3}",
    ]);
  });

  test("without a depth there is a front and no box", () => {
    const flat = alcove("wide 20  high 7");
    expect(errorsOf(flat)).toEqual(["opening/no-depth"]);
    expect(partsOf(flat, "front bay")).toHaveLength(1);
    expect(partsOf(flat, "box bay")).toEqual([]);
  });
});
