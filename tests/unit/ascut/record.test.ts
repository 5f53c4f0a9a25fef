import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { RecordRequest } from "../../../language/ascut/record.ts";
import type { Edit } from "../../../language/core/finding.ts";
import type { Build } from "../../../language/service.ts";
import { createWorkspace } from "../../../language/service.ts";
import { benchFindings, drawer, leftIn, saidOf, withCuts } from "./bench.ts";

const examples = new URL("../../../examples/", import.meta.url);
const names = readdirSync(examples).filter((name) => name.endsWith(".scant"));
const readExample = (name: string): string => readFileSync(new URL(name, examples), "utf8");
const root = "file:///examples";

function buildOf(name: string, text: string): Build {
  const workspace = createWorkspace({ root });
  for (const other of names) workspace.set(`${root}/${other}`, readExample(other));
  workspace.set(`${root}/${name}`, text);
  return workspace.build(`${root}/${name}`);
}

function applied(text: string, edits: readonly Edit[]): string {
  return [...edits]
    .sort((a, b) => b.span.start - a.span.start)
    .reduce((all, { span, text: put }) => all.slice(0, span.start) + put + all.slice(span.end), text);
}

/** The text with it written down; an error where that is refused. */
function recorded(build: Build, text: string, ...requests: readonly RecordRequest[]): string {
  const recording = build.recordEdit(...requests);
  if ("refused" in recording) throw new Error(recording.refused);
  return applied(text, recording.edits);
}

const jobs = names.filter((name) => 0 < buildOf(name, readExample(name)).derivation.model.parts.length);
/** Each example without what it records itself. */
const plain = (name: string): string => readExample(name).replace(/^cut \{[\s\S]*?^\}\n/m, "");

test("what spans several openings is written down by the first of them, and read by any", () => {
  const text = `inches
sheet ply { called 3/4  measures 3/4  size 48 x 96 }
hinges cup { cup 35mm }
case store { wide 30  high 40  deep 12  panels ply  down { openings a-1 to a-3 equal } }
door spanning a-1 to a-3 { full-overlay  slab ply  hinged left  hinges cup }
`;
  const before = buildOf("spanned.scant", text);
  const slab = before.asCut().counts.find(({ wanted }) => wanted.name === "slab")!;
  const after = recorded(before, text, { part: slab.wanted.key, count: 1 });
  expect(after).toMatch(/^ {2}door a-1 slab 1 at /m);
  const left = (line: string): number =>
    buildOf("spanned.scant", `${text}cut { ${line} }`)
      .asCut()
      .counts.find(({ wanted }) => wanted.name === "slab")!.left;
  expect([left("door a-1 slab 1"), left("door a-3 1"), left("door b 1"), left("front a-1 1")]).toEqual([0, 0, 1, 1]);
  expect(buildOf("spanned.scant", after).findings.map(({ code }) => code)).toEqual(
    before.findings.map(({ code }) => code),
  );
});

describe("recording every part at its exact size", () => {
  test.each(jobs)("of %s leaves nothing to cut, and nothing to say", (name) => {
    const text = plain(name);
    const before = buildOf(name, text);
    const all = before.asCut().counts.map(({ wanted, left }) => ({ part: wanted.key, count: left }));
    expect(all.length).toBeGreaterThan(5);
    const after = buildOf(name, recorded(before, text, ...all));
    expect(after.left().pieces).toBe(0);
    expect(after.left().list().parts).toEqual([]);
    expect(after.findings.map(({ code, message }) => `${code} ${message}`)).toEqual(
      before.findings.map(({ code, message }) => `${code} ${message}`),
    );
  });

  test.each(jobs)("of %s one by one comes to the same", (name) => {
    const text = plain(name);
    let build = buildOf(name, text);
    let now = text;
    for (const { wanted } of build.asCut().counts.slice(0, 6)) {
      const left = build.left().pieces;
      now = recorded(build, now, { part: wanted.key, count: 1 });
      build = buildOf(name, now);
      expect(build.left().pieces).toBe(left - 1);
    }
    expect(benchFindings(build)).toEqual([]);
  });
});

describe("recording and taking it out again", () => {
  // A block that holds nothing else goes with its last record, so that none that is empty is among these.
  const endings: readonly (readonly [string, (text: string, record: string) => string])[] = [
    ["as it is", (text) => text],
    ["with a cut block already", (text, record) => `${text}\ncut {\n  ${record}\n}\n`],
    ["with a note in its cut block", (text) => `${text}\ncut { // since Monday\n}\n`],
    ["with a cut block in one line", (text, record) => `${text}\ncut { ${record} }`],
    ["with a cut block without spaces", (text, record) => `${text}\ncut {${record}}\n\n`],
    ["with a cut block at its head", (text, record) => `cut {\n  ${record}\n}\n${text}`],
    ["without a line end at its end", (text) => text.trimEnd()],
    ["with the line ends of another system", (text) => text.replaceAll("\n", "\r\n")],
    ["with blank lines at its end", (text) => `${text}\n\n`],
  ];
  test.each(jobs.flatMap((name) => endings.map(([how, change]) => [name, how, change] as const)))(
    "gives back the text of %s %s, and the list",
    (name, _how, change) => {
      const [one, other] = buildOf(name, plain(name)).asCut().counts;
      const { of, name: named, part } = other!.wanted;
      const record = `${of} ${of === `part ${named}` ? "" : named} 1 from ${part.stock}`;
      const text = change(plain(name), record);
      const before = buildOf(name, text);
      const { wanted } = one!;
      const made = recorded(before, text, { part: wanted.key, count: 1 });
      expect(made).not.toBe(text);
      const during = buildOf(name, made);
      expect(during.left().pieces).toBe(before.left().pieces - 1);
      const back = recorded(during, made, { part: wanted.key, count: -1 });
      const after = buildOf(name, back);
      expect(after.csv()).toBe(before.csv());
      expect(after.left().csv()).toBe(before.left().csv());
      expect(after.text()).toBe(before.text());
      expect(back).toBe(text);
    },
  );
});

describe("a record that is written", () => {
  const built = (cuts: string): Build => withCuts(drawer, cuts);
  const textOf = (cuts: string): string => `${drawer}cut {\n${cuts}\n}\n`;

  test("carries its size, so that it stays true when the design changes", () => {
    const cuts = "  box left front 1 at 12 9/16 x 5 1/32";
    const text = recorded(built(cuts), textOf(cuts), { part: "box left/side", count: 2 });
    expect(text).toBe(textOf(`${cuts}\n  box left side 2 at 22 x 5 1/32`));
  });

  test("adds to the one that says the same, and goes below nought never", () => {
    const cuts = "  box left side 1";
    const more = recorded(built(cuts), textOf(cuts), { part: "box left/side", count: 1 });
    expect(more).toBe(textOf("  box left side 2"));
    expect(built(cuts).recordEdit({ part: "box left/side", count: -2 })).toEqual({
      refused: "so many of the side of box left are not written down in this file",
    });
  });

  test("at another size, or spoiled, is one of its own", () => {
    const cuts = "  box left side 1";
    const size = { length: "21 63/64" };
    expect(recorded(built(cuts), textOf(cuts), { part: "box left/side", count: 1, size })).toBe(
      textOf(`${cuts}\n  box left side 1 at 21 63/64 x 5 1/32`),
    );
    expect(recorded(built(cuts), textOf(cuts), { part: "box left/side", count: 1, spoiled: true })).toBe(
      textOf(`${cuts}\n  box left side 1 spoiled`),
    );
  });

  test("of a spoiled piece has no size but what is good of it, and adds to one that has none", () => {
    const cuts = "  box left side 1 at 20 x 5 spoiled\n  box left side 1 spoiled";
    const more = recorded(built(cuts), textOf(cuts), { part: "box left/side", count: 1, spoiled: true });
    expect(more).toBe(textOf("  box left side 1 at 20 x 5 spoiled\n  box left side 2 spoiled"));
    const good = { part: "box left/side", count: 1, spoiled: true, size: { length: "20", width: "5" } };
    expect(recorded(built(cuts), textOf(cuts), good)).toBe(
      textOf("  box left side 2 at 20 x 5 spoiled\n  box left side 1 spoiled"),
    );
  });

  test("goes by the mark of its row too, to the owner that still wants one", () => {
    const two = `${drawer}opening right { wide 15  high 6  deep 23 }\nbox for right like left { }\n`;
    const build = withCuts(two, "  box left side 2");
    const text = recorded(build, `${two}cut {\n  box left side 2\n}\n`, { part: "A", count: 1 });
    expect(text).toContain("  box right side 1 at 22 x 5 1/32\n");
  });

  test("by its mark shares what there is of a row among its owners, and takes it off them again", () => {
    const two = `${drawer}opening right { wide 15  high 6  deep 23 }\nbox for right like left { }\n`;
    const before = withCuts(two, "  box left side 1");
    const text = recorded(before, `${two}cut {\n  box left side 1\n}\n`, { part: "A", count: 3 });
    expect(text).toContain("cut {\n  box left side 2\n  box right side 2 at 22 x 5 1/32\n}");
    const during = withCuts(two, "  box left side 2\n  box right side 2 at 22 x 5 1/32");
    expect(recorded(during, text, { part: "A", count: -3 })).toContain("cut {\n  box left side 1\n}");
    expect(during.recordEdit({ part: "A", count: -5 })).toEqual({
      refused: "so many of the side of box left are not written down in this file",
    });
    // One more than wanted is written down all the same: the finding says so.
    expect(recorded(during, text, { part: "A", count: 1 })).toContain("box right side 3 at");
  });

  test("takes the size that a piece must have now, where its neighbour came out short", () => {
    const cuts = "  box left front 1 at 12 1/2";
    const text = recorded(built(cuts), textOf(cuts), { part: "box left/back", count: 1 });
    expect(text).toContain("  box left back 1 at 12 1/2 x 5 1/32\n");
    expect(leftIn(built(text.slice(drawer.length + 6, -2)))).toEqual(["2 side 22 x 5 1/32", "1 bottom 22 x 13 15/16"]);
  });

  test.each([
    [{ part: "box left/lid", count: 1 }, /lid/],
    [{ part: "box left/side", count: 0 }, /whole number/],
    [{ part: "box left/side", count: 1.5 }, /whole number/],
    [{ part: "box left/side", count: 1, size: { length: "about 22" } }, /no size/],
    [{ part: "box left/side", count: 1, size: { length: "0" } }, /no size/],
  ])("%j is refused with a sentence", (request, says) => {
    const recording = built("").recordEdit(request);
    expect("refused" in recording && recording.refused).toMatch(says);
  });
});

describe("what records mean", () => {
  test("more than wanted are a surplus: the last recorded, and they may become something else", () => {
    const build = withCuts(drawer, "box left side 1\nbox left side 2");
    expect(build.asCut().surplus.map(({ count, piece }) => [count, piece.count])).toEqual([[1, 2]]);
    expect(saidOf(build)).toEqual(["cut/too-many: 2 sides of box left are wanted, and 1 more is written down as made"]);
    expect(benchFindings(build)[0]?.remedy).toContain("can still become the front of box left");
  });

  test("a record of a part of an earlier design is surplus as a whole", () => {
    const build = withCuts(drawer, "box right side 2 at 22 x 5 1/32 from ply");
    expect(saidOf(build)).toEqual(["cut/not-needed: nothing needs box right side from ply any more"]);
    expect(benchFindings(build)[0]?.remedy).toBe(
      "2 of them can still become 2 sides of box left, cut to 22 × 5 1/32 in.",
    );
    expect(build.left().pieces).toBe(5);
  });

  test("pieces without a name or a size go to the part that they are nearest to", () => {
    const build = withCuts(drawer, "box left side 1 at 22 x 5 1/32\nbox left front 1\nbox left back 1");
    expect(leftIn(build)).toEqual(["1 side 22 x 5 1/32", "1 bottom 22 x 14"]);
  });

  test("sheets broken down leave the rack, and so does the offcut of just that size", () => {
    const offcuts = "offcut of ply 20 x 30\noffcut of ply 20 x 31\n";
    const build = withCuts(`${drawer}${offcuts}`, "sheet ply 3\noffcut of ply 20 x 31");
    const plan = build.left().plan({ steps: 50 });
    const ply = plan.stocks.find(({ stock }) => stock.name === "ply");
    expect(ply?.inRack).toBe(1);
    expect(ply?.sheets.map(({ offcut, height }) => [offcut, height])).toEqual([[true, { n: 30n, d: 1n }]]);
  });

  test("of more sheets than were there none is left, rather than fewer than none", () => {
    const plan = withCuts(drawer, "sheet ply 9").left().plan({ steps: 50 });
    expect(plan.stocks.find(({ stock }) => stock.name === "ply")).toMatchObject({ inRack: 0, used: 1 });
  });

  test("the whole list and the whole plan stay as they are", () => {
    const cuts = "box left side 2\nsheet ply 1";
    expect(withCuts(drawer, cuts).csv()).toBe(withCuts(drawer, "").csv());
    expect(withCuts(drawer, cuts).list().parts).toHaveLength(4);
  });
});
