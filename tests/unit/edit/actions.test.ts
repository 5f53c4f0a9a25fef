import { describe, expect, test } from "vitest";
import { toText } from "../../../language/core/rational.ts";
import type { Action } from "../../../language/edit/actions/action.ts";
import { actionsAt } from "../../../language/edit/actions/all.ts";
import { edited } from "../../../language/edit/places.ts";
import { sceneOf } from "../../../language/edit/scene.ts";
import type { Build, Workspace } from "../../../language/service.ts";
import { createWorkspace } from "../../../language/service.ts";
import { buildFiles } from "../../support/build-files.ts";

const home = "file:///job/main.scant";

function workspaceWith(text: string, others: Readonly<Record<string, string>> = {}, uri = home): Workspace {
  const workspace = createWorkspace({ root: "file:///" });
  for (const [name, other] of Object.entries(others)) workspace.set(name, other);
  workspace.set(uri, text);
  return workspace;
}

interface Offered {
  readonly text: string;
  readonly actions: readonly Action[];
}

/** What is offered at a cursor, or for what stands between two. */
function offered(marked: string, others: Readonly<Record<string, string>> = {}): Offered {
  const [before = "", ...rest] = marked.split("«»");
  const text = before + rest.join("");
  const end = rest.length < 2 ? before.length : before.length + rest[0]!.length;
  return { text, actions: offeredIn(workspaceWith(text, others), home, before.length, end) };
}

function offeredIn(workspace: Workspace, uri: string, start: number, end: number): readonly Action[] {
  const { designs, derivation } = workspace.build(uri);
  const text = workspace.textOf(uri)!;
  const scene = sceneOf({ uri, text, designs, context: derivation.context, model: derivation.model, fit: undefined });
  return actionsAt({ scene, start, end, textOf: workspace.textOf });
}

/** The text with the action taken whose title fits; fails if there is none. */
function taken({ text, actions }: Offered, title: RegExp): string {
  const action = actions.find((one) => title.test(one.title));
  if (action === undefined) throw new Error(`no ${title} among: ${actions.map((one) => one.title).join("; ")}`);
  return edited(text, action.edits);
}

/** Everything that is made, exactly. */
function partsOf({ derivation }: Build): readonly string[] {
  return derivation.model.parts.map((part) => {
    const sizes = [part.length, part.width, part.thickness].map(({ value }) => toText(value)).join(" x ");
    return `${part.quantity} ${part.of} ${part.name} ${part.stock} ${sizes} ${part.machining.length}`;
  });
}

function codesOf({ findings }: Build): readonly string[] {
  return findings.map(({ code }) => code).sort();
}

/** Builds both, and holds that the second makes the same and has nothing more to say but what is named. */
function expectSame(before: string, after: string, others = {}, news: readonly string[] = []): void {
  const [old, made] = [before, after].map((text) => workspaceWith(text, others).build(home)) as [Build, Build];
  expect(partsOf(made)).toEqual(partsOf(old));
  expect(partsOf(old).length).toBeGreaterThan(0);
  expect(codesOf(made)).toEqual([...codesOf(old), ...news].sort());
}

const shop = `inches
sheet ply { called 3/4  measures 23/32  size 48 x 96 }
sheet thin { called 1/4  measures 7/32  size 48 x 96 }
slides runner { mount side  lengths 10 to 22 by 2  clearance 1/2 +1/32 -0  behind 1/2  carries 100 lb }
`;

describe("extract a let", () => {
  const job = (wide: string): string => `${shop}opening a { wide ${wide}  high 6  deep 22 }
box for a { sides ply  bottom thin under  slides runner }
`;

  test("a length under the cursor gets a name before its statement", () => {
    const found = offered(job("15 «»1/2"));
    const after = taken(found, /^Name this length/);
    expect(after).toContain("let opening-wide = 15 1/2\nopening a { wide opening-wide  high 6");
    expectSame(found.text, after);
  });

  test("exactly what is selected of a sum, as far as it is a length", () => {
    const found = offered(job("2 * («»7 + 3/4«»)"));
    const after = taken(found, /^Name this length/);
    expect(after).toContain("let opening-wide = 7 + 3/4\nopening a { wide 2 * (opening-wide)  high");
    expectSame(found.text, after);
  });

  test.each([
    ["a number that only multiplies", job("«»2«» * 7 3/4")],
    ["half a number", job("«»1«»5 1/2")],
    ["a size with its tolerance", shop.replace("clearance 1/2", "clearance «»1/2") + job("15").slice(shop.length)],
    ["the step of reading", `${job("15")}read to 1/«»32\n`],
    ["what has a name already", `${job("15")}let b = 1/«»2\n`],
  ])("%s is not offered a name", (_, text) => {
    expect(offered(text).actions.filter(({ kind }) => kind === "extract")).toEqual([]);
  });

  test("a second name of the kind is told apart", () => {
    const found = offered(`let opening-wide = 3\n${job("15 «»1/2")}`);
    expect(taken(found, /^Name/)).toContain("let opening-wide-2 = 15 1/2\n");
  });
});

describe("expand like", () => {
  const openings = ["a", "b", "c"].map((name) => `opening ${name} { wide 15 1/2  high 6  deep 22 }\n`).join("");
  const boxes = `box for a { sides ply  bottom thin under // the usual
  slides runner  holds 20 lb }
`;

  test("all that it does not say itself, over several steps, and no like is left", () => {
    const found = offered(`${shop}${openings}${boxes}box for b like a { deep 20 }
box for c «»like b {
  high 4
}
`);
    const after = taken(found, /^Write out what it takes over from b$/);
    expect(after).toContain(
      "box for c {\n  high 4\n  deep 20\n  sides ply\n  bottom thin under\n  slides runner\n  holds 20 lb\n}",
    );
    expectSame(found.text, after);
  });

  test("fronts with edges and marks, slides, and a case without a frame", () => {
    const found = offered(`${shop}edging band { thick 1/32 }
${openings}front for a { overlay 1/2  slab ply  edging band on left, right  edging band on top  pulls 1 }
front for b like «»a { overlay 3/8 left, 1/2 right }
`);
    const after = taken(found, /^Write out/);
    expect(after).toContain(
      "overlay 3/8 left, 1/2 right\n  slab ply\n  edging band on left, right\n  edging band on top\n  pulls 1\n",
    );
    expectSame(found.text, after);
    const cases = offered(`${shop}case one { wide 24  high 30  deep 20  panels ply  back thin applied  opening l { } }
case two «»like one { wide 30  opening r { } }
`);
    expectSame(cases.text, taken(cases, /^Write out/));
  });

  test("not where the other is unknown, is in other units, or is a framed case", () => {
    for (const text of [
      "box for a «»like z { }",
      `use "metric.scant"\nslides other «»like metric { }`,
      "board ash { thick 3/4 }\ncase one { frame ash { stiles 2 } }\ncase two «»like one { }",
    ]) {
      const others = { "file:///job/metric.scant": "millimetres\nslides metric { lengths 300 to 500 by 50 }\n" };
      expect(offered(text, others).actions).toEqual([]);
    }
  });
});

describe("a box or a front for an opening", () => {
  const openings = "opening a { wide 15 1/2  high 6  deep 22 }\nopening b { wide 15 1/2  high 6  deep 22 }\n";

  test("of the file's own stock where nothing is like it", () => {
    const found = offered(`${shop}opening «»a { wide 15 1/2  high 6  deep 22 }\n`);
    const after = taken(found, /^Add a box for a$/);
    expect(after).toContain("deep 22 }\nbox for a {\n  sides ply   bottom thin under\n  slides runner\n}\n");
    const build = workspaceWith(after).build(home);
    expect(partsOf(build).length).toBeGreaterThan(3);
    expect(build.findings.filter(({ severity }) => severity === "error")).toEqual([]);
    const front = taken(found, /^Add a front for a$/);
    expect(partsOf(workspaceWith(front).build(home))).toEqual(["1 front a slab ply 33/2 x 7 x 23/32 0"]);
  });

  test("like the last one where there is one, in a case as well", () => {
    const found = offered(`${shop}${openings}box for a { sides ply  bottom thin under  slides runner }
case base { wide 24  high 30  deep 24  panels ply  down { opening «»top 8  opening low rest } }
`);
    const after = taken(found, /^Add a box for top like that of a$/);
    expect(after).toContain("opening low rest } }\nbox for top like a { }\n");
    const [old, made] = [found.text, after].map((text) => workspaceWith(text).build(home)) as [Build, Build];
    expect(partsOf(made)).toEqual(expect.arrayContaining([...partsOf(old)]));
    expect(partsOf(made).filter((part) => part.includes("box top"))).toHaveLength(
      partsOf(old).filter((part) => part.includes("box a")).length,
    );
    expect(made.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  });

  test("what is filled already, or could be made of nothing, is offered nothing", () => {
    const full = `${shop}opening «»a { wide 15 1/2  high 6  deep 22 }
box for a { sides ply  slides runner }
front for a { overlay 1/2  slab ply }
`;
    expect(offered(full).actions.map(({ title }) => title)).toEqual([]);
    expect(offered("opening «»a { wide 15 }").actions).toEqual([]);
  });
});

describe("write the derived value in", () => {
  const job = `${shop}opening a { wide 15 1/2  high 6  deep 22 }
opening b { wide 15 1/2  high 6  deep 22 }
`;

  test("the length of a slide", () => {
    const found = offered(`${job}box for a { sides ply  bottom thin under  sli«»des runner }\n`);
    const after = taken(found, /^Write the slide's length: 20$/);
    expect(after).toContain("slides runner 20 }");
    expectSame(found.text, after);
  });

  test("the size of boxes that are alike, and of a front", () => {
    const found = offered(`${job}bo«»x for a, b {\n  sides ply   bottom thin under\n  slides runner\n}\n`);
    const after = taken(found, /^Write down its size: wide 14 1\/2, high 5 1\/2, deep 20$/);
    expect(after).toContain("box for a, b {\n  wide 14 1/2   high 5 1/2   deep 20\n  sides ply");
    expectSame(found.text, after);
    const front = offered(`${job}fro«»nt for a { overlay 1/2  slab ply }\n`);
    const stated = taken(front, /^Write down its size: wide 16 1\/2, high 7$/);
    expect(stated).toContain("front for a { wide 16 1/2   high 7   overlay 1/2");
    expectSame(front.text, stated);
  });

  test("a share of a division", () => {
    // 30 − 2 × 23/32 − 8 = 20 9/16.
    const found = offered(`${shop}case base {
  wide 24  high 30  deep 24  panels ply
  down { opening top 8  opening low re«»st }
}
box for top { sides ply  bottom thin under  slides runner }
`);
    const after = taken(found, /^Write 20 9\/16 for "rest"$/);
    expect(after).toContain("opening low 20 9/16 }");
    expectSame(found.text, after);
  });

  test("boxes of several sizes have none to write down", () => {
    const found = offered(
      `${job.replace("b { wide 15 1/2", "b { wide 20")}b«»ox for a, b { sides ply  slides runner 20 }\n`,
    );
    expect(found.actions.map(({ title }) => title)).toEqual(["Write down its size: high 5 1/2, deep 20"]);
  });
});

describe("mixed numbers", () => {
  test("one, or all of the file", () => {
    const found = offered(`${shop}opening a { wide 15-«»1/2  high 6¼  deep 22-2/4 }
box for a { sides ply  bottom thin under  slides runner }
`);
    const one = taken(found, /^Write 15 1\/2$/);
    expect(one).toContain("wide 15 1/2  high 6¼");
    const all = taken(found, /^Write all 3/);
    expect(all).toContain("wide 15 1/2  high 6 1/4  deep 22 2/4");
    const hint = codesOf(workspaceWith(found.text).build(home)).filter((code) => code !== "length/mixed-or-minus");
    for (const after of [one, all]) {
      const [old, made] = [found.text, after].map((text) => workspaceWith(text).build(home)) as [Build, Build];
      expect(partsOf(made)).toEqual(partsOf(old));
      expect(codesOf(made).filter((code) => code !== "length/mixed-or-minus")).toEqual(hint);
    }
  });

  test("two numbers that would become one are left alone, and so is a subtraction", () => {
    expect(offered("sheet p { measures 2  «»¾ }").actions.filter(({ kind }) => kind === "rewrite")).toEqual([]);
    expect(offered("let a = 13 - «»3/4").actions.filter(({ title }) => title.startsWith("Write 13"))).toEqual([]);
  });
});

describe("the other units", () => {
  const all = Object.fromEntries(buildFiles().map(({ name, text }) => [`file:///${name}`, text]));
  const turn = (uri: string, text: string): string => {
    const workspace = workspaceWith(text, all, uri);
    const at = /^(inches|millimetres)\b/m.exec(text)?.index ?? 0;
    const found = offeredIn(workspace, uri, at, at).find(({ title }) => title.startsWith("Write this file in"));
    if (found === undefined) throw new Error(`nothing is offered for ${uri}`);
    return edited(text, found.edits);
  };

  const whole = buildFiles().filter(({ name, text }) => {
    const { findings } = workspaceWith(text, all, `file:///${name}`).designOf(`file:///${name}`)!;
    return !findings.some(({ code }) => code.startsWith("syntax/") || code === "statement/units-twice");
  });

  test("most files can be turned", () => {
    expect(whole.length).toBeGreaterThan(100);
  });

  test.each(whole)("$name: exactly the same parts, and the same text again on the way back", ({ name, text }) => {
    const uri = `file:///${name}`;
    const once = turn(uri, text);
    const twice = turn(uri, once);
    expect(once).not.toBe(text);
    const [old, other, back] = [text, once, twice].map((each) => workspaceWith(each, all, uri).build(uri)) as [
      Build,
      Build,
      Build,
    ];
    expect(partsOf(other)).toEqual(partsOf(old));
    expect(partsOf(back)).toEqual(partsOf(old));
    const codes = (build: Build) => codesOf(build).filter((code) => !spelling.has(code));
    expect(codes(other)).toEqual(codes(old));
    expect(codes(back)).toEqual(codes(old));
    // A second round trip changes nothing more.
    expect(turn(uri, turn(uri, twice))).toBe(twice);
  });

  /** Findings about how a number is spelled, which goes with the number. */
  const spelling = new Set(["length/mixed-or-minus", "length/unit-slip"]);

  test("how numbers are written", () => {
    const source = `inches
read to 1/32
let a = 2 * (1 + 1/8)
sheet p { called 18mm  measures 0.709, 1/3  size 48x96 }
slides s { lengths 10 to 28 by 2  clearance 1/2 +1/32 -0 }
`;
    const uri = "file:///job/units.scant";
    const once = turn(uri, source);
    expect(once).toBe(`millimetres
read to 1/32 in
let a = 2 * (25.4 + 3.175)
sheet p { called 18  measures 18.0086, 1/3 in  size 1219.2 x 2438.4 }
slides s { lengths 254 to 711.2 by 50.8  clearance 12.7 +0.79375 -0 }
`);
    expect(turn(uri, once)).toBe(source.replace("18mm", "18 mm").replace("48x96", "48 x 96"));
    expect(turn(uri, "let a = 1\n")).toBe("millimetres\nlet a = 25.4\n");
    expect(turn(uri, 'project "A"\nlet a = 1\n')).toBe('project "A"\nmillimetres\nlet a = 25.4\n');
  });
});
