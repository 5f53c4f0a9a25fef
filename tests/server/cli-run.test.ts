import { expect, test } from "vitest";
import { shop } from "./shop.ts";

test("the version", async () => {
  expect(await shop({}).run("--version")).toEqual({ code: 0, out: "scantling 1.2.3\n", err: "" });
});

test.each([[["--help"]], [["-h"]], [["help"]], [["check", "--help"]], [["list", "-h"]]] as const)(
  "help fits a terminal: %j",
  async (words) => {
    const done = await shop({}).run(...words);
    expect(done.code).toBe(0);
    expect(done.err).toBe("");
    expect(done.out.length).toBeGreaterThan(200);
    for (const line of done.out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  },
);

test("without a word the help goes where errors go", async () => {
  const done = await shop({}).run();
  expect(done.code).toBe(2);
  expect(done.out).toBe("");
  expect(done.err).toContain("scantling check FILE...");
});

test.each([
  ["chek", "command"],
  ["--json", "option"],
])("%s is no %s", async (word, what) => {
  const done = await shop({}).run(word, "a.scant");
  expect(done.code).toBe(2);
  expect(done.out).toBe("");
  expect(done.err).toContain(`scantling: there is no ${what} "${word}"`);
});

test("check wants a file and knows its options", async () => {
  expect((await shop({}).run("check")).err).toBe("scantling check: no file is named\nTry: scantling check --help\n");
  expect((await shop({}).run("check", "--fast", "a.scant")).code).toBe(2);
});
