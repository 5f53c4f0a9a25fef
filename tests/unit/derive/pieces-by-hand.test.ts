import { expect, test } from "vitest";
import { toNumber } from "../../../language/core/rational.ts";
import { allParts, built } from "../../support/built.ts";

/**
 * Three pieces as a maker would reckon them on the back of an offcut: every part of each, by plain arithmetic from what is
 * written and the defaults of docs/language.md, without a rule of the program.
 */
type Row = readonly [of: string, name: string, count: number, long: number, wide: number];

function listOf(text: string): readonly string[] {
  const inches = (value: Parameters<typeof toNumber>[0]): string => toNumber(value).toFixed(4);
  return allParts(built(text))
    .filter(({ name }) => name !== "mount")
    .map(
      ({ of, name, quantity, length, width }) =>
        `${of}/${name} ${quantity} ${inches(length.value)} ${inches(width.value)}`,
    )
    .sort();
}

const said = (rows: readonly Row[], unit = 1): readonly string[] =>
  rows
    .map(
      ([of, name, count, long, wide]) =>
        `${of}/${name} ${count} ${(long / unit).toFixed(4)} ${(wide / unit).toFixed(4)}`,
    )
    .sort();

test("a sink base with a false front, and a pull-out behind a door that opens to 110", () => {
  const text = `inches
sheet birch-18 { called 3/4  measures 45/64  size 48 x 96 }
sheet birch-12 { called 1/2  measures 15/32  size 48 x 96 }
sheet birch-6 { called 1/4  measures 13/64  size 48 x 96 }
board maple { thick 3/4  wide 5 1/2, 7 1/4  long 96  species hard maple  moisture 8% }
grooves { wide 1/4  deep 3/8 }
hinges cup { cup 35mm  overlay 1/2  bore 5mm  opens 110 degrees }
slides runner { mount side  extension full  lengths 12 to 24 by 2  clearance 1/2 +1/32 -0  above 1/4  below 1/4  behind 1/2  carries 100 lb }
case sink {
  wide 36  high 34 1/2  deep 24  panels birch-18  back birch-6 in groove 1/4  kick 4 high 3 deep  top stretchers 4
  wall right 1/2  partitions birch-18
  frame maple { stiles 2  rails 1 1/2  down { opening bowl 5  rail  across rest { opening bin  stile  opening pipes } } }
}
false front for bowl { overlay 1/2  slab maple }
door for bin   { overlay 1/2  hinged left   hinges cup  frame maple 2 1/4 wide  panel birch-6  pulls 1 }
door for pipes { overlay 1/2  hinged right  hinges cup  frame maple 2 1/4 wide  panel birch-6  pulls 1 }
box for bin { sides birch-12  bottom birch-6 in groove 1/4 up 1/2  corners dado 1/4  slides runner  high 12  holds 35 lb }
`;
  const [t, half, thin, frame] = [45 / 64, 15 / 32, 13 / 64, 3 / 4];
  const inside = 36 - 2 * t;
  // The back stands in a groove 1/2 from the edge: what lies before it, behind the frame.
  const deep = 24 - frame - 1 / 2 - thin;
  const bay = (36 - 2 * 2 - 2) / 2;
  const tall = 34.5 - 4 - 3 * 1.5 - 5;
  // 24 − 1/2 − 13/64 = 23 19/64 behind the face, less 1/2 behind the box: a 22 slide.
  const box = { wide: bay - 1, deep: 22 };
  const [doorWide, doorHigh] = [bay + 1, tall + 1];
  const door = (of: string): readonly Row[] => [
    [of, "stile", 2, doorHigh, 2.25],
    [of, "rail", 2, doorWide - 4.5 + 0.75, 2.25],
    [of, "panel", 1, doorHigh - 4.5 + 0.75 - 1 / 16, doorWide - 4.5 + 0.75 - 1 / 16],
  ];
  expect(listOf(text)).toEqual(
    said([
      ["case sink", "side", 2, 34.5, 24 - frame],
      ["case sink", "bottom", 1, inside, deep],
      ["case sink", "stretcher", 2, inside, 4],
      ["case sink", "partition", 1, tall, deep],
      ["case sink", "kick", 1, 36, 4],
      // from the underside of the bottom to the top of the sides; in both grooves less 1/16 to go in
      ["case sink", "back", 1, 34.5 - 4, inside + 2 / 4 - 1 / 16],
      ["case sink", "stile", 2, 34.5 - 4, 2],
      ["case sink", "rail", 2, 32, 1.5],
      ["case sink", "mid rail", 1, 32, 1.5],
      ["case sink", "mid stile", 1, tall, 2],
      ["false front bowl", "slab", 1, 32 + 1, 5 + 1],
      ...door("door bin"),
      ...door("door pipes"),
      ["box bin", "side", 2, box.deep, 12],
      ["box bin", "front", 1, box.wide - 2 * half, 12],
      ["box bin", "back", 1, box.wide - 2 * half + 2 / 4, 12],
      ["box bin", "bottom", 1, box.deep - 2 * half + 2 / 4 - 1 / 16, box.wide - 2 * half + 2 / 4 - 1 / 16],
    ]),
  );
});

test("a tall store in millimetres: inner drawers and shelves behind one pair of doors", () => {
  const text = `millimetres
sheet ply-18 { called 18  measures 17.8  size 1220 x 2440 }
sheet ply-12 { called 12  measures 11.9  size 1220 x 2440 }
sheet ply-6 { called 6  measures 5.6  size 1220 x 2440 }
edging band { thick 0.5  wide 22 }
hinges wide { cup 35  overlay 16.3  bore 5  opens 165 degrees }
slides ball { mount side  extension full  lengths 250 to 550 by 50  clearance 12.7 +0.8 -0  above 6  below 6  behind 12  carries 40 kg }
case store {
  wide 900  high 2100  deep 580  panels ply-18  back ply-6 in groove 6  kick 100 high 60 deep  nailers 100 from ply-18
  wall left 20  edging band on front
  down { opening jars 900  openings in-1 to in-5 equal }
}
shelf in jars { from ply-18  adjustable  at 300, 600  edging band on front  holds 25 kg }
shelf in jars { from ply-18  fixed  at 18 }
box for in-1 to in-5 { sides ply-12  bottom ply-6 in groove 6 up 12  corners rabbet 6  slides ball  holds 15 kg }
door spanning jars, in-1 to in-5 { full-overlay  pair  gap 3  slab ply-18  edging band  hinges wide }
`;
  const [t, half, thin] = [17.8, 11.9, 5.6];
  const inch = 25.4;
  const inside = 900 - 2 * t;
  // The nailers stand behind the back, which stands before them.
  const deep = 580 - t - thin;
  const drawer = (2100 - 100 - 2 * t - 900) / 5;
  const box = { wide: inside - 2 * 12.7, high: drawer - 12, deep: 500 };
  const boxes = [1, 2, 3, 4, 5].flatMap((at): readonly Row[] => [
    [`box in-${at}`, "side", 2, box.deep, box.high],
    [`box in-${at}`, "front", 1, box.wide - 2 * half + 12, box.high],
    [`box in-${at}`, "back", 1, box.wide - 2 * half + 12, box.high],
    [`box in-${at}`, "bottom", 1, box.deep - 2 * half + 12 - inch / 16, box.wide - 2 * half + 12 - inch / 16],
  ]);
  // Reveals of 1.5 mm round both leaves, 3 between them, and a band at each edge.
  const leaf = (900 - 2 * 1.5 - 3) / 2 - 1;
  const pair = "door jars+in-1+in-2+in-3+in-4+in-5";
  const rows: readonly Row[] = [
    ["case store", "side", 2, 2100, 580 - 0.5],
    ["case store", "bottom", 1, inside, deep - 0.5],
    ["case store", "top", 1, inside, deep - 0.5],
    ["case store", "nailer", 3, inside, 100],
    ["case store", "kick", 1, 900, 100],
    ["case store", "back", 1, 2100 - 100, inside + 12 - inch / 16],
    ["shelf jars", "shelf", 2, inside - inch / 8, deep - inch / 4 - 0.5],
    ["shelf jars", "shelf", 1, inside, deep],
    [pair, "slab", 2, 2100 - 100 - 3 - 1, leaf],
    ...boxes,
  ];
  const one = (list: readonly string[]) => list.filter((row) => !/^box .*\/(front|back) /.test(row));
  expect(one(listOf(text))).toEqual(one(said(rows, inch)));
  const ends = allParts(built(text)).filter(({ of, name }) => of === "box in-1" && /front|back/.test(name));
  expect(ends.map(({ quantity }) => quantity).reduce((sum, each) => sum + each)).toBe(2);
  for (const { length, width } of ends) {
    expect(toNumber(length.value) * inch).toBeCloseTo(box.wide - 2 * half + 12, 9);
    expect(toNumber(width.value) * inch).toBeCloseTo(box.high, 9);
  }
});

test("an inset hutch: doors of solid panels on butts, a shelf behind the rail, a solid back", () => {
  const text = `inches
sheet ply-34 { called 3/4  measures 23/32  size 48 x 96 }
board cherry { thick 3/4  wide 5 1/2, 7 1/4  long 96, 120  species black cherry  moisture 7% }
board cherry-half { thick 1/2  wide 5 1/2, 7 1/4  long 96  species black cherry  moisture 7% }
hinges butt { inset  opens 180 degrees }
case hutch {
  wide 42  high 72  deep 16  panels ply-34  back cherry-half in rabbet 3/8  kick 3 high 2 deep
  frame cherry { stiles 2  rails 2  down { opening plates 38  rail 2  opening linen } }
}
shelf in plates { from cherry  adjustable  count 3  holds 20 lb }
shelf in plates { from ply-34  fixed  at 0  holds 80 lb }
shelf in linen { from ply-34  adjustable  count 1  holds 40 lb }
door for linen {
  inset  pair  gap 1/16 round, 3/32 between  frame cherry 2 1/4 wide  panel cherry-half solid  float 1/8  hinges butt  pulls 1
}
`;
  const t = 23 / 32;
  const inside = 42 - 2 * t;
  const deep = 16 - 3 / 4 - 1 / 2;
  const leaf = { wide: (38 - 2 / 16 - 3 / 32) / 2, high: 72 - 3 - 3 * 2 - 38 - 2 / 16 };
  expect(listOf(text)).toEqual(
    said([
      ["case hutch", "side", 2, 72, 16 - 3 / 4],
      ["case hutch", "bottom", 1, inside, deep],
      ["case hutch", "top", 1, inside, deep],
      ["case hutch", "kick", 1, 42, 3],
      ["case hutch", "back", 1, 72, 42 - 2 * (t - 3 / 8)],
      ["case hutch", "stile", 2, 72 - 3, 2],
      ["case hutch", "rail", 2, 38, 2],
      ["case hutch", "mid rail", 1, 38, 2],
      ["shelf plates", "shelf", 3, inside - 1 / 8, deep - 1 / 4],
      ["shelf plates", "shelf", 1, inside, deep],
      ["shelf linen", "shelf", 1, inside - 1 / 8, deep - 1 / 4],
      ["door linen", "stile", 4, leaf.high, 2.25],
      ["door linen", "rail", 4, leaf.wide - 4.5 + 0.75, 2.25],
      ["door linen", "panel", 2, leaf.high - 4.5 + 0.75 - 2 / 8, leaf.wide - 4.5 + 0.75 - 2 / 8],
    ]),
  );
});
