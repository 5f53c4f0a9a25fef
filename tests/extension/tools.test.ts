import { describe, expect, test } from "vitest";
import { checkText, partsText } from "../../extension/tools/texts.ts";
import manifest from "../../package.json" with { type: "json" };
import { finding, listOf, part } from "./lists.ts";

describe("what a language model is told of the findings", () => {
  test("the gravest first, each with its place, reason and remedy", () => {
    const hint = finding({ severity: "hint", code: "name/unused", reason: "", remedy: "" });
    expect(checkText("job.scant", listOf([part()], [hint, finding()]))).toBe(
      [
        "job.scant: 2 pieces; 1 errors, 0 warnings, 1 hints.",
        "error slide/too-long at job two.scant:34:17: a 24 slide needs 24 1/2 of depth; this opening has 23 1/2",
        "  why: It would stand out.",
        "  do: Write 22.",
        "hint name/unused at job two.scant:34:17: a 24 slide needs 24 1/2 of depth; this opening has 23 1/2",
      ].join("\n"),
    );
  });

  test("that there are none", () => {
    expect(checkText("job.scant", listOf([part({ quantity: 1 })], []))).toBe("job.scant: 1 piece, no findings.");
  });

  test("as many as a conversation can bear, and how many are left out", () => {
    const many = Array.from({ length: 250 }, () => finding({ reason: "", remedy: "" }));
    const lines = checkText("job.scant", listOf([], many)).split("\n");
    expect(lines).toHaveLength(202);
    expect(lines.at(-1)).toBe("… and 50 more");
  });
});

describe("what a language model is told of the parts", () => {
  test("one line each, under a head of as many columns", () => {
    const lines = partsText("job.scant", listOf([part({ why: "two\nlines\tof it" })], [])).split("\n");
    expect(lines).toHaveLength(3);
    expect(lines[1]?.split("\t")).toHaveLength(lines[2]?.split("\t").length ?? 0);
    expect(lines[2]).toBe("2\tside\tbox inks\t20\t5 1/2 −\t15/32\tbirch-12\tlong\ttwo lines of it");
  });

  test("that errors stand in the file", () => {
    expect(partsText("job.scant", listOf([part()], [finding()]))).toContain("1 errors stand in the file");
  });
});

test("the tools of the manifest say that they read only, and take nothing but the name of a file", () => {
  for (const tool of manifest.contributes.languageModelTools) {
    expect(tool.modelDescription).toContain("Reads only");
    expect(Object.keys(tool.inputSchema.properties)).toEqual(["file"]);
    expect(tool.name).toMatch(/^[\w-]+$/);
  }
});
