import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Length } from "../../../language/core/length.ts";
import { inUnit } from "../../../language/core/length.ts";
import { ratio } from "../../../language/core/rational.ts";
import type { Sourced } from "../../../language/core/sourced.ts";
import { exact, inch } from "../../support/built.ts";

type Rule = (...inputs: Sourced<Length>[]) => Sourced<Length>;

/** Each rule of construction once, worked out by hand: its inputs, what comes out, and the arithmetic in full. */
const cases: readonly [rule: string, inputs: readonly string[], result: string, arithmetic: string][] = [
  ["back-in-rabbets", ["48", "45/64", "3/8"], "47 11/32", "48 − 2 × (45/64 − 24/64) = 48 − 42/64 = 47 22/64"],
  ["beside-inner", ["2", "45/64"], "83/128", "(128/64 − 45/64) ÷ 2 = 83/128"],
  ["beside-outer", ["2", "45/64"], "1 19/64", "128/64 − 45/64 = 83/64"],
  ["between-two", ["14 1/2", "45/64"], "13 3/32", "14 32/64 − 90/64 = 14 32/64 − 1 26/64 = 13 6/64"],
  ["between-unlike", ["20", "23/32", "15/32"], "18 13/16", "20 − 38/32 = 20 − 1 6/32 = 18 26/32"],
  ["bottom-from-behind", ["18", "1/4", "1/2", "1/16"], "18 11/16", "18 + 4/16 + 8/16 − 1/16 = 18 11/16"],
  ["bottom-in-grooves", ["13 3/32", "1/4", "1/16"], "13 17/32", "13 3/32 + 16/32 − 2/32 = 13 17/32"],
  ["bottom-in-rabbets", ["13", "3/8"], "13 3/4", "13 + 2 × 3/8 = 13 6/8"],
  ["box-depth", ["20"], "20", "as deep as its slide"],
  ["box-height", ["6", "1/4", "1/4"], "5 1/2", "6 − 1/4 − 1/4 = 5 2/4"],
  ["box-width", ["15 1/2", "1/2"], "14 1/2", "15 1/2 − 2 × 1/2 = 14 1/2"],
  ["core-less-edging", ["12", "1/32"], "11 31/32", "11 32/32 − 1/32 = 11 31/32"],
  // AWS frame 4.4.6.10.1.6 has rails between stiles; what a tenon adds is geometry.
  ["member-in-opening", ["14", "1"], "16", "14 + 2 × 1 = 16"],
  ["full-overlay-inner", ["3/4", "1/8"], "5/16", "(6/8 − 1/8) ÷ 2 = 5/16"],
  ["full-overlay-open", ["1/8"], "-1/16", "−1/8 ÷ 2 = −1/16"],
  ["full-overlay-outer", ["3/4", "1/16"], "11/16", "12/16 − 1/16 = 11/16"],
  ["groove-in-front", ["3/4", "15/32"], "9/32", "24/32 − 15/32 = 9/32"],
  ["housed-between", ["14 1/2", "45/64", "3/8"], "13 27/32", "14 32/64 − 90/64 + 48/64 = 13 54/64"],
  ["inset-size", ["15 1/2", "1/16"], "15 3/8", "15 8/16 − 2/16 = 15 6/16"],
  ["from-wall", ["1 1/4", "3/4"], "1/2", "1 1/4 − 3/4 = 1/2"],
  ["from-wall", ["1/4", "3/4"], "-1/2", "1/4 − 3/4 = −1/2: the trim stands before the case"],
  ["less", ["26", "3/4"], "25 1/4", "25 4/4 − 3/4 = 25 1/4"],
  ["overlay-size", ["15 1/2", "1/2", "3/8"], "16 3/8", "15 4/8 + 4/8 + 3/8 = 15 11/8"],
  ["pair-leaf", ["24", "1/8"], "11 15/16", "(23 8/8 − 1/8) ÷ 2 = 191/8 ÷ 2 = 191/16"],
  // Frame and panel by the identities of facts.md 8.2: a 15 x 24 door, stiles and rails 2 1/4, g 3/8, f 1/8.
  ["panel-size", ["10 1/2", "3/8", "1/8"], "11", "10 1/2 + 2 × 3/8 − 2 × 1/8 = 10 4/8 + 6/8 − 2/8 = 11"],
  ["panel-size", ["19 1/2", "3/8", "1/8"], "20", "19 4/8 + 6/8 − 2/8 = 20"],
  ["rail-length", ["15", "2 1/4", "3/8"], "11 1/4", "15 − 4 1/2 + 3/4 = 11 1/4"],
  ["rail-length", ["15", "2 1/4", "7/16"], "11 3/8", "15 − 4 1/2 + 7/8 = 11 3/8"],
  ["rail-length", ["17", "2", "3/8"], "13 3/4", "17 − 4 + 3/4 = 13 3/4"],
  ["plus", ["1/2", "15/32"], "31/32", "16/32 + 15/32 = 31/32"],
  ["rabbet-depth", ["15/32", "1/4"], "7/32", "15/32 − 8/32 = 7/32"],
  ["side-height", ["5 1/2", "15/32"], "5 1/32", "5 16/32 − 15/32 = 5 1/32"],
  ["slide-room", ["23 1/2", "1/2"], "23", "23 1/2 − 1/2 = 23"],
  ["standard-travel", ["20", "6"], "14", "20 − 6 = 14"],
  ["standard-travel", ["5", "6"], "0", "5 − 6 is less than nought: it does not come out"],
  ["slide-room-inset", ["23 1/2", "1/2", "3/4"], "22 1/4", "23 2/4 − 2/4 − 3/4 = 22 1/4"],
];

/** Rules that need more than inches, or have more to say, stand in tests of their own. */
const apart = ["cup-centre", "under-mounted-width"];

const folder = new URL("../../../language/derive/rules/", import.meta.url);
const ruleOf = async (name: string): Promise<Rule> => {
  const module = (await import(`../../../language/derive/rules/${name}.ts`)) as Record<string, Rule>;
  return Object.values(module)[0]!;
};

describe("rules of construction", () => {
  test.each(cases)("%s of %j is %s: %s", async (name, inputs, result) => {
    const rule = await ruleOf(name);
    expect(exact(rule(...inputs.map(inch)))).toBe(result);
  });

  test("a cup's centre lies 17.5 mm and the boring distance from the edge (common practice, no source: C = B + 17.5)", async () => {
    const rule = await ruleOf("cup-centre");
    const mm = (n: number, d = 1) => ({ ...inch("1"), value: inUnit(ratio(n, d), "mm") });
    for (const [bore, centre] of [
      [3, 205],
      [5, 225],
      [8, 255],
    ] as const) {
      expect(rule(mm(bore), mm(35)).value).toEqual(mm(centre, 10).value);
    }
  });

  test("an under-mounted box is narrower by 42 mm inside, its sides come on top, within 1/32 in of the trade's figures", async () => {
    const rule = await ruleOf("under-mounted-width");
    const deduction = { ...inch("1"), value: inUnit(ratio(42), "mm") };
    // 15 − 42/25.4 + 2 × 5/8 = 15 − 210/127 + 5/4 = (15 × 508 − 840 + 635) / 508 = 7415/508
    expect(rule(inch("15"), deduction, inch("5/8")).value).toEqual(ratio(7415, 508));
    // Common practice, no source: 15 and 5/8 sides give 14 5/8, 15 and 1/2 give 14 3/8, 15 3/4 and 5/8 give 15 3/8.
    for (const [opening, side, trade] of [
      ["15", "5/8", 14.625],
      ["15", "1/2", 14.375],
      ["15 3/4", "5/8", 15.375],
    ] as const) {
      const { n, d } = rule(inch(opening), deduction, inch(side)).value;
      expect(Math.abs(Number(n) / Number(d) - trade)).toBeLessThanOrEqual(1 / 32);
    }
  });

  test("each file of the folder is one rule, and has its case here", async () => {
    const names = readdirSync(folder).map((file) => file.replace(/\.ts$/, ""));
    expect(names.filter((name) => !apart.includes(name) && !cases.some(([rule]) => rule === name))).toEqual([]);
    for (const name of names) expect([name, typeof (await ruleOf(name))]).toEqual([name, "function"]);
  });

  test("each result carries its rule: what it gives, the formula with every input named, and its standing", async () => {
    for (const [name, inputs] of cases) {
      const { origin } = (await ruleOf(name))(...inputs.map(inch));
      if (origin.kind !== "derived") throw new Error(`${name} made a number without an origin`);
      expect(origin.rule.gives).not.toBe("");
      for (const input of Object.keys(origin.inputs))
        expect([name, origin.rule.formula]).toEqual([name, expect.stringContaining(`{${input}}`)]);
      expect(Object.keys(origin.inputs)).toHaveLength(inputs.length);
    }
  });
});
