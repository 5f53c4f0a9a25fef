import { expect, test } from "vitest";
import { widthOf } from "../../language/view/wrap.ts";
import { shop } from "./shop.ts";

const sheet = "plywood-of-baltic-birch-in-three-quarters-of-an-inch-as-the-yard-behind-the-station-sells-it";
const thin = "thin-plywood-for-the-bottoms-of-all-the-boxes-in-this-and-in-every-other-job-of-the-year";
const board = "white-ash-that-was-dried-in-the-kiln-of-the-neighbour-and-lies-under-the-roof-since-last-year";
const runner = "a-runner-whose-name-goes-on-and-on-and-on-and-on-and-on-and-on-and-on-and-on-and-on-and-on";
const opening = "an-opening-with-a-name-longer-than-any-line-of-a-terminal-of-eighty-columns-could-ever-hold";
const part = "the-part-with-the-longest-name-in-the-shop-which-nobody-can-say-without-taking-a-deep-breath";

const rack = `inches
sheet ${sheet} { measures 23/32  size 48 x 96  have 2  costs 71 }
sheet ${thin} { measures 7/32  size 48 x 96 }
board ${board} { thick 3/4  wide 4 1/4, 6  long 72, 96  costs 6.40 per board foot }
offcut of ${sheet} 20 x 31
offcut of ${sheet} 8 x 20 from "Second"
`;
const job = (title: string, cuts: string): string => `project "${title}"
inches
use "rack.scant"
part ${part} { from ${sheet}  long 30 17/32  wide 20 11/64  count 3 }
part lid { from ${sheet}  long 14  wide 8  count 4 }
part slat { from ${board}  long 30  wide 3  count 4 }
slides ${runner} {
  mount side  extension full  lengths 10 to 28 by 2  clearance 1/2  above 1/4  below 1/4  behind 1/2  carries 75 lb
}
opening ${opening} { wide 15  high 6  deep 23 }
box for ${opening} { sides ${sheet}  bottom ${thin} under  slides ${runner} }
${cuts}
`;
const cuts = `cut {
  part ${part} 1 at 28 x 19 spoiled
  box ${opening} side 1 at 21 1/2
  sheet ${sheet} 1
}`;
const wide = "漢字".repeat(30);
const files = {
  "one.scant": job(`A title ${wide} with 🪚🪚🪚 behind it`, cuts),
  "two.scant": job("Second", ""),
  "rack.scant": rack,
};

test.each([
  ["list", "one.scant"],
  ["list", "--left", "one.scant"],
  ["plan", "one.scant"],
  ["plan", "--left", "one.scant"],
  ["plan", "one.scant", "--keep", "rack.scant"],
  ["buy", "one.scant"],
  ["buy", "one.scant", "two.scant"],
  ["day", "one.scant"],
  ["day", "one.scant", "two.scant"],
  ["day", "two.scant"],
])("%s %s %s is no wider than 80 columns, whatever names and titles there are", async (...words) => {
  const { out } = await shop(files).run(...words.filter((word) => word !== undefined));
  expect(out.length).toBeGreaterThan(100);
  expect(out.split("\n").filter((line) => 80 < widthOf(line))).toEqual([]);
});
