import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Io } from "../../../server/cli/io.ts";
import { papers } from "../../../server/cli/papers.ts";

const example = readFileSync(new URL("../../../examples/seed-store.scant", import.meta.url), "utf8");

function world(text: string, failure?: string) {
  const files = new Map<string, string | Uint8Array>();
  const said = { out: "", err: "" };
  const io: Io = {
    cwd: "/shop",
    colour: false,
    version: "0",
    out: (words) => {
      said.out += words;
    },
    err: (words) => {
      said.err += words;
    },
    progress: () => undefined,
    heedStop: () => () => false,
    read: () => ({ text }),
    readStdin: async () => ({ text }),
    readUsed: async () => undefined,
    rootFor: () => "/shop",
    makeFolder: () => failure,
    write: (path, content) => {
      if (failure !== undefined) return { path, outcome: "failed", failure };
      files.set(path, content);
      return { path, outcome: "written" };
    },
  };
  return { io, files, said };
}

describe("scantling papers", () => {
  it("writes a packet, sticks and labels on both sizes, drawings, panels and lists", async () => {
    const { io, files, said } = world(example);
    expect(await papers(["seed-store.scant", "-o", "out"], io)).toBe(0);
    const names = [...files.keys()].map((path) => path.replace(/^.*[/\\]out[/\\]/, ""));
    for (const name of ["papers.pdf", "sticks-a4.pdf", "sticks-letter.pdf", "labels-a4.pdf", "labels-letter.pdf"]) {
      expect(names).toContain(`seed-store.${name}`);
    }
    expect(names).toContain("seed-store.case-store-front.svg");
    expect(names).toContain("seed-store.H-side.dxf");
    expect(names).toContain("seed-store.cutlist.csv");
    expect(names).toContain("seed-store.list.json");
    expect(said.out).toContain("Wrote out/seed-store.papers.pdf\n");
    // No file tells where the folder lies.
    for (const content of files.values())
      expect(Buffer.from(content).toString("latin1")).not.toMatch(/\/shop|file:\/\//);
    for (const [path, content] of files) {
      if (path.endsWith(".pdf"))
        expect(
          Buffer.from(content as Uint8Array)
            .subarray(0, 8)
            .toString(),
        ).toBe("%PDF-1.7");
    }
  });

  it("writes only what is asked for, the packet on the paper that is asked for", async () => {
    const { io, files } = world(example);
    expect(await papers(["seed-store.scant", "-o", ".", "--only", "packet", "--paper", "letter"], io)).toBe(0);
    expect(files.size).toBe(1);
    const text = Buffer.from([...files.values()][0] as Uint8Array).toString("latin1");
    expect(text).toMatch(/\/MediaBox \[0 0 612 792\]/);
  });

  it("says what is wrong with its words, and with a folder that cannot be written", async () => {
    const { io, said } = world(example, "cannot be written: there is no folder out");
    expect(await papers(["a.scant"], io)).toBe(2);
    expect(await papers(["-o", "out"], io)).toBe(2);
    expect(await papers(["a.scant", "-o", "out", "--only", "song"], io)).toBe(2);
    expect(await papers(["a.scant", "-o", "out", "--paper", "vellum"], io)).toBe(2);
    expect(await papers(["a.scant", "-o", "out", "--only", "lists"], io)).toBe(2);
    expect(said.err).toContain('there is no kind "song"');
    expect(said.err).toContain("there is no folder out");
  });

  it("says that errors stand in the file, and writes what can be worked out", async () => {
    const { io, files, said } = world("inches\nopening nook { wide 20 high 8 }\nbox for nook { }\n");
    expect(await papers(["a.scant", "-o", "out", "--only", "packet,svg"], io)).toBe(1);
    expect(said.err).toContain("look before you cut");
    expect(files.size).toBeGreaterThan(1);
  });
});

describe("scantling papers, stopped", () => {
  /** Stops it once so many files are written; before anything is for 0. */
  function stopping(text: string, after: number) {
    const { io, files, said } = world(text);
    return { io: { ...io, heedStop: () => () => after <= files.size }, files, said };
  }

  it("writes nothing more, and says what stands there and what does not", async () => {
    const { io, files, said } = stopping(example, 2);
    expect(await papers(["seed-store.scant", "-o", "out"], io)).toBe(130);
    expect([...files.keys()].map((path) => path.replace(/^.*[/\\]/, ""))).toEqual([
      "seed-store.papers.pdf",
      "seed-store.sticks-a4.pdf",
    ]);
    expect(said.err).toBe(
      "scantling: stopped; 2 files stand there whole; not written: the rest of sticks, labels, svg, dxf, lists\n",
    );
  });

  it("says that of many drawings some are written, and after whole kinds only what is missing", async () => {
    const some = stopping(example, 4);
    expect(await papers(["seed-store.scant", "-o", "out", "--only", "svg,lists"], some.io)).toBe(130);
    expect(some.files.size).toBe(4);
    expect(some.said.err).toContain("4 files stand there whole; not written: the rest of svg, lists\n");
    const whole = stopping(example, 1);
    expect(await papers(["seed-store.scant", "-o", "out", "--only", "packet,lists"], whole.io)).toBe(130);
    expect(whole.said.err).toContain("1 file stands there whole; not written: lists\n");
  });

  it("says that nothing was written where nothing was", async () => {
    const { io, files, said } = stopping(example, 0);
    expect(await papers(["seed-store.scant", "-o", "out"], io)).toBe(130);
    expect(files.size).toBe(0);
    expect(said.err).toBe("scantling: stopped; nothing was written\n");
  });

  it("is not stopped by a wish that comes behind the last file", async () => {
    const { io, files, said } = world(example);
    const all = await papers(["seed-store.scant", "-o", "out", "--only", "svg"], io);
    const count = files.size;
    const late = stopping(example, count + 1);
    expect(await papers(["seed-store.scant", "-o", "out", "--only", "svg"], late.io)).toBe(all);
    expect(late.files.size).toBe(count);
    expect(said.err + late.said.err).toBe("");
  });

  it("tells what it is at", async () => {
    const { io } = world(example);
    const told: string[] = [];
    await papers(["seed-store.scant", "-o", "out", "--only", "packet"], { ...io, progress: (one) => told.push(one) });
    expect(told[0]).toBe("working out seed-store.scant");
    const pages = told.filter((one) => one.startsWith("page "));
    expect(pages.length).toBeGreaterThan(3);
    expect(pages).toEqual(pages.map((_, index) => `page ${index + 1} of ${pages.length}`));
  });
});
