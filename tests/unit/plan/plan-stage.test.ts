import { describe, expect, test } from "vitest";
import { showText } from "../../../language/core/length.ts";
import { toNumber } from "../../../language/core/rational.ts";
import type { CutNode, CutPlan, StockPlan } from "../../../language/plan/cut-plan.ts";
import { stepsOf } from "../../../language/plan/steps.ts";
import type { Build } from "../../../language/service.ts";
import { createWorkspace } from "../../../language/service.ts";
import { boughtTogether, buyText } from "../../../language/view/buying.ts";
import { proofWords } from "../../../language/view/plan.ts";

function built(text: string): Build {
  const workspace = createWorkspace({ root: undefined });
  workspace.set("file:///shop/a.scant", text);
  return workspace.build("file:///shop/a.scant");
}

function planned(text: string): { readonly build: Build; readonly plan: CutPlan } {
  const build = built(text);
  return { build, plan: build.plan({ steps: 300 }) };
}

/** A plan of boards with other figures. */
function stockWith(change: Partial<StockPlan>): StockPlan {
  const ash = "inches\nboard ash { thick 3/4  wide 5  long 60  costs 4 }\npart rail { from ash  long 30  wide 2 }\n";
  return { ...planned(ash).plan.stocks[0]!, ...change };
}

const sheet = "inches\nsheet ply { called 3/4  measures 3/4  size 48 x 96  costs 60  density 36 }\n";

describe("sheets", () => {
  // A 48 by 96 sheet trimmed 1/4 all round is 47 1/2 by 95 1/2; two pieces 23 wide and a kerf of 1/8 take 46 1/8 of it,
  // two 47 1/2 long and a kerf take 95 1/8: four pieces to a sheet, so five need two, and 4 x 23 x 47 1/2 fill 95.8 % of one.
  const five = `${sheet}part shelf { from ply  long 47 1/2  wide 23  count 5 }\n`;

  test("as many as are needed, and no fewer is possible", () => {
    const { plan } = planned(five);
    expect(plan.stocks[0]).toMatchObject({ used: 2, lowerBound: 2, proven: true, cost: 120 });
  });

  test("a blade that takes nothing is one: four quarters are one sheet", () => {
    const quarters = "part quarter { from ply  long 48  wide 24  count 4 }\n";
    expect(planned(`${sheet}saw { kerf 0  trim 0 }\n${quarters}`).plan.stocks[0]?.used).toBe(1);
    expect(planned(`${sheet}saw { kerf 1/64  trim 0 }\n${quarters}`).plan.stocks[0]?.used).toBe(4);
  });

  test("an offcut in the rack goes first", () => {
    const { plan } = planned(`${five}offcut of ply 24 x 48\n`);
    const [stock] = plan.stocks;
    expect(stock?.used).toBe(1);
    expect(stock?.sheets.map((one) => one.name)).toContain("ply offcut 1");
    expect(stock?.sheets.find((one) => one.offcut)?.placed).toHaveLength(1);
  });

  test("whole sheets in the rack are not bought", () => {
    const { build, plan } = planned(five.replace("costs 60", "costs 60  have 1"));
    expect(build.planDocument(plan).stocks[0]).toMatchObject({ used: 2, inRack: 1, buy: 1 });
    expect(build.buying(plan)[0]).toMatchObject({ what: "ply", quantity: 1, cost: 60, note: "1 more from the rack" });
  });

  test("grain keeps a part from lying across; a sheet without grain does not", () => {
    // 90 wide and 40 along the grain: only turned would it fit 47 1/2 by 95 1/2.
    const part = "part wide-one { from ply  long 40  wide 90 }\n";
    expect(planned(sheet + part).plan.stocks[0]?.unplaced).toMatchObject([
      { quantity: 1, why: "larger than every sheet" },
    ]);
    const plain = planned(sheet.replace("density", "grain none  density") + part).plan.stocks[0];
    expect(plain?.unplaced).toEqual([]);
    expect(plain?.sheets[0]?.placed[0]?.turned).toBe(true);
  });

  test("the grain of a part runs as that of its sheet, along its second figure or, where it is said, its first", () => {
    const lies = (ofSheet: string, ofPart: string) => {
      const text = `${sheet.replace("density", `grain ${ofSheet}  density`)}part one { from ply  long 30  wide 20  grain ${ofPart} }\n`;
      const [placed] = planned(text).plan.stocks[0]!.sheets[0]!.placed;
      return [toNumber(placed!.width), toNumber(placed!.height), placed!.turned];
    };
    expect(lies("long", "long")).toEqual([20, 30, false]);
    expect(lies("long", "across")).toEqual([30, 20, false]);
    expect(lies("across", "long")).toEqual([30, 20, false]);
    expect(lies("across", "across")).toEqual([20, 30, false]);
  });

  test.each([
    // 60 by 30 lies along the 96 of a sheet or not, by the grain of the sheet and that of the part.
    ["long", "long", 30, 60],
    ["long", "across", 60, 30],
    ["across", "long", 60, 30],
    ["across", "across", 30, 60],
  ] as const)(
    "on a sheet with its grain %s, a part with its grain %s lies %d by %d",
    (ofSheet, ofPart, width, height) => {
      const stock = sheet.replace("size 48 x 96", `size 96 x 96  grain ${ofSheet}`);
      const { plan } = planned(`${stock}part panel { from ply  long 60  wide 30  grain ${ofPart}  count 3 }\n`);
      const placed = plan.stocks[0]!.sheets.flatMap((one) => one.placed);
      expect(placed.map((one) => [toNumber(one.width), toNumber(one.height)])).toEqual(
        placed.map(() => [width, height]),
      );
    },
  );

  test.each([
    ["none", "long"],
    ["none", "across"],
    ["long", "none"],
    ["across", "none"],
    ["none", "none"],
  ] as const)("on a sheet with its grain %s, a part with its grain %s may be turned", (ofSheet, ofPart) => {
    // Three of 64 by 30 above each other are 64 by 90 1/4 of 94 1/2; beside them the fourth has its place only if it is turned.
    const stock = sheet.replace("size 48 x 96", `size 95 x 95  grain ${ofSheet}`);
    const parts = `part a { from ply  long 64  wide 30  grain ${ofPart}  count 4 }\n`;
    const { plan } = planned(stock + parts);
    expect(plan.stocks[0]?.used).toBe(1);
    expect(new Set(plan.stocks[0]?.sheets[0]?.placed.map(({ turned }) => turned)).size).toBe(2);
  });

  test("matched fronts from a sheet whose grain runs along its first figure stand above each other along the second", () => {
    const { plan } = planned(`${sheet.replace("density", "grain across  density")}
case base { wide 20  high 34  deep 20  panels ply  down { openings tray-1 to tray-3 equal } }
front for tray-1 to tray-3 { full-overlay  slab ply  matched }
`);
    const placed = plan.stocks[0]!.sheets.flatMap((one) => one.placed).filter((one) => one.part.name === "slab");
    expect(placed).toHaveLength(3);
    expect(new Set(placed.map((one) => toNumber(one.x))).size).toBe(1);
    expect(placed.map((one) => one.turned)).toEqual([false, false, false]);
    for (const one of placed) expect(one.width).toEqual(one.part.length.value);
  });

  test("fronts that are matched lie in one strip, in their order", () => {
    const { plan } = planned(`${sheet}
case base {
  wide 20  high 34  deep 20  panels ply
  down { openings tray-1 to tray-3 equal }
}
front for tray-1 to tray-3 { full-overlay  slab ply  matched }
`);
    const placed = plan.stocks[0]!.sheets.flatMap((one) => one.placed).filter((one) => one.part.name === "slab");
    const inOrder = [...placed].sort((a, b) => (a.part.matched?.place ?? 0) - (b.part.matched?.place ?? 0));
    expect(inOrder).toHaveLength(3);
    // Their grain runs from left to right and they stand one above the other: side by side across the grain of the sheet.
    expect(new Set(inOrder.map((one) => toNumber(one.y))).size).toBe(1);
    const lefts = inOrder.map((one) => toNumber(one.x));
    expect(lefts).toEqual([...lefts].sort((a, b) => a - b));
    for (const [index, one] of inOrder.slice(1).entries()) {
      expect(lefts[index + 1]! - lefts[index]!).toBeCloseTo(toNumber(inOrder[index]!.width) + 1 / 8, 9);
      expect(one.turned).toBe(false);
    }
  });

  test("an offcut worth keeping is written as the tape reads it, never larger than it is", () => {
    const { build, plan } = planned(`${sheet}saw { kerf 0.1  trim 0 }\npart one { from ply  long 96  wide 20 1/3 }\n`);
    // 48 - 20 1/3 - 1/10 = 27 17/30, a hair over 27 9/16
    expect(build.planDocument(plan).keep).toEqual(['offcut of ply 27 9/16 in x 96 in from "a"']);
    const metric = planned(`millimetres
sheet ply { measures 18  size 1200 x 2400 }
saw { kerf 3.2  trim 0 }
part one { from ply  long 2400  wide 1000 / 3 }
`);
    // 1200 - 333 1/3 - 3.2 = 863 7/15
    expect(metric.build.planDocument(metric.plan).keep).toEqual(['offcut of ply 863 mm x 2400 mm from "a"']);
  });

  test("a stock whose sheet size is not stated is named, and the others are planned", () => {
    const { build, plan } = planned(`${five}sheet thin { measures 1/4 }\npart back { from thin  long 20  wide 20 }\n`);
    expect(plan.unsized).toEqual(["thin"]);
    expect(plan.stocks).toHaveLength(1);
    expect(build.planText(plan)).toContain("thin: its size is not stated");
  });
});

describe("boards", () => {
  // Four rails 2 wide and 40 long: two strips of 5 1/2 (2 + 1/8 + 2) times two lengths (40 + 1/8 + 40 in 96) are one board of
  // 5 1/2 by 96 at 3.67 board feet, 22.00; the 72 would take two at 2.75, 33.00.
  const rails = `inches
board ash { thick 3/4  wide 5 1/2  long 72, 96  costs 6 per board foot }
part rail { from ash  long 40  wide 2  count 4 }
`;

  test("the cheapest purchase", () => {
    const [stock] = planned(rails).plan.stocks;
    expect(stock?.used).toBe(1);
    expect(stock?.cost).toBeCloseTo(22, 9);
    expect(stock?.proven).toBe(true);
  });

  test("where it is not proven, it says what has to be paid at least, or that smaller ones might do", () => {
    const stock = stockWith({ used: 2, lowerBound: 2, proven: false });
    expect(proofWords({ ...stock, leastCost: 59.208 })).toBe("; not proven, at least 59.20 is to pay");
    expect(proofWords({ ...stock, leastCost: undefined })).toBe("; no fewer is possible, but smaller ones might do");
    expect(proofWords({ ...stock, used: 3, leastCost: 59.208 })).toBe("; not proven, at least 59.20 is to pay");
    expect(proofWords({ ...stock, used: 3, leastCost: undefined })).toBe("; not proven, at least 2 are needed");
  });

  test.each([
    // Three of 1 7/8 and two kerfs are 5 7/8 of 6; two and a kerf 3 7/8 of 4. Six of 70: two boards of 6 by 72 or three of 4,
    // both 6 board feet, so the fewer.
    ["by the width", "part slat { from ash  long 70  wide 1 7/8  count 6 }", ["6 x 72", "6 x 72"], 30],
    // Five of 34 by 3 3/4: two to a board of 72, two to one of 96; the fifth from the shortest: three of 4 by 72, 6 feet.
    ["by the length", "part rail { from ash  long 34  wide 3 3/4  count 5 }", ["4 x 72", "4 x 72", "4 x 72"], 30],
    // Two of 47 15/16 and a kerf are 96 to the hair: one of 4 by 96, 2 2/3 feet; with 1/64 more it takes two of 4 by 72.
    ["to the kerf", "part foot { from ash  long 47 15/16  wide 4  count 2 }", ["4 x 96"], 13.33],
    ["past the kerf", "part foot { from ash  long 47 61/64  wide 4  count 2 }", ["4 x 72", "4 x 72"], 20],
    // A wide one of 5 1/2 by 60 needs a board of 6 by 72, 3 feet; beside and behind it is no room for 30 by 3, so 4 by 72.
    [
      "mixed",
      "part seat { from ash  long 60  wide 5 1/2 }\npart rail { from ash  long 30  wide 3  count 2 }",
      ["4 x 72", "6 x 72"],
      25,
    ],
  ])("worked by hand, the cheapest boards are bought: %s", (_, parts, boards, cost) => {
    const ash =
      "inches\nsaw { kerf 1/8 }\nboard ash { called 4/4  thick 1  wide 4, 6  long 72, 96  costs 5 per board foot }\n";
    const [stock] = planned(`${ash}${parts}\n`).plan.stocks;
    expect(stock!.sheets.map(({ width, height }) => `${toNumber(width)} x ${toNumber(height)}`).sort()).toEqual(boards);
    expect(stock!.cost).toBeCloseTo(cost, 2);
    expect(stock!.proven).toBe(true);
  });

  test("a price by the foot, the metre and the piece", () => {
    const cost = (price: string) => planned(rails.replace("6 per board foot", price)).plan.stocks[0]?.cost;
    expect(cost("2 per foot")).toBeCloseTo(16, 9);
    expect(cost("10 per metre")).toBeCloseTo(24.384, 9);
    expect(cost("9 per piece")).toBeCloseTo(9, 9);
  });

  test("a panel wider than any board is glued up from equal staves, each with what jointing takes", () => {
    // 12 wide from boards of 5 1/2: (5 1/2 - 1/8) goes into 12 three times; 12 / 3 + 1/8 = 4 1/8.
    const { build, plan } = planned(`inches
board ash { thick 3/4  wide 5 1/2  long 96 }
part top { from ash  long 30  wide 12 }
`);
    const placed = plan.stocks[0]!.sheets.flatMap((one) => one.placed);
    expect(placed.map((one) => toNumber(one.width))).toEqual([4.125, 4.125, 4.125]);
    expect(build.planText(plan)).toContain("glued up from 3, each cut 4 1/8 wide");
  });

  test("a part of which the grain does not matter lies in its board either way, and is not glued up for that", () => {
    // From boards 5 wide and 20 long: 12 across would be three staves; 12 along is one piece, and four of 4 3/4 by 5 turn too.
    const ash = "inches\nsaw { kerf 1/8  trim 0 }\nboard ash { thick 3/4  wide 5  long 20 }\n";
    const pad = planned(`${ash}part pad { from ash  long 4  wide 12  grain none }\n`);
    expect(pad.build.findings.filter(({ code }) => code.startsWith("part/"))).toEqual([]);
    expect(pad.plan.stocks[0]?.sheets[0]?.placed).toMatchObject([{ staves: 1 }]);
    const feet = "part foot { from ash  long 5  wide 4 3/4  count 4 ";
    expect(planned(`${ash}${feet} grain none }\n`).plan.stocks[0]?.used).toBe(1);
    expect(planned(`${ash}${feet} }\n`).plan.stocks[0]?.used).toBe(2);
  });

  test("a panel whose grain runs across is as wide as it is long: that is glued up, and lies along the board the other way", () => {
    const { build, plan } = planned(`inches
board ash { thick 3/4  wide 5 1/2  long 96 }
part top { from ash  long 12  wide 30  grain across }
part cleat { from ash  long 4  wide 60  grain across }
`);
    const placed = plan.stocks[0]!.sheets.flatMap((one) => one.placed);
    const sizes = placed.map((one) => `${one.part.name} ${toNumber(one.width)} x ${toNumber(one.height)}`).sort();
    expect(sizes).toEqual(["cleat 4 x 60", "top 4.125 x 30", "top 4.125 x 30", "top 4.125 x 30"]);
    expect(build.planText(plan)).toContain("glued up from 3, each cut 4 1/8 wide");
  });
});

describe("the order of cuts", () => {
  const job = `${sheet}saw { kerf 1/8  trim 1/4  table left 12 right 30 outfeed 48 }
lift 50 lb
part side  { from ply  long 34 1/2  wide 23  count 4 }
part shelf { from ply  long 22  wide 11  count 6 }
`;

  test("frees every part once, and cuts no piece before it is free", () => {
    const { build, plan } = planned(job);
    const steps = stepsOf(build.derivation.context, plan);
    expect(steps.map((step) => step.number)).toEqual(steps.map((_, index) => index + 1));
    const freed = steps.flatMap((step) => [step.keeps, step.falls]).filter((what) => /^[A-Z]+$/.test(what));
    const places = plan.stocks.flatMap((stock) => stock.sheets.flatMap((one) => one.placed));
    expect(freed.length).toBe(places.length);
    // The piece in hand is the whole trimmed sheet, or something that an earlier step of that sheet has left.
    const free: Map<string, string[]> = new Map(
      plan.stocks.flatMap((stock) => stock.sheets.map((one) => [one.name, [sizeOf(one.cuts)]])),
    );
    for (const step of steps) {
      const sizes = free.get(step.sheet)!;
      const at = sizes.indexOf(`${toNumber(step.width)}x${toNumber(step.height)}`);
      expect(at, `step ${step.number}`).toBeGreaterThanOrEqual(0);
      sizes.splice(at, 1);
      const along = step.kind === "rip";
      const [w, h, set] = [step.width, step.height, step.setting].map(toNumber) as [number, number, number];
      sizes.push(along ? `${set}x${h}` : `${w}x${set}`);
      const rest = (along ? w : h) - set - 1 / 8;
      if (1e-9 < rest) sizes.push(along ? `${rest}x${h}` : `${w}x${rest}`);
    }
  });

  test("a sheet over what one person lifts is broken down on the floor; with help it may go to the saw", () => {
    // 47 1/2 x 95 1/2 x 3/4 in at 36 lb/ft3 weighs 70.9 lb.
    const alone = stepsOf(planned(job).build.derivation.context, planned(job).plan);
    expect(alone[0]).toMatchObject({ tool: "track saw on the floor", heavy: true });
    expect(alone[0]?.pounds).toBeCloseTo((47.5 * 95.5 * 0.75 * 36) / 1728, 6);
    const helped = planned(job.replace("lift 50 lb", "lift 100 lb"));
    expect(stepsOf(helped.build.derivation.context, helped.plan).every((step) => !step.heavy)).toBe(true);
  });

  test("weighs as its file does: a sheet over 25 kg is heavy in kilograms", () => {
    // 1220 x 2440 x 18 mm at 36 lb/ft3 (577 kg/m3): 30.9 kg
    const { build, plan } = planned(`millimetres
sheet ply { measures 18  size 1220 x 2440  density 36 }
saw { trim 0 }
lift 25 kg
part one { from ply  long 700  wide 500 }
`);
    const text = build.planText(plan).replaceAll(/\s+/g, " ");
    expect(text).toContain("HEAVY 31 kg.");
    expect(text).toContain("Marked heavy: over 25 kg, as stated.");
    expect(text).not.toMatch(/\d lb/);
    const [found] = build.findings.filter(({ code }) => code === "handling/heavy-sheet");
    expect(found?.message).toBe("whole sheets weigh more than the 25 kg that one person here lifts alone: ply (31 kg)");
  });

  test("a stand is asked for where a piece would tip off the saw's table, and not where it lies on it", () => {
    const text = `inches
sheet ply { measures 1/2  size 48 x 96  density 30 }
saw { kerf 1/8  trim 0  table left 12 right 30 outfeed OUT }
part strip { from ply  long 90  wide 10 }
`;
    const stands = (outfeed: string) => {
      const { build, plan } = planned(text.replace("OUT", outfeed));
      return stepsOf(build.derivation.context, plan)
        .flatMap((step) => step.stands)
        .join("; ");
    };
    // 96 long and 48 at its middle: within an outfeed of 60, beyond one of 20.
    expect(stands("20")).toContain("behind the saw");
    expect(stands("60")).not.toContain("behind the saw");
  });

  test("a narrow strip is cut across itself at the mitre saw, whichever way its grain runs", () => {
    // From a strip 3 wide and 47 1/2 or 95 1/2 long the pieces are cut off at 20; no fence guides 3 in past the blade.
    const tools = (grain: string) => {
      const { build, plan } = planned(`${sheet}part slat { from ply  long 20  wide 3  count 2  grain ${grain} }\n`);
      const steps = stepsOf(build.derivation.context, plan);
      return steps.filter(
        (step) => toNumber(step.setting) === 20 && Math.min(...[step.width, step.height].map(toNumber)) === 3,
      );
    };
    for (const grain of ["long", "across"]) {
      expect(tools(grain).length, grain).toBeGreaterThan(0);
      expect(new Set(tools(grain).map((step) => step.tool)), grain).toEqual(new Set(["mitre saw"]));
    }
  });

  test("what a new sheet loses at its edges first is said above them, once, and only where something is trimmed", () => {
    const text = (words: string, rest = "") => {
      const { build, plan } = planned(`${sheet}${words}part one { from ply  long 20  wide 30 }\n${rest}`);
      return build.planText(plan).replaceAll(/\s+/g, " ");
    };
    const said =
      "First trim 1/4 in off each edge of a new sheet: all settings are from trimmed edges, or from those of an offcut. 1.";
    expect(text("")).toContain(said);
    expect(text("saw { trim 3/8 }\n")).toContain("First trim 3/8 in off each edge of a new sheet");
    expect(text("saw { trim 0 }\n")).not.toContain("First trim");
    expect(text("", "offcut of ply 40 x 40\n")).not.toContain("First trim");
  });

  test("a part that is as large as its sheet is larger than it once its edges are trimmed", () => {
    const text = (saw: string, from: string) => {
      const { build, plan } = planned(`${sheet}board oak { thick 1  wide 4  long 96 }\n${saw}${from}`);
      return build.planText(plan).replaceAll(/\s+/g, " ");
    };
    const whole = "part whole { from ply  long 96  wide 48 }\n";
    expect(text("", whole)).toContain("(whole · part whole): larger than every sheet once its edges are trimmed");
    // Nothing is cut, so nothing is proven of it.
    expect(text("", whole)).toContain("ply: 0 sheets not placed");
    expect(text("saw { trim 0 }\n", whole)).toContain("ply 1, 48 × 96: A");
    expect(text("saw { trim 0 }\n", "part long { from ply  long 97  wide 4 }\n")).toContain("larger than every sheet ");
    expect(text("", "part long { from oak  long 97  wide 4 }\n")).toContain("larger than every board");
  });

  test("a figure is not broken where a line ends", () => {
    const sizes = ["34 1/2", "28 1/2", "21 3/8", "17 5/8", "12 7/16", "9 15/32"];
    const parts = sizes.map((long, at) => `part p${at} { from ply  long ${long}  wide ${long}  count 3 }`).join("\n");
    const { build, plan } = planned(`${sheet}${parts}\n`);
    const text = build.planText(plan);
    expect(text).toMatch(/\d \d+\/\d/);
    expect(text).not.toMatch(/\d\n +\d+\/\d/);
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  test("a cut along the grain is called a rip, whichever way the grain of the sheet runs", () => {
    const part = "part lid { from ply  long 40  wide 20  grain along }\n";
    const runs = (text: string): readonly string[] => {
      const { build, plan } = planned(text);
      return stepsOf(build.derivation.context, plan)
        .filter(({ tool }) => tool !== "mitre saw")
        .map((step) => `${step.kind} ${showText(step.setting, build.derivation.context.reading)}`);
    };
    // 48 x 96 with the grain along the second figure or the first: 20 wide is ripped, 40 long crosscut, either way.
    expect(new Set(runs(`${sheet}${part}`))).toEqual(new Set(["rip 20", "crosscut 40"]));
    expect(new Set(runs(`${sheet.replace("density", "grain across  density")}${part}`))).toEqual(
      new Set(["rip 20", "crosscut 40"]),
    );
  });

  test("a cut at the mitre saw is called a crosscut", () => {
    const { build, plan } = planned(`${sheet}part slat { from ply  long 20  wide 3  count 2  grain across }\n`);
    const text = build.planText(plan).replaceAll(/\s+/g, " ");
    expect(text).toContain("mitre saw, crosscut, set 20");
    expect(text).not.toContain("mitre saw, rip");
  });

  test("cuts of one setting are made together: fence and stop move less often than cuts are made", () => {
    const { build, plan } = planned(job);
    const steps = stepsOf(build.derivation.context, plan);
    const moves = steps.filter((step) => step.newSetting).length;
    expect(moves).toBeLessThan(steps.length);
  });
});

describe("what is left", () => {
  const one = `${sheet}part shelf { from ply  long 60  wide 40 }\n`;

  test("offcuts worth keeping are lines of a build file that use them next time", () => {
    const { build, plan } = planned(one);
    const { keep } = build.planDocument(plan);
    expect(keep.length).toBeGreaterThan(0);
    const next = built(`project "Next"\n${sheet}part shelf { from ply  long 10  wide 6 }\n${keep.join("\n")}\n`);
    expect(next.findings.filter((finding) => finding.severity === "error")).toEqual([]);
    expect(next.plan({ steps: 50 }).stocks[0]?.used).toBe(0);
  });

  test("the area of parts, offcuts and sawdust is that of the sheet", () => {
    const { plan } = planned(one);
    const root = plan.stocks[0]!.sheets[0]!.cuts;
    const leaves = leavesOf(root);
    const area = leaves.reduce((sum, node) => sum + toNumber(node.width) * toNumber(node.height), 0);
    expect(area).toBeLessThanOrEqual(toNumber(root.width) * toNumber(root.height));
    expect(area).toBeGreaterThan(0.97 * toNumber(root.width) * toNumber(root.height));
  });
});

describe("for people", () => {
  const texts = ["lift 50 lb\n", "millimetres\n"].map(
    (line) => `${sheet}${line}part a-long-name-for-a-part { from ply  long 500 mm  wide 300 mm  count 30 }\n`,
  );

  test.each(texts)("the plan fits 80 columns", (text) => {
    const { build, plan } = planned(text);
    for (const line of build.planText(plan).split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  test("several jobs are added up, line by line, and an unknown price stays unknown", () => {
    const line = { what: "ply", size: "48 × 96 in", key: "ply", unit: "sheet", note: "" };
    expect(
      boughtTogether([
        [{ ...line, quantity: 1, cost: 60 }],
        [
          { ...line, quantity: 2, cost: 120 },
          { ...line, what: "pins", key: "pins", quantity: 4, cost: undefined },
        ],
        [{ ...line, what: "pins", key: "pins", quantity: 4, cost: 1 }],
      ]),
    ).toEqual([
      { ...line, quantity: 3, cost: 180 },
      { ...line, what: "pins", key: "pins", quantity: 8, cost: undefined },
    ]);
  });
});

test("a list of what to buy says one line and several, and that there is nothing", () => {
  const line = { what: "pins", size: "", key: "pins", quantity: 1, unit: "piece", cost: undefined, note: "" };
  const one = buyText("To buy", [line]);
  expect(one).toContain("1 piece   pins");
  expect(one).toContain("1 line has no price; write costs AMOUNT to count it in.");
  const two = buyText("To buy", [
    { ...line, quantity: 2 },
    { ...line, what: "band", unit: "foot", quantity: 1.5 },
  ]);
  expect(two).toContain("2 pieces  pins");
  expect(two).toContain("1.5 feet    band");
  expect(two).toContain("2 lines have no price; write costs AMOUNT to count them in.");
  expect(buyText("To buy", [])).toBe("To buy\n\nNothing is to buy.\n");
});

function sizeOf(node: CutNode): string {
  return `${toNumber(node.width)}x${toNumber(node.height)}`;
}

function leavesOf(node: CutNode): readonly CutNode[] {
  return node.content.kind === "cut" ? node.content.pieces.flatMap(leavesOf) : [node];
}
