import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { shop } from "./shop.ts";

const rack = `inches
sheet ply { measures 3/4  size 48 x 96  have 2 }
offcut of ply 20 x 30
`;
// A sheet trimmed to 47 1/2 by 95 1/2 takes one top of 40 by 60, and no second one.
const tops = (count: number, cuts = ""): string => `project "Tops"
inches
use "rack.scant"
part top { from ply  long 60  wide 40  count ${count} }
${cuts}
`;
const shelves = (cuts = ""): string => `project "Shelves"
inches
use "rack.scant"
part shelf { from ply  long 28  wide 18 }
${cuts}
`;

const readExample = (name: string): string => readFileSync(new URL(`../../examples/${name}`, import.meta.url), "utf8");
const bench = {
  "rack.scant": readExample("rack.scant"),
  "potting-bench.scant": readExample("potting-bench.scant"),
  "print-room.scant": readExample("print-room.scant"),
};

describe("scantling day", () => {
  test("counts what is made and what is left, and times only by what the file gives", async () => {
    const cuts = "cut { part top 1 }";
    const plain = await shop({ "tops.scant": tops(2, cuts), "rack.scant": rack }).run("day", "tops.scant");
    expect(plain.code).toBe(0);
    expect(plain.err).toBe("");
    expect(plain.out).toContain("1 of 2 pieces are made.\n");
    // A rip at 40 and a crosscut at 60, and the trimming cuts before them.
    expect(plain.out).toMatch(/^Left: 1 part, [a-z]+ set-ups\.$/m);
    expect(plain.out).not.toContain("minute");
    const timed = await shop({
      "tops.scant": tops(2, `${cuts}\ntimes { breakdown 12 minutes }`),
      "rack.scant": rack,
    }).run("day", "tops.scant");
    expect(timed.out).toMatch(/^Left: 1 part, [a-z]+ set-ups, 12 minutes by the times given \(1 × breakdown\)\.$/m);
  });

  test("when all is made nothing is left, and no caution is needed", async () => {
    const world = shop({ "tops.scant": tops(2, "cut { part top 2 }"), "rack.scant": rack });
    const { out } = await world.run("day", "tops.scant");
    expect(out).toContain("2 of 2 pieces are made.\nLeft: nothing to cut.\n");
    expect(out).not.toContain("Cautions");
  });

  test("a piece spoiled in one file becomes a part of another that uses the same rack", async () => {
    const files = {
      "tops.scant": tops(1, "cut { part top 1 at 45 x 40 spoiled  sheet ply 1 }"),
      "shelves.scant": shelves(),
      "rack.scant": rack.replace("offcut of ply 20 x 30\n", ""),
    };
    const { out } = await shop(files).run("day", "tops.scant", "shelves.scant");
    expect(out.replace(/\s+/g, " ")).toContain(
      "the spoiled part top, 45 × 40 in (Tops), becomes the part shelf (Shelves), cut to 28 × 18 in",
    );
    expect(out).toContain("To be cut again\n  – 1 top (Tops)\n");
    // One sheet is broken down, and the shelf needs none, so that the other is enough.
    expect(out).toContain("Rack (Tops)\n  – ply: 1 whole sheet in the rack, 1 needed\n");
    expect(out).toContain("Rack (Shelves)\n  – ply: none in the rack, none needed\n");
  });

  test("says what several parts come out of one piece, and by which cuts", async () => {
    const text = `project "Chest"
inches
sheet ply { measures 3/4  size 48 x 96 }
saw { kerf 1/8 }
part side { from ply  long 30  wide 20 }
part drawer-front { from ply  long 14  wide 8  count 2 }
part cleat { from ply  long 11  wide 2 }
cut { part side 1 at 28 x 16 1/8 spoiled }
`;
    const world = shop({ "chest.scant": text });
    const { out } = await world.run("day", "chest.scant");
    expect(out).toContain(`Can be saved
  – the spoiled part side, 28 × 16 1/8 in, becomes 2 drawer-fronts, cut to 14
    × 8 in; the part cleat, cut to 11 × 2 in; cuts: crosscut at 25 1/8 in, rip
    at 8 in, crosscut at 14 in twice, rip at 2 in
`);
    expect(out).not.toContain("not proven");
    const { saved, saving } = JSON.parse((await world.run("day", "--json", "chest.scant")).out);
    expect(
      saved.map(({ number, becomes }: { number: number; becomes: { name: string } }) => `${number} ${becomes.name}`),
    ).toEqual(["1 drawer-front", "1 drawer-front", "1 cleat"]);
    expect(saved[0].cuts).toEqual(["crosscut at 25 1/8 in", "rip at 8 in", "crosscut at 14 in twice", "rip at 2 in"]);
    expect(saving).toEqual({ squareInches: 246, atMost: 246, proven: true });
  });

  test("the cuts are said in the units of the parts that they free", async () => {
    const files = {
      "metric.scant": `project "Metric"\nmillimetres\nuse "rack.scant"\npart top { from ply  long 800  wide 500 }\ncut { part top 1 at 700 x 500 spoiled }\n`,
      "lids.scant": `project "Lids"\ninches\nuse "rack.scant"\npart lid { from ply  long 12 1/2  wide 8 1/16  count 4 }\n`,
      "rack.scant": rack,
    };
    const { out } = await shop(files).run("day", "metric.scant", "lids.scant");
    // 700 by 500 mm are 27.56 by 19.69 in: two by two, and 8 1/16 + 1/8 + 8 1/16 are 16 1/4.
    expect(out.replace(/\s+/g, " ")).toContain(
      "the spoiled part top, 700 × 500 mm (Metric), becomes 4 lids (Lids), cut to 12 1/2 × 8 1/16 in; cuts: rip at 16 1/4 in, crosscut at 12 1/2 in twice, rip at 8 1/16 in twice",
    );
  });

  test("of stocks that only share their name nothing is saved for the other", async () => {
    const own = rack.replace("offcut of ply 20 x 30\n", "");
    const files = {
      "tops.scant": tops(1, "cut { part top 1 at 45 x 40 spoiled }"),
      "shelves.scant": shelves().replace('use "rack.scant"\n', own),
      "rack.scant": own,
    };
    const { out } = await shop(files).run("day", "tops.scant", "shelves.scant");
    expect(out).toContain("Of no more use\n");
    expect(out).not.toContain("Can be saved");
  });

  test("what one file takes from the rack is not there for the next", async () => {
    const files = { "one.scant": shelves(), "two.scant": shelves(), "rack.scant": rack };
    const { out } = await shop(files).run("day", "one.scant", "two.scant");
    expect(out.split("the offcut of ply, 20 × 30 in: A shelf")).toHaveLength(2);
    expect(out.match(/2 whole sheets in the rack, none needed/g)).toHaveLength(1);
    expect(out.match(/2 whole sheets in the rack, 1 needed/g)).toHaveLength(1);
  });

  test("what the plan of a job leaves over is there for another job, and not for itself", async () => {
    const files = {
      "one.scant": shelves(),
      "two.scant": `project "Other"\n${shelves().replace(/^project.*\n/, "")}`,
      "rack.scant": rack.replace("offcut of ply 20 x 30", 'offcut of ply 20 x 30 from "Shelves"'),
    };
    expect(files["one.scant"]).toContain('project "Shelves"');
    const { out } = await shop(files).run("day", "one.scant", "two.scant");
    expect(out.replace(/\s+/g, " ")).toContain(
      'Rack (Shelves) – ply: 2 whole sheets in the rack, 1 needed – the offcut of ply, 20 × 30 in: what the plan of this job leaves over; once it lies in the rack, take from "Shelves" away behind it',
    );
    // Both planned together, the plan of the first is made anew, and what it leaves over now is what counts.
    expect(out).toContain("the offcut of ply, 29 3/8 × 28 in, left over by Shelves: A shelf\n");
    const alone = await shop(files).run("day", "two.scant");
    expect(alone.out).toContain("the offcut of ply, 20 × 30 in, left over by Shelves: A shelf\n");
  });

  test("prints for programs what its schema says, files called as they were named", async () => {
    const schema = JSON.parse(readFileSync(new URL("../../schemas/day-1.schema.json", import.meta.url), "utf8"));
    const isDay = new Ajv2020({ allErrors: true }).compile(schema);
    const { out, code } = await shop(bench).run("day", "--json", "potting-bench.scant", "print-room.scant");
    const report = JSON.parse(out);
    isDay(report);
    expect(isDay.errors ?? []).toEqual([]);
    expect(code).toBe(0);
    expect(report.jobs[0]).toMatchObject({ file: "potting-bench.scant", made: 24, wanted: 54, spoiled: 1, left: 30 });
    expect(report.saved[0]).toMatchObject({
      file: "potting-bench.scant",
      kind: "spoiled",
      becomes: { name: "partition", of: "case bench", length: { shop: "27 9/16" } },
    });
    expect(isDay({ ...report, colour: "blue" })).toBe(false);
    expect(isDay({ ...report, jobs: [{ ...report.jobs[0], made: -1 }] })).toBe(false);
  });

  test("a file that is named twice is refused: its records would count twice", async () => {
    const world = shop({ "tops.scant": tops(1), "rack.scant": rack });
    const { code, err } = await world.run("day", "tops.scant", "./tops.scant");
    expect([code, err]).toEqual([2, "scantling day: ./tops.scant is named twice\nTry: scantling day --help\n"]);
  });

  test("errors in a file and files that cannot be read are said", async () => {
    const wrong = await shop({ "a.scant": "inches\npart shelf { from ply  long 10  wide 10 }\n" }).run(
      "day",
      "a.scant",
    );
    expect(wrong.code).toBe(1);
    expect(wrong.err).toContain("errors stand in a.scant");
    for (const words of [["day"], ["day", "no.scant"], ["day", "--left", "a.scant"]])
      expect((await shop({}).run(...words)).code, words.join(" ")).toBe(2);
    expect((await shop({}).run("day", "--help")).out).toContain("scantling day FILE...");
  });
});

test.each(["day", "buy"])("scantling %s calls what it reads from the standard input by its name", async (command) => {
  const wrong = shop({}, { stdin: "inches\npart shelf { from ply  long 10  wide 10 }\n" });
  const done = await wrong.run(command, "-");
  expect(done.code).toBe(1);
  expect(done.err).toMatch(/^scantling: errors stand in stdin: /);
});

describe("scantling buy over a shared rack", () => {
  test("plans the files one after the other: the rack is not used twice, and what is made is not bought", async () => {
    const files = { "a.scant": tops(2), "b.scant": tops(2, "cut { part top 1 }"), "rack.scant": rack };
    const both = await shop(files).run("buy", "a.scant", "b.scant");
    // The first takes both sheets of the rack; the second has one top left, and buys one for it.
    expect(both.out).toMatch(/1 sheet\S*\s+ply/);
    expect(both.out).toContain("From the rack\n  2 whole sheets of ply: for Tops\n");
    const alone = await shop(files).run("buy", "b.scant");
    expect(alone.out).toContain("0 sheets  ply 48 × 96 in (1 more from the rack)");
    expect(alone.out).toContain("From the rack\n  1 whole sheet of ply\n");
    // Each takes one sheet of the two that the rack has: the line they share counts both.
    const halves = { ...files, "c.scant": tops(2, "cut { part top 1 }") };
    const shared = await shop(halves).run("buy", "b.scant", "c.scant");
    expect(shared.out).toContain("0 sheets  ply 48 × 96 in (2 more from the rack)");
    const third = await shop({ ...halves, "d.scant": tops(2) }).run("buy", "c.scant", "b.scant", "d.scant");
    expect(third.out).toContain("2 sheets  ply 48 × 96 in (2 more from the rack)");
  });
});

describe("scantling buy of several files", () => {
  test("one sheet is one sheet, in inches and in millimetres; what only shares its name is another", async () => {
    const metric = `project "Metric"\nmillimetres\nuse "rack.scant"\npart top { from ply  long 1500  wide 1000  count 2 }\n`;
    const thin = `project "Thin"\ninches\nsheet ply { measures 1/2  size 48 x 96 }\npart top { from ply  long 60  wide 40 }\n`;
    const files = { "a.scant": tops(2), "b.scant": metric, "c.scant": thin, "rack.scant": rack };
    const { out } = await shop(files).run("buy", "a.scant", "b.scant", "c.scant");
    expect(out.match(/^.* {2}ply .*$/gm)).toEqual([
      "     2 sheets  ply 48 × 96 in (2 more from the rack)",
      "     1 sheet   ply 48 × 96 in",
    ]);
    expect((await shop(files).run("buy", "b.scant")).out).toContain("ply 1219.2 × 2438.4 mm (2 more from the rack)");
  });

  test("what one file leaves over of a new sheet is there for the next, once, and the rack need not state it", async () => {
    const bare = rack.replace("have 2", "have 0").replace("offcut of ply 20 x 30\n", "");
    const third = shelves().replace("Shelves", "More shelves").replace("long 28", "long 70");
    const files = { "a.scant": tops(1), "b.scant": shelves(), "c.scant": third, "rack.scant": bare };
    // Of 47 1/2 by 95 1/2 the top of 40 by 60 leaves 47 1/2 by 35 3/8; a shelf of 18 by 28 comes out of that, one of 18 by 70 does not.
    const day = await shop(files).run("day", "a.scant", "b.scant", "c.scant");
    expect(day.out).toContain("ply: none in the rack, 1 needed: 1 to buy\n\nLeft to cut (Shelves)");
    expect(day.out).toContain(
      "Rack (Shelves)\n  – ply: none in the rack, none needed\n  – the offcut of ply, 47 1/2 × 35 3/8 in, left over by Tops: A shelf\n",
    );
    expect(day.out).toContain("Rack (More shelves)\n  – ply: none in the rack, 1 needed: 1 to buy\n");
    const { out } = await shop(files).run("buy", "a.scant", "b.scant", "c.scant");
    expect(out).toContain("2 sheets  ply 48 × 96 in\n");
    expect(out).toContain("From the rack\n  the offcut of ply, 47 1/2 × 35 3/8 in, left over by Tops: for Shelves\n");
    // Kept in the rack meanwhile, it is still one piece.
    const world = shop(files);
    await world.run("plan", "a.scant", "--keep", "rack.scant");
    const kept = { ...files, "rack.scant": world.written.get("/shop/rack.scant")! };
    expect((await shop(kept).run("buy", "a.scant", "b.scant", "c.scant")).out).toBe(out);
    expect((await shop(kept).run("buy", "b.scant")).out).toContain("Nothing is to buy.");
  });

  test("buys no more than the report of the day says, and says what it counts on", async () => {
    const own = rack.replace("have 2", "have 0").replace("offcut of ply 20 x 30\n", "");
    const files = {
      "tops.scant": tops(
        1,
        "part shelf { from ply  long 28  wide 18 }\ncut { part top 1  part shelf 1 at 28 x 19 spoiled }",
      ),
      "rack.scant": own,
    };
    const day = await shop(files).run("day", "tops.scant");
    const { out } = await shop(files).run("buy", "tops.scant");
    expect([day.out.includes("to buy"), out.includes("Nothing is to buy.")]).toEqual([false, true]);
    expect(out.replace(/\s+/g, " ")).toContain(
      "Nothing is bought for 1 part that can be saved: it comes out of pieces that lie about, as scantling day says.",
    );
  });
});

describe("--left", () => {
  const files = {
    "rack.scant": rack,
    "tops.scant": tops(2, "part lid { from ply  long 62  wide 7 }\ncut { part lid 1  part top 1  sheet ply 1 }"),
  };

  test("lists below it what pieces that lie about become, which the whole list does not", async () => {
    const text = tops(2, "part lid { from ply  long 20  wide 9 }\ncut { part top 1 at 45 x 10 spoiled }");
    const world = shop({ "tops.scant": text, "rack.scant": rack });
    const note = "The spoiled part top, 45 × 10 in, becomes the part lid, cut to 20 × 9 in.\n";
    expect((await world.run("list", "--left", "tops.scant")).out).toContain(`\n\n${note}`);
    expect((await world.run("list", "tops.scant")).out).not.toContain("becomes");
    expect((await world.run("plan", "--left", "tops.scant")).out).toContain(
      "Planned with 1 part that can be saved from pieces that lie about: see scantling\nday, and cut less from the stock.\n",
    );
  });

  test("lists what is left under the marks of the whole list", async () => {
    const whole = await shop(files).run("list", "tops.scant");
    expect(whole.out).toMatch(/^A +1 +62/m);
    expect(whole.out).toMatch(/^B +2 +60/m);
    const { out } = await shop(files).run("list", "--left", "tops.scant");
    expect(out).toContain("Tops: left to cut\n1 pieces");
    expect(out).not.toMatch(/^A /m);
    expect(out).toMatch(/^B +1 +60/m);
    expect((await shop(files).run("list", "--left", "--csv", "tops.scant")).out).toContain("\r\nB,1,top");
    expect((await shop(files).run("list", "--left", "--markdown", "tops.scant")).out).toContain("| B | 1 | top |");
    const json = JSON.parse((await shop(files).run("list", "--left", "--json", "tops.scant")).out);
    expect(json.parts).toMatchObject([{ name: "top", quantity: 1 }]);
  });

  test("plans what is left from what is whole in the rack", async () => {
    const whole = JSON.parse((await shop(files).run("plan", "--json", "tops.scant")).out);
    expect(whole).toMatchObject({ sheetsUsed: 2, stocks: [{ used: 2, inRack: 2, buy: 0 }] });
    const left = JSON.parse((await shop(files).run("plan", "--left", "--json", "tops.scant")).out);
    expect(left).toMatchObject({ sheetsUsed: 1, stocks: [{ used: 1, inRack: 1, buy: 0 }] });
  });

  test("is not written beside the file in place of the whole list", async () => {
    const world = shop(files);
    expect((await world.run("list", "--left", "-o", ".", "tops.scant")).code).toBe(2);
    expect(world.written.size).toBe(0);
  });
});
