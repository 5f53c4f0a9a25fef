import { expect, test } from "vitest";
import type { CompletionItem, CompletionList, MarkupContent, SignatureHelp } from "vscode-languageserver-protocol";
import { InsertTextFormat } from "vscode-languageserver-protocol";
import { inProcess } from "../editor.ts";
import type { Bench } from "./cursors.ts";
import { bench, edited, mainFile, marked } from "./cursors.ts";

/** 17 1/4 − 1/2 behind = 16 3/4 of room. */
const job = `inches
use "ra«file»ck.scant"
sheet ply { called 3/4  measures 23/32 }
sheet thin { called 1/4  measures 7/32 }
opening a { wide 15 1/2  high 6  deep 22 }
opening b { wide 15 1/2  high 6  deep 17 1/4 }
opening c { wide 15 1/2  high 6  deep 17 1/4 }
opening d { wide 15 1/2  high 6  deep 17 1/4 }
box for a { sides ply  bottom ply under  slides runner }
box for b {
  sides p«stock»ly  «property»
  slides runner «slide»
}
shelf in c { from «shelf» }
box for «opening» { sides ply }
allow «code»
`;
const rack = `inches
slides runner { mount side  lengths 10 to 22 by 2  behind 1/2 }
`;

async function itemsAt(shop: Bench, cursor: string, more: object = {}): Promise<readonly CompletionItem[]> {
  const list = await shop.ask<CompletionList | null>("textDocument/completion", cursor, more);
  return list?.items ?? [];
}

const shop = (): Promise<Bench> => bench(job, { "rack.scant": rack, "other.scant": "inches\n" });

test("names of the kind that is wanted, best first, in files that are used as well", async () => {
  const desk = await shop();
  const labels = async (cursor: string, count: number) =>
    (await itemsAt(desk, cursor)).slice(0, count).map((item) => item.label);
  expect(await labels("opening", 4)).toEqual(["d", "a", "b", "c"]);
  expect(await labels("slide", 3)).toEqual(["16", "14", "12"]);
  expect(await labels("shelf", 2)).toEqual(["ply", "thin"]);
  expect(await labels("file", 2)).toEqual(["other.scant", "rack.scant"]);
  expect(await labels("property", 3)).toEqual(["front", "back", "bottom"]);
});

test("the best is chosen beforehand and says why; its origin comes when it is shown", async () => {
  const desk = await shop();
  const [best] = await itemsAt(desk, "slide");
  expect(best).toMatchObject({ label: "16", preselect: true, detail: "the longest that fits; 16 3/4 in of room" });
  const shown = await desk.editor.connection.sendRequest<CompletionItem>("completionItem/resolve", best);
  const about = (shown.documentation as MarkupContent).value;
  expect(about).toContain("room for the slide in b **16 3/4 in** = 17 1/4 (opening depth) − 1/2 (behind)");
  const [thick, thin] = await itemsAt(desk, "shelf");
  expect(thick!.detail).toContain("stiff enough");
  expect(thin!.detail).toContain("too thin");
});

test("what was found in the file can be allowed first", async () => {
  const desk = await shop();
  const [first, ...others] = await itemsAt(desk, "code");
  expect(first!.detail).toContain("found on line");
  expect(others.map(({ label }) => label)).toContain("slide/shallow");
});

test("a word that is taken stands in the place of the one being typed", async () => {
  const desk = await shop();
  const thin = (await itemsAt(desk, "stock")).find(({ label }) => label === "thin")!;
  expect(edited(desk.text, [thin.textEdit as never])).toContain("  sides thin  ");
});

test("a blank that is typed asks for nothing, unless something must come", async () => {
  const desk = await shop();
  const blank = { context: { triggerKind: 2, triggerCharacter: " " } };
  expect(await itemsAt(desk, "property", blank)).toEqual([]);
  expect((await itemsAt(desk, "opening", blank)).map(({ label }) => label)).toEqual([...["d", "a", "b", "c"]]);
});

test("gaps to fill in only for an editor that knows them", async () => {
  const desk = await shop();
  const sides = (items: readonly CompletionItem[]) => items.find(({ label }) => label === "bottom")!;
  const withGaps = sides(await itemsAt(desk, "property"));
  expect(withGaps).toMatchObject({
    insertTextFormat: InsertTextFormat.Snippet,
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the gap of a snippet
    textEdit: { newText: "bottom ${1|thin,ply|}" },
  });
  const own = marked(job);
  const plain = await inProcess({ readDisk: async () => undefined }, { folders: ["file:///shop"], capabilities: {} });
  plain.open(mainFile, own.text);
  const list = await plain.connection.sendRequest<CompletionList>("textDocument/completion", {
    textDocument: { uri: mainFile },
    position: own.at("property"),
  });
  const without = sides(list.items);
  expect(without.insertTextFormat).toBeUndefined();
  expect(without.textEdit).toMatchObject({ newText: "bottom" });
});

test("the form of the property being written, with the word that comes next", async () => {
  const desk = await shop();
  const help = await desk.ask<SignatureHelp>("textDocument/signatureHelp", "slide");
  const [form] = help.signatures;
  expect(form!.label).toBe("slides NAME [LENGTH]");
  const [from, to] = form!.parameters![form!.activeParameter!]!.label as [number, number];
  expect(form!.label.slice(from, to)).toBe("LENGTH");
  expect((form!.documentation as MarkupContent).value).toContain("which length if not the longest");
  expect(await desk.ask("textDocument/signatureHelp", "property")).toBeNull();
});

test("while someone types, the text is that of the moment; names follow with the next check", async () => {
  const desk = await bench("inches\nsheet ply { called 3/4 }\nbox for a { «» }\n");
  const typed = "inches\nsheet ply { called 3/4 }\nsheet thin { called 1/4 }\nbox for a { sides  bottom ply }\n";
  desk.editor.change(mainFile, typed, 2);
  const ask = async (character: number) => {
    const list = await desk.editor.connection.sendRequest<CompletionList>("textDocument/completion", {
      textDocument: { uri: mainFile },
      position: { line: 3, character },
    });
    return list.items.map(({ label }) => label);
  };
  expect(await ask("box for a { sides ".length)).toContain("ply");
  await desk.editor.diagnosticsOf(mainFile, 2);
  expect(await ask("box for a { sides ".length)).toEqual(expect.arrayContaining(["ply", "thin"]));
  expect(await ask("box for a { sides  bottom ply ".length)).not.toContain("bottom");
});
