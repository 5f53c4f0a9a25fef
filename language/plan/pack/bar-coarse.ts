import { type Lengths, type Pattern, patternOf, type Relaxed, relax, SCALE } from "./bar-lp.ts";

const FEW_LENGTHS = 60;
const PER_GROUP = 3;
const ROTATIONS = 3;

/**
 * The pattern relaxation of many lengths, begun from that of a few: neighbouring lengths count as the longest of them
 * first, which gives patterns that hold for all of them and weights near the best ones.
 */
export function* relaxFromCoarse(problem: Lengths, pool: Pattern[]): Generator<undefined, Relaxed | undefined> {
  const { lengths, demand, stocks } = problem;
  const kinds = lengths.flatMap((_, kind) => (0 < demand[kind]! ? [kind] : []));
  if (kinds.length <= FEW_LENGTHS) return yield* relax(problem, pool, "thorough");
  kinds.sort((a, b) => lengths[b]! - lengths[a]!);
  const groups: number[][] = [];
  kinds.forEach((kind, at) => {
    if (at % PER_GROUP === 0) groups.push([]);
    groups.at(-1)!.push(kind);
  });
  const coarse = yield* relaxFromCoarse(
    {
      lengths: groups.map((group) => lengths[group[0]!]!),
      demand: groups.map((group) => group.reduce((sum, kind) => sum + demand[kind]!, 0)),
      stocks,
    },
    [],
  );
  if (coarse === undefined) return yield* relax(problem, pool, "thorough");
  pool.push(...refined(coarse, groups, demand));
  const weights = lengths.map(() => 0);
  groups.forEach((group, at) => {
    const perLength = coarse.weights[at]! / SCALE / lengths[group[0]!]!;
    for (const kind of group) weights[kind] = perLength * lengths[kind]!;
  });
  return yield* relax(problem, pool, "thorough", { weights });
}

/** The coarse patterns in use with the members of each group taking turns, more often where the amount is larger. */
function refined(
  { patterns, amounts }: Relaxed,
  groups: readonly (readonly number[])[],
  demand: readonly number[],
): Pattern[] {
  const turn = groups.map(() => 0);
  const fine: Pattern[] = [];
  const next = (group: number, counts: Int32Array): void => {
    const members = groups[group]!;
    for (let tries = 0; tries < members.length; tries++) {
      const kind = members[turn[group]!++ % members.length]!;
      if (demand[kind]! <= counts[kind]!) continue;
      counts[kind]!++;
      return;
    }
  };
  for (let rotation = 0; rotation < ROTATIONS; rotation++) {
    patterns.forEach((pattern, at) => {
      for (let amount = amounts[at]!; 0 < amount; amount -= 0.5) {
        const counts = new Int32Array(demand.length);
        for (const group of pattern.kinds) {
          for (let count = 0; count < pattern.counts[group]!; count++) next(group, counts);
        }
        fine.push(patternOf(pattern.stock, counts));
      }
    });
  }
  return fine;
}
