import { describe, expect, test } from "vitest";
import { faultsOf, fuzzed, workspaceWith } from "../support/fuzz/judge.ts";
import { others } from "../support/fuzz/run.ts";

/** What may stand any number of times, or nest, in what holds it. */
const forms: readonly (readonly [what: string, head: string, piece: string, tail: string])[] = [
  ["terms of a sum", "board oak { long 1", " + 1", " }"],
  ["factors", "board oak { long 1", " * 1", " }"],
  ["signs", "board oak { long ", "- ", "1 }"],
  ["brackets", "board oak { long ", "(", "1 }"],
  ["tolerances", "let a = 1", " +1/64", ""],
  ["readings", "opening a { wide 1", ", 1", " }"],
  ["steps of a name", "let a = b", ".c", ""],
  ["lengths of slides", "slides a { lengths 1", ", 1", " }"],
  ["names of openings", "box for a", ", a", " { }"],
  ["words of a species", "board oak { species", " red", " }"],
  ["stocks to choose from", "box for a { sides a", ", a", " }"],
  ["fittings", "box for a { bottom a", " solid", " }"],
  ["edges", "front for a { edging a on left", ", top", " }"],
  ["sides of a table", "saw { table", " left 3", " }"],
  ["properties", "case a {", " wide 3", " }"],
  ["openings of a case", "case a { wide 30 high 30 deep 20 down {", " opening a", " } }"],
  ["columns in columns", "case a { wide 30 high 30 deep 20 ", "down { ", ""],
  ["statements", "", "allow x/y\n", ""],
  ["names given", "", "let a = 1\n", ""],
  ["files used", "", 'use "rack.scant"\n', ""],
  ["records of what was cut", "cut {", " box a side 1", " }"],
  ["a range of openings", "case a { wide 30 high 30 deep 20 down { openings a-1 to a-9", "9", " } }"],
  ["a long name", "let ", "a", " = 1"],
  ["a long number", "let a = 1", "1", ""],
  ["a long text", 'project "', "a", '"'],
  ["a long comment", "/*", " *", ""],
];

describe.each(forms)("%s", (_what, head, piece, tail) => {
  const of = (times: number): string => `${head}${piece.repeat(times)}${tail}\n`;

  test("three thousand of them are borne", { timeout: 60_000 }, () => {
    expect(faultsOf(of(3_000), workspaceWith(others), "usual")).toEqual([]);
  });

  // Three doublings at once, since one is lost in the noise of a machine that does other things too; what is quadratic
  // takes sixty-four times as long. Very short times say nothing.
  test("eight times as many take no more than two and a half times as long at each doubling", {
    timeout: 60_000,
    retry: 4,
  }, () => {
    const [less, more] = [timed(of(750)), timed(of(6_000))];
    expect(more < 300 || more / less <= 2.5 ** 3, `${less.toFixed(0)} ms, then ${more.toFixed(0)} ms`).toBe(true);
  });
});

/** Milliseconds of processor from text to findings, the less of two: what else the machine does counts for little. */
function timed(text: string): number {
  const times = [1, 2].map(() => {
    const workspace = workspaceWith(others);
    workspace.set(fuzzed, text);
    const before = process.cpuUsage();
    workspace.build(fuzzed).findings.slice(0, 1);
    const { user } = process.cpuUsage(before);
    return user / 1000;
  });
  return Math.min(...times);
}
