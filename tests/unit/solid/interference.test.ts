import { describe, expect, test } from "vitest";
import { toText } from "../../../language/core/rational.ts";
import type { Box } from "../../../language/solid/box.ts";
import { clashesAmong, near, thinnest } from "../../../language/solid/interference.ts";
import { type Draft, gapBetween, type Solid, solidOf, touch } from "../../../language/solid/solid.ts";
import { built, partOf } from "../../support/built.ts";
import { boxFrom } from "./support.ts";

const part = partOf(
  built("inches\nsheet ply { measures 3/4  size 48 x 96 }\npart block { from ply  long 4  wide 4 }"),
  "part block",
  "block",
);

function solid(name: string, outline: Box, more: Partial<Pick<Draft, "added" | "cuts" | "frame">> = {}): Solid {
  const draft = { part: { ...part, id: name }, index: 0, frame: "one", assembly: name, turn: undefined };
  return solidOf({ ...draft, outline, added: [], cuts: [], ...more });
}

/** A block of 4 x 4 x 4 in with a groove 1/4 wide and 3/8 deep along its top, 1 in from its left. */
const grooved = solid("grooved", boxFrom([0, 64], [0, 64], [0, 64]), { cuts: [boxFrom([16, 20], [58, 64], [0, 64])] });

describe("a set of clashes worked by hand", () => {
  const set = [
    grooved,
    // In the groove with 1/16 to spare below, no clash.
    solid("tongue", boxFrom([16, 20], [59, 80], [0, 64])),
    // 1/16 too thick for the groove, 1/16 off its floor: 1/16 x 5/16 x 4 in beside it.
    solid("thick", boxFrom([20, 21], [59, 80], [0, 64])),
    // Stands on top of the block.
    solid("on top", boxFrom([32, 64], [64, 80], [0, 64])),
    // A corner of 1 x 1 x 1 in goes into it.
    solid("corner", boxFrom([48, 80], [-16, 16], [48, 80])),
    // Where the corner is, but in another frame.
    solid("elsewhere", boxFrom([48, 80], [-16, 16], [48, 80]), { frame: "other" }),
  ];

  test("each clash is found, with its volume, and nothing else", () => {
    const found = clashesAmong(set).map(({ a, b, volume }) => `${a.part.id}, ${b.part.id}: ${toText(volume)}`);
    // 1/16 x 5/16 x 4 = 20/256; 1 x 1 x 1 = 1.
    expect(found.sort()).toEqual(["grooved, corner: 1", "grooved, thick: 5/64"]);
  });

  test("a clash says how much must give, and which way", () => {
    const [clash] = clashesAmong([grooved, set[2]!]);
    expect(thinnest(clash!.bounds)).toEqual({ axis: "x", by: { n: 1n, d: 16n } });
  });

  test("what touches, shares no space", () => {
    expect(touch(grooved, set[3]!)).toBe(true);
    expect(touch(grooved, set[1]!)).toBe(true);
    expect(touch(grooved, solid("away", boxFrom([65, 80], [0, 64], [0, 64])))).toBe(false);
    // An edge along an edge is no face.
    expect(touch(grooved, solid("edge", boxFrom([64, 80], [64, 80], [0, 64])))).toBe(false);
  });

  test("gaps are measured to what is faced, through grooves", () => {
    const [, tongue] = set;
    expect(toText(gapBetween(tongue!, grooved, "y", -1)!)).toBe("1/16");
    expect(toText(gapBetween(grooved, set[3]!, "y", 1)!)).toBe("0");
    expect(gapBetween(grooved, set[3]!, "x", 1)).toBeUndefined();
    expect(toText(gapBetween(set[4]!, grooved, "x", -1)!)).toBe("-1");
  });

  test("every pair whose bounds meet is looked at, and each once", () => {
    const all = set.slice(0, 5);
    const brute = all.flatMap((a, index) =>
      all
        .slice(index + 1)
        .filter((b) =>
          [0, 2, 4].every(
            (at) => a.bounds.rough[at]! <= b.bounds.rough[at + 1]! && b.bounds.rough[at]! <= a.bounds.rough[at + 1]!,
          ),
        )
        .map((b) => [a.part.id, b.part.id].sort().join()),
    );
    expect(
      near(all)
        .map(([a, b]) => [a.part.id, b.part.id].sort().join())
        .sort(),
    ).toEqual(brute.sort());
  });
});

test("volume is outline and tongues less cuts, each once where cuts cross", () => {
  const crossed = solid("crossed", boxFrom([0, 64], [0, 64], [0, 64]), {
    added: [boxFrom([64, 70], [16, 32], [0, 64])],
    cuts: [boxFrom([16, 20], [58, 64], [0, 64]), boxFrom([0, 64], [60, 64], [0, 16])],
  });
  const volume = crossed.pieces.reduce(
    (total, { rough: r }) => total + (r[1] - r[0]) * (r[3] - r[2]) * (r[5] - r[4]),
    0,
  );
  // 4³, a tongue of 3/8 x 1 x 4, a groove of 1/4 x 3/8 x 4, a rabbet of 4 x 1/4 x 1, their crossing 1/4 x 1/4 x 1.
  expect(volume).toBeCloseTo(64 + 1.5 - 0.375 - 1 + 0.0625, 12);
});
