import { expect, test } from "vitest";
import { grammarText } from "../support/fuzz/grammar-text.ts";
import { mutated } from "../support/fuzz/mutate.ts";
import { casesOfRun, seedOfRun } from "../support/fuzz/random.ts";
import { corpus, fuzz } from "../support/fuzz/run.ts";

const seed = seedOfRun();
const cases = casesOfRun(6_000);

test(`${cases} texts made from the grammar, one in five spoiled, seed ${seed}`, { timeout: 600_000 }, () => {
  console.log(`fuzz, grammar: ${cases} cases, seed ${seed}`);
  const failures = fuzz(seed, cases, (random) => {
    const text = grammarText(random, 1 + random.below(3));
    return random.oneIn(5) ? mutated(random, text, corpus) : text;
  });
  expect(failures).toEqual([]);
});
