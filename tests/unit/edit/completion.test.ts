import { expect, test } from "vitest";
import type { Completion } from "../../../language/edit/completion.ts";
import { completionAt } from "../../../language/edit/completion.ts";
import type { Scene } from "../../../language/edit/scene.ts";
import { sceneOf } from "../../../language/edit/scene.ts";
import { signaturesAt } from "../../../language/edit/signature.ts";
import { createWorkspace } from "../../../language/service.ts";
import { lower } from "../../../language/syntax/lower.ts";
import { buildFiles } from "../../support/build-files.ts";

const uri = "file:///job/main.scant";
const asked = { unasked: false, findings: [], files: [] };

function sceneOfText(text: string): Scene {
  const workspace = createWorkspace({ root: "file:///job" });
  workspace.set(uri, text);
  const { designs, derivation } = workspace.build(uri);
  return sceneOf({ uri, text, designs, context: derivation.context, model: derivation.model, fit: undefined });
}

const bare = sceneOfText("");

/** What is proposed behind a text; names and sizes are those of another scene, so that it need not be built anew. */
function behind(text: string, from: Scene = bare): Completion | undefined {
  const { designs, context, model } = from;
  return completionAt(sceneOf({ uri, text, designs, context, model, fit: undefined }), text.length, asked);
}

/** A snippet as its gaps stand before anything is typed into them. */
function filled(snippet: string): string {
  return snippet
    .replace(/\$\{\d+\|([^,|]*)[^|]*\|\}/g, "$1")
    .replace(/\$\{\d+:([^}]*)\}/g, "$1")
    .replaceAll("$0", "");
}

test.each(buildFiles())(
  "at every place of $name: a range within its line, nothing twice",
  { timeout: 60_000 },
  (file) => {
    const { text } = file;
    const scene = sceneOfText(text);
    const lines = text.split(/\r\n|\r|\n/);
    for (let offset = 0; offset <= text.length; offset++) {
      const found = completionAt(scene, offset, asked);
      if (found === undefined) continue;
      const { span, proposals } = found;
      const at = text.slice(0, offset).split(/\r\n|\r|\n/);
      expect([span.line, span.endLine]).toEqual([at.length - 1, at.length - 1]);
      expect(lines[span.line]!.slice(span.column, span.endColumn)).toBe(text.slice(span.start, span.end));
      expect(span.start <= offset && offset <= span.end).toBe(true);
      const texts = proposals.map((each) => `${each.label} ${each.kind} ${each.detail}`);
      expect(new Set(texts).size).toBe(texts.length);
    }
  },
);

test("in a text that ends anywhere, and in its first lines alone, nothing throws", { timeout: 120_000 }, () => {
  for (const { text } of buildFiles()) {
    for (let end = 1; end <= text.length; end += 7) {
      const part = text.slice(0, end);
      const found = behind(part);
      if (found !== undefined) expect(found.span.start <= end && end <= found.span.end).toBe(true);
      const scene = sceneOf({ ...bare, uri, text: part, fit: undefined });
      signaturesAt(scene.outline, end);
    }
  }
});

/** Where each kind of block, and its inside, begins. */
const places: Readonly<Record<string, string>> = {
  "a file": "",
  ...Object.fromEntries(
    ["sheet", "board", "edging", "slides", "hinges", "screws", "case", "opening", "part"].map((word) => [
      word,
      `${word} thing {\n  `,
    ]),
  ),
  ...Object.fromEntries(["saw", "grooves", "pockets", "place", "times", "cut"].map((word) => [word, `${word} {\n  `])),
  ...Object.fromEntries(["box", "front", "door"].map((word) => [word, `${word} for thing {\n  `])),
  shelf: "shelf in thing {\n  ",
  "face frame": "case thing { frame maple {\n  ",
  rear: "case thing { rear {\n  ",
  down: "case thing { down {\n  ",
};

/** What has to stand round a proposal for the text to be whole. */
function wholeText(before: string, inserted: string): string {
  const text = before + inserted;
  const open = text.split("{").length - text.split("}").length;
  return text + "\n}".repeat(open);
}

test.each(Object.entries(places))("whatever is proposed in %s can be read when it is taken as it is", (_, before) => {
  const found = behind(before);
  expect(found!.proposals.length).toBeGreaterThan(2);
  for (const { label, snippet, text } of found!.proposals) {
    const whole = wholeText(before, filled(snippet ?? text));
    const syntax = lower(whole, uri).findings.filter(
      ({ code }) => code.startsWith("syntax/") || code === "statement/not-here",
    );
    expect([label, whole, syntax.map(({ message }) => message)]).toEqual([label, whole, []]);
  }
});

const shop = `inches
sheet ply { called 3/4  measures 23/32 }
sheet thin { called 1/4  measures 7/32 }
board maple { thick 3/4  species hard maple }
slides runner { mount side  lengths 10 to 22 by 2  behind 1/2 }
hinges cup { cup 35 mm }
edging band { thick 1/32 }
let gap = 3/32
opening a { wide 15 1/2  high 6  deep 22 }
opening b { wide 15 1/2  high 6  deep 17 1/4 }
box for a { sides ply  bottom ply under  corners screws  slides runner }
`;

test.each([
  ["box for b { sides ", ["ply", "thin", "maple"]],
  ["box for ", ["b", "a"]],
  ["front for ", ["a", "b"]],
  ["box for b like ", ["a", "b"]],
  // 17 1/4 − 1/2 = 16 3/4 of room: the 16 is the longest that fits, the 18 and those above do not.
  ["box for b { slides runner ", ["16", "14", "12", "10", "gap", "18", "20", "22", "a", "b"]],
  // 22 − 1/2 = 21 1/2.
  ["box for a { slides runner ", ["20", "18", "16", "14", "12", "10", "gap", "22", "a", "b"]],
  ["box for a, b { slides runner 1", ["16", "14", "12", "10", "18", "20", "22"]],
  ["shelf in b { from ", ["ply", "maple", "thin"]],
  ["front for a { frame ", ["maple"]],
  ["front for a { edging ", ["band"]],
  ["door for b { hinges ", ["cup"]],
  ["slides other like ", ["runner"]],
  ["let half = ", ["gap", "a", "b"]],
  ["let half = b.", ["width", "height", "depth"]],
  ["let half = a.box.", ["width", "height", "depth"]],
  ["board oak { species hard ", ["hard maple"]],
  ["cut { box a ", ["side", "front", "back", "bottom"]],
  ["cut { box ", ["a"]],
  ["door for b { hinged ", ["left", "right", "top", "bottom"]],
  ["board oak { costs 3 per ", ["board foot", "foot", "metre", "piece", "sheet", "pair"]],
  ["read to ", ["1/32", "1/16", "1/64"]],
])("%s: %s", (typed, labels) => {
  const scene = sceneOfText(shop + typed);
  const found = completionAt(scene, scene.text.length, asked);
  const names = found!.proposals
    .filter(({ kind }) => kind !== "property" && kind !== "statement")
    .map(({ label }) => label);
  expect(names).toEqual(labels);
});

test("a property that the block has is not proposed again, but for those that may stand several times", () => {
  const labels = behind("front for a { slab ply  edging band\n")!.proposals.map(({ label }) => label);
  expect(labels).not.toContain("slab");
  expect(labels).toContain("edging");
  expect(labels).toContain("overlay");
});

test("inside a comment or a title nothing is proposed", () => {
  for (const text of ["// box", 'project "a', "/* box "]) expect(behind(text)).toBeUndefined();
});

test("behind a blank that was only typed, what must come is shown and nothing else", () => {
  const unasked = (typed: string): readonly string[] => {
    const scene = sceneOfText(shop + typed);
    return (completionAt(scene, scene.text.length, { ...asked, unasked: true })?.proposals ?? []).map(
      (each) => each.label,
    );
  };
  expect(unasked("box for b { sides ")).toEqual(["ply", "thin", "maple"]);
  expect(unasked("box for b { sides ply ")).toEqual([]);
  expect(unasked("box for b { ")).toEqual([]);
});

test.each([
  [
    "box for a { bottom ",
    "bottom STOCK [under | in groove LENGTH [up LENGTH] [from behind] | in rabbet LENGTH]",
    "STOCK",
  ],
  [
    "box for a { bottom thin in groove ",
    "bottom STOCK [under | in groove LENGTH [up LENGTH] [from behind] | in rabbet LENGTH]",
    "LENGTH",
  ],
  [
    "box for a { bottom thin in groove 1/4 up ",
    "bottom STOCK [under | in groove LENGTH [up LENGTH] [from behind] | in rabbet LENGTH]",
    "LENGTH",
  ],
  ["case c { kick 4 ", "kick LENGTH high LENGTH deep", "high"],
  ["case c { kick 4 high 3 ", "kick LENGTH high LENGTH deep", "deep"],
  ["slides s { lengths 10 to 28 ", "lengths FIRST to LAST by STEP, or a list", "by"],
  ["box for ", "box for OPENINGS [like NAME] { ... }", "OPENINGS"],
  ["offcut of ply 12 x ", 'offcut of STOCK LENGTH x LENGTH [from "TITLE"]', "LENGTH"],
  ["let a", "let NAME = LENGTH", "NAME"],
  ["cut { box a side 2 ", "box OPENING PART COUNT [at LENGTH [x LENGTH]] [from STOCK] [spoiled]", "at"],
])("help at %s", (text, form, active) => {
  const { outline } = sceneOf({ ...bare, uri, text, fit: undefined });
  const found = signaturesAt(outline, text.length)!;
  const shown = found.all[found.active]!;
  const part = shown.parts[shown.active!]!;
  expect([shown.form, shown.form.slice(part.from, part.to)]).toEqual([form, active]);
});

test("behind a whole property, and on a line of its own, there is no help", () => {
  for (const text of ["case c { kick 4 high 3 deep ", "case c { wide 3\n", "box for a {", "// let "]) {
    const { outline } = sceneOf({ ...bare, uri, text, fit: undefined });
    expect([text, signaturesAt(outline, text.length)]).toEqual([text, undefined]);
  }
});
