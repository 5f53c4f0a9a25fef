import { expect, test } from "vitest";
import type { Workspace } from "../../language/service.ts";
import { createWorkspace } from "../../language/service.ts";
import { createPreviewFeed } from "../../server/preview-feed.ts";
import { fits, job, rack } from "./texts.ts";

const file = "file:///shop/drawer.scant";
const stock = "file:///shop/rack.scant";

/** A second drawer, so that there is something to lose and something to keep. */
const two = `${fits}opening b { wide 12  high 4  deep 23 1/2 }
box for b { sides ply  bottom ply under  slides runner 22 }
`;

test("each build is announced once, with a version that goes up by one over all files", () => {
  const { feed, told, put } = bench();
  put(file, fits);
  put(file, fits);
  put("file:///shop/other.scant", fits);
  put(file, two);
  expect(told).toEqual([`${file} 1`, "file:///shop/other.scant 2", `${file} 3`]);
  expect(feed.get(file)?.version).toBe(3);
  expect(feed.version()).toBe(3);
  expect(feed.get("file:///shop/nowhere.scant")).toBeUndefined();
});

test("a broken text that loses no part is shown as it is", () => {
  const { feed, put } = bench();
  put(file, two);
  const before = feed.get(file)?.view;
  put(file, `${two}box for }{\n`);
  const after = feed.get(file);
  expect(after?.view.whole).toBe(false);
  expect(after?.stale).toBe(false);
  expect(after?.view.batches).toEqual(before?.batches);
});

test("a broken text that loses parts shows those of the last whole one, says so, and counts today's errors", () => {
  const { feed, put } = bench();
  put(file, two);
  const before = feed.get(file)?.view;
  const broken = two.replace("box for b {", "box for }{ b");
  put(file, broken);
  const kept = feed.get(file);
  expect(kept?.stale).toBe(true);
  expect(kept?.view.pieces).toBe(before?.pieces);
  expect(kept?.view.whole).toBe(false);
  expect(kept?.view.counts.errors).toBeGreaterThan(0);
  expect(kept?.view.notes[0]).toMatch(/^The text cannot be read to its end \(line \d+\): /);
  put(file, two);
  expect(feed.get(file)).toEqual({ version: 3, view: before, stale: false, broken: [] });
});

test("what is broken is named: the parts on whose statement an error stands, and those that a broken text has lost", () => {
  const { feed, put } = bench();
  put(file, two);
  expect(feed.get(file)?.broken).toEqual([]);
  put(file, two.replace("box for b {", "box for }{ b"));
  const lost = feed.get(file)?.broken ?? [];
  expect(lost).toContain("box b/side");
  expect(lost).not.toContain("box a/bottom");
  // A slide in the second box alone that is longer than its opening is deep.
  put(file, two.replace(/22 }\n$/, "24 }\n"));
  expect(feed.get(file)?.stale).toBe(false);
  expect(feed.get(file)?.broken).toContain("box b/side");
});

test("parts that come elsewhere do not hide one that is lost", () => {
  const { feed, put } = bench();
  put(file, two);
  const more = `${two.replace("box for b {", "box for }{ b")}part shelf { from ply  long 10  wide 5  count 40 }\n`;
  const { build } = put(file, more);
  expect(build.rod().pieces).toBeGreaterThan(feed.get(file)?.view.pieces ?? 0);
  expect(feed.get(file)?.stale).toBe(true);
});

test("rows that are still there lead to where they now stand", () => {
  const { feed, put } = bench();
  put(file, two);
  put(file, `\n\n\n${two.replace("box for b {", "box for }{ b")}`);
  const kept = feed.get(file);
  expect(kept?.stale).toBe(true);
  const rows = kept?.view.batches.flatMap((batch) => batch.rows) ?? [];
  const line = two.split("\n").findIndex((text) => text.startsWith("box for a"));
  const own = rows.filter((row) => row.id.startsWith("box a/"));
  expect(own.length).toBeGreaterThan(0);
  for (const row of own) expect(row.target.line).toBe(line + 3);
});

test("parts taken out of a whole text are gone", () => {
  const { feed, put } = bench();
  put(file, two);
  put(file, fits);
  expect(feed.get(file)?.stale).toBe(false);
  expect(feed.get(file)?.view.pieces).toBe(5);
});

test("a used file in the middle of a word takes no parts away", () => {
  const { feed, put, workspace } = bench();
  const uses = job.replace("rack.scant", "my rack.scant");
  const other = stock.replace("rack.scant", "my%20rack.scant");
  workspace.set(other, rack);
  put(file, uses);
  const pieces = feed.get(file)?.view.pieces;
  workspace.set(other, rack.replace("sheet ply {", "sheet }{ ply"));
  const { build } = put(file, uses);
  expect(build.whole).toBe(true);
  expect(feed.get(file)).toMatchObject({ stale: true, view: { pieces } });
  expect(feed.get(file)?.view.notes[0]).toContain("of my rack.scant");
});

test("a file that opens broken shows what there is", () => {
  const { feed, put } = bench();
  put(file, two.replace("box for b {", "box for }{ b"));
  expect(feed.get(file)?.stale).toBe(false);
  expect(feed.get(file)?.view.pieces).toBeGreaterThan(0);
});

test("a file that is closed is announced, and what it was is not kept", () => {
  const { feed, told, put } = bench();
  put(file, two);
  feed.closed(file);
  feed.closed(file);
  expect(told).toEqual([`${file} 1`, `${file} 2`]);
  expect(feed.get(file)).toBeUndefined();
  put(file, "box for }{");
  expect(feed.get(file)?.stale).toBe(false);
});

test("at every letter of the writing of a second drawer the first one stays", () => {
  const { feed, put } = bench();
  for (let end = fits.length; end <= two.length; end++) {
    put(file, two.slice(0, end));
    expect(feed.get(file)?.view.pieces).toBeGreaterThanOrEqual(5);
  }
});

function bench() {
  const workspace: Workspace = createWorkspace({ root: "file:///shop" });
  const told: string[] = [];
  const feed = createPreviewFeed((uri, version) => told.push(`${uri} ${version}`));
  const put = (uri: string, text: string) => {
    workspace.set(uri, text);
    const build = workspace.build(uri);
    feed.checked(uri, build);
    return { build };
  };
  return { workspace, told, feed, put };
}
