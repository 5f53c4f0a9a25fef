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
