import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bestMatching } from "../../../language/ascut/matching.ts";
import { compare, toNumber } from "../../../language/core/rational.ts";
import type { CutStep } from "../../../language/plan/steps.ts";
import type { Build } from "../../../language/service.ts";
import { spareText } from "../../../language/view/day.ts";
import { built } from "../../support/built.ts";
import { benchFindings, drawer, leftIn, withCuts } from "./bench.ts";

/** What becomes of each spare: `the offcut of ply, 6 × 20 in -> side 18 x 5`. */
function savedIn(build: Build, others: readonly Build[] = []): readonly string[] {
  return build.rescue(others).saved.map(({ spare, wanted, part, provided }) => {
    const size = `${toNumber(part.length.value)} x ${toNumber(part.width.value)}`;
    const condition = provided.length === 0 ? "" : ` if ${provided.join(" and ")}`;
    return `${spareText(spare)} -> ${wanted.name} ${size}${condition}`;
  });
}

const stock = "inches\nsheet ply { measures 3/4  size 48 x 96 }\n";

describe("the best assignment", () => {
  const worths = fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 5 })).chain(([rows, columns]) =>
    fc.array(fc.array(fc.option(fc.integer({ min: -3, max: 9 })), { minLength: columns, maxLength: columns }), {
      minLength: rows,
      maxLength: rows,
    }),
  );

  test("is worth as much as the best of all that there are, and gives each column once", () => {
    fc.assert(
      fc.property(worths, (table) => {
        const columns = table[0]?.length ?? 0;
        const worth = (row: number, column: number): bigint | undefined => {
          const value = table[row]![column];
          return value === null || value === undefined ? undefined : BigInt(value);
        };
        const given = bestMatching(table.length, columns, worth);
        const used = given.filter((column) => column !== undefined);
        expect(new Set(used).size).toBe(used.length);
        const total = given.reduce((sum, column, row) => sum + (column === undefined ? 0n : worth(row, column)!), 0n);
        expect(total).toBe(best(table.length, columns, worth));
      }),
      { numRuns: 500 },
    );
  });

  test("worths beyond what a double holds are told apart", () => {
    const huge = 2n ** 80n;
    expect(bestMatching(1, 2, (_, column) => huge + BigInt(column))).toEqual([1]);
  });
});

/** All ways, one after the other. */
function best(
  rows: number,
  columns: number,
  worth: (row: number, column: number) => bigint | undefined,
  row = 0,
  taken: ReadonlySet<number> = new Set(),
): bigint {
  if (row === rows) return 0n;
  let most = best(rows, columns, worth, row + 1, taken);
  for (let column = 0; column < columns; column++) {
    const value = worth(row, column);
    if (value === undefined || taken.has(column)) continue;
    const total = value + best(rows, columns, worth, row + 1, new Set([...taken, column]));
    if (most < total) most = total;
  }
  return most;
}

interface Sized {
  readonly long: number;
  readonly wide: number;
}

/** The most area of parts that can be cut from pieces, by trying every way. */
function mostFrom(pieces: readonly Sized[], parts: readonly Sized[]): number {
  const [piece, ...others] = pieces;
  if (piece === undefined || parts.length === 0) return 0;
  return Math.max(
    ...subsets(parts).map(([some, rest]) =>
      canGive(piece, some) ? some.reduce((sum, one) => sum + one.long * one.wide, 0) + mostFrom(others, rest) : 0,
    ),
  );
}

function subsets<T>(all: readonly T[]): readonly (readonly [readonly T[], readonly T[]])[] {
  return Array.from({ length: 2 ** all.length }, (_, bits) => [
    all.filter((_, at) => (bits & (1 << at)) !== 0),
    all.filter((_, at) => (bits & (1 << at)) === 0),
  ]);
}

/** Whether straight cuts with a blade of one free all parts from a piece: every cut at every whole place is tried. */
function canGive({ long, wide }: Sized, parts: readonly Sized[]): boolean {
  if (parts.reduce((sum, one) => sum + one.long * one.wide, 0) > long * wide) return false;
  const [only, ...more] = parts;
  if (only === undefined) return true;
  if (more.length === 0) return only.long <= long && only.wide <= wide;
  const ways = [
    ...places(long).map(
      (at) =>
        [
          { long: at, wide },
          { long: long - at - 1, wide },
        ] as const,
    ),
    ...places(wide).map(
      (at) =>
        [
          { long, wide: at },
          { long, wide: wide - at - 1 },
        ] as const,
    ),
  ];
  return ways.some(([one, other]) =>
    subsets(parts).some(
      ([some, rest]) =>
        rest.length < parts.length && some.length < parts.length && canGive(one, some) && canGive(other, rest),
    ),
  );
}

/** What is in hand when a piece has been cut as the steps say, by a blade of one: each cuts a piece that is there. */
function cutBy(steps: readonly CutStep[], piece: Sized): Sized[] {
  const hand = [piece];
  for (const { kind, setting, width, height } of steps) {
    const [wide, long, at] = [width, height, setting].map(toNumber) as [number, number, number];
    const index = hand.findIndex((one) => isSame(one, { long, wide }));
    expect(index).not.toBe(-1);
    hand.splice(index, 1);
    if (kind === "rip") hand.push({ long, wide: at }, { long, wide: wide - at - 1 });
    else hand.push({ long: at, wide }, { long: long - at - 1, wide });
  }
  return hand;
}

function isSame(a: Sized, b: Sized): boolean {
  return a.long === b.long && a.wide === b.wide;
}

function holds(piece: Sized, part: Sized): boolean {
  return part.long <= piece.long && part.wide <= piece.wide;
}

function turned({ long, wide }: Sized): Sized {
  return { long: wide, wide: long };
}

function areaOf({ long, wide }: Sized): number {
  return long * wide;
}

/** Where a blade of one leaves something on both sides. */
function places(size: number): readonly number[] {
  return Array.from({ length: Math.max(0, size - 2) }, (_, at) => at + 1);
}

describe("what is rescued from one stock", () => {
  const size = fc.record({ long: fc.integer({ min: 1, max: 7 }), wide: fc.integer({ min: 1, max: 5 }) });
  const upTo = (maxLength: number) => fc.array(size, { minLength: 1, maxLength });
  const job = (wanted: readonly Sized[], spoiled: readonly Sized[], offcuts: readonly Sized[]): string =>
    [
      `${stock}saw { kerf 1 }`,
      ...wanted.map(({ long, wide }, at) => `part want-${at} { from ply  long ${long}  wide ${wide} }`),
      ...spoiled.map((_, at) => `part gone-${at} { from ply  long 40  wide 20 }`),
      ...offcuts.map(({ long, wide }) => `offcut of ply ${wide} x ${long}`),
      "cut {",
      ...spoiled.map(({ long, wide }, at) => `part gone-${at} 1 at ${long} x ${wide} spoiled`),
      "}",
    ].join("\n");

  test("saves as much area as any way of cutting spoiled pieces and offcuts into parts, and knows it", () => {
    fc.assert(
      fc.property(upTo(4), upTo(2), upTo(2), (wanted, spoiled, offcuts) => {
        const { area, most, given } = built(job(wanted, spoiled, offcuts)).rescue();
        // Grain runs along the length of both, so that a part cannot be turned in its piece.
        expect(toNumber(area)).toBe(mostFrom([...spoiled, ...offcuts], wanted));
        expect(most).toEqual(area);
        for (const { spare, parts } of given) {
          const sizes = parts.map(({ part }) => ({
            long: toNumber(part.length.value),
            wide: toNumber(part.width.value),
          }));
          expect(canGive({ long: toNumber(spare.along), wide: toNumber(spare.across) }, sizes)).toBe(true);
        }
      }),
      { numRuns: 150 },
    );
  });

  test("the cuts free the parts one after the other: each takes a blade, and the last piece in hand is a part", () => {
    fc.assert(
      fc.property(upTo(4), upTo(2), (wanted, spoiled) => {
        for (const { spare, parts, steps } of built(job(wanted, spoiled, [])).rescue().given) {
          const hand = cutBy(steps, { long: toNumber(spare.along), wide: toNumber(spare.across) });
          for (const { part } of parts) {
            const own = { long: toNumber(part.length.value), wide: toNumber(part.width.value) };
            const at = hand.findIndex((piece) => isSame(piece, own));
            expect(at).not.toBe(-1);
            hand.splice(at, 1);
          }
        }
      }),
      { numRuns: 100 },
    );
  });

  test("however much lies about, no less is saved than by one part from each, and every piece can be cut so", () => {
    const large = fc.record({ long: fc.integer({ min: 3, max: 40 }), wide: fc.integer({ min: 2, max: 30 }) });
    const many = fc.array(fc.record({ size: large, isPlain: fc.boolean() }), { minLength: 6, maxLength: 14 });
    const pieces = fc.array(large, { minLength: 3, maxLength: 8 });
    fc.assert(
      fc.property(many, pieces, pieces, (wanted, spoiled, offcuts) => {
        const text = job(
          wanted.map(({ size: one }) => one),
          spoiled,
          offcuts,
        );
        const plain = wanted.reduce(
          (all, { isPlain }, at) => (isPlain ? all.replace(`part want-${at} {`, `part want-${at} { grain none`) : all),
          text,
        );
        const { area, most, given } = built(plain).rescue();
        const lie = [...spoiled, ...offcuts];
        const one = bestMatching(lie.length, wanted.length, (row, column) => {
          const { size: part, isPlain } = wanted[column]!;
          return holds(lie[row]!, part) || (isPlain && holds(lie[row]!, turned(part)))
            ? BigInt(part.long * part.wide)
            : undefined;
        });
        const least = one.reduce<number>(
          (sum, column) => sum + (column === undefined ? 0 : areaOf(wanted[column]!.size)),
          0,
        );
        expect(toNumber(area)).toBeGreaterThanOrEqual(least);
        expect(compare(area, most)).toBeLessThanOrEqual(0);
        expect(new Set(given.flatMap(({ parts }) => parts.map(({ wanted: part }) => part))).size).toBe(
          given.flatMap(({ parts }) => parts).length,
        );
        for (const { spare, parts, steps } of given) {
          const hand = cutBy(steps, { long: toNumber(spare.along), wide: toNumber(spare.across) });
          for (const { part } of parts) {
            const own = { long: toNumber(part.length.value), wide: toNumber(part.width.value) };
            const at = hand.findIndex(
              (piece) => isSame(piece, own) || (part.grain === "none" && isSame(piece, turned(own))),
            );
            expect(at).not.toBe(-1);
            hand.splice(at, 1);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  test("two drawer fronts come out of one spoiled cabinet side, the blade between them counted", () => {
    const text = (wide: string): string => `${stock}saw { kerf 1/8 }
      part side { from ply  long 30  wide 20 }
      part drawer-front { from ply  long 14  wide 8  count 2 }
      cut { part side 1 at 28 x ${wide} spoiled }`;
    const [one] = built(text("16 1/8")).rescue().given;
    expect(one?.parts.map(({ wanted }) => wanted.name)).toEqual(["drawer-front", "drawer-front"]);
    expect(one?.steps.map(({ kind, setting }) => `${kind} at ${toNumber(setting)}`)).toEqual([
      "crosscut at 14",
      "rip at 8",
    ]);
    expect(built(text("16")).rescue().given[0]?.parts).toHaveLength(1);
  });

  test("a piece of which only the outline is known becomes one part: another would have to miss what is spoiled too", () => {
    const text = (at: string): string => `${stock}
      part side { from ply  long 30  wide 20 }
      part lid { from ply  long 12  wide 5  count 3 }
      cut { part side 1 ${at} spoiled }`;
    expect(savedIn(built(text("")))).toEqual([
      "the spoiled part side, 30 × 20 in -> lid 12 x 5 if what is spoiled falls away",
    ]);
    expect(savedIn(built(text("at 29 x 19")))).toHaveLength(3);
  });

  test("what is loose is used before the rack is", () => {
    const text = `${stock}
      part side { from ply  long 30  wide 20 }
      part lid { from ply  long 12  wide 5  count 3 }
      offcut of ply 18 x 28
      cut { part side 1 at 25 x 5 spoiled }`;
    expect(savedIn(built(text))).toEqual([
      "the spoiled part side, 25 × 5 in -> lid 12 x 5",
      "the spoiled part side, 25 × 5 in -> lid 12 x 5",
      "the offcut of ply, 18 × 28 in -> lid 12 x 5",
    ]);
  });

  test("many pieces and many parts take little time, and where not every way is gone through the most is said", () => {
    const parts = Array.from(
      { length: 30 },
      (_, at) => `part p-${at} { from ply  long ${7 + (at % 13)}  wide ${2 + (at % 5)} 1/${3 + (at % 4)}  count 12 }`,
    );
    const offcuts = Array.from({ length: 20 }, (_, at) => `offcut of ply ${9 + at} x ${30 - at}`);
    const gone = Array.from({ length: 12 }, (_, at) => `part gone 1 at ${20 + at} x ${18 - at} spoiled`);
    const build = built(
      [stock, ...parts, "part gone { from ply  long 60  wide 40  count 12 }", ...offcuts, "cut {", ...gone, "}"].join(
        "\n",
      ),
    );
    const start = performance.now();
    const { area, most, given } = build.rescue();
    expect(performance.now() - start).toBeLessThan(2000);
    expect(given.length).toBeGreaterThan(12);
    // So much that not every way can be gone through; then the most that any way gives is said to be more.
    expect(compare(area, most)).toBeLessThan(0);
  });

  test("gives the small piece to the small part, so that the large one is left for the large", () => {
    const text = `${stock}
      part door { from ply  long 30  wide 12 }
      part lid { from ply  long 10  wide 5 }
      part lost-a { from ply  long 40  wide 20 }
      part lost-b { from ply  long 40  wide 20 }
      cut { part lost-a 1 at 32 x 14 spoiled  part lost-b 1 at 12 x 6 spoiled }`;
    expect(savedIn(built(text))).toEqual([
      "the spoiled part lost-a, 32 × 14 in -> door 30 x 12",
      "the spoiled part lost-b, 12 × 6 in -> lid 10 x 5",
    ]);
  });

  test("uses up the smaller of two pieces that would both do", () => {
    const text = `${stock}
      part lid { from ply  long 10  wide 5 }
      part gone { from ply  long 40  wide 20  count 2 }
      cut { part gone 1 at 30 x 20 spoiled  part gone 1 at 11 x 6 spoiled }`;
    expect(savedIn(built(text))).toEqual(["the spoiled part gone, 11 × 6 in -> lid 10 x 5"]);
  });

  test("keeps to the grain, except where a part has none", () => {
    const text = (grain: string): string => `${stock}
      part lid { from ply  long 20  wide 5 ${grain} }
      part gone { from ply  long 40  wide 30 }
      cut { part gone 1 at 8 x 21 spoiled }`;
    expect(savedIn(built(text("")))).toEqual([]);
    expect(savedIn(built(text("grain none")))).toHaveLength(1);
  });

  test("says where the grain of a piece is not known, and where that of a row is given up", () => {
    const text = (grain: string): string => `${grain}
      part lid { from ply  long 20  wide 5 }
      part gone { from ply  long 40  wide 30  grain none }
      cut { part gone 1 at 24 x 6 spoiled }`;
    const [said] = savedIn(built(text(stock)));
    expect(said).toBe("the spoiled part gone, 24 × 6 in -> lid 20 x 5 if its grain runs as it must");
    expect(savedIn(built(text(stock.replace("size", "grain none  size"))))[0]).toMatch(/lid 20 x 5$/);
    const row = `${stock}
      opening d-1 { wide 20  high 8  deep 20 }
      opening d-2 { wide 20  high 8  deep 20 }
      front for d-1, d-2 { overlay 1/2  slab ply  matched }
      part gone { from ply  long 60  wide 40 }
      cut { part gone 1 at 22 x 10 spoiled }`;
    expect(savedIn(built(row))[0]).toMatch(/ -> slab 21 x 9 if its grain need not run on through its row$/);
  });

  test("a spoiled piece of which nothing else is said is no second piece of its own size", () => {
    const text = (lid: string): string => `${stock}
      part side { from ply  long 20  wide 5 }
      part lid { from ply  long ${lid}  wide 5 }
      cut { part side 1 spoiled }`;
    expect(savedIn(built(text("20")))).toEqual([]);
    expect(savedIn(built(text("19")))).toEqual([
      "the spoiled part side, 20 × 5 in -> lid 19 x 5 if what is spoiled falls away",
    ]);
  });

  test("says what is cut into a piece that its new part does not want", () => {
    const build = withCuts(
      `${drawer.replace("bottom thin under", "bottom quarter in groove 1/4 up 3/8")}part lid { from ply  long 20  wide 5 1/2 }\n`,
      "box left side 1 at 21 x 5 1/2 spoiled",
    );
    expect(savedIn(build)).toEqual([
      "the spoiled side of box left, 21 × 5 1/2 in -> lid 20 x 5.5 if no groove is left in it",
    ]);
  });

  test("a lost piece is written down as what it becomes by one fix, which leaves nothing to say of it", () => {
    const build = withCuts(drawer, "  box left side 1 at 20 x 5 1/32");
    const [lost] = benchFindings(build);
    expect(lost?.remedy).toBe("Cut it again. It can still become the front of box left, cut to 12 9/16 × 5 1/32 in.");
    const fix = lost?.fixes.find(({ title }) => title === "Write it down as the front of box left");
    expect(fix?.edits.map(({ text }) => text)).toEqual(["box left front 1 at 12 9/16 x 5 1/32"]);
    expect(benchFindings(withCuts(drawer, `  ${fix!.edits[0]!.text}`))).toEqual([]);
  });

  test("the rod says what a piece that lies about becomes, above the list", () => {
    const text = `${stock}
      part side { from ply  long 30  wide 20 }
      part lid { from ply  long 12  wide 5  count 3 }
      offcut of ply 6 x 13
      cut { part side 1 at 25 x 5 spoiled }`;
    const note = "The spoiled part side, 25 × 5 in, becomes 2 lids, cut to 12 × 5 in; cuts: crosscut at 12 in twice.";
    expect(built(text).rod().notes).toEqual([note]);
    expect(built(text).left().rod().notes).toEqual([note]);
    expect(built(text).markdown()).not.toContain("becomes");
  });

  test("a spoiled piece is written down as all that it becomes by one fix", () => {
    const text = `${stock}
      part side { from ply  long 30  wide 20 }
      part lid { from ply  long 12  wide 5  count 3 }
      part cleat { from ply  long 8  wide 2 }
      cut {
  part side 2 at 29 x 8 spoiled
}`;
    const build = built(text);
    const [spoiled] = benchFindings(build);
    expect(spoiled?.remedy).toBe(
      "2 of them can still become 2 lids, cut to 12 × 5 in; the part cleat, cut to 8 × 2 in; cuts: crosscut at 12 in twice, rip at 5 in twice, rip at 2 in, crosscut at 8 in; the part lid, cut to 12 × 5 in.",
    );
    const fix = spoiled?.fixes.find(({ title }) => title === "Write down what they become");
    const [edit] = fix!.edits;
    const after = text.slice(0, edit!.span.start) + edit!.text + text.slice(edit!.span.end);
    expect(edit!.text).toBe("part lid 3 at 12 x 5\n  part cleat 1 at 8 x 2");
    expect(benchFindings(built(after))).toEqual([]);
    expect(leftIn(built(after))).toEqual(["1 side 30 x 20"]);
  });

  test("a count that is a slip of the pen costs no time, and what is too many is waste", () => {
    const text = `${stock}
      part side { from ply  long 20  wide 5  count 40 }
      cut { part side 1000 at 20 x 5 spoiled  part side 1000 at 21 x 5 spoiled }`;
    const build = built(text);
    const start = performance.now();
    const { saved, waste } = build.rescue();
    expect([saved.length, waste.length]).toEqual([40, 1960]);
    expect(performance.now() - start).toBeLessThan(2000);
  });

  test("what is saved need not be cut again, and what is too small is said to be", () => {
    const text = `${stock}
      part side { from ply  long 20  wide 5  count 2 }
      cut { part side 1 at 21 x 6 spoiled  part side 1 at 3 x 3 spoiled }`;
    const { saved, waste, recut } = built(text).rescue();
    expect(saved).toHaveLength(1);
    expect(waste.map(spareText)).toEqual(["the spoiled part side, 3 × 3 in"]);
    expect(recut.map(({ count }) => count)).toEqual([1]);
  });
});

describe("what is rescued between files", () => {
  const rack = `${stock}offcut of ply 12 x 20\n`;
  const file = (body: string): Build => built(`inches\nuse "rack.scant"\n${body}`, { "rack.scant": rack });

  test("goes to the file that it saves most for, of the same stock", () => {
    const one = file(
      "part lid { from ply  long 10  wide 5 }  part gone { from ply  long 40  wide 20 }  cut { part gone 1 at 30 x 11 spoiled }",
    );
    const two = file("part door { from ply  long 28  wide 10 }");
    expect(savedIn(one, [two])).toEqual([
      "the spoiled part gone, 30 × 11 in -> door 28 x 10",
      "the offcut of ply, 12 × 20 in -> lid 10 x 5",
    ]);
  });

  test("an offcut of the rack is there once, and not where a record uses it up", () => {
    const lid = "part lid { from ply  long 19  wide 10 }";
    const one = file(`${lid}  part gone { from ply  long 40  wide 20 }  cut { part gone 1 at 3 x 3 spoiled }`);
    expect(one.rescue([file(lid)]).saved).toHaveLength(1);
    expect(one.rescue([file(`${lid}  cut { offcut of ply 12 x 20 }`)]).saved).toEqual([]);
  });
});
