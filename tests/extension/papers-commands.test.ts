import { describe, expect, test } from "vitest";
import { keptNotice } from "../../extension/commands/kept-notice.ts";
import { newFileOf, paperChoices, papersFolder } from "../../extension/commands/paper-kinds.ts";
import { papersNotice } from "../../extension/commands/papers-notice.ts";
import { type Outcome, writeAll } from "../../extension/commands/write-files.ts";
import { asWritten } from "../../extension/translate.ts";
import { pdfKinds } from "../../server/paper-files.ts";

const NOTHING: Outcome = { written: [], unchanged: [], kept: [], failed: [] };

describe("papers", () => {
  test("every kind is offered once, and those that say PDF are those that the server writes as PDF", () => {
    const choices = paperChoices(asWritten);
    expect(new Set(choices.map(({ kind }) => kind)).size).toBe(10);
    expect(new Set(choices.map(({ label }) => label)).size).toBe(10);
    expect(choices.filter(({ pdf }) => pdf).map(({ kind }) => kind)).toEqual(pdfKinds);
    for (const { pdf, description } of choices) expect(description.startsWith("PDF")).toBe(pdf);
  });

  test("bytes come through base64 as they were, and a file of the same bytes is left alone", async () => {
    const bytes = Uint8Array.from([0, 255, 37, 80, 68, 70]);
    const file = newFileOf({ name: "a.pdf", base64: Buffer.from(bytes).toString("base64") });
    expect(file.text).toEqual(bytes);
    const writes: string[] = [];
    const folder = (there: Uint8Array) => ({
      read: async () => there,
      mayReplace: async () => true,
      write: async (name: string) => void writes.push(name),
    });
    expect((await writeAll([file], folder(Uint8Array.from(bytes)))).unchanged).toEqual(["a.pdf"]);
    expect((await writeAll([file], folder(bytes.slice(1)))).written).toEqual(["a.pdf"]);
    expect(writes).toEqual(["a.pdf"]);
  });

  test("called off between two files, the rest is not written", async () => {
    const writes: string[] = [];
    const outcome = await writeAll(
      [
        { name: "a", text: "1" },
        { name: "b", text: "2" },
      ],
      {
        read: async () => undefined,
        mayReplace: async () => true,
        write: async (name) => void writes.push(name),
        isCancelled: () => writes.length === 1,
      },
    );
    expect(outcome.written).toEqual(["a"]);
    expect(writes).toEqual(["a"]);
  });

  test("the notice counts, names what was left, warns of errors, and opens the packet", () => {
    const written = ["j.front.svg", "j.papers.pdf"];
    expect(papersNotice({ ...NOTHING, written }, "j-papers", 2, asWritten)).toEqual({
      text: "Wrote 2 files into j-papers. Errors stand in the build file, and the papers say so: look before you cut.",
      failed: false,
      open: "j.papers.pdf",
    });
    expect(papersNotice(NOTHING, "j-papers", 0, asWritten).text).toBe("No papers were written.");
    const failed = [{ name: "j.papers.pdf", reason: "the disk is full" }];
    expect(papersNotice({ ...NOTHING, failed, kept: ["x.csv"] }, "j", 0, asWritten)).toMatchObject({
      text: "Left as they were, for their unsaved edits: x.csv. j.papers.pdf could not be written: the disk is full.",
      failed: true,
      open: undefined,
    });
    expect(papersFolder("chest.scant")).toBe("chest-papers");
  });
});

describe("offcuts that are kept", () => {
  test("of offcuts that are kept it says what is new, what stood there and what is gone", () => {
    expect(keptNotice({ added: 2, takenOut: 1, held: 0, stay: 2 }, asWritten)).toEqual({
      text: "Offcuts written down: 2. Offcuts of an earlier plan taken out: 1. Offcuts of an earlier plan left there, since their stock is broken down: 2.",
      failed: false,
    });
    expect(keptNotice({ added: 0, takenOut: 0, held: 3, stay: 0 }, asWritten).text).toBe(
      "Offcuts that stood there already: 3.",
    );
    expect(keptNotice({ added: 0, takenOut: 0, held: 0, stay: 0, problem: "no" }, asWritten)).toEqual({
      text: "no",
      failed: true,
    });
    expect(keptNotice(undefined, asWritten).failed).toBe(true);
  });
});
