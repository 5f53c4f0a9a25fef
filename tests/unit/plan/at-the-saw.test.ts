import { describe, expect, test } from "vitest";
import { toNumber } from "../../../language/core/rational.ts";
import { type CutStep, stepsOf } from "../../../language/plan/steps.ts";
import { createWorkspace } from "../../../language/service.ts";
import { followed } from "../../support/at-the-saw.ts";

const ply = "sheet ply { called 3/4  measures 23/32  size 48 x 96  costs 60 }\n";
const thin = "sheet thin { called 1/4  measures 7/32  size 48 x 96  costs 25 }\n";
const saw = { kerf: 1 / 8, trim: 1 / 4, right: 30, lift: 50 };
const shop = "saw { kerf 1/8  trim 1/4  table left 12 right 30 outfeed 24 }\nlift 50 lb\n";

const sixty = `inches\n${shop}${ply}${thin}${[
  ["side", "ply", 34.5, 23.25, 8],
  ["deck", "ply", 28.5, 22.75, 8],
  ["nailer", "ply", 28.5, 4, 8],
  ["shelf", "ply", 28.25, 20, 6],
  ["box-side", "ply", 21, 5, 12],
  ["box-end", "ply", 25.5, 5, 8],
  ["box-bottom", "thin", 25, 20.5, 6],
  ["back", "thin", 34.5, 30, 4],
]
  .map(
    ([name, stock, long, wide, count]) => `part ${name} { from ${stock}  long ${long}  wide ${wide}  count ${count} }`,
  )
  .join("\n")}\n`;

const jobs: readonly (readonly [string, string, typeof saw])[] = [
  ["sixty parts of thick and thin ply", sixty, saw],
  [
    "offcuts in the rack",
    `inches\n${shop}${ply}offcut of ply 30 x 40\noffcut of ply 12 x 60\npart end { from ply  long 28  wide 14  count 4 }
part slat { from ply  long 56  wide 3 1/2  count 6 }\npart cleat { from ply  long 9  wide 2  count 5 }\n`,
    saw,
  ],
  [
    "long narrow parts",
    `inches\n${shop}board ash { thick 3/4  wide 5, 7  long 96, 120  costs 6 per board foot }
part rail { from ash  long 58  wide 2 1/4  count 4 }\npart stile { from ash  long 31  wide 2 1/4  count 6 }
part slat { from ash  long 22 1/2  wide 1 1/2  count 9 }\npart foot { from ash  long 6  wide 1 1/2  count 4 }\n`,
    saw,
  ],
  [
    "a part wider than half a sheet",
    `inches\n${shop}${ply}part top { from ply  long 80  wide 30  count 2 }\npart leg { from ply  long 28  wide 7  count 8 }\n`,
    saw,
  ],
  [
    "millimetres",
    `millimetres\nsaw { kerf 3  trim 8  table left 300 right 750 outfeed 600 }\nlift 25 kg
sheet birch { called 18  measures 17.7  size 1220 x 2440  costs 70 }\npart side { from birch  long 720  wide 560  count 6 }
part shelf { from birch  long 764  wide 520  count 4 }\npart rail { from birch  long 764  wide 90  count 7 }\n`,
    { kerf: 3 / 25.4, trim: 8 / 25.4, right: 750 / 25.4, lift: 25 / 0.45359237 },
  ],
];

function stepsFor(text: string): readonly CutStep[] {
  const workspace = createWorkspace({ root: undefined });
  workspace.set("file:///shop/a.scant", text);
  const build = workspace.build("file:///shop/a.scant");
  return stepsOf(build.derivation.context, build.plan({ steps: 500 }));
}

const maple = `inches\nsaw { kerf 1/8  trim 0 }\nboard maple { thick 3/4  wide 3  long 64 }\n`;

describe("short pieces", () => {
  test("what is narrower than its board is ripped while it hangs together, and cut to length after", () => {
    // A rail of 30 by 3 and three cleats of 9 by 2 from a board of 3 by 64: one rip of what is left of the board.
    const steps = stepsFor(
      `${maple}part rail { from maple  long 30  wide 3 }\npart cleat { from maple  long 9  wide 2  count 3 }\n`,
    );
    const rips = steps.filter(({ kind }) => kind === "rip");
    expect(rips.map(({ height }) => toNumber(height))).toEqual([64 - 30 - 1 / 8]);
    expect(steps).toHaveLength(5);
    expect(steps.slice(2).map(({ tool, setting }) => [tool, toNumber(setting)])).toEqual([
      ["mitre saw", 9],
      ["mitre saw", 9],
      ["mitre saw", 9],
    ]);
    // The last is cut from what is left: 33 7/8 less two of 9 and two kerfs.
    expect(steps.map(({ short }) => short)).toEqual([false, false, false, false, false]);
  });

  test("a board is never ripped at the mitre saw, and a piece under a foot along the fence is not held by hand", () => {
    const steps = stepsFor(
      `${maple.replace("wide 3  long 64", "wide 8  long 7")}part foot { from maple  long 6  wide 2  count 3 }\n`,
    );
    for (const { kind, tool, short } of steps) {
      expect([tool, short]).toEqual([kind === "rip" ? "table saw" : "mitre saw", true]);
    }
    expect(steps.filter(({ kind }) => kind === "rip").length).toBeGreaterThan(1);
  });

  test("that it is short is said, with what holds it", () => {
    const workspace = createWorkspace({ root: undefined });
    const text = `${maple.replace("wide 3  long 64", "wide 8  long 7")}part foot { from maple  long 6  wide 2  count 3 }\n`;
    workspace.set("file:///shop/a.scant", text);
    const build = workspace.build("file:///shop/a.scant");
    const words = build.planText(build.plan({ steps: 100 })).replace(/\s+/g, " ");
    expect(words).toContain("SHORT: clamp it in a sled, or cut it by hand.");
    expect(words).toContain("SHORT: clamp it to fence or table.");
    expect(words).toContain("be wary of any piece of 12 in or less");
    expect(words).toContain("with nothing off for checked ends, knots or a crooked edge");
  });
});

describe("followed cut by cut, with nothing but a stack of pieces", () => {
  test.each(jobs)(
    "%s: each cut has its piece and leaves what it says, and no hand comes near the blade",
    (_, text, at) => {
      const workspace = createWorkspace({ root: undefined });
      workspace.set("file:///shop/a.scant", text);
      const build = workspace.build("file:///shop/a.scant");
      const plan = build.plan({ steps: 2_000 });
      expect(plan.stocks.flatMap((stock) => stock.unplaced)).toEqual([]);
      const steps = stepsOf(build.derivation.context, plan);
      expect(steps.length).toBeGreaterThan(10);
      expect(followed(plan, steps, at)).toEqual([]);
    },
  );
});
