import { expect, test } from "vitest";
import type { CodeAction } from "vscode-languageserver-protocol";
import type { Bench } from "./cursors.ts";
import { bench, mainFile } from "./cursors.ts";

const job = `in«units»ches
sheet ply { called 3/4  measures 23/32  size 48 x 96 }
slides runner { mount side  lengths 10 to 22 by 2  behind 1/2  carries 100 lb }
opening a { wide 15-«number»1/2  high 6  deep 22 }
opening «opening»b { wide 15 1/2  high 6  deep 22 }
box for a { sides ply  bottom ply under  sli«slides»des runner }
front for a { overlay 1«length»/2  slab ply }
`;

async function actionsAt(shop: Bench, cursor: string, only?: readonly string[]): Promise<readonly CodeAction[]> {
  const range = { start: shop.at(cursor), end: shop.at(cursor) };
  const context = { diagnostics: [], ...(only === undefined ? {} : { only }) };
  return shop.askFile<CodeAction[]>("textDocument/codeAction", { range, context });
}

test.each([
  ["units", "Write this file in millimetres", "refactor.rewrite", "wide 393.7  high 152.4"],
  ["number", "Write 15 1/2", "refactor.rewrite", "opening a { wide 15 1/2  high"],
  ["opening", "Add a box for b like that of a", "refactor.rewrite", "box for b like a { }"],
  ["opening", "Add a front for b like that of a", "refactor.rewrite", "front for b like a { }"],
  ["slides", "Write the slide's length: 20", "refactor.rewrite", "slides runner 20 }"],
  ["length", "Name this length: let front-overlay = 1/2", "refactor.extract", "overlay front-overlay  slab"],
])("at %s: %s", async (cursor, title, kind, written) => {
  const shop = await bench(job);
  const action = (await actionsAt(shop, cursor)).find((one) => one.title === title);
  expect(action).toMatchObject({ kind });
  // An editor that keeps versions is told which text the change is of.
  expect(action!.edit!.documentChanges![0]).toMatchObject({ textDocument: { uri: mainFile, version: 1 } });
  expect(shop.after(action!.edit).get(mainFile)).toContain(written);
});

test("who asks for one kind gets that alone", async () => {
  const shop = await bench(job);
  const kinds = async (only: string) => [...new Set((await actionsAt(shop, "length", [only])).map(({ kind }) => kind))];
  expect(await kinds("refactor")).toEqual(["refactor.extract"]);
  expect(await kinds("refactor.inline")).toEqual([]);
  expect(await kinds("quickfix")).toEqual([]);
});
