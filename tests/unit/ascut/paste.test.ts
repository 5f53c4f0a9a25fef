import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawer, leftIn, withCuts } from "./bench.ts";

const two = `${drawer}opening right { wide 12  high 6  deep 23 }
box for right like left { }
door for left { overlay 1/2  hinged left  hinges cup  frame oak 2 wide  panel quarter }
part cleat { from ply  long 20  wide 3  count 4 }
part low-foot { from ply  long 8  wide 3  count 4 }
`;

/** What a line puts into the file, and what it says of it. */
function read(
  line: string,
  cuts = "",
): { readonly puts: string; readonly understood: readonly string[]; readonly problems: readonly string[] } {
  const { edits, understood, problems } = withCuts(two, cuts).readCuts(line);
  return { puts: edits.map(({ text }) => text).join("|"), understood, problems };
}

describe("a line from a phone", () => {
  test.each([
    ["2 side left", "  box left side 2 at 22 x 5 1/32\n"],
    ["2 sides left", "  box left side 2 at 22 x 5 1/32\n"],
    ["left sides 2", "  box left side 2 at 22 x 5 1/32\n"],
    ["two sides of box left", "  box left side 2 at 22 x 5 1/32\n"],
    ["side left", "  box left side 1 at 22 x 5 1/32\n"],
    ["Side, LEFT".replace(",", ""), "  box left side 1 at 22 x 5 1/32\n"],
    ["1 rail left 12 1/2", "  door left rail 1 at 12 1/2 x 2\n"],
    ["rail left at 12-1/2", "  door left rail 1 at 12-1/2 x 2\n"],
    ["rail left 12½", "  door left rail 1 at 12½ x 2\n"],
    ['1 front left 12 9/16" x 5"', "  box left front 1 at 12 9/16 in x 5 in\n"],
    ["1 front left 318 mm", "  box left front 1 at 318 mm x 5 1/32\n"],
    ["2 rails left at 12.5", "  door left rail 2 at 12.5 x 2\n"],
    ["spoiled stile left", "  door left stile 1 spoiled\n"],
    ["ruined 2 stiles left", "  door left stile 2 spoiled\n"],
    ["spoiled stile left 6 x 2", "  door left stile 1 at 6 x 2 spoiled\n"],
    ["1 front left 318x120mm", "  box left front 1 at 318 mm x 120 mm\n"],
    ["1 front left 12½×5", "  box left front 1 at 12½ x 5\n"],
    ["3 cleats", "  part cleat 3 at 20 x 3\n"],
    ["2 low-feet", "  part low-foot 2 at 8 x 3\n"],
    ["part cleat 3 19 7/8 x 3", "  part cleat 3 at 19 7/8 x 3\n"],
    ["- 3 cleats", "  part cleat 3 at 20 x 3\n"],
    ["1 sheet ply", "  sheet ply 1\n"],
    ["broke down two sheets of ply", "  sheet ply 2\n"],
    ["sheet ply 2", "  sheet ply 2\n"],
    ["used offcut of ply 20 x 31½", "  offcut of ply 20 x 31½\n"],
    ["offcut ply 500x800mm", "  offcut of ply 500 mm x 800 mm\n"],
  ])("%s", (line, puts) => {
    expect(read(line)).toMatchObject({ puts, problems: [] });
  });

  test("the mark on the wood stands for the part, of whatever owners it is of; its figure tells of another size", () => {
    const rows = withCuts(two, "")
      .rod()
      .batches.flatMap((batch) => batch.rows);
    const marks = rows.map(({ mark, name, quantity }) => `${mark} ${quantity} ${name}`);
    expect(marks).toContain("A 4 side");
    expect(read("1 A")).toEqual({
      puts: "  box left side 1 at 22 x 5 1/32\n",
      understood: ["1 × A, side"],
      problems: [],
    });
    expect(read("3 × A").puts).toBe("  box left side 2 at 22 x 5 1/32\n  box right side 1 at 22 x 5 1/32\n");
    expect(read("A2 21 15/16").puts).toBe("  box left side 1 at 21 15/16 x 5 1/32\n");
    expect(read("spoiled A").puts).toBe("  box left side 1 spoiled\n");
  });

  test("several, one after the other or one below the other, are one change", () => {
    const one = read("2 side left; 1 rail left 12 1/2; spoiled stile left");
    expect(one.understood).toEqual([
      "2 × the side of box left",
      "1 × the rail of door left",
      "1 × the stile of door left, spoiled",
    ]);
    expect(one.puts.split("\n")).toHaveLength(4);
    expect(read("2 side left\n1 rail left 12 1/2\r\nspoiled stile left, ")).toEqual(one);
  });

  test("adds to what is written down", () => {
    expect(read("1 side left", "  box left side 1").puts).toBe("2");
  });

  test("what it says is what the file then has", () => {
    const cuts = "  box left side 1";
    const { edits } = withCuts(two, cuts).readCuts("1 side left; 4 cleats");
    let text = `${two}cut {\n${cuts}\n}\n`;
    for (const { span, text: put } of [...edits].sort((a, b) => b.span.start - a.span.start))
      text = text.slice(0, span.start) + put + text.slice(span.end);
    const after = leftIn(withCuts(two, text.slice(two.length + 6, -3)));
    expect(after.some((line) => line.includes("cleat"))).toBe(false);
    expect(after.filter((line) => line.includes("side"))).toEqual(["2 side 22 x 5 1/32"]);
  });
});

describe("what cannot be read is said, and the rest taken", () => {
  test.each([
    ["", "nothing is written here: write it as 2 side plan-1; 1 rail inks 13 11/16"],
    [" ; ;\n", "nothing is written here: write it as 2 side plan-1; 1 rail inks 13 11/16"],
    ["2", '"2" names no part'],
    ["-1 side left", '"-1 side left": a count below nought takes nothing off; change the record in the cut block'],
    ["2 ZZ", '"2 ZZ": nothing is called "zz"'],
    ["1 sheet birch", '"1 sheet birch" names no sheet that there is'],
    ["1 board ply", '"1 board ply": ply is no board'],
    ["sheet ply 1/2", '"sheet ply 1/2": how many sheets were broken down must be one whole number'],
    ["offcut of ply 20", '"offcut of ply 20": an offcut has two sizes, as it is stated: offcut of ply 20 x 31'],
    ["2 lid left", '"2 lid left": nothing is called "lid"'],
    ["2 sidde left", '"2 sidde left": nothing is called "sidde"; is side meant?'],
    ["2 sides", '"2 sides" may be the side of box left, or the side of box right: say which'],
    ["rail right", '"rail right" names no part that there is; of right there are: side, front, back, bottom'],
    ["1 side left 22 x 5 x 3", '"1 side left 22 x 5 x 3": a piece has two sizes at most, its length and its width'],
    ["0 side left", "how many were cut must be a whole number that is not nought"],
    ["side left 0.0", '"side left 0.0": "0.0" is no size that wood can have'],
    ["side left 12 1/0", /no size/],
  ])("%s", (line, problem) => {
    const { puts, problems } = read(line);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(typeof problem === "string" ? new RegExp(`^${escaped(problem)}$`) : problem);
    expect(puts).toBe("");
  });

  test("beside what can", () => {
    const { puts, problems, understood } = read("2 side left; 3 wheels; 1 bottom left");
    expect(problems).toEqual(['"3 wheels": nothing is called "wheels"']);
    expect(understood).toHaveLength(2);
    expect(puts).toBe("  box left side 2 at 22 x 5 1/32\n  box left bottom 1 at 22 x 14\n");
  });

  test("no text makes it fail, or write what cannot be read back", () => {
    const build = withCuts(two, "");
    const word = fc.constantFrom(
      "side",
      "left",
      "box",
      "2",
      "13 1/2",
      "spoiled",
      "x",
      "at",
      "mm",
      '"',
      "1/0",
      ";",
      "{",
      "}",
      "//",
      "-",
      "é",
    );
    const line = fc.oneof(
      fc.string(),
      fc.array(word, { maxLength: 8 }).map((words) => words.join(" ")),
    );
    fc.assert(
      fc.property(line, (text) => {
        const { edits, understood, problems } = build.readCuts(text);
        expect(problems.length + understood.length).toBeGreaterThan(0);
        expect(0 < edits.length).toBe(0 < understood.length);
        const body = edits.map((edit) => edit.text).join("");
        expect(withCuts(two, body).findings.filter(({ code }) => code.startsWith("syntax/"))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test("a very long line takes no time", () => {
    const start = performance.now();
    expect(withCuts(two, "").readCuts("1 1/".repeat(50_000)).problems).not.toEqual([]);
    expect(performance.now() - start).toBeLessThan(1000);
  });
});

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
