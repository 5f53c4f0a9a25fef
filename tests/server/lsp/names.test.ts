import { describe, expect, test } from "vitest";
import type { DocumentHighlight, Location, WorkspaceEdit } from "vscode-languageserver-protocol";
import { createWorkspace } from "../../../language/service.ts";
import { buildFiles } from "../../support/build-files.ts";
import type { Bench } from "./cursors.ts";
import { bench, mainFile, textIn } from "./cursors.ts";

const rack = `inches
sheet ply-«»18 { called 3/4  measures 45/64  size 48 x 96 }
screws pan-head { gauge #8  long 5/8 }
`.replaceAll("«»", "");

const job = `inches
use "rack.scant"
let gap = 3/32
let twice = 2 * g«gap»ap
slides run«runner»ner {
  mount side  extension full  lengths 10 to 28 by 2
  clearance 1/2  above 1/4  below 1/4  behind 1/2  screws pan-«screw»head
}
case base {
  wide 24  high 30  deep 24  panels ply-«stock»18
  down {
    openings tray-1 to tr«last»ay-4 equal
    opening pans rest
  }
}
box for tray-1 to tray-4 { sides ply-18  bottom ply-18 under  slides runner«use» }
box for p«pans»ans like tra«like»y-2 { high pans.hei«read»ght - twice }
front for tray-«single»3 { overlay gap  slab ply-18 }
case other like ba«case»se { wide 30 }
`;

const places = async (shop: Bench, method: string, cursor: string, more = {}): Promise<readonly string[]> => {
  const found = await shop.ask<Location[]>(method, cursor, more);
  return found.map(({ uri, range }) => {
    const text = shop.files.get(uri) ?? "";
    return `${uri.slice("file:///shop/".length)}:${range.start.line + 1} ${textIn(text, range)}`;
  });
};

describe("one text, many cursors", () => {
  test.each([
    ["gap", "main.scant:3 gap"],
    ["runner", "main.scant:5 runner"],
    ["use", "main.scant:5 runner"],
    ["screw", "rack.scant:3 pan-head"],
    ["stock", "rack.scant:2 ply-18"],
    ["last", "main.scant:12 tray-4"],
    ["pans", "main.scant:13 pans"],
    ["like", "main.scant:12 tray-1 to tray-4"],
    ["single", "main.scant:12 tray-1 to tray-4"],
    ["case", "main.scant:9 base"],
  ])("from %s to where it is given", async (cursor, place) => {
    const shop = await bench(job, { "rack.scant": rack });
    expect(await places(shop, "textDocument/definition", cursor)).toEqual([place]);
    expect(await places(shop, "textDocument/declaration", cursor)).toEqual([place]);
  });

  test("a word that is no name leads nowhere", async () => {
    const shop = await bench(job, { "rack.scant": rack });
    expect(await places(shop, "textDocument/definition", "read")).toEqual([]);
  });

  test("from an opening to what fills it", async () => {
    const shop = await bench(job, { "rack.scant": rack });
    const found = await places(shop, "textDocument/implementation", "single");
    expect(found.map((place) => place.trimEnd())).toEqual([
      "main.scant:16 box for tray-1 to tray-4",
      "main.scant:18 front for tray-3",
    ]);
    expect(await places(shop, "textDocument/implementation", "stock")).toEqual([]);
  });

  test("references hold every use, in other files and inside ranges too", async () => {
    const shop = await bench(job, {
      "rack.scant": rack,
      "other.scant": `inches\nuse "rack.scant"\npart a { from ply-18 }\n`,
    });
    expect(await places(shop, "textDocument/references", "like", { context: { includeDeclaration: true } })).toEqual([
      "main.scant:12 tray-1 to tray-4",
      "main.scant:16 tray-1 to tray-4",
      "main.scant:17 tray-2",
    ]);
    const stock = await places(shop, "textDocument/references", "stock", { context: { includeDeclaration: false } });
    expect(stock).toEqual(
      [...Array(4).fill(""), ""].map((_, index) =>
        index === 4 ? "other.scant:3 ply-18" : expect.stringMatching(/^main\.scant:\d+ ply-18$/),
      ),
    );
  });

  test("highlights tell the place where it is given from the others", async () => {
    const shop = await bench(job, { "rack.scant": rack });
    const found = await shop.ask<DocumentHighlight[]>("textDocument/documentHighlight", "gap");
    expect(found.map(({ range, kind }) => [range.start.line + 1, kind])).toEqual([
      [3, 3],
      [4, 2],
      [18, 2],
    ]);
  });
});

describe("rename", () => {
  const rename = async (shop: Bench, cursor: string, newName: string) =>
    shop.after(await shop.ask<WorkspaceEdit>("textDocument/rename", cursor, { newName }));

  test.each([
    ["gap", "reveal-gap"],
    ["runner", "full-runner-2"],
    ["screw", "round-head"],
    ["stock", "birch_18"],
    ["last", "drawer-4"],
    ["like", "trays2"],
    ["pans", "pots"],
    ["case", "kitchen-base"],
  ])("of %s: a check finds nothing that it did not before", async (cursor, newName) => {
    const others = {
      "rack.scant": rack,
      "other.scant": `inches\nuse "rack.scant"\npart a { from ply-18  long 3  wide 2 }\n`,
    };
    const shop = await bench(job, others);
    const prepared = await shop.ask<{ range: never; placeholder: string }>("textDocument/prepareRename", cursor);
    expect(textIn(shop.text, prepared.range)).toBe(prepared.placeholder);
    const after = await rename(shop, cursor, newName);
    expect([...after.values()].join("\n")).toContain(newName);
    expect([...after.values()].join("\n")).not.toMatch(new RegExp(`(?<![\\w.-])${prepared.placeholder}(?![\\w-])`));
    for (const uri of after.keys()) expect(codes(after, uri)).toEqual(codes(shop.files, uri));
  });

  test("of one of a range: all of it keeps its numbers and changes together", async () => {
    const shop = await bench(job, { "rack.scant": rack });
    const after = (await rename(shop, "single", "drawer-3")).get(mainFile)!;
    expect(after).toContain("openings drawer-1 to drawer-4 equal");
    expect(after).toContain("box for drawer-1 to drawer-4 {");
    expect(after).toContain("like drawer-2 {");
    expect(after).toContain("front for drawer-3 {");
    await expect(rename(shop, "single", "middle")).rejects.toThrow("must end in 3");
  });

  test("a name that would be read otherwise, or is taken, or is none, is refused with the reason", async () => {
    const shop = await bench(job, { "rack.scant": rack });
    await expect(rename(shop, "gap", "twice")).rejects.toThrow('There is a "twice" already.');
    await expect(rename(shop, "gap", "3-gap")).rejects.toThrow("begins with a letter");
    const listed = await bench(
      "sheet a { called 1/2 }\nsheet thi«thin»n { called 1/4 }\nbox for b { packing a,\n  thin }\n",
    );
    await expect(rename(listed, "thin", "front")).rejects.toThrow("read as something else");
    expect(await shop.ask("textDocument/prepareRename", "read")).toBeNull();
  });

  test("of every name of the examples", async () => {
    const examples = buildFiles().filter(({ name }) => name.startsWith("examples/"));
    for (const { name, text } of examples) {
      const shop = await bench(
        text,
        Object.fromEntries(examples.map((one) => [one.name.slice("examples/".length), one.text])),
      );
      const before = codes(shop.files, mainFile);
      for (const match of text.matchAll(/(?<=^(?:sheet|board|slides|hinges|case|opening|let) )[\w-]+/gm)) {
        const position = {
          line: text.slice(0, match.index).split("\n").length - 1,
          character: match.index - text.lastIndexOf("\n", match.index) - 1,
        };
        const edit = await shop.askFile<WorkspaceEdit>("textDocument/rename", { position, newName: "wholly-new-7" });
        const after = shop.after(edit);
        expect([name, match[0], codes(after, mainFile)]).toEqual([name, match[0], before]);
        expect(after.get(mainFile)).not.toBe(text);
      }
    }
  });
});

function codes(files: ReadonlyMap<string, string>, uri: string): readonly string[] {
  const workspace = createWorkspace({ root: "file:///shop" });
  for (const [each, text] of files) workspace.set(each, text);
  return workspace.build(uri).findings.map(({ code, span }) => `${code} ${span.uri} ${span.line}`);
}
