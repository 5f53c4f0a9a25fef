import { describe, expect, test } from "vitest";
import { benchFindings, drawer, leftIn, saidOf, withCuts } from "./bench.ts";

const whole = ["2 side 22 x 5 1/32", "1 front 12 9/16 x 5 1/32", "1 back 12 9/16 x 5 1/32", "1 bottom 22 x 14"];

/** What is left of the drawer but for one part. */
function without(name: string): readonly string[] {
  return whole.flatMap((line) =>
    line.includes(` ${name} `) ? (line.startsWith("2") ? [line.replace("2", "1")] : []) : [line],
  );
}

describe("no change, since the joint forgives it", () => {
  test("nothing is said of a piece at its size, and it is left no more", () => {
    const build = withCuts(drawer, "box left side 1 at 22 x 5 1/32");
    expect(saidOf(build)).toEqual([]);
    expect(leftIn(build)).toEqual(without("side"));
  });

  test("a length off by no more than the cut's tolerance of 1/64", () => {
    const short = withCuts(drawer, "box left front 1 at 12 35/64");
    expect(saidOf(short)).toEqual([
      "cut/forgiven: the front of box left can be used as it is: it is 1/64 in short, and a joint closes over that",
    ]);
    const long = withCuts(drawer, "box left front 1 at 12 37/64");
    expect(saidOf(long)[0]).toContain("it is 1/64 in too long, and a pass of the plane takes that off");
    for (const build of [short, long]) expect(leftIn(build)).toEqual(without("front"));
  });

  test("a size that is the one on the list, which is the exact one rounded down", () => {
    const text = drawer.replace("read to 1/64", "read to 1/8");
    const build = withCuts(text, "box left front 1 at 12 1/2 x 5");
    expect(saidOf(build)).toEqual([]);
  });

  test("a size that nobody could tell from it between two marks", () => {
    // Read to 1/16: less than a quarter of that, 1/64, is no difference.
    const text = `${drawer.replace("read to 1/64", "read to 1/16")}part lid { from ply  long 20  wide 5 }\n`;
    const said = (size: string): readonly string[] => saidOf(withCuts(text, `part lid 1 at ${size}`));
    expect([said("20 1/128"), said("19 127/128")]).toEqual([[], []]);
    expect(said("20 1/64")).toHaveLength(1);
  });

  // A groove of 1/4 holds while 1/16 of the edge is in it: 3/16, less the play of 1/16 that the bottom has already.
  const grooved = drawer.replace("bottom thin under", "bottom quarter in groove 1/4 up 3/8");
  test("a bottom that floats in its grooves, as long as it stays in them", () => {
    // Inside 12 9/16, 1/4 in each groove, 1/16 of play: 13 wide, and 22 - 1 7/16 + 1/2 - 1/16 = 21 deep.
    expect(leftIn(withCuts(grooved, "")).find((line) => line.includes("bottom"))).toBe("1 bottom 21 x 13");
    const stays = withCuts(grooved, "box left bottom 1 at 20 7/8 x 12 7/8");
    expect(saidOf(stays)).toEqual([
      "cut/forgiven: the bottom of box left can be used as it is: it is 1/8 in short, and stays in its grooves with up to 1/8 in less; it is 1/8 in too narrow, and stays in its grooves with up to 1/8 in less",
    ]);
    const falls = withCuts(grooved, "box left bottom 1 at 21 x 12 27/32");
    expect(saidOf(falls)).toEqual([
      "cut/lost: 1 bottom of box left cannot be used: it is 5/32 in too narrow, and stays in its grooves with 1/8 in less only",
    ]);
  });
});

describe("the neighbours are cut to suit", () => {
  test("a short front makes the box narrower by as much, which its slides take up to 1/32 on each side", () => {
    const build = withCuts(drawer, "box left front 1 at 12 1/2");
    const [one, ...others] = benchFindings(build);
    expect(others).toEqual([]);
    expect(one).toMatchObject({
      code: "cut/neighbours",
      severity: "warning",
      message:
        "the front of box left can be used if its neighbours follow: it is 1/16 in short: its slides get 17/32 in on each side, and take 17/32 in at most",
      remedy: "Cut 1 back of box left to 12 1/2 × 5 1/32 in; 1 bottom of box left to 22 × 13 15/16 in.",
    });
    expect(leftIn(build)).toEqual(["2 side 22 x 5 1/32", "1 back 12 1/2 x 5 1/32", "1 bottom 22 x 13 15/16"]);
  });

  test("once they are, nothing is to be done", () => {
    const build = withCuts(
      drawer,
      "box left front 1 at 12 1/2\nbox left back 1 at 12 1/2\nbox left bottom 1 at 22 x 13 15/16\nbox left side 2",
    );
    expect(benchFindings(build).map(({ code, severity }) => [code, severity])).toEqual([["cut/forgiven", "hint"]]);
    expect(leftIn(build)).toEqual([]);
  });

  test("of two that are short the shorter decides, and the other is cut down", () => {
    const build = withCuts(drawer, "box left back 1 at 12 17/32\nbox left front 1 at 12 1/2");
    expect(benchFindings(build)).toMatchObject([
      {
        code: "cut/neighbours",
        remedy:
          "Cut 1 back of box left, made already, down to 12 1/2 × 5 1/32 in; 1 bottom of box left to 22 × 13 15/16 in.",
      },
    ]);
  });

  test("a piece that was made before is cut down too", () => {
    const build = withCuts(drawer, "box left back 1\nbox left front 1 at 12 1/2");
    expect(benchFindings(build)[0]?.remedy).toContain("1 back of box left, made already, down to 12 1/2 × 5 1/32 in");
  });

  test("a box that is deeper than its slides may be shorter", () => {
    const deep = drawer.replace("runner 22 }", "runner 20  deep 22 }");
    const build = withCuts(deep, "box left side 1 at 21 3/4");
    expect(saidOf(build)[0]).toContain(
      "it is 1/4 in short: the box comes out 21 3/4 in deep, and its slides are 20 in long",
    );
    expect(leftIn(build)).toContain("1 side 21 3/4 x 5 1/32");
    expect(leftIn(build)).toContain("1 bottom 21 3/4 x 14");
  });

  // A door of 16 by 7 over an opening of 15 by 6: rails between stiles of 2, with a tongue of 3/8 at both ends.
  const door = `${drawer}door for left { overlay 1/2  hinged left  hinges cup  frame oak 2 wide  panel quarter }\n`;
  test("a door with a short rail covers less at the side that has no hinges, down to 1/4", () => {
    const list = leftIn(withCuts(door, ""));
    expect(list).toContain("2 rail 12 3/4 x 2");
    const serves = withCuts(door, "door left rail 1 at 12 1/2");
    expect(saidOf(serves)).toEqual([
      "cut/neighbours: the rail of door left can be used if its neighbours follow: it is 1/4 in short: it comes out 15 3/4 in wide, and covers 1/4 in beside its opening; 1/4 in is the least",
    ]);
    expect(leftIn(serves)).toContain("1 rail 12 1/2 x 2");
    const before = list.find((line) => line.includes("panel"));
    const after = leftIn(serves).find((line) => line.includes("panel"));
    expect([before, after]).toEqual(["1 panel 3 11/16 x 12 11/16", "1 panel 3 11/16 x 12 7/16"]);
    expect(saidOf(withCuts(door, "door left rail 1 at 12 15/32"))[0]).toMatch(/^cut\/lost: /);
  });

  test("a front without hinges shares what it lacks between both sides", () => {
    const front = door.replace("door for", "front for").replace("hinged left  hinges cup  ", "");
    expect(saidOf(withCuts(front, "front left rail 1 at 12 1/4"))[0]).toMatch(
      /^cut\/neighbours: .* covers 1\/4 in beside its opening/,
    );
    expect(saidOf(withCuts(front, "front left rail 1 at 12 7/32"))[0]).toMatch(/^cut\/lost: /);
  });
});

describe("the part is lost", () => {
  test("where the slides no longer take up what the box lacks: 3/32 is more than 1/16", () => {
    const build = withCuts(drawer, "box left front 1 at 12 15/32");
    expect(saidOf(build)).toEqual([
      "cut/lost: 1 front of box left cannot be used: it is 3/32 in short: its slides get 35/64 in on each side, and take 17/32 in at most",
    ]);
    expect(leftIn(build)).toEqual(whole);
  });

  test("where the opening is wider somewhere, which has used up what the slides forgive", () => {
    const uneven = drawer.replace("wide 15 ", "wide 15, 15 1/16 ");
    expect(saidOf(withCuts(uneven, "box left front 1 at 12 1/2"))[0]).toMatch(/^cut\/lost: /);
  });

  test("where a box would be shorter than its slides", () => {
    const build = withCuts(drawer, "box left side 1 at 21 7/8");
    expect(saidOf(build)[0]).toContain("the box comes out 21 7/8 in deep, and its slides are 22 in long");
    expect(leftIn(build)).toEqual(whole);
  });

  test("where a case would be smaller than everything in it was derived from", () => {
    const text = `${drawer}case chest { wide 30  high 20  deep 20  panels ply  back quarter applied  opening shoes }\n`;
    const build = withCuts(text, "case chest side 1 at 19 3/4");
    expect(saidOf(build)[0]).toMatch(/^cut\/lost: 1 side of case chest cannot be used: it is 1\/4 in short/);
  });
});

describe("neither", () => {
  test("a piece that is too large is cut down, and counts as made", () => {
    const build = withCuts(drawer, "box left front 1 at 12 3/4 x 5 1/8");
    expect(saidOf(build)).toEqual([
      "cut/too-large: 1 front of box left: it is 3/16 in too long: cut it down to 12 9/16 in; it is 3/32 in too wide: cut it down to 5 1/32 in",
    ]);
    expect(leftIn(build)).toEqual(without("front"));
  });

  test("a piece that nothing holds is for its maker to judge", () => {
    const text = `${drawer}part cleat { from ply  long 20  wide 3 }\n`;
    const build = withCuts(text, "part cleat 1 at 19 x 3");
    expect(benchFindings(build)).toMatchObject([{ code: "cut/not-checked", severity: "hint" }]);
    expect(leftIn(build)).toEqual(whole);
  });
});
