import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { findingsOf, mainFile } from "../../support/carets.ts";

const shop = readFileSync(fileURLToPath(new URL("../../fixtures/findings/shop.scant", import.meta.url)), "utf8");
const head = `inches
use "shop.scant"
opening narrow { wide 12  high 30  deep 12 }
opening broad { wide 40  high 30  deep 12 }
opening low { wide 12  high 8  deep 12 }
`;
const found = (text: string, code: string) =>
  findingsOf(
    new Map([
      [mainFile, head + text],
      ["shop.scant", shop],
    ]),
  ).filter((finding) => finding.code === code);

describe("a shelf that is like another", () => {
  test("is judged by the stock and the load of that one, in its own opening", () => {
    const text = "shelf in narrow { from ply  adjustable  holds 150 lb }\nshelf in broad like narrow { }\n";
    const [sags] = found(text, "shelf/sags");
    expect(sags?.message).toMatch(/^under 150 lb this shelf sags 0\.38 in over 39 7\/8 in/);
    expect((head + text).slice(sags!.span.start, sags!.span.end)).toBe("ply");
    expect(found(text.replace("like narrow { }", "like narrow { holds 20 lb }"), "shelf/sags")).toEqual([]);
  });

  test("must have room for as many", () => {
    // (8 − 3 × 23/32) ÷ 4 = 187/128 = 1 59/128, less than 3; of the narrow one's 30 more than 6
    const text = "shelf in narrow { from ply  adjustable  holds 20 lb  count 3 }\nshelf in low like narrow { }\n";
    expect(found(text, "shelf/close").map(({ message }) => message)).toEqual([
      "3 shelves leave 1 59/128 in between them",
    ]);
    expect(found(text.replace("like narrow { }", "like narrow { count 1 }"), "shelf/close")).toEqual([]);
  });

  test("holds no more than any one shelf may", () => {
    const text = "shelf in narrow { from ply  fixed  holds 220 lb }\nshelf in low like narrow { holds 20 lb }\n";
    expect(found(text, "shelf/over-design-load")).toHaveLength(1);
    expect(found(text.replace("holds 20 lb", ""), "shelf/over-design-load")).toHaveLength(1);
    expect(found(text.replace("220 lb", "200 lb"), "shelf/over-design-load")).toEqual([]);
  });
});

describe("a shelf", () => {
  test("of which nothing says what it holds is taken to hold 40 lb on a square foot", () => {
    // 39 7/8 x 11 3/4 in: 3.25 square feet, 130 lb
    const [sags] = found("shelf in broad { from ply  adjustable }\n", "shelf/sags");
    expect(sags?.message).toMatch(/^under 130 lb /);
    expect(sags?.reason).toMatch(/40 lb per square foot is taken/);
  });

  test("is offered the stiffer stocks, the thinnest first, boards that are narrower than it glued up", () => {
    const titles = (text: string) =>
      found(`${text}shelf in broad { from ply  adjustable  holds 150 lb }\n`, "shelf/sags")[0]?.fixes.map(
        ({ title }) => title,
      );
    expect(titles("")).toEqual(['Make it of "oak", glued up']);
    expect(
      titles("sheet thick { measures 1 1/4 }\nboard slab { thick 1  wide 14  long 96  species white oak }\n"),
    ).toEqual(['Make it of "oak", glued up', 'Make it of "slab"']);
  });

  test("ends behind an inset door, as far as a gap besides the door's thickness on a tape", () => {
    const door = "hinges set-in { cup 35mm  inset }\ndoor for narrow { inset  slab ply  hinged left  hinges set-in }\n";
    const meets = (set: string) =>
      found(`${door}shelf in narrow { from ply  adjustable  ${set} }\n`, "shelf/meets-door");
    expect([meets("set 23/32").length, meets("set 11/16").length, meets("").length]).toEqual([0, 1, 1]);
    // 23/32 + 1/16 = 25/32
    expect(meets("")[0]?.remedy).toBe("Set it back by 25/32: set 25/32.");
    const over = door.replace("inset  slab", "overlay 1/2  slab").replace("35mm  inset", "35mm");
    expect(found(`${over}shelf in narrow { from ply  adjustable }\n`, "shelf/meets-door")).toEqual([]);
  });
});
