import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { Length } from "../../../language/core/length.ts";
import { ratio, zero } from "../../../language/core/rational.ts";
import { judge } from "../../../language/fit/fit/judge.ts";
import { findingsOf, mainFile } from "../../support/carets.ts";

const shop = readFileSync(fileURLToPath(new URL("../../fixtures/findings/shop.scant", import.meta.url)), "utf8");

function found(text: string): readonly { readonly code: string; readonly message: string }[] {
  const findings = findingsOf(
    new Map([
      [mainFile, `inches\nuse "shop.scant"\n${text}\n`],
      ["shop.scant", shop],
    ]),
  );
  return findings.filter(({ code }) => code.startsWith("fit/") || code === "packing/proud");
}

const interval = (low: Length, high: Length) => ({ low, high, contributions: [] });

describe("the verdict on a fit", () => {
  const bounds = { least: ratio(1, 2), most: ratio(17, 32) };

  test("holds where the worst case misses by no more than a cut's tolerance of 1/64", () => {
    expect(judge(interval(ratio(31, 64), ratio(35, 64)), bounds)).toBe("fits");
    expect(judge(interval(ratio(61, 128), ratio(33, 64)), bounds)).toBe("fits only if the work is better than usual");
    expect(judge(interval(ratio(33, 64), ratio(71, 128)), bounds)).toBe("fits only if the work is better than usual");
  });

  test("is out where no case holds", () => {
    expect(judge(interval(ratio(1, 4), ratio(31, 64)), bounds)).toBe("does not fit");
    expect(judge(interval(ratio(35, 64), ratio(1)), bounds)).toBe("does not fit");
  });

  test("looks only at the ends that matter", () => {
    expect(judge(interval(zero, ratio(100)), { least: zero, most: undefined })).toBe("fits");
    expect(judge(interval(ratio(-100), zero), { least: undefined, most: zero })).toBe("fits");
  });
});

describe("a box on its slides", () => {
  const opening = "opening a { wide 15  high 6  deep 23 }\n";
  const box = (corners: string) =>
    `${opening}box for a { sides rough  bottom thin under  corners ${corners}  slides runner  holds 10 lb }`;
  const rough = "sheet rough { measures 45/64 to 49/64  size 48 x 96 }\n";

  test("takes the error of both its sides from one sheet, and of one cut", () => {
    // By hand: the sheet is 47/64 ± 1/32 on each side, the front ± 1/64: 1/2 ± (1/16 + 1/64) ÷ 2 = 1/2 ± 5/128.
    expect(found(rough + box("screws")).map(({ message }) => message)).toEqual([
      'fits only if the work is better than usual: the room for each slide of "a" comes to 59/128 in to 69/128 in, and should be 1/2 in to 17/32 in; 80 % of it comes from the thickness of "rough"',
    ]);
  });

  test("does not hang on the thickness of sides that stand inside its front's length", () => {
    expect(found(rough + box("dovetails"))).toEqual([]);
  });

  test("fits by what its slides are written to forgive", () => {
    const forgiving =
      "slides loose { mount side  extension full  lengths 10 to 28 by 2  clearance 1/2 +1/16 -1/16  behind 1/2  carries 100 lb }\n";
    expect(found(rough + forgiving + box("screws").replace("slides runner", "slides loose"))).toEqual([]);
  });

  test("is judged between the smallest reading and the largest", () => {
    const read = "opening a { wide 15, 15 3/64  high 6  deep 23 }\n";
    const text = `${rough.replace("49/64", "23/32")}${box("screws").replace(opening, read)}`;
    // By hand: (15 to 15 3/64 less a box of 14 ± (1/64 + 1/64)) ÷ 2 = 31/64 to 69/128; both within 1/64 of 1/2 to 17/32.
    expect(found(text)).toEqual([]);
  });
});

describe("what goes into a housing", () => {
  test("must go in at its thickest, whatever is known of it only by its label", () => {
    const text =
      "sheet ply-6 { called 1/4  size 48 x 96 }\nopening a { wide 15  high 6  deep 23 }\n" +
      "box for a { sides ply  bottom ply-6 in groove 1/4  corners dovetails  slides runner  holds 10 lb }";
    expect(found(text).map(({ code }) => code)).toEqual(["fit/bottom-in-groove"]);
    expect(found(text)[0]!.message).toContain("-0.031 in to 0.031 in");
  });

  test("does not rattle when it is measured", () => {
    const text =
      "opening a { wide 15  high 6  deep 23 }\n" +
      "box for a { sides ply  bottom quarter in groove 1/4  corners dovetails  slides runner  holds 10 lb }";
    expect(found(text)).toEqual([]);
  });
});

describe("packing", () => {
  const mount = (beside: string) =>
    `opening a { wide 15  high 6  deep 23  beside ${beside} left, ${beside} right }\n` +
    "box for a { sides ply  bottom thin under  slides runner  packing thin }";

  test("stands proud when the space that it fills may be smaller than it", () => {
    expect(found(mount("1/2")).length).toBe(0);
    // One for each side: each is written, and measured, on its own.
    expect(found(mount("1/2 ± 1/16")).map(({ code }) => code)).toEqual(["packing/proud", "packing/proud"]);
  });
});
