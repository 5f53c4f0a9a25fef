import { describe, expect, test } from "vitest";
import type { Screen } from "../../server/cli/terminal.ts";
import { progressLine } from "../../server/cli/terminal.ts";

function screen(more: Partial<Screen> = {}): { readonly screen: Screen; readonly written: string[] } {
  const written: string[] = [];
  return { screen: { isTTY: true, columns: 20, write: (text) => written.push(text), ...more }, written };
}

describe("the line that says what is under way", () => {
  test("is written over itself, and taken away once", async () => {
    const { screen: on, written } = screen();
    const line = progressLine(on, {});
    line.show("page 1 of 9");
    line.show("page 2 of 9");
    await new Promise((go) => setTimeout(go, 120));
    line.show("page 3 of 9");
    line.clear();
    line.clear();
    // The second came too soon behind the first to be read.
    expect(written).toEqual(["\r\u001b[2Kpage 1 of 9", "\r\u001b[2Kpage 3 of 9", "\r\u001b[2K"]);
  });

  test("is not there for a file, a pipe, and a terminal that takes nothing back", () => {
    for (const [isTTY, environment] of [
      [undefined, {}],
      [false, {}],
      [true, { TERM: "dumb" }],
    ] as const) {
      const { screen: on, written } = screen({ isTTY });
      const line = progressLine(on, environment);
      line.show("page 1 of 9");
      line.clear();
      expect(written).toEqual([]);
    }
  });

  test("stays on one line, and steers no terminal", () => {
    const { screen: on, written } = screen();
    progressLine(on, {}).show("drawings of \u001b[31ma case with a long name");
    expect(written).toEqual(["\r\u001b[2Kdrawings of ·[31ma "]);
  });
});
