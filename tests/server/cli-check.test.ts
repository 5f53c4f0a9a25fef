import { expect, test } from "vitest";
import { shop } from "./shop.ts";
import { fits, job, rack, tooLong } from "./texts.ts";

test("a file that is fine", async () => {
  const done = await shop({ "a.scant": fits }).run("check", "a.scant");
  expect(done).toEqual({ code: 0, out: "1 file checked: nothing is wrong\n", err: "" });
});

test("an error with its line, carets, reason, remedy and what else to see", async () => {
  const done = await shop({ "jobs/a.scant": tooLong }).run("check", "jobs/a.scant");
  expect(done.code).toBe(1);
  expect(done.err).toBe("");
  expect(done.out).toBe(`jobs/a.scant:6:56 error slide/too-long
   6 | box for a { sides ply  bottom ply under  slides runner 24 }
     |                                                        ^^
  A 24 slide needs 24 1/2 in of depth; "a" has 23 1/2 in.
  why: The slide, and the 1/2 in that it wants behind it, must go in before the
       front is home.
  do:  The longest that fits is 22.
  see: jobs/a.scant:5:39 the depth comes from here
  see: jobs/a.scant:4:74 what it wants behind it

1 file checked: 1 error
`);
});

test("warnings and hints are no errors", async () => {
  const warned = fits.replace("22 }", "22  colour blue }");
  const done = await shop({ "a.scant": warned, "b.scant": fits }).run("check", "--json", "a.scant", "b.scant");
  const document = JSON.parse(done.out);
  expect(done.code).toBe(document.errors === 0 ? 0 : 1);
  expect(document.files.map((each: { file: string }) => each.file)).toEqual(["a.scant", "b.scant"]);
});

test("a used file's finding is said once, under its own name, however many files use it", async () => {
  const files = { "rack.scant": `${rack}sheet ply { called 3/4 }\n`, "a.scant": job, "b.scant": job };
  const text = await shop(files).run("check", "a.scant", "b.scant", "rack.scant");
  expect(text.code).toBe(1);
  expect(text.out.match(/^rack\.scant:4:\d+ error /gm)).toHaveLength(1);
  expect(text.out).toContain("3 files checked: 1 error\n");

  const document = JSON.parse((await shop(files).run("check", "--json", "a.scant", "b.scant")).out);
  expect(document).toMatchObject({ schema: "scantling/check/1", errors: 1, warnings: 0, hints: 0 });
  expect(
    document.files.map((each: { file: string; findings: unknown[] }) => [each.file, each.findings.length]),
  ).toEqual([
    ["a.scant", 0],
    ["b.scant", 0],
    ["rack.scant", 1],
  ]);
});

test("a used file that is missing is an error at the word, and what is read is only what is used", async () => {
  const done = await shop({ "a.scant": job }).run("check", "a.scant");
  expect(done.code).toBe(1);
  expect(done.out).toMatch(/^a\.scant:3:\d+ error use\/missing$/m);
});

test("a file that cannot be read stops no other, and outweighs their errors", async () => {
  const done = await shop({ "a.scant": tooLong }).run("check", "nowhere.scant", "a.scant");
  expect(done.code).toBe(2);
  expect(done.err).toBe("scantling: nowhere.scant does not exist\n");
  expect(done.out).toContain("error slide/too-long");
  expect((await shop({}).run("check", "nowhere.scant")).out).toBe("");
});

test("the standard input is read for a dash", async () => {
  const done = await shop({ "rack.scant": rack }, { stdin: job.replace("slides runner", "slides runner 24") }).run(
    "check",
    "-",
  );
  expect(done.code).toBe(1);
  expect(done.out).toMatch(/^stdin:5:\d+ error slide\/too-long$/m);
});

test("colour is used only where it is wanted, and says nothing that words do not", async () => {
  const plain = await shop({ "a.scant": tooLong }).run("check", "a.scant");
  const coloured = await shop({ "a.scant": tooLong }, { colour: true }).run("check", "a.scant");
  expect(plain.out).not.toContain("\u001b");
  expect(coloured.out).toContain("\u001b[31;1merror\u001b[0m");
  // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what is taken out.
  expect(coloured.out.replace(/\u001b\[[0-9;]*m/g, "")).toBe(plain.out);
});

test("a long name keeps its place on a line of its own, and nothing else is wider than 80 columns", async () => {
  const name = `${"deep/".repeat(20)}a.scant`;
  const long = tooLong
    .replace("box for a", `/* ${"bla ".repeat(60)}*/ box for a`)
    .replace("24 }", `24 } // ${"x".repeat(200)}`);
  const done = await shop({ [name]: long }).run("check", name);
  const lines = done.out.split("\n");
  expect(lines[0]).toMatch(/^deep\/.*:6:\d+$/);
  expect(lines[1]).toBe("  error slide/too-long");
  const excerpt = lines.slice(2, 4);
  expect(excerpt[0]).toHaveLength(80);
  expect(excerpt[0]?.slice(excerpt[1]?.indexOf("^"), (excerpt[1]?.lastIndexOf("^") ?? 0) + 1)).toBe("24");
  for (const line of lines.filter((each) => !each.includes("deep/"))) expect(line.length).toBeLessThanOrEqual(80);
});

test("a file that is no build file does not flood the terminal, and its summary counts all", async () => {
  const done = await shop({ "a.scant": "] ".repeat(3000) }).run("check", "a.scant");
  const document = JSON.parse((await shop({ "a.scant": "] ".repeat(3000) }).run("check", "a.scant", "--json")).out);
  expect(document.errors).toBeGreaterThan(50);
  expect(done.out.match(/^a\.scant:/gm)).toHaveLength(50);
  expect(done.out).toContain(`and ${document.errors - 50} more in a.scant: mend some of these first`);
  expect(done.out).toContain(`1 file checked: ${document.errors} errors`);
});

test("an empty name is no folder", async () => {
  expect((await shop({}).run("check", "")).err).toBe("scantling: the name of a file is empty\n");
});

test("what a file holds cannot steer the terminal", async () => {
  const done = await shop({ "a.scant": `${fits}\u001b]0;owned\u0007 \u202e }{\n` }).run("check", "a.scant");
  expect(done.code).toBe(1);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what must not be there.
  expect(done.out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f\u202e]/);
});
