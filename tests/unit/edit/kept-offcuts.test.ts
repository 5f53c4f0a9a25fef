import { describe, expect, test } from "vitest";
import { keptOffcutsIn } from "../../../language/edit/kept-offcuts.ts";

const uri = "file:///shop/rack.scant";
const [small, large] = ['offcut of ply 6 in x 20 in from "Chest"', 'offcut of ply 24 in x 40 in from "Chest"'];

function kept(text: string, ...lines: readonly string[]): string {
  return keptOffcutsIn(text, uri, "Chest", lines, new Set()).text;
}

describe("the offcuts that a plan leaves over", () => {
  test("stand below the text, each on a line of its own, with the text's own line ends", () => {
    expect(kept("", small, large)).toBe(`${small}\n${large}\n`);
    expect(kept("inches", small)).toBe(`inches\n${small}\n`);
    expect(kept("inches\r\nread to 1/32", small)).toBe(`inches\r\nread to 1/32\r\n${small}\r\n`);
  });

  test("are not written twice, however they stand there; two alike are two", () => {
    const spaced = 'inches\noffcut of ply  6 in x 20 in\n  from "Chest" // by the door\n';
    expect(keptOffcutsIn(spaced, uri, "Chest", [small], new Set())).toMatchObject({
      edits: [],
      text: spaced,
      held: 1,
      added: 0,
    });
    expect(kept(`${small}\n`, small, small)).toBe(`${small}\n${small}\n`);
    expect(kept(`${small}\n${small}\n`, small)).toBe(`${small}\n`);
  });

  test("take the place of an earlier plan's, and leave what others left and what lies there by itself", () => {
    const others = 'offcut of ply 6 in x 20 in\noffcut of ply 6 in x 20 in from "Bench"\n';
    expect(kept(`${small}\n${others}`, large)).toBe(`${others}${large}\n`);
    expect(kept(`inches\n  ${small}\nread to 1/32\n`)).toBe("inches\nread to 1/32\n");
  });

  test("stay where their stock is broken down: what an earlier plan left over may lie there by now", () => {
    const text = `${small}\noffcut of thin 6 in x 20 in from "Chest"\n`;
    const keeping = keptOffcutsIn(text, uri, "Chest", [large], new Set(["ply"]));
    expect(keeping).toMatchObject({ text: `${small}\n${large}\n`, added: 1, takenOut: 1, stay: 1 });
  });

  test("what else stands on a line stays there", () => {
    expect(kept(`${small} // by the door\n`)).toBe(" // by the door\n");
    expect(kept(`inches ${small}`)).toBe("inches ");
  });
});
