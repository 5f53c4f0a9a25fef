// npm run bench: the program's own speed, as ratios to langium's bare parse of the same text in the same run.
// `--smoke` runs each once, to see that it still runs.
import { derive } from "../../language/derive/derive.ts";
import { createWorkspace } from "../../language/service.ts";
import { lower } from "../../language/syntax/lower.ts";
import { bareParse } from "../support/bare-parse.ts";

const smoke = process.argv.includes("--smoke");
const rounds = smoke ? 1 : 15;

const rows = [
  measure("50 cases, 200 boxes", manyCases(smoke ? 5 : 50, eachBox)),
  measure("the same, by ranges", manyCases(smoke ? 5 : 50, byRange)),
  measure("one case, 4 boxes", manyCases(1, eachBox)),
];

console.log(`median of ${rounds}; every figure of a line is from one run on one text\n`);
console.log("text                   lines   parse ms   lowering/parse   derivation/parse   whole build/parse");
for (const row of rows) {
  console.log(
    `${row.name.padEnd(22)} ${String(row.lines).padStart(5)} ${row.parse.toFixed(1).padStart(10)} ${ratio(row.lower, row.parse).padStart(16)} ${ratio(row.derive, row.parse).padStart(18)} ${ratio(row.build, row.parse).padStart(19)}`,
  );
}
console.log(`\n${rows.length} passed, 0 failed`);

function ratio(part: number, whole: number): string {
  return `${(part / whole).toFixed(2)} ×`;
}

interface Row {
  readonly name: string;
  readonly lines: number;
  readonly parse: number;
  readonly lower: number;
  readonly derive: number;
  readonly build: number;
}

/** Parse, lowering beyond the parse, derivation alone and a whole build, taken in turn so that all meet the same noise. */
function measure(name: string, text: string): Row {
  const uri = "file:///bench/bench.scant";
  const times = { parse: [] as number[], lower: [] as number[], derive: [] as number[], build: [] as number[] };
  for (let round = 0; round < rounds; round++) {
    const parsed = timed(() => bareParse(text));
    const lowered = timed(() => lower(text, uri));
    const derived = timed(() => derive(lowered.value));
    const built = timed(() => {
      const workspace = createWorkspace({ root: undefined });
      workspace.set(uri, text);
      return workspace.build(uri);
    });
    if (built.value.findings.some((finding) => finding.severity === "error")) {
      throw new Error(`the bench's own text has errors: ${built.value.findings[0]?.message}`);
    }
    times.parse.push(parsed.ms);
    times.lower.push(Math.max(0, lowered.ms - parsed.ms));
    times.derive.push(derived.ms);
    times.build.push(built.ms);
  }
  return {
    name,
    lines: text.split("\n").length,
    parse: median(times.parse),
    lower: median(times.lower),
    derive: median(times.derive),
    build: median(times.build),
  };
}

function timed<T>(run: () => T): { readonly value: T; readonly ms: number } {
  const start = performance.now();
  const value = run();
  return { value, ms: performance.now() - start };
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}

/** Each box and front in a block of its own, as they stand when every drawer holds something else. */
function eachBox(n: number): string {
  return [1, 2, 3, 4]
    .map(
      (drawer) => `box for drawer-${n}-${drawer} {
  sides ply   bottom thin in groove 1/4 up 3/8
  corners rabbet 3/8
  slides plain
  holds ${10 + drawer} lb
}
front for drawer-${n}-${drawer} {
  overlay 3/8
  slab ply
}
`,
    )
    .join("");
}

/** One block for all drawers of a case: the least text for the most parts. */
function byRange(n: number): string {
  return `box for drawer-${n}-1 to drawer-${n}-4 {
  sides ply   bottom thin in groove 1/4 up 3/8
  corners rabbet 3/8
  slides plain
}
front for drawer-${n}-1 to drawer-${n}-4 { overlay 3/8  slab ply }
`;
}

function manyCases(count: number, fill: (n: number) => string): string {
  const head = `project "Bench"
inches
sheet ply { called 3/4  measures 45/64  size 48 x 96 }
sheet thin { called 1/4  measures 13/64  size 48 x 96 }
board ash { thick 3/4  wide 5 1/2  long 96 }
slides plain {
  mount side  extension full
  lengths 10 to 28 by 2
  clearance 1/2 +1/32 -0  above 1/4  below 1/4  behind 1/2
  carries 100 lb
}
`;
  const cases = Array.from({ length: count }, (_, index) => {
    const n = index + 1;
    return `case base-${n} {
  wide 24  high 34 1/2  deep 24
  panels ply  back thin in rabbet 3/8
  kick 4 high 3 deep
  frame ash {
    stiles 1 1/2  rails 1 1/2
    down { openings drawer-${n}-1 to drawer-${n}-4 equal, rails 1 }
  }
}
${fill(n)}`;
  });
  return head + cases.join("");
}
