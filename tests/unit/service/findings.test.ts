import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import {
  differences,
  findingsOf,
  fixesThatFail,
  fixtureFiles,
  MalformedFixture,
  parseFixture,
} from "../../support/carets.ts";

const folder = fileURLToPath(new URL("../../fixtures/findings/", import.meta.url));
const shop = readFileSync(`${folder}shop.scant`, "utf8");
const fixtures = fixtureFiles(folder);

describe.each(fixtures)("$name", ({ name, text }) => {
  test("finds exactly what its carets say", () => {
    const fixture = parseFixture(name, text, shop);
    expect(differences(fixture)).toEqual([]);
    expect(fixture.expected.map(({ code }) => code)).toContain(name);
  });

  test("says what is so, why it matters and what would do, in words", () => {
    const findings = findingsOf(parseFixture(name, text, shop).files);
    const dumb = findings.filter(
      ({ severity, message, reason, remedy, related, fixes }) =>
        !["error", "warning", "hint"].includes(severity) ||
        ![reason, remedy].every((sentence) => /^["A-Z0-9±].*[.?]\)?$/.test(sentence)) ||
        ![message, ...related.map((one) => one.message), ...fixes.map(({ title }) => title)].every((words) =>
          /\w/.test(words),
        ),
    );
    expect(dumb).toEqual([]);
  });

  test("is mended by every fix that is offered", () => {
    expect(fixesThatFail(parseFixture(name, text, shop))).toEqual([]);
  });
});

describe("the carets themselves", () => {
  const head = 'inches\nuse "shop.scant" // fine\nopening left { wide 15  high 6  deep 23 }\n';
  const box = "box for left { sides ply  slides runner 24 }";
  const read = (text: string) => parseFixture("case", text, shop);

  test("a missing finding and an extra one are both differences", () => {
    const carets = `${" ".repeat(box.indexOf("ply") - 2)}^^^ name/unknown-stock`;
    expect(differences(read(`${head}${box}\n//${carets}\n`))).toEqual([
      "missing: main.scant:4:22-25 name/unknown-stock",
      expect.stringMatching(/^extra: main\.scant:4:41-43 slide\/too-long: /),
    ]);
  });

  test("a finding in the wrong place, of the wrong width or with another message is a difference", () => {
    const at = box.indexOf("24");
    const under = (shift: number, marks: string, code: string) =>
      differences(read(`${head}${box}\n//${" ".repeat(at - 2 + shift)}${marks} ${code}\n`));
    expect(under(0, "^^", "slide/too-long")).toEqual([]);
    expect(under(-1, "^^", "slide/too-long")).toHaveLength(2);
    expect(under(0, "^^^", "slide/too-long")).toHaveLength(2);
    expect(under(0, "^^>", "slide/too-long")).toHaveLength(2);
    expect(under(0, "|", "slide/too-long")).toHaveLength(2);
    expect(under(0, "^^", "slide/too-long: something else")).toHaveLength(2);
  });

  test("findings named as beside the point are left out of account", () => {
    expect(differences(read(`${head}// besides: slide/*\n${box}\n   x\n// ^ syntax/unreadable\n`))).toEqual([]);
  });

  test("a finding of another file is looked for there", () => {
    const text = `use "more.scant" // fine\n// ---- more.scant\ninches\nsheet bare { }\n//    ^^^^ stock/no-thickness\n`;
    expect(differences(read(text))).toEqual([]);
  });

  test.each([
    ["no carets", "inches // fine\n"],
    ["no neighbour that is right", `inches\n   x\n// ^ syntax/unreadable\n`],
    ["carets without a code", `inches // fine\n// ^^\n`],
    ["carets with a code that is none", `inches // fine\n// ^^ Too Long\n`],
    ["two groups of carets in one line", `inches // fine\n// ^^ a/b ^^ c/d\n`],
    ["carets under nothing", `//  ^^ a/b\ninches // fine\n`],
    ["carets past the end of the line", `inches // fine\nab\n//   ^^ a/b\n`],
    ["one file twice", `inches // fine\n// ---- a.scant\n// ---- a.scant\n`],
  ])("a fixture with %s is malformed", (_what, text) => {
    expect(() => read(text)).toThrow(MalformedFixture);
  });
});
