import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bestMatching } from "../../../language/ascut/matching.ts";
import { toNumber } from "../../../language/core/rational.ts";
import type { Build } from "../../../language/service.ts";
import { spareText } from "../../../language/view/day.ts";
import { built } from "../../support/built.ts";
import { benchFindings, drawer, withCuts } from "./bench.ts";

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

describe("what is rescued from one stock", () => {
  const size = fc.record({ long: fc.integer({ min: 2, max: 9 }), wide: fc.integer({ min: 1, max: 6 }) });
  const few = fc.array(size, { minLength: 1, maxLength: 4 });

  test("saves as much area as any way of giving spoiled pieces and offcuts to parts", () => {
    fc.assert(
      fc.property(few, few, few, (wanted, spoiled, offcuts) => {
        const text = [
          stock,
          ...wanted.map(({ long, wide }, at) => `part want-${at} { from ply  long ${long}  wide ${wide} }`),
          ...spoiled.map((_, at) => `part gone-${at} { from ply  long 40  wide 20 }`),
          ...offcuts.map(({ long, wide }) => `offcut of ply ${wide} x ${long}`),
          "cut {",
          ...spoiled.map(({ long, wide }, at) => `part gone-${at} 1 at ${long} x ${wide} spoiled`),
          "}",
        ].join("\n");
        const spares = [...spoiled, ...offcuts];
        // Grain runs along the length of both, so that a part cannot be turned in its spare.
        const most = best(spares.length, wanted.length, (row, column) => {
          const [spare, part] = [spares[row]!, wanted[column]!];
          const fits = part.long <= spare.long && part.wide <= spare.wide;
          return fits ? BigInt(part.long * part.wide) : undefined;
        });
        expect(toNumber(built(text).rescue().area)).toBe(Number(most));
      }),
      { numRuns: 60 },
    );
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
      offcut of ply 20 x 30
      offcut of ply 6 x 11`;
    expect(savedIn(built(text))).toEqual(["the offcut of ply, 6 × 11 in -> lid 10 x 5"]);
  });

  test("keeps to the grain, except where a part has none", () => {
    const text = (grain: string): string => `${stock}
      part lid { from ply  long 20  wide 5 ${grain} }
      offcut of ply 21 x 8`;
    expect(savedIn(built(text("")))).toEqual([]);
    expect(savedIn(built(text("grain none")))).toHaveLength(1);
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
    const one = file("part lid { from ply  long 10  wide 5 }");
    expect(one.rescue([file("part lid { from ply  long 10  wide 5 }")]).saved).toHaveLength(1);
    const used = file("part lid { from ply  long 10  wide 5 }  cut { offcut of ply 12 x 20 }");
    expect(one.rescue([used]).saved).toEqual([]);
  });
});
