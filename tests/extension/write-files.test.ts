import { describe, expect, test } from "vitest";
import { type Folder, noticeFor, type Outcome, openLabel, writeAll } from "../../extension/commands/write-files.ts";
import { asWritten } from "../../extension/translate.ts";

const CSV = { name: "job.cutlist.csv", text: "mark,pieces\r\n" };
const MARKDOWN = { name: "job.cutlist.md", text: "# Job\n" };
const NOTHING: Outcome = { written: [], unchanged: [], kept: [], failed: [] };

/** A folder in memory; the files named in `edited` may not be written over, those in `broken` can't be written. */
function folder(held: Readonly<Record<string, string>>, { edited = [""], broken = [""] } = {}) {
  const files = new Map(Object.entries(held));
  const writes: string[] = [];
  const port: Folder = {
    read: async (name) => files.get(name),
    mayReplace: async (name) => !edited.includes(name),
    write: async (name, text) => {
      if (broken.includes(name)) throw new Error("the disk is full");
      writes.push(name);
      files.set(name, String(text));
    },
  };
  return { port, files, writes };
}

describe("writing", () => {
  test("writes what is new or different, and leaves alone what says the same", async () => {
    const { port, files, writes } = folder({ [CSV.name]: CSV.text, [MARKDOWN.name]: "# Old\n" });
    const outcome = await writeAll([CSV, MARKDOWN], port);
    expect(outcome).toEqual({ ...NOTHING, written: [MARKDOWN.name], unchanged: [CSV.name] });
    expect(writes).toEqual([MARKDOWN.name]);
    expect(files.get(MARKDOWN.name)).toBe(MARKDOWN.text);
  });

  test("keeps a file with unsaved edits that the user does not give up", async () => {
    const { port, files } = folder({ [CSV.name]: "mine" }, { edited: [CSV.name] });
    expect(await writeAll([CSV], port)).toEqual({ ...NOTHING, kept: [CSV.name] });
    expect(files.get(CSV.name)).toBe("mine");
  });

  test("goes on after one that fails", async () => {
    const { port, writes } = folder({}, { broken: [CSV.name] });
    const outcome = await writeAll([CSV, MARKDOWN], port);
    expect(outcome.failed).toEqual([{ name: CSV.name, reason: "the disk is full" }]);
    expect(writes).toEqual([MARKDOWN.name]);
  });

  test.each(["../job.csv", "a/b.csv", "a\\b.csv", "c:x.csv", "..", ".", ""])("does not write %j", async (name) => {
    const { port, writes } = folder({});
    expect((await writeAll([{ name, text: "x" }], port)).failed).toHaveLength(1);
    expect(writes).toEqual([]);
  });
});

describe("the notice", () => {
  test("says what was written and offers to open it", () => {
    const notice = noticeFor({ ...NOTHING, written: [CSV.name, MARKDOWN.name] }, 0, asWritten);
    expect(notice.text).toBe("Wrote job.cutlist.csv and job.cutlist.md.");
    expect(notice.open.map((name) => openLabel(name, asWritten))).toEqual(["Open CSV", "Open Markdown"]);
    expect(notice.failed).toBe(false);
  });

  test("says how many errors stand", () => {
    expect(noticeFor({ ...NOTHING, written: [CSV.name] }, 1, asWritten).text).toContain(
      "1 error stands in the build file",
    );
    expect(noticeFor({ ...NOTHING, unchanged: [CSV.name] }, 3, asWritten).text).toBe(
      "job.cutlist.csv already says the same. 3 errors stand in the build file: the list holds what could be worked out, so look before you cut.",
    );
  });

  test("says what failed and why, and what was kept", () => {
    const failed = [{ name: CSV.name, reason: "the disk is full" }];
    const notice = noticeFor({ ...NOTHING, kept: [MARKDOWN.name], failed }, 2, asWritten);
    expect(notice.text).toBe("Left job.cutlist.md as it was. job.cutlist.csv could not be written: the disk is full.");
    expect(notice.failed).toBe(true);
    expect(notice.open).toEqual([]);
  });
});
