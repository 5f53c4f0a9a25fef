import fc from "fast-check";
import { expect, test } from "vitest";
import { widthOf, wrap } from "../../language/view/wrap.ts";
import { excerptOf } from "../../server/cli/excerpt.ts";

test("a line that fits is shown whole, with carets under the stretch", () => {
  expect(excerptOf("slides runner 24", { from: 14, to: 16 }, 40)).toEqual({
    source: "slides runner 24",
    carets: "              ^^",
  });
});

test("a place without width gets one caret, at the end of the line too", () => {
  expect(excerptOf("box", { from: 3, to: 3 }, 40).carets).toBe("   ^");
  expect(excerptOf("", { from: 0, to: 0 }, 40)).toEqual({ source: "", carets: "^" });
  expect(excerptOf("box", { from: 90, to: 99 }, 40).carets).toBe("   ^");
});

test("tabs, wide characters and marks that join keep the carets in place", () => {
  expect(excerptOf("\tbox", { from: 1, to: 4 }, 40)).toEqual({ source: "  box", carets: "  ^^^" });
  expect(excerptOf("樺材 24", { from: 3, to: 5 }, 40)).toEqual({ source: "樺材 24", carets: "     ^^" });
  expect(excerptOf("e\u0301e\u0301 24", { from: 5, to: 7 }, 40)).toEqual({
    source: "e\u0301e\u0301 24",
    carets: "   ^^",
  });
  expect(excerptOf("😀 24", { from: 3, to: 5 }, 40).carets).toBe("   ^^");
});

test("a line that is too wide is cut around the stretch", () => {
  const line = `${"a".repeat(100)} 24 ${"b".repeat(100)}`;
  const { source, carets } = excerptOf(line, { from: 101, to: 103 }, 40);
  expect(source).toMatch(/^…a+ 24 b+…$/);
  expect(source).toHaveLength(40);
  expect(source.slice(carets.indexOf("^"), carets.length)).toBe("24");
  expect(excerptOf(line, { from: 0, to: 4 }, 40)).toEqual({ source: `${"a".repeat(39)}…`, carets: "^^^^" });
  expect(excerptOf(line, { from: line.length, to: line.length }, 40).source).toMatch(/^…b{38,39}$/);
  expect(excerptOf(line, { from: 0, to: line.length }, 40).carets).toBe("^".repeat(40));
});

test("a wide character that is cut in two gives way whole", () => {
  // Found by the property below: ten columns of a line in which a wide character stands over the tenth and eleventh.
  expect(widthOf(excerptOf("  ⺀🌀 ⺀ ⺀ ", { from: 0, to: 0 }, 12).source)).toBeLessThanOrEqual(12);
  expect(excerptOf("⺀".repeat(20), { from: 0, to: 2 }, 10)).toEqual({ source: "⺀⺀⺀⺀ …", carets: "^^^^" });
});

test("a line of a hundred thousand letters takes no time", () => {
  const line = "x".repeat(100_000);
  const start = performance.now();
  for (let index = 0; index < 200; index++) excerptOf(line, { from: index * 500, to: index * 500 + 3 }, 73);
  expect(performance.now() - start).toBeLessThan(2000);
});

test("no excerpt is wider than it may be, and there is always a caret", () => {
  const text = fc.string({ unit: "grapheme", maxLength: 200 });
  fc.assert(
    fc.property(text, fc.nat(210), fc.nat(60), fc.integer({ min: 10, max: 80 }), (line, from, length, columns) => {
      const { source, carets } = excerptOf(line, { from, to: from + length }, columns);
      expect(widthOf(source)).toBeLessThanOrEqual(columns);
      expect(carets).toMatch(/^ *\^+$/);
      // A caret behind the last letter of a line that just fits stands one further.
      expect(carets.length).toBeLessThanOrEqual(columns + 1);
    }),
  );
});

test("the letter over the first caret is the one at the place", () => {
  const ascii = fc.stringMatching(/^[a-z0-9 ]{1,300}$/);
  fc.assert(
    fc.property(ascii, fc.nat(299), fc.integer({ min: 20, max: 80 }), (line, at, columns) => {
      fc.pre(at < line.length && line[at] !== " ");
      const { source, carets } = excerptOf(line, { from: at, to: at + 1 }, columns);
      expect(source[carets.indexOf("^")]).toBe(line[at]);
    }),
  );
});

test("wrapping loses no letter and no order", () => {
  fc.assert(
    fc.property(fc.string({ unit: "grapheme", maxLength: 200 }), fc.integer({ min: 10, max: 80 }), (text, columns) => {
      const lines = wrap(text, columns);
      expect(lines.join("").replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
      for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(columns);
    }),
  );
});
