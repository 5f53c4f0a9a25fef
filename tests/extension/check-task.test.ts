import { describe, expect, test } from "vitest";
import { findingLine, onceEach, summaryLine } from "../../extension/tasks/lines.ts";
import manifest from "../../package.json" with { type: "json" };
import { shop } from "../server/shop.ts";
import { finding } from "./lists.ts";

const [pattern] = manifest.contributes.problemPatterns;
const matcher = new RegExp(pattern?.regexp ?? "");

function matched(line: string) {
  const found = matcher.exec(line);
  if (found === null || pattern === undefined) return undefined;
  const { file, line: row, column, severity, message } = pattern;
  return [file, row, column, severity, message].map((group) => found[group]);
}

describe("the lines of the task", () => {
  test("say a finding in one line, which the problem matcher reads", () => {
    const line = findingLine(finding(), () => "shop/job two.scant");
    expect(matched(line)).toEqual([
      "shop/job two.scant",
      "34",
      "17",
      "error",
      "slide/too-long: a 24 slide needs 24 1/2 of depth; this opening has 23 1/2. Write 22.",
    ]);
  });

  test("cannot steer the terminal", () => {
    const line = findingLine(finding({ message: "no \u001b[2J \u202e name\r\nhere", remedy: "" }), () => "a.scant");
    expect(line).toBe("a.scant:34:17: error slide/too-long: no  [2J   name here");
  });

  test("end with a sum; what two files find alike is counted once", () => {
    const twice = [finding(), finding(), finding({ severity: "hint" })];
    expect(summaryLine(2, onceEach(twice))).toBe("2 files checked: 1 error, 1 hint");
    expect(summaryLine(1, [])).toBe("1 file checked: nothing is wrong");
    expect(matched(summaryLine(1, twice))).toBeUndefined();
  });
});

test("the problem matcher reads the heads that the command line prints as well, and nothing else of it", async () => {
  const { out } = await shop({ "job.scant": "inches\nbox for nowhere { holds 5 lb }\n" }).run("check", "job.scant");
  const read = out.split("\n").flatMap((line) => matched(line)?.slice(0, 4).join(" ") ?? []);
  expect(read).toContain("job.scant 2 9 error");
  expect(read.length).toBe(out.match(/^job\.scant:/gm)?.length);
});
