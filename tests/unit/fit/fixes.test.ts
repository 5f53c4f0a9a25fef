import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { Finding } from "../../../language/core/finding.ts";
import { addsFindings, applied, fixAll, safeEdits } from "../../../language/fit/fix-all.ts";
import { findingsOf, fixtureFiles, fixtureRoot, mainFile, parseFixture } from "../../support/carets.ts";

const folder = fileURLToPath(new URL("../../fixtures/findings/", import.meta.url));
const shop = readFileSync(`${folder}shop.scant`, "utf8");
const fixtures = fixtureFiles(folder).map(({ name, text }) => parseFixture(name, text, shop));
const mainUri = `${fixtureRoot}/${mainFile}`;

/** Checks a main file beside the shop and whatever else a fixture has. */
function checkWith(files: ReadonlyMap<string, string>): (text: string) => readonly Finding[] {
  return (text) => findingsOf(new Map([...files, [mainFile, text]]));
}

const check = checkWith(
  new Map([
    [mainFile, ""],
    ["shop.scant", shop],
  ]),
);

/** What a title says of a finding that its fix makes, in the words that it says it with. */
const told: Readonly<Record<string, RegExp>> = {
  "cut/spoiled": /as spoiled/,
  "name/unused": /instead of/,
  "part/wider-than-board": /glued up/,
  "slide/shallow": /fits too/,
};

describe.each(fixtures)("a fix of $name", ({ name, files }) => {
  test("makes no finding that its title does not tell of", () => {
    const text = files.get(mainFile)!;
    const before = findingsOf(files);
    const own = checkWith(files);
    const harm = before
      .filter((finding) => finding.code === name)
      .flatMap((finding) => finding.fixes)
      .filter((fix) => fix.edits.every(({ span }) => span.uri === mainUri))
      .map((fix) => ({ fix, after: own(applied(text, fix.edits)) }))
      .filter(({ after }) => addsFindings(before, after))
      .map(({ fix, after }) => {
        const fresh = after.filter(
          ({ code }) => !before.some((one) => one.code === code) && told[code]?.test(fix.title) !== true,
        );
        return fresh.length === 0
          ? ""
          : `${fix.title}: ${fresh.map(({ code, message }) => `${code}: ${message}`).join("; ")}`;
      });
    // What a name stands for can only be checked once it is known: then it is.
    if (!name.startsWith("name/unknown-")) expect(harm.filter((text) => text !== "")).toEqual([]);
  });
});

/** A finding whose safe fix puts another text at a place of the first line. */
function replaces(code: string, start: number, end: number, text: string): Finding {
  const span = { uri: mainUri, start, end, line: 0, column: start, endLine: 0, endColumn: end };
  const fixes = [{ title: `Write ${text}`, edits: [{ span, text }], safe: true }];
  return { code, severity: "hint", span, message: "", reason: "", remedy: "", related: [], fixes };
}

describe("fix all", () => {
  const head =
    'inches\nuse "shop.scant"\nopening a { wide 15  high 6  deep 23 }\nopening b { wide 15  high 6  deep 23 }\n';

  test("mends what is safe, until nothing is", () => {
    const text = `${head}box for a, b { sides ply  bottom thin under  slides runner 24  wide 15  lap 1/8 }\n`;
    expect(check(text).map(({ code }) => code)).toEqual(["slide/too-long", "box/too-wide", "statement/no-effect"]);
    const fixed = fixAll(mainUri, text, check);
    expect(check(fixed.text)).toEqual([]);
    expect(fixed.text).toContain("slides runner 22  wide 14 ");
    expect(fixed.applied.map(({ code }) => code)).toEqual(["slide/too-long", "box/too-wide", "statement/no-effect"]);
  });

  test("goes on to what a first fix uncovers", () => {
    const text = `allow slide/too-long "the back is open"\n${head}box for a, b { sides ply  bottom thin under  slides runner 22 }\n`;
    const fixed = fixAll(mainUri, text, check);
    expect(fixed.text.startsWith("\ninches")).toBe(true);
    expect(fixed.applied).toEqual([{ code: "statement/allow-unused", title: "Take it out" }]);
  });

  test("leaves alone what may be meant otherwise", () => {
    const text = `${head}let gap = 13 - 3/4\nbox for a { sides ply  bottom thin under  slides runner  wide gap }\n`;
    expect(check(text).flatMap((finding) => finding.fixes.map((fix) => fix.safe))).toContain(false);
    expect(fixAll(mainUri, text, check).text).toContain("13 - 3/4");
  });

  test("changes nothing where nothing is wrong, and no other file", () => {
    const text = `${head}box for a, b { sides ply  bottom thin under  slides runner }\n`;
    expect(fixAll(mainUri, text, check)).toEqual({ text, applied: [] });
    const elsewhere = `use "more.scant"\n`;
    const more = `${head}box for a { sides ply  bottom thin under  slides runner 24 }\n`;
    const both = checkWith(
      new Map([
        [mainFile, elsewhere],
        ["more.scant", more],
        ["shop.scant", shop],
      ]),
    );
    expect(both(elsewhere).map(({ code }) => code)).toContain("slide/too-long");
    expect(fixAll(mainUri, elsewhere, both).text).toBe(elsewhere);
  });

  test("leaves a fix out that would make a new finding", () => {
    const span = { uri: mainUri, start: 0, end: 3, line: 0, column: 0, endLine: 0, endColumn: 3 };
    const said = { severity: "error", span, message: "", reason: "", remedy: "", related: [] } as const;
    const fixes = [{ title: "Write new", edits: [{ span, text: "new" }], safe: true }];
    const old: Finding = { ...said, code: "a/old", fixes };
    const fresh: Finding = { ...said, code: "a/fresh", fixes: [] };
    const fixed = fixAll(mainUri, "old", (text) => (text === "old" ? [old] : [fresh]));
    expect(fixed).toEqual({ text: "old", applied: [] });
  });

  test("ends where fixes undo each other", () => {
    const span = { uri: mainUri, start: 0, end: 1, line: 0, column: 0, endLine: 0, endColumn: 1 };
    const finding = (text: string): Finding => ({
      ...{ severity: "hint", span, message: "", reason: "", remedy: "", related: [] },
      code: "a/b",
      fixes: [{ title: text, edits: [{ span, text }], safe: true }],
    });
    const fixed = fixAll(mainUri, "x", (text) => [finding(text === "x" ? "y" : "x")]);
    expect(fixed.text).toBe("y");
  });

  test("goes ahead with a fix that does no harm alone where all together would, and looks at the rest again", () => {
    const two = [replaces("a/one", 0, 1, "x"), replaces("a/two", 1, 2, "y")];
    // Both together are found at fault, whichever stands already.
    const bothHarm = (text: string): readonly Finding[] =>
      ({ ab: two, xb: [two[1]!], ay: [two[0]!] })[text] ?? [replaces("a/fresh", 0, 0, "")];
    expect(fixAll(mainUri, "ab", bothHarm)).toEqual({ text: "xb", applied: [{ code: "a/one", title: "Write x" }] });
    // The first does harm even alone: the second goes ahead.
    const firstHarms = (text: string): readonly Finding[] =>
      ({ ab: two, ay: [two[0]!] })[text] ?? [replaces("a/fresh", 0, 0, "")];
    expect(fixAll(mainUri, "ab", firstHarms)).toEqual({ text: "ay", applied: [{ code: "a/two", title: "Write y" }] });
  });

  test("ends after twenty rounds, whatever is still found", () => {
    let asked = 0;
    const endless = (text: string): readonly Finding[] => {
      asked++;
      return [replaces("a/more", 0, text.length, `${text}i`)];
    };
    expect(fixAll(mainUri, "", endless).text).toBe("i".repeat(20));
    // Each round is looked at before and after.
    expect(asked).toBe(40);
  });

  test("takes of two edits that touch one place the first, and of neighbours both", () => {
    const put = (...places: readonly (readonly [start: number, end: number])[]) =>
      safeEdits(
        places.map(([start, end], index) => replaces(`a/b${"c".repeat(index)}`, start, end, String(index))),
        mainUri,
      ).map(({ text }) => text);
    expect(put([0, 3], [2, 5])).toEqual(["0"]);
    expect(put([2, 5], [0, 3])).toEqual(["0"]);
    expect(put([0, 9], [2, 5])).toEqual(["0"]);
    expect(put([0, 3], [3, 5])).toEqual(["0", "1"]);
    expect(put([3, 5], [0, 3])).toEqual(["1", "0"]);
    expect(put([3, 3], [3, 3])).toEqual(["0"]);
    expect(put([3, 3], [3, 5])).toEqual(["0"]);
    // What was left out takes no place from a third.
    expect(put([0, 3], [2, 6], [5, 7])).toEqual(["0", "2"]);
  });

  test("takes a fix of several edits whole or not at all", () => {
    const [one, other] = [replaces("a/one", 0, 3, "x"), replaces("a/two", 5, 6, "y")];
    const both = {
      ...other,
      fixes: [{ ...other.fixes[0]!, edits: [...other.fixes[0]!.edits, ...one.fixes[0]!.edits] }],
    };
    expect(safeEdits([one, both], mainUri).map(({ text }) => text)).toEqual(["x"]);
    const elsewhere = { ...one.fixes[0]!.edits[0]!, span: { ...one.span, uri: "file:///fixtures/other.scant" } };
    const across = { ...other, fixes: [{ ...other.fixes[0]!, edits: [...other.fixes[0]!.edits, elsewhere] }] };
    expect(safeEdits([across], mainUri)).toEqual([]);
  });

  test("puts several edits in, in whatever order they come", () => {
    const edits = [...replaces("a/b", 4, 5, "E").fixes, ...replaces("a/b", 0, 2, "").fixes].flatMap((fix) => fix.edits);
    expect(applied("abcdefg", edits)).toBe("cdEfg");
    expect(applied("abcdefg", [...edits].reverse())).toBe("cdEfg");
  });

  test("gives edits of one round sorted, and never two at one place", () => {
    const text = `${head}box for a, b { sides ply  bottom thin under  slides runner 24  wide 15 }\n`;
    const edits = safeEdits([...check(text)].reverse(), mainUri);
    const starts = edits.map(({ span }) => span.start);
    expect(starts).toEqual([...starts].sort((a, b) => a - b));
    expect(new Set(starts).size).toBe(starts.length);
    expect(check(applied(text, edits))).toEqual([]);
  });

  test("of any fixture, done twice, is as done once", () => {
    for (const { files } of fixtures) {
      const own = checkWith(files);
      const once = fixAll(mainUri, files.get(mainFile)!, own).text;
      expect(fixAll(mainUri, once, own).text).toBe(once);
    }
  });
});
