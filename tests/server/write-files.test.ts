import { chmodSync, lstatSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, utimesSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { writeWhole } from "../../server/cli/write-files.ts";
import { scratch } from "./scratch.ts";

test("a new file is written, and nothing else is left in the folder", () => {
  const folder = scratch();
  const path = join(folder, "a.cutlist.csv");
  expect(writeWhole(path, "one − two\n")).toEqual({ path, outcome: "written" });
  expect(readFileSync(path, "utf8")).toBe("one − two\n");
  expect(readdirSync(folder)).toEqual(["a.cutlist.csv"]);
});

test("a file that says the same is not touched", () => {
  const path = join(scratch({ a: "same" }), "a");
  utimesSync(path, 1000, 1000);
  expect(writeWhole(path, "same").outcome).toBe("unchanged");
  expect(statSync(path).mtimeMs).toBe(1_000_000);
});

test("a file that is replaced is a new one with the old one's permissions", () => {
  const path = join(scratch({ a: "old" }), "a");
  chmodSync(path, 0o640);
  const before = statSync(path).ino;
  expect(writeWhole(path, "new").outcome).toBe("written");
  expect(readFileSync(path, "utf8")).toBe("new");
  expect(statSync(path).mode & 0o777).toBe(0o640);
  // A reader that had the old one open still reads the old one to its end.
  expect(statSync(path).ino).not.toBe(before);
});

test("a link stays a link, and what it leads to is replaced", () => {
  const folder = scratch({ "real/a": "old" });
  symlinkSync(join(folder, "real", "a"), join(folder, "link"));
  expect(writeWhole(join(folder, "link"), "new").outcome).toBe("written");
  expect(lstatSync(join(folder, "link")).isSymbolicLink()).toBe(true);
  expect(readFileSync(join(folder, "real", "a"), "utf8")).toBe("new");
});

test("a file that is protected is left alone, even for those who could get round it", () => {
  const folder = scratch({ a: "old" });
  const path = join(folder, "a");
  chmodSync(path, 0o444);
  expect(writeWhole(path, "new")).toEqual({ path, outcome: "failed", failure: "is read-only" });
  expect(readFileSync(path, "utf8")).toBe("old");
  expect(readdirSync(folder)).toEqual(["a"]);
});

test("what is in the way is named", () => {
  const folder = scratch({ file: "" });
  mkdirSync(join(folder, "taken"));
  const failure = (path: string): unknown => {
    const done = writeWhole(path, "x");
    return done.outcome === "failed" ? done.failure : done.outcome;
  };
  expect(failure(join(folder, "taken"))).toBe("is a folder");
  expect(failure(join(folder, "none", "a"))).toBe(`cannot be written: there is no folder ${join(folder, "none")}`);
  expect(failure(join(folder, "file", "a"))).toBe(`cannot be written: ${join(folder, "file")} is not a folder`);
  expect(failure("/dev/null")).toBe("is not a plain file");
  expect(failure(join(folder, "x".repeat(300)))).toMatch(/^could not be written: /);
});
