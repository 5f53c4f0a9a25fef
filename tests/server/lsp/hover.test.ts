import { expect, test } from "vitest";
import type { Hover, InlayHint, MarkupContent } from "vscode-languageserver-protocol";
import { inProcess } from "../editor.ts";
import { bench } from "./cursors.ts";

/** Sizes worked out by hand: 5 1/2 − 23/32 (the bottom under it) = 4 25/32; 30 − 2 × 23/32 − 8 = 20 9/16; 15 1/2 − 2 × 1/2 = 14 1/2; 6 − 1/4 − 1/4 = 5 1/2; 22 − 1/2 leaves room for the 20. */
const job = `inches
read to 1/32
sheet p«stock»ly { called 3/4  measures 23/32 }
slides runner { mount side  extension full  lengths 10 to 22 by 2  behind 1/2  carries 100 lb }
let ga«let»p = 3/32
opening desk { wide 15 1/2  high 6  deep 22 }
opening lower { wide 15 1/2  high 6 + 3/4  deep 22 }
bo«box»x for des«opening»k { sid«sides»es ply  bottom ply under  sli«slides»des run«runner»ner  hol«holds»ds 10 lb }
box for lower like desk { hi«high»gh desk.hei«path»ght - gap }
fro«front»nt for desk { overlay 1«number»/2  slab ply }
case base {
  wide 24  high 30  deep 24  panels ply
  down {
    opening top 8
    opening rest-of-it re«rest»st
  }
}
// comm«comment»ent
`;

const said = async (cursor: string): Promise<string> => {
  const shop = await bench(job);
  const found = await shop.ask<Hover | null>("textDocument/hover", cursor);
  return found === null ? "" : (found.contents as MarkupContent).value;
};

test.each([
  ["box", ["`box for OPENINGS { ... }`", "**14 1/2 × 5 1/2 × 20 in** desk"]],
  ["box", ["- width **14 1/2 in** = 15 1/2 (opening width) − 2 × 1/2 (clearance) — common practice"]],
  ["box", ["  - clearance **1/2 in** — default: common practice, the thickness of an ordinary side-mounted slide"]],
  ["box", ["  - opening width **15 1/2 in** — written in [line 6](file:///shop/main.scant#L6)"]],
  ["box", ["its slides carry", "of 100 lb that they are rated for", "weighs"]],
  ["slides", ["`slides NAME [LENGTH]`", "slide length **20 in** = the longest of the series not over 21 1/2 (room)"]],
  ["slides", ["sold: 10, 12, 14, 16, 18, 20, 22"]],
  ["sides", ["**side** of box desk: 2 × 20 × 4 25/32 × 23/32 in", "- length **20 in**"]],
  ["holds", ["What it will carry", "its bottom sags", "is the limit (1/16 in per foot); the longest span allowed is"]],
  ["box", ["comes out 20 in, clear of everything"]],
  ["sides", ["**front** of box desk: 1 × 13 1/16 × 4 25/32 × 23/32 in\n- length **13 1/16 in** = 14 1/2 (outside)"]],
  ["opening", ["opening **desk**: 15 1/2 × 6 × 22 in", "box 14 1/2 × 5 1/2 × 20 in", "front 16 1/2 × 7 in"]],
  ["stock", ["sheet **ply** 23/32 in thick (18.256 mm)", "- measures 23/32", "thickness **23/32 in** — written"]],
  ["runner", ["slides **runner**", "- mount side", "- lengths 10 to 22 by 2 in", "- carries 100 lb"]],
  ["let", ["length **gap** 3/32 in (2.381 mm)", "written in [line 5]"]],
  ["path", ["**desk.height** 6 in (152.4 mm)"]],
  ["high", ["`high LENGTH`", "height **5 29/32 in**"]],
  ["front", ["`front for | spanning OPENINGS { ... }`", "**16 1/2 × 7 in** desk", "one overlay **1/2 in** — written"]],
  ["number", ["1/2 in = 12.7 mm"]],
  ["rest", ["the rest: **20 9/16 in**", "clear size"]],
])("hover on %s says where its sizes come from", async (cursor, pieces) => {
  const text = await said(cursor);
  for (const piece of pieces) expect(text).toContain(piece);
});

test("a comment says nothing, and no hover goes on for longer than a page", async () => {
  expect(await said("comment")).toBe("");
  expect((await said("box")).split("\n").length).toBeLessThan(50);
});

const everywhere = { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } };

test("inlay hints: box sizes, chosen slides, shares and openings, with their origins", async () => {
  const shop = await bench(job);
  const hints = await shop.askFile<InlayHint[]>("textDocument/inlayHint", { range: everywhere });
  const shown = hints.map(({ position, label }) => `${position.line + 1}: ${label}`);
  expect(shown).toEqual([
    "8: 14 1/2 × 5 1/2 × 20 in",
    "8: 20 in",
    "9: 14 1/2 × 5 29/32 × 20 in",
    "14: 22 9/16 × 8 × 24 in",
    "15: 22 9/16 × 20 9/16 × 24 in",
    "15: = 20 9/16 in",
  ]);
  expect((hints[0]!.tooltip as MarkupContent).value).toContain("clearance **1/2 in** — default");
  const own = await shop.askFile<InlayHint[]>("textDocument/inlayHint", {
    range: { start: { line: 8, character: 0 }, end: { line: 8, character: 9 } },
  });
  expect(own.map(({ label }) => label)).toEqual(["14 1/2 × 5 29/32 × 20 in"]);
});

test("settings take hints away, at once", async () => {
  const settings: Record<string, boolean> = { boxSizes: false, openings: false };
  const shop = await bench(job, {}, () => settings);
  const labels = async () =>
    (await shop.askFile<InlayHint[]>("textDocument/inlayHint", { range: everywhere })).map(({ label }) => label);
  expect(await labels()).toEqual(["20 in", "= 20 9/16 in"]);
  settings["slides"] = false;
  settings["shares"] = false;
  await shop.editor.connection.sendNotification("workspace/didChangeConfiguration", { settings: {} });
  expect(await labels()).toEqual([]);
});

test("an editor that shows hints is told when settings, or a file that others use, change them", async () => {
  const editor = await inProcess(
    { readDisk: async () => undefined },
    { folders: ["file:///shop"], capabilities: { workspace: { inlayHint: { refreshSupport: true } } } },
  );
  let asked = 0;
  editor.connection.onRequest("workspace/inlayHint/refresh", () => {
    asked++;
    return null;
  });
  editor.open("file:///shop/rack.scant", "inches\nlet gap = 3/32\n");
  editor.open("file:///shop/main.scant", 'inches\nuse "rack.scant"\nopening a { wide 20 - gap }\n');
  await editor.diagnosticsOf("file:///shop/main.scant", 1);
  await editor.connection.sendNotification("workspace/didChangeConfiguration", { settings: {} });
  await editor.until("a refresh after the settings", () => 0 < asked);
  const before = asked;
  editor.change("file:///shop/rack.scant", "inches\nlet gap = 1/8\n", 2);
  await editor.until("a refresh after the used file", () => before < asked);
});

test("an editor is told to ask again for hints, lenses and words of an open file when one that it uses changes on disk", async () => {
  const disk = { "file:///shop/rack.scant": "inches\nlet gap = 3/32\n" } as Record<string, string>;
  const refreshSupport = { refreshSupport: true };
  const editor = await inProcess(
    { readDisk: async (uri) => disk[uri] },
    {
      folders: ["file:///shop"],
      capabilities: {
        workspace: { inlayHint: refreshSupport, codeLens: refreshSupport, semanticTokens: refreshSupport },
      },
    },
  );
  const asked: string[] = [];
  const kinds = ["workspace/codeLens/refresh", "workspace/inlayHint/refresh", "workspace/semanticTokens/refresh"];
  for (const kind of kinds) {
    editor.connection.onRequest(kind, () => {
      asked.push(kind);
      return null;
    });
  }
  const main = (gap: string) => `inches\nuse "rack.scant"\nopening a { wide 20 - ${gap}  high 6 }\n`;
  editor.open("file:///shop/main.scant", main("gap"));
  await editor.diagnosticsOf("file:///shop/main.scant", 1);
  // What is typed is asked for by the editor itself.
  editor.change("file:///shop/main.scant", main("1"), 2);
  await editor.diagnosticsOf("file:///shop/main.scant", 2);
  expect(asked).toEqual([]);
  disk["file:///shop/rack.scant"] = "inches\nlet gap = 1/8\n";
  await editor.connection.sendNotification("workspace/didChangeWatchedFiles", {
    changes: [{ uri: "file:///shop/rack.scant", type: 2 }],
  });
  await editor.until("a word of each", () => kinds.every((kind) => asked.includes(kind)));
});

test("what the seasons do to a solid panel, what a shelf may span, and how far a door opens", async () => {
  const shop = await bench(`inches
read to 1/32
sheet ply { called 3/4  measures 45/64 }
board maple { thick 3/4  species hard maple  moisture 8% }
grooves { wide 1/4  deep 3/8 }
hinges cup { cup 35 mm  overlay 1/2 }
case base { wide 24  high 30  deep 24  panels ply  opening all }
do«door»or for all { overlay 1/2  hinged left  hinges cup  frame maple 2 wide  panel maple solid }
sh«shelf»elf in all { from p«stock»ly  adjustable  holds 40 lb }
`);
  const at = async (cursor: string) =>
    ((await shop.ask<Hover>("textDocument/hover", cursor)).contents as MarkupContent).value;
  expect(await at("door")).toMatch(
    /its panel grows by 0\.\d{3} in when it is dampest and leaves 0\.\d{3} in free at each edge/,
  );
  expect(await at("door")).toContain("opens 90°, clear of everything");
  expect(await at("shelf")).toMatch(
    /sags 0\.\d{3} in under what it holds, 40 lb; .* is the limit \(L\/144\); the longest span allowed is/,
  );
  // 45/64 on a tape of 1/32: rounded, which the hover says in words once.
  expect((await at("shelf")).match(/a hair more than is shown/g)).toHaveLength(1);
  expect(await at("stock")).toContain("sheet **ply** 45/64 in thick");
});

test("in a file of millimetres everything is told in millimetres", async () => {
  const shop = await bench(`millimetres
sheet ply { called 18  measures 17.6 }
slides runner { lengths 250 to 550 by 50  behind 10  clearance 12.5  above 6  below 7 }
opening a { wide 400  high 150  deep 500 }
bo«box»x for a { sides ply  slides runner }
`);
  const found = await shop.ask<Hover>("textDocument/hover", "box");
  expect((found.contents as MarkupContent).value).toContain("**375 × 137 × 450 mm** a");
});
