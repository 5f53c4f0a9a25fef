import { describe, expect, test } from "vitest";
import { faultsOf, workspaceWith } from "../support/fuzz/judge.ts";
import { mutated } from "../support/fuzz/mutate.ts";
import { casesOfRun, seedOfRun } from "../support/fuzz/random.ts";
import { caseOf, corpus, fuzz, keptTexts, others, shortCorpus } from "../support/fuzz/run.ts";

const seed = seedOfRun();
const cases = casesOfRun(4_000);

test(`${cases} build files of the project, each spoiled, seed ${seed}`, { timeout: 600_000 }, () => {
  console.log(`fuzz, mutated: ${cases} cases, seed ${seed}`);
  const failures = fuzz(seed, cases, (random) =>
    mutated(random, random.pick(random.oneIn(20) ? corpus : shortCorpus), corpus),
  );
  expect(failures).toEqual([]);
});

describe("texts that were once borne badly", () => {
  test.each(keptTexts().map(({ name, text }) => [name, text]))("%s", (_name, text) => {
    expect(faultsOf(text, workspaceWith(others), "all")).toEqual([]);
  });
});

describe("texts of a hundred thousand characters in one line", () => {
  const texts = [0, 1].map((index) => {
    const random = caseOf(seed, index);
    const pieces: string[] = [];
    for (let length = 0; length < 100_000; length += pieces.at(-1)!.length) {
      pieces.push(
        mutated(random, random.pick(shortCorpus), shortCorpus)
          .replace(/\/\/[^\n]*/g, "")
          .replace(/\s+/g, " "),
      );
    }
    return pieces.join(" ").slice(0, 100_000);
  });

  test.each(texts.map((text, index) => [index, text] as const))("line %d", { timeout: 120_000 }, (_index, text) => {
    expect(text).toHaveLength(100_000);
    expect(faultsOf(text, workspaceWith(others), "format")).toEqual([]);
  });
});
