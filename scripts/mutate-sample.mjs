/**
 * A checker for Stryker that lets a seeded sample of its changes through: those whose hash with the seed is least. What a
 * change is hashed by is its place and what it puts there, so the sample does not depend on the order of files.
 * `scripts/mutate.mjs` says how many with SCANTLING_MUTATE_SAMPLE, and the seed with SCANTLING_MUTATE_SEED.
 */
import { createHash } from "node:crypto";
import { relative } from "node:path";

export const strykerPlugins = [{ kind: "Checker", name: "sample", factory: sample }];

function sample() {
  const many = Number(process.env.SCANTLING_MUTATE_SAMPLE);
  const seed = process.env.SCANTLING_MUTATE_SEED;
  const taken = new Set();
  return {
    init: async () => {},
    // Asked once, with all of them, before any is checked.
    group: async (changes) => {
      const ranked = changes.map(({ id, ...change }) => ({ id, hash: hashOf(change, seed) }));
      ranked.sort((a, b) => (a.hash < b.hash ? -1 : 1));
      for (const { id } of ranked.slice(0, many)) taken.add(id);
      return [changes.map(({ id }) => id)];
    },
    check: async (changes) =>
      Object.fromEntries(
        changes.map(({ id }) => [
          id,
          taken.has(id) ? { status: "passed" } : { status: "compileError", reason: "not in the sample" },
        ]),
      ),
  };
}

function hashOf({ fileName, location, replacement }, seed) {
  const { start, end } = location;
  const place = [relative(process.cwd(), fileName), start.line, start.column, end.line, end.column];
  return createHash("sha256")
    .update([seed, ...place, replacement].join("\0"))
    .digest("hex");
}
