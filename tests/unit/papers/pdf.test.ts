import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { millimetres } from "../../../language/draw/desk.ts";
import { text } from "../../../language/draw/display-list.ts";
import { sticksFor } from "../../../language/draw/drawings.ts";
import type { PaperDesk } from "../../../language/papers/desk.ts";
import { paperDesk } from "../../../language/papers/desk.ts";
import { packetPapers } from "../../../language/papers/packet.ts";
import type { Papers } from "../../../language/papers/page.ts";
import { block, paperSizes } from "../../../language/papers/page.ts";
import { stickPapers, tilesOf } from "../../../language/papers/stick-pages.ts";
import { writePdf } from "../../../server/cli/pdf/write-pdf.ts";
import { exampleBuild } from "../draw/example.ts";
import { readPdf, stretchesOn } from "./pdf-reader.ts";

function deskFor(name: string): PaperDesk {
  const build = exampleBuild(name);
  return paperDesk(build, undefined);
}

const desk = deskFor("print-room.scant");
const sticks = sticksFor(desk);

describe.each([paperSizes.A4, paperSizes.Letter])("story sticks at full size on $name", (size) => {
  let bytes: Uint8Array;
  beforeAll(async () => {
    bytes = (await writePdf(stickPapers(desk, sticks, size)))!;
  });

  it("have a bar of 4 in that measures 101.6 mm to a tenth of a millimetre", () => {
    const [first] = readPdf(bytes).contents;
    // The bar's boxes are the only things so high that are filled or outlined.
    const boxes = stretchesOn(first!, size.wide).filter(
      ({ from, to }) => Math.abs(from[0] - to[0]) < 0.01 && Math.abs(Math.abs(from[1] - to[1]) - 2.5) < 0.01,
    );
    const places = boxes.map(({ from }) => from[0]);
    expect(places.length).toBeGreaterThan(7);
    expect(Math.abs(Math.max(...places) - Math.min(...places) - 101.6)).toBeLessThan(0.1);
  });

  it("have every mark where it belongs to a tenth of a millimetre, counted over all their sheets", () => {
    const stick = sticks[0]!;
    const wanted = stick.marks.filter((mark) => mark.kind === "edge").map((mark) => millimetres(mark.at));
    const { contents } = readPdf(bytes);
    const wide = size.high - 18 - 14;
    const tiles = tilesOf(millimetres(stick.marks.at(-1)!.at), wide);
    const rows = contents.flatMap((content) => sheetRows(content, size.wide)).slice(0, tiles.length);
    const found = rows.flatMap((row, index) => row.marks.map((mark) => mark - row.left + index * (wide - 10)));
    for (const place of wanted) {
      const nearest = Math.min(...found.map((one) => Math.abs(one - place)));
      expect(nearest, `${place} mm`).toBeLessThan(0.1);
    }
  });

  it.skipIf(spawnSync("pdftoppm", ["-v"]).error !== undefined)("print so when they are turned to dots", () => {
    const folder = mkdtempSync(join(tmpdir(), "sticks-"));
    try {
      writeFileSync(join(folder, "sticks.pdf"), bytes);
      // Ten dots to a millimetre.
      const options = ["-r", "254", "-gray", "-aa", "no", "-aaVector", "no", "-f", "1", "-l", "1"];
      execFileSync("pdftoppm", [...options, join(folder, "sticks.pdf"), join(folder, "page")]);
      const image = pgm(
        readFileSync(
          join(
            folder,
            execFileSync("ls", [folder])
              .toString()
              .match(/page\S*/)![0],
          ),
        ),
      );
      // Across the middle of the bar: it lies 1 mm under the margin of 22 mm and is 2.5 mm high.
      const row = image.row(Math.round((22 + 1 + 1.25) * 10));
      const dark = [...row.keys()].filter((x) => row[x]! < 128);
      // The outer edges of its outline, a line of 0.18 mm: half of it on each side.
      const long = (dark.at(-1)! - dark[0]! + 1) / 10;
      expect(Math.abs(long - 0.18 - 101.6)).toBeLessThan(0.15);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

/** The outline and the full marks of each stick on a page, from top to bottom. */
function sheetRows(content: string, pageHigh: number) {
  const upright = stretchesOn(content, pageHigh).filter(
    ({ from, to, how }) =>
      how === "stroke" && Math.abs(from[0] - to[0]) < 0.01 && Math.abs(Math.abs(from[1] - to[1]) - 14) < 0.01,
  );
  const tops = [...new Set(upright.map(({ from, to }) => Math.round(Math.min(from[1], to[1]) * 10)))].sort(
    (a, b) => a - b,
  );
  return tops.map((top) => {
    const row = upright.filter(({ from, to }) => Math.round(Math.min(from[1], to[1]) * 10) === top);
    return { left: Math.min(...row.map(({ from }) => from[0])), marks: row.map(({ from }) => from[0]) };
  });
}

function pgm(bytes: Buffer) {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 60).toString("latin1"))!;
  const wide = Number(head[1]);
  const body = bytes.subarray(head[0].length);
  return { row: (y: number): Uint8Array => body.subarray(y * wide, (y + 1) * wide) };
}

describe("a packet as PDF", () => {
  let bytes: Uint8Array;
  let papers: Papers;
  beforeAll(async () => {
    papers = packetPapers(desk, paperSizes.Letter);
    bytes = (await writePdf(papers))!;
  });

  it("has the same bytes every time", async () => {
    const again = await writePdf(packetPapers(deskFor("print-room.scant"), paperSizes.Letter));
    expect(Buffer.from(again!).equals(Buffer.from(bytes))).toBe(true);
  });

  it("is tagged, says its language and title, and has a contents list", () => {
    const { objects } = readPdf(bytes);
    expect(objects).toMatch(/\/Marked true/);
    expect(objects).toMatch(/\/StructTreeRoot/);
    expect(objects).toMatch(/\/Lang \(en\)/);
    expect(objects).toMatch(/\/DisplayDocTitle true/);
    expect(objects).toMatch(/\/Outlines/);
    for (const role of ["H1", "H2", "P", "Figure", "Table", "TR", "TH", "TD", "L", "LI"]) {
      expect(objects, role).toMatch(new RegExp(`/S /${role}\\b`));
    }
    expect(objects.match(/\/Type \/Page\b/g)).toHaveLength(papers.pages.length);
  });

  it("has words for every figure", () => {
    const { objects } = readPdf(bytes);
    const figures = objects.match(/<<[^<>]*\/S \/Figure[^<>]*>>/g) ?? [];
    expect(figures.length).toBeGreaterThan(5);
    for (const figure of figures) expect(figure).toContain("/Alt ");
  });

  it("runs nothing, asks for nothing, and leads nowhere", () => {
    const { objects } = readPdf(bytes);
    expect(objects).not.toMatch(
      /\/(JavaScript|JS|AA|OpenAction|Launch|URI|SubmitForm|AcroForm|EmbeddedFile|RichMedia)\b/,
    );
  });

  it("embeds every font that it uses", () => {
    const { objects } = readPdf(bytes);
    const fonts = objects.match(/\/BaseFont \/\S+/g) ?? [];
    expect(fonts.length).toBeGreaterThan(1);
    for (const font of fonts) expect(font).toMatch(/SourceSans3/);
    expect(objects.match(/\/FontFile2 /g)).toHaveLength(2);
  });

  it("ends early when it is cancelled, and tells how far it is", async () => {
    let asked = 0;
    const stopped = await writePdf(papers, { isCancelled: () => 2 < ++asked });
    expect(stopped).toBeUndefined();
    const told: number[] = [];
    await writePdf({ ...papers, pages: papers.pages.slice(0, 3) }, { onPage: (done) => told.push(done) });
    expect(told).toEqual([0, 1, 2]);
  });

  it("keeps brackets, markup and letters of other scripts as text", async () => {
    const nasty = "a) Tj ET Q (b) <script> \\ \u0000 Шкаф Ωμέγα 書 \ud800";
    const page = { wide: 100, high: 100, furniture: [], blocks: [block("P", [text({ x: 5, y: 20 }, nasty)])] };
    const made = await writePdf({
      title: nasty,
      subject: nasty,
      pages: [() => page],
      outline: [{ title: nasty, page: 0 }],
    });
    expect(made!.length).toBeGreaterThan(1000);
  });
});
