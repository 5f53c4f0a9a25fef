import { expect, test } from "vitest";
import type { TextEdit } from "vscode-languageserver-protocol";
import { bench, edited } from "./cursors.ts";

const options = { tabSize: 2, insertSpaces: true };
const text = `inches
case a {
wide   20«range»
      high 30
 frame ash {
stiles 2
  }«bracket»
    }
`;

test("a file, with spaces or tabs as the editor says", async () => {
  const shop = await bench(text);
  const spaces = await shop.askFile<TextEdit[]>("textDocument/formatting", { options });
  expect(edited(shop.text, spaces)).toBe(
    "inches\ncase a {\n  wide 20\n  high 30\n  frame ash {\n    stiles 2\n  }\n}\n",
  );
  const tabs = await shop.askFile<TextEdit[]>("textDocument/formatting", {
    options: { tabSize: 4, insertSpaces: false },
  });
  expect(edited(shop.text, tabs)).toContain("\n\tframe ash {\n\t\tstiles 2\n");
});

test("some lines of it, and no others", async () => {
  const shop = await bench(text);
  const range = { start: { line: 2, character: 0 }, end: { line: 3, character: 0 } };
  const edits = await shop.askFile<TextEdit[]>("textDocument/rangeFormatting", { options, range });
  expect(edited(shop.text, edits)).toBe(shop.text.replace("wide   20", "  wide 20"));
});

test("several selections at once, two of one line", async () => {
  const shop = await bench(text);
  const line = (at: number) => ({ start: { line: at, character: 0 }, end: { line: at, character: 3 } });
  const ranges = [line(2), line(5), line(5)];
  const edits = await shop.askFile<TextEdit[]>("textDocument/rangesFormatting", { options, ranges });
  expect(edited(shop.text, edits)).toBe(
    shop.text.replace("wide   20", "  wide 20").replace("\nstiles 2", "\n    stiles 2"),
  );
});

test("the line of a bracket just typed, and the line before a new one", async () => {
  const shop = await bench(text);
  const bracket = await shop.ask<TextEdit[]>("textDocument/onTypeFormatting", "bracket", { ch: "}", options });
  expect(edited(shop.text, bracket)).toBe(shop.text);
  const last = { position: { line: 7, character: 5 }, ch: "}", options };
  expect(edited(shop.text, await shop.askFile("textDocument/onTypeFormatting", last))).toBe(
    shop.text.replace("    }\n", "}\n"),
  );
  const broken = await shop.askFile<TextEdit[]>("textDocument/onTypeFormatting", {
    position: { line: 3, character: 0 },
    ch: "\n",
    options,
  });
  expect(edited(shop.text, broken)).toBe(shop.text.replace("wide   20", "  wide 20"));
});

test("a new line that is still blank is left to the editor", async () => {
  const shop = await bench("inches\n\n\n  \nsaw { }\n");
  const edits = await shop.askFile<TextEdit[]>("textDocument/onTypeFormatting", {
    position: { line: 3, character: 2 },
    ch: "\n",
    options,
  });
  expect(edited(shop.text, edits)).toBe(shop.text);
});
