import { expect, test } from "vitest";
import type {
  CodeLens,
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  SelectionRange,
  WorkspaceEdit,
  WorkspaceSymbol,
} from "vscode-languageserver-protocol";
import { type DrawingsAnswer, drawings } from "../../../server/protocol.ts";
import { bench, mainFile, textIn } from "./cursors.ts";

const rack = "inches\nscrews pan-head { gauge #8  long 5/8 }\n";

const job = `project "Desk"
use "rack.scant"
use "more/stock.scant"

// Two lines
// of comment.
let gap = 3/32

// region case
case base {
  wide 24  high 30  deep 2«number»4   // outside
  frame ash {
    across {
      opening pens 6
      stile
      openings a-1 to a-4 equal, rails 1
    }
  }
}
// endregion
sheet ply { called 3/4  measures 45/64,«comma» 23/32 }
slides runner { lengths 10 to 20 by 2  clearance 1/2 }
box for pens { sides ply  bottom ply under  slides runner }
`;

test("the outline of a file: blocks, and openings below their case", async () => {
  const shop = await bench(job);
  const found = await shop.askFile<DocumentSymbol[]>("textDocument/documentSymbol");
  expect(found.map(({ name }) => name)).toEqual([
    ...["Desk", "rack.scant", "more/stock.scant", "gap", "base", "ply", "runner", "box for pens"],
  ]);
  expect(found[4]?.children?.map(({ name }) => name)).toEqual(["pens", "a-1 to a-4"]);
  for (const symbol of found) {
    const { range, selectionRange } = symbol;
    expect([range.start.line, selectionRange.end.line]).toEqual([selectionRange.start.line, range.start.line]);
  }
});

test("things of every file by some of their letters, in files that are not open too", async () => {
  const shop = await bench(job, { "rack.scant": rack, "un%2Cused%231.scant": "sheet panama { called 1/2 }\n" });
  const found = await shop.editor.connection.sendRequest<WorkspaceSymbol[]>("workspace/symbol", { query: "Pan" });
  expect(found.map(({ name, containerName }) => `${containerName} ${name}`).sort()).toEqual([
    "rack.scant pan-head",
    "un,used#1.scant panama",
  ]);
});

test("blocks, comments, uses and regions fold", async () => {
  const shop = await bench(job);
  const found = await shop.askFile<FoldingRange[]>("textDocument/foldingRange");
  expect(found.map(({ startLine, endLine, kind }) => `${startLine + 1}-${endLine + 1} ${kind ?? "block"}`)).toEqual([
    ...["2-3 imports", "5-6 comment", "9-20 region", "10-18 block", "12-17 block", "13-16 block"],
  ]);
});

test("a selection grows from the word to the file", async () => {
  const shop = await bench(job);
  const at = async (cursor: string): Promise<readonly string[]> => {
    const [first] = await shop.askFile<SelectionRange[]>("textDocument/selectionRange", {
      positions: [shop.at(cursor)],
    });
    const texts: string[] = [];
    for (let next: SelectionRange | undefined = first; next !== undefined; next = next.parent) {
      texts.push(textIn(shop.text, next.range));
    }
    return texts;
  };
  const number = await at("number");
  expect(number.slice(0, 2)).toEqual(["24", "deep 24"]);
  expect(number[2]).toMatch(/^wide 24[\s\S]*}$/);
  expect(number.slice(-2)[0]).toMatch(/^case base {[\s\S]*}$/);
  expect(number.at(-1)).toBe(shop.text);
  expect((await at("comma")).slice(0, 4)).toEqual([
    ",",
    "45/64, 23/32",
    "measures 45/64, 23/32",
    "called 3/4  measures 45/64, 23/32",
  ]);
});

test("a use is a link to its file", async () => {
  const shop = await bench(job);
  const found = await shop.askFile<DocumentLink[]>("textDocument/documentLink");
  expect(found.map(({ range, target }) => [textIn(shop.text, range), target])).toEqual([
    ['"rack.scant"', "file:///shop/rack.scant"],
    ['"more/stock.scant"', "file:///shop/more/stock.scant"],
  ]);
});

// Two sides, a front, a back and a bottom; and on the stile side the strips that the slides are put up on.
test("lenses say how many pieces a block gives, and open the rod", async () => {
  const shop = await bench(
    `${job.replace("frame ash", "panels ply  frame ash")}box for a-1, a-2 like pens { }\nboard ash { thick 3/4 }\n`,
  );
  const found = await shop.askFile<CodeLens[]>("textDocument/codeLens");
  const titles = found.map(({ command, range }) => `${range.start.line + 1} ${command?.title}`);
  expect(titles[0]).toMatch(/^1 Open the rod: \d+ pieces$/);
  const counts = titles.filter((title) => /\d+ pieces$/.test(title)).slice(1);
  expect(counts).toEqual([expect.stringMatching(/^10 \d+ pieces$/), "23 8 pieces", "24 10 pieces"]);
  expect(found.map(({ command }) => command?.command)).toEqual(found.map(() => "scantling.openRod"));
  const drawn = found.filter(({ command }) => command?.title === "Show where it is drawn");
  expect(drawn.length).toBeGreaterThan(1);
  const others = found.filter((lens) => !drawn.includes(lens));
  expect(others.map(({ command }) => command?.arguments)).toEqual(others.map(() => [mainFile]));
  for (const { command, range } of drawn) {
    const [address, drawing, item] = (command?.arguments ?? []) as readonly string[];
    expect(address).toBe(mainFile);
    const line = range.start.line;
    const answer = await shop.editor.connection.sendRequest<DrawingsAnswer | null>(drawings, {
      uri: mainFile,
      id: drawing!,
    });
    expect(answer?.drawing?.id).toBe(drawing);
    expect(answer?.drawing?.svg).toContain(`data-id="${item}"`);
    expect(answer?.drawing?.svg).toContain(`data-line="${line}"`);
  }
});

test("a file that gets another name is found again by those that use it", async () => {
  const shop = await bench(job, { "rack.scant": rack, "jobs/chest.scant": 'inches\nuse "../rack.scant"\n' });
  const rename = (oldUri: string, newUri: string) =>
    shop.editor.connection.sendRequest<WorkspaceEdit | null>("workspace/willRenameFiles", {
      files: [{ oldUri, newUri }],
    });
  const moved = shop.after(await rename("file:///shop/rack.scant", "file:///shop/stock/the%20rack.scant"));
  expect(moved.get(mainFile)).toContain('use "stock/the rack.scant"');
  expect(moved.get("file:///shop/jobs/chest.scant")).toContain('use "../stock/the rack.scant"');
  const folder = shop.after(await rename("file:///shop/jobs", "file:///shop/old/jobs"));
  expect(folder.get("file:///shop/jobs/chest.scant")).toContain('use "../../rack.scant"');
  expect(await rename("file:///shop/notes.txt", "file:///shop/notes.md")).toBeNull();
});

test("a use of a name with signs in it is left alone while something else is moved", async () => {
  const odd = "stock (1)/O'Neil & co!.scant";
  const shop = await bench(`inches\nuse "${odd}"\n`, { [odd]: rack });
  const files = [{ oldUri: "file:///shop/notes.txt", newUri: "file:///shop/notes.md" }];
  expect(await shop.editor.connection.sendRequest("workspace/willRenameFiles", { files })).toBeNull();
});

test("a file that is moved still finds what it uses; moved together nothing has to change", async () => {
  const shop = await bench(job, { "rack.scant": rack });
  const rename = (...files: readonly (readonly [string, string])[]) =>
    shop.editor.connection.sendRequest<WorkspaceEdit | null>("workspace/willRenameFiles", {
      files: files.map(([oldUri, newUri]) => ({ oldUri, newUri })),
    });
  const own = shop.after(await rename([mainFile, "file:///shop/jobs/print%20room.scant"]));
  expect(own.get(mainFile)).toContain('use "../rack.scant"');
  expect(own.get("file:///shop/rack.scant")).toBe(rack);
  const odd = shop.after(await rename(["file:///shop/rack.scant", "file:///shop/rack%20%281%29%20%C3%A9.scant"]));
  expect(odd.get(mainFile)).toContain('use "rack (1) é.scant"');
  expect(
    await rename(
      [mainFile, "file:///shop/jobs/main.scant"],
      ["file:///shop/rack.scant", "file:///shop/jobs/rack.scant"],
      ["file:///shop/more", "file:///shop/jobs/more"],
    ),
  ).toBeNull();
});
