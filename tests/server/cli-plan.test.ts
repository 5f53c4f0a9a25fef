import { expect, test } from "vitest";
import { shop } from "./shop.ts";

const job = `millimetres
use "rack.scant"
part shelf { from ply  long 1200  wide 800 }
`;
const rack = "inches\nsheet ply { measures 3/4  size 48 x 96 }\n";

test("a plan for people and for programs", async () => {
  const world = shop({ "job.scant": job, "rack.scant": rack });
  const text = await world.run("plan", "job.scant");
  expect(text.code).toBe(0);
  expect(text.out).toContain("ply: 1 sheet; no fewer is possible");
  const json = JSON.parse((await world.run("plan", "job.scant", "--json", "--seconds", "0")).out);
  expect(json).toMatchObject({ schema: "scantling/plan/1", sheetsUsed: 1, lowerBound: 1, proven: true });
});

test("offcuts worth keeping are added to a file, in its own units' despite, and used the next time", async () => {
  const world = shop({ "job.scant": job, "rack.scant": rack });
  const kept = await world.run("plan", "job.scant", "--keep", "rack.scant");
  expect(kept.code).toBe(0);
  const text = world.written.get("/shop/rack.scant") ?? "";
  expect(text.startsWith(rack)).toBe(true);
  expect(text).toMatch(/offcut of ply [\d. /]+ mm x [\d. /]+ mm from "job"\n/);
  const other = job.replace("1200", "500").replace("800", "300");
  const again = await shop({ "other.scant": other, "rack.scant": text }).run("plan", "other.scant", "--json");
  expect(JSON.parse(again.out)).toMatchObject({ sheetsUsed: 0, sheets: [{ offcut: true }] });
});

test("a plan that is kept again leaves the file as it is, and cuts nothing from what it leaves over itself", async () => {
  const world = shop({ "job.scant": job, "rack.scant": rack });
  const first = await world.run("plan", "job.scant", "--keep", "rack.scant");
  const text = world.written.get("/shop/rack.scant");
  const second = await world.run("plan", "job.scant", "--keep", "rack.scant");
  expect(second.out).toBe(first.out);
  expect(world.written.get("/shop/rack.scant")).toBe(text);
  expect(first.err).toMatch(/^scantling: wrote \d offcuts? into rack.scant\n$/);
  expect(second.err).toMatch(/^scantling: \d offcuts? of this plan stands? in rack.scant already\n$/);
});

test("what is left of an offcut is told of, and not written beside it, where the same wood would be there twice", async () => {
  const offcut = "offcut of ply 40 x 60\n";
  const world = shop({ "job.scant": job, "rack.scant": rack + offcut });
  const { out, err } = await world.run("plan", "job.scant", "--keep", "rack.scant");
  expect(out).toContain(
    // 1524 - 1200 and 1016 - 800, each less a blade of 1/8 in.
    `Worth keeping
  offcut of ply 1016 mm x 320 mm: what is left of ply offcut 1, to be written
    in its place once that is cut
  offcut of ply 212 mm x 1200 mm: what is left of ply offcut 1, to be written
    in its place once that is cut
`,
  );
  expect(err).toBe("scantling: no offcut of a new sheet or board is worth keeping\n");
  expect(world.written.size).toBe(0);
});

test("a plan that has changed takes the place of the earlier one of its job, and of no other's", async () => {
  const other = 'offcut of ply 20 in x 30 in from "Another"\n';
  const world = shop({ "job.scant": job, "rack.scant": rack + other });
  await world.run("plan", "job.scant", "--keep", "rack.scant");
  const before = world.written.get("/shop/rack.scant") ?? "";
  const changed = shop({ "job.scant": job.replace("1200", "1300"), "rack.scant": before });
  const { err } = await changed.run("plan", "job.scant", "--keep", "rack.scant");
  const after = changed.written.get("/shop/rack.scant") ?? "";
  expect(after.startsWith(rack + other)).toBe(true);
  expect(after).not.toBe(before);
  expect(after.match(/from "job"/g)?.length).toBe(
    JSON.parse((await changed.run("plan", "job.scant", "--json")).out).keep.length,
  );
  expect(err).toContain("of an earlier plan of this job out of rack.scant\n");
});

test("offcuts of a stock that is broken down stay, since they may lie in the rack by now", async () => {
  const old = 'offcut of ply 20 in x 30 in from "job"\n';
  const cut = `${job}cut { sheet ply 1  part shelf 1 }\n`;
  const world = shop({ "job.scant": cut, "rack.scant": rack + old });
  const { err } = await world.run("plan", "job.scant", "--left", "--keep", "rack.scant");
  expect(world.written.size).toBe(0);
  expect(err).toContain("left 1 offcut of an earlier plan in rack.scant, since that stock is broken down");
  const fresh = shop({ "job.scant": `${job}cut { part shelf 1 }\n`, "rack.scant": rack + old });
  await fresh.run("plan", "job.scant", "--left", "--keep", "rack.scant");
  expect(fresh.written.get("/shop/rack.scant")).toBe(rack);
});

test("a new file is made, a file that cannot be written is said, and nothing is said twice", async () => {
  const world = shop({ "job.scant": job, "rack.scant": rack });
  await world.run("plan", "job.scant", "--keep", "left.scant");
  expect(world.written.get("/shop/left.scant")).toMatch(/^offcut of ply/);
  const closed = await shop({ "job.scant": job, "rack.scant": rack }, { protectedBy: "may not be written" }).run(
    "plan",
    "job.scant",
    "--keep",
    "left.scant",
  );
  expect(closed.code).toBe(2);
  expect(closed.err).toContain("left.scant may not be written");
});

test("what has no place makes the exit code 1", async () => {
  const world = shop({ "job.scant": job.replace("1200", "4000"), "rack.scant": rack });
  const { code, out } = await world.run("plan", "job.scant");
  expect(code).toBe(1);
  expect(out).toContain("not placed");
});

test("arguments that make no sense are refused", async () => {
  const world = shop({ "job.scant": job, "rack.scant": rack });
  for (const words of [
    ["plan"],
    ["plan", "a", "b"],
    ["plan", "job.scant", "--seconds", "soon"],
    ["plan", "no.scant"],
  ]) {
    expect((await world.run(...words)).code, words.join(" ")).toBe(2);
  }
});
