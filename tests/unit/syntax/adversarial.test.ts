import { describe, expect, test } from "vitest";
import { mixedText } from "../../../language/core/length.ts";
import { createWorkspace } from "../../../language/service.ts";
import { languageServices } from "../../../language/syntax/parser.ts";
import { codesOf, testUri } from "../../support/lowered.ts";

/** The least of three times, in milliseconds: what else the machine does can only add. */
function timed(run: () => void): number {
  const times = Array.from({ length: 3 }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return Math.min(...times);
}

const repeated = (piece: string, length: number): string =>
  piece.repeat(Math.ceil(length / piece.length)).slice(0, length);

/** For each terminal the text that makes it look longest before it can decide. */
const worst: readonly [terminal: string, piece: string, head?: string][] = [
  ["WHITESPACE", " \t\n"],
  ["ML_COMMENT, unclosed", "* ", "/*"],
  ["ML_COMMENT, many unclosed", "/*"],
  ["SL_COMMENT", "/", "//"],
  ["SL_COMMENT, many", "//\n"],
  ["COUNT, digits", "1"],
  ["COUNT, digits and spaces", "1 "],
  ["COUNT, digits and many spaces", `1${" ".repeat(400)}`],
  ["COUNT, dashes", "1-"],
  ["COUNT, fractions", "1/"],
  ["COUNT, points", "1."],
  ["COUNT, mixed", "1 1/1 "],
  ["COUNT, typographic", "¾"],
  ["TOLERANCE_SIGN", " +"],
  ["TOLERANCE_SIGN before points", " +."],
  ["BY", "1x"],
  ["INCH_MARK", '1"'],
  ["INCH_MARK without a figure", '"'],
  ["FOOT_MARK", "1'"],
  ["GAUGE", "#1"],
  ["GAUGE without a figure", "#"],
  ["STRING, unclosed", "a", '"'],
  ["STRING, one for each line", '"\n'],
  ["ID", "a"],
  ["ID with dashes", "a-"],
  ["ID, as long as a word of the language", "half-blind-"],
  ["no terminal at all", "§"],
];

describe("every terminal is linear", () => {
  // Another program on the same machine can spoil a measurement; a quadratic terminal fails every time.
  test.each(worst)("%s", { retry: 2 }, (_terminal, piece, head = "") => {
    const { Lexer } = languageServices().parser;
    const [part, whole] = [12_500, 100_000].map((length) => head + repeated(piece, length));
    const [short, long] = [timed(() => Lexer.tokenize(part!)), timed(() => Lexer.tokenize(whole!))];
    // Eight times the text takes eight times the time; sixty-four times would be quadratic. Very short times say nothing.
    expect(long < 400 || long / short < 24).toBe(true);
    expect(long).toBeLessThan(10_000);
  });
});

function openingWidth(text: string): string {
  const workspace = createWorkspace({ root: undefined });
  workspace.set(testUri, text);
  return mixedText(workspace.build(testUri).derivation.model.openings[0]!.wide.value);
}

describe("text that is made to hurt", () => {
  const build = (text: string) => {
    const workspace = createWorkspace({ root: undefined });
    workspace.set(testUri, text);
    const { findings } = workspace.build(testUri);
    workspace.build(testUri).rod();
    return findings.map((finding) => finding.code);
  };

  test.each([
    ["brackets", (n: number) => `let a = ${"(".repeat(n)}1${")".repeat(n)}`],
    ["brackets that are never closed", (n: number) => `let a = ${"(".repeat(n)}1`],
    ["brackets that close nothing", (n: number) => `let a = 1${")".repeat(n)}`],
    ["signs", (n: number) => `let a = ${"-".repeat(n)}1`],
    [
      "divisions",
      (n: number) => `case low { wide 40  high 40  deep 12 ${"across { ".repeat(n)} opening a ${"}".repeat(n)} }`,
    ],
    ["divisions that are never closed", (n: number) => `case low { ${"down { ".repeat(n)}`],
    ["rears", (n: number) => `case low { ${"rear { ".repeat(n)} ${"}".repeat(n)} }`],
    ["frames", (n: number) => `case low { ${"frame oak { ".repeat(n)} ${"}".repeat(n)} }`],
    ["openings", (n: number) => `case low { ${"opening a { ".repeat(n)} ${"}".repeat(n)} }`],
    ["braces", (n: number) => "{".repeat(n)],
  ])("%s ten thousand deep are a finding and no overflow", (_what, text) => {
    expect(build(text(10_000)).length).toBeGreaterThan(0);
    // What stands behind it is read all the same where the text says where it ends.
    expect(codesOf(text(20)).filter((code) => code === "syntax/too-much")).toEqual([]);
  });

  test("a sum of four hundred terms is one length, one of ten thousand a finding", () => {
    const sum = (terms: number) => `let a = 0${" + 1/32".repeat(terms)}\nopening left { wide a  high 6 }`;
    // 400/32 = 12 1/2
    expect(openingWidth(sum(400))).toBe("12 1/2");
    expect(build(sum(10_000))).toContain("syntax/too-much");
  });

  test.each([
    ["digits", "1".repeat(100_000)],
    ["digits behind a point", `.${"1".repeat(100_000)}`],
    ["digits under a line", `1/${"7".repeat(100_000)}`],
    ["digits in a mixed number", `${"1".repeat(50_000)} 1/${"7".repeat(50_000)}`],
    ["a product that grows", Array.from({ length: 4_000 }, () => "999999999999").join(" * ")],
    ["a sum of unlike fractions", Array.from({ length: 2_000 }, (_, index) => `1/${index * 2 + 100_001}`).join(" + ")],
  ])("a number of a hundred thousand %s is refused in no time", (_what, number) => {
    const started = performance.now();
    const codes = build(`opening left { wide ${number}  high 6  deep 3 }\nopening right { wide 12  high 6 }`);
    expect(codes.some((code) => code.startsWith("length/") || code === "syntax/too-much")).toBe(true);
    expect(performance.now() - started).toBeLessThan(3_000);
  });

  test.each([
    ["signs that mean nothing", "§ a\n"],
    ["brackets that close nothing", "} "],
    ["numbers between statements", "1 2 3\n"],
    ["texts between statements", '"\n'],
    ["marks of a merge", "<<<<<<< HEAD\nsheet a { }\n=======\n>>>>>>> b\n"],
    ["blocks without a name", "box "],
    ["blocks of one name", "opening a { wide 3  high 3 }\n"],
    ["names that there are not", "front for a { slab b }\n"],
  ])("a hundred thousand characters of %s are read in a moment, and what stands behind them too", (_what, piece) => {
    const started = performance.now();
    const workspace = createWorkspace({ root: undefined });
    workspace.set(testUri, `${repeated(piece, 100_000)}\nsheet whole { measures 3/4 }\n`);
    const { derivation, findings } = workspace.build(testUri);
    expect(findings.length).toBeGreaterThan(0);
    expect(derivation.model.stocks.has("whole")).toBe(true);
    expect(performance.now() - started).toBeLessThan(15_000);
  });

  test("names that double at each step do not double the time", () => {
    const lets = Array.from({ length: 200 }, (_, index) => `let a${index + 1} = a${index} + a${index} - a${index}`);
    const started = performance.now();
    build(`let a0 = 1\n${lets.join("\n")}\nopening left { wide a200 + 11  high 6 }`);
    expect(performance.now() - started).toBeLessThan(3_000);
  });

  const places = (count: number, words: (at: number) => string): string =>
    Array.from({ length: count }, (_, at) => words(at)).join("\n");

  test.each([
    ["openings", (at: number) => `opening o${at} { wide o${at + 1}.wide  high 6 }`],
    ["cases", (at: number) => `case c${at} { wide o${at + 1}.wide + 2  high 9  deep 9  panels ply  opening o${at} }`],
    [
      "boxes",
      (at: number) =>
        `opening o${at} { wide 12  high 6  deep 11 } box for o${at} { sides ply  slides run  high o${at + 1}.box.high }`,
    ],
    [
      "fronts",
      (at: number) => `opening o${at} { wide 12  high 6 } front for o${at} { slab ply  high o${at + 1}.front.high }`,
    ],
  ])("sizes of two thousand %s, each taken from the next, are a finding and no overflow", (_what, words) => {
    const stock = "sheet ply { measures 3/4 } slides run { lengths 10 to 28 by 2 }\n";
    expect(build(stock + places(2_000, words))).toContain("length/too-far");
  });

  test("a thousand blocks, each like the one before, are filled in time that does not grow with the cube of them", () => {
    const time = (count: number) =>
      timed(() =>
        build(
          places(count, (at) => (at === 0 ? "opening o0 { wide 12  high 6 }" : `opening o${at} like o${at - 1} { }`)),
        ),
      );
    // Four times as many; sixty-four times the time would be the cube.
    expect(time(1_000) / time(250)).toBeLessThan(20);
  });

  test("thousands of findings are made in time that grows with them", () => {
    const time = (count: number) =>
      timed(() =>
        build(Array.from({ length: count }, (_, index) => `front for lost-${index} { slab gone }`).join("\n")),
      );
    expect(time(2_000) / time(1_000)).toBeLessThan(4);
  });
});
