import type { Layout } from "./layout.ts";
import { type Memory, memoryOf } from "./memory.ts";
import type { Panel } from "./prepare.ts";
import type { Random } from "./random.ts";
import type { Loose } from "./ruin.ts";
import type { Blanks } from "./search.ts";

/** What a search has met, combined anew now and then. */
export type Combiner = {
  readonly memory: Memory;
  /** Counts a round of search; false, and none is counted, when it is time to combine instead. */
  readonly searches: () => boolean;
  /** Goes on combining, a little; answers a combination once it is there. */
  readonly combine: (cost: number) => Loose | undefined;
};

/** Rounds before sheets are first combined anew, times the cube of the blanks on a sheet: it is the dearer the more they are. */
const ROUNDS_FIRST = 40;
const ROUNDS_BETWEEN = 2_000;
/** Where patterns cannot be priced to the end, the search is likelier to get there: it has so many times the rounds. */
const LESS_OFTEN = 4;

/** For searches that begin on such sheets; undefined where combining them anew would take too long. */
export function combinerOf(
  blanks: Blanks,
  panels: readonly Panel[],
  start: readonly Layout[],
  random: Random,
): Combiner | undefined {
  const memory = memoryOf(blanks, panels, start, random);
  if (memory === undefined) return undefined;
  let due = ROUNDS_FIRST * (blanks.count / start.length) ** 3;
  let rounds = 0;
  let combining = 0;
  return {
    memory,
    searches() {
      if (due <= rounds) return false;
      rounds++;
      return true;
    },
    combine(cost) {
      combining++;
      const combined = memory.combine(cost);
      if (combined === undefined) return undefined;
      due = rounds + Math.max(ROUNDS_BETWEEN, memory.isComplete() ? 0 : LESS_OFTEN * combining);
      combining = 0;
      return combined;
    },
  };
}
