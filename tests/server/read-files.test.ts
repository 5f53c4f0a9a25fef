import { execFileSync } from "node:child_process";
import { mkdirSync, symlinkSync, truncateSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { URI } from "vscode-uri";
import { isInside, readInside, readText, rootFor, textFrom } from "../../server/cli/read-files.ts";
import { scratch } from "./scratch.ts";

test("a text is read as it is, but for the mark of its order", () => {
  const folder = scratch({ a: "½ × ¾\r\n", b: "\ufeffinches\n", c: "" });
  expect(readText(join(folder, "a"))).toEqual({ text: "½ × ¾\r\n" });
  expect(readText(join(folder, "b"))).toEqual({ text: "inches\n" });
  expect(readText(join(folder, "c"))).toEqual({ text: "" });
});

test("what is no text file is named as what it is", () => {
  const folder = scratch({
    binary: new Uint8Array([1, 0, 2]),
    utf16: Buffer.from("\ufeffinches", "utf16le"),
    latin: new Uint8Array([0x31, 0xbd, 0x22]),
    big: "",
  });
  truncateSync(join(folder, "big"), 5 * 1024 * 1024);
  execFileSync("mkfifo", [join(folder, "pipe")]);
  symlinkSync("loop", join(folder, "loop"));
  const failure = (name: string): unknown => readText(join(folder, name));
  expect(failure("binary")).toEqual({ failure: "is not a text file" });
  expect(failure("utf16")).toEqual({ failure: "is UTF-16 text; save it as UTF-8" });
  expect(failure("latin")).toEqual({ failure: "is not UTF-8 text; save it as UTF-8" });
  expect(failure("big")).toEqual({ failure: "is too big (5.0 MiB; the limit is 4 MiB)" });
  expect(failure("pipe")).toEqual({ failure: "is not a file" });
  expect(failure("loop")).toEqual({ failure: "is a link that leads back to itself" });
  expect(failure("none")).toEqual({ failure: "does not exist", missing: true });
  expect(failure("binary/none")).toEqual({ failure: "does not exist" });
  expect(failure("x".repeat(300))).toEqual({ failure: "is too long a name" });
  expect(failure("")).toEqual({ failure: "is a folder; name the build files in it" });
  expect(textFrom(new Uint8Array(4 * 1024 * 1024 + 1))).toEqual({ failure: "is too big (the limit is 4 MiB)" });
});

test("used files are read inside the root and nowhere else, links followed", async () => {
  const folder = scratch({
    "root/a.scant": "a",
    "root/deep/b.scant": "b",
    "root-beside/c.scant": "c",
    "d.scant": "d",
  });
  const root = join(folder, "root");
  symlinkSync("../d.scant", join(root, "out.scant"));
  symlinkSync("..", join(root, "up"));
  symlinkSync("deep/b.scant", join(root, "in.scant"));
  symlinkSync("root", join(folder, "alias"));
  const read = (path: string, inside = root): Promise<unknown> =>
    readInside(URI.file(path).toString(), URI.file(inside).toString());
  expect(await read(join(root, "a.scant"))).toBe("a");
  expect(await read(join(root, "deep/b.scant"))).toBe("b");
  expect(await read(join(root, "in.scant"))).toBe("b");
  expect(await read(join(folder, "alias/a.scant"), join(folder, "alias"))).toBe("a");
  expect(await read(join(root, "out.scant"))).toBeUndefined();
  expect(await read(join(root, "up/d.scant"))).toBeUndefined();
  expect(await read(join(folder, "d.scant"))).toBeUndefined();
  expect(await read(join(folder, "root-beside/c.scant"))).toBeUndefined();
  expect(await read(join(root, "none.scant"))).toBeUndefined();
  expect(await readInside("http://localhost/a.scant", URI.file(root).toString())).toBeUndefined();
  expect(await readInside("no address", URI.file(root).toString())).toBeUndefined();
});

test("the root is the nearest folder up with a .git, else the working folder, else the file's own", () => {
  const folder = scratch({ "repo/jobs/one/a.scant": "", "plain/jobs/b.scant": "" });
  mkdirSync(join(folder, "repo/.git"));
  expect(rootFor("jobs/one/a.scant", join(folder, "repo"))).toBe(join(folder, "repo"));
  expect(rootFor(join(folder, "repo/jobs/one/a.scant"), "/")).toBe(join(folder, "repo"));
  expect(rootFor("jobs/b.scant", join(folder, "plain"))).toBe(join(folder, "plain"));
  expect(rootFor(join(folder, "plain/jobs/b.scant"), join(folder, "repo"))).toBe(join(folder, "plain/jobs"));
});

test("a folder holds itself and what is below it", () => {
  expect(isInside("/shop", "/shop")).toBe(true);
  expect(isInside("/shop/a/b", "/shop")).toBe(true);
  expect(isInside("/shop/..a", "/shop")).toBe(true);
  expect(isInside("/shop2", "/shop")).toBe(false);
  expect(isInside("/", "/shop")).toBe(false);
});
