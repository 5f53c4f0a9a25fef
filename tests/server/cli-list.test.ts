import { expect, test } from "vitest";
import { shop } from "./shop.ts";
import { fits, job, rack, tooLong } from "./texts.ts";

test("the parts for a terminal", async () => {
  const done = await shop({ "a.scant": fits }).run("list", "a.scant");
  expect(done.code).toBe(0);
  expect(done.err).toBe("");
  expect(done.out).toMatch(/^a\n5 pieces; sizes in inches, read to 1\/32 in\n/);
  expect(done.out).toMatch(/ 2 {2}22 +5 1\/32 .*side · box a/);
  for (const line of done.out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
});

test("the parts for programs, with files called as a person would", async () => {
  const done = await shop({ "jobs/a.scant": job, "jobs/rack.scant": rack }).run("list", "--json", "jobs/a.scant");
  expect(done.code).toBe(0);
  const document = JSON.parse(done.out);
  expect(Object.keys(document)).toEqual(["schema", "project", "units", "parts", "findings"]);
  expect(document.parts.map((part: { name: string; quantity: number }) => [part.name, part.quantity])).toEqual([
    ["side", 2],
    ["front", 1],
    ["back", 1],
    ["bottom", 1],
  ]);
  expect(document.parts[0]).toMatchObject({ of: "box a", source: { file: "jobs/a.scant", line: 5, column: 13 } });
  expect(done.out).not.toContain("file:");
});

test("the list as a spreadsheet's and as a page's text", async () => {
  const csv = await shop({ "a.scant": fits }).run("list", "a.scant", "--csv");
  expect(csv.out).toMatch(/^mark,quantity,part,.*\r\n/);
  const page = await shop({ "a.scant": fits }).run("list", "--markdown", "a.scant");
  expect(page.out).toContain("| ");
});

test("the lists as files, again without a change, and again after one", async () => {
  const world = shop({ "jobs/a.scant": fits });
  expect(await world.run("list", "jobs/a.scant", "-o", "out")).toEqual({
    code: 0,
    out: "Wrote out/a.cutlist.csv\nWrote out/a.cutlist.md\n",
    err: "",
  });
  expect([...world.written.keys()]).toEqual(["/shop/out/a.cutlist.csv", "/shop/out/a.cutlist.md"]);
  expect(world.written.get("/shop/out/a.cutlist.csv")).toBe((await world.run("list", "--csv", "jobs/a.scant")).out);
  const again = await world.run("list", "jobs/a.scant", "--output=out/");
  expect(again.out).toBe("out/a.cutlist.csv says the same already\nout/a.cutlist.md says the same already\n");
  expect((await world.run("list", "jobs/a.scant", "-o", ".", "--markdown")).out).toBe("Wrote a.cutlist.md\n");
});

test("a list that cannot be written", async () => {
  const world = shop({ "a.scant": tooLong }, { protectedBy: "is read-only" });
  const done = await world.run("list", "a.scant", "-o", "out");
  expect(done.code).toBe(2);
  expect(done.out).toBe("");
  expect(done.err).toContain("scantling: out/a.cutlist.csv is read-only\nscantling: out/a.cutlist.md is read-only\n");
});

test("a file with errors is listed as far as it goes, and says so", async () => {
  const world = shop({ "a.scant": tooLong });
  const done = await world.run("list", "a.scant");
  expect(done.code).toBe(1);
  expect(done.out).toContain("side · box a");
  expect(done.err).toBe(
    "scantling: 1 error stands in a.scant: look before you cut.\nTo see: scantling check a.scant\n",
  );
  const json = await world.run("list", "--json", "a.scant");
  expect(json.code).toBe(1);
  expect(json.err).toBe("");
  expect(JSON.parse(json.out).findings).toHaveLength(1);
});

test("a file of nothing is a list of nothing", async () => {
  const done = await shop({ "a.scant": "" }).run("list", "--json", "a.scant");
  expect(done.code).toBe(0);
  expect(JSON.parse(done.out)).toMatchObject({ project: "a", parts: [], findings: [] });
});

test.each([
  [[], "no file is named"],
  [["a.scant", "b.scant"], "one file at a time, and 2 are named"],
  [["a.scant", "--json", "--csv"], "--json and --csv ask for different things"],
  [["a.scant", "--json", "-o", "out"], "--json prints and -o writes; give one of them"],
  [["a.scant", "--output="], "-o needs the name of a folder"],
  [["a.scant", "-o"], "option '-o, --output <value>' argument missing"],
  [["a.scant", "--pdf"], "unknown option '--pdf'"],
  [["a.scant", "--csv=yes"], "option '--csv' does not take an argument"],
] as const)("words that make no sense: %j", async (words, fault) => {
  const done = await shop({ "a.scant": fits }).run("list", ...words);
  expect(done).toEqual({ code: 2, out: "", err: `scantling list: ${fault}\nTry: scantling list --help\n` });
});

test("stopped between two files, it says which was not written; before the first, that none was", async () => {
  const one = shop({ "a.scant": fits }, { stopAfter: 1 });
  expect(await one.run("list", "a.scant", "-o", ".")).toEqual({
    code: 130,
    out: "Wrote a.cutlist.csv\n",
    err: "scantling: stopped; a.cutlist.md was not written\n",
  });
  expect([...one.written.keys()]).toEqual(["/shop/a.cutlist.csv"]);
  const none = await shop({ "a.scant": fits }, { stopAfter: 0 }).run("list", "a.scant", "-o", ".");
  expect(none.err).toBe("scantling: stopped; a.cutlist.csv and a.cutlist.md were not written\n");
});
