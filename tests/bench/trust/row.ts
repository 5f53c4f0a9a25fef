/** One line of the table of results in docs/trust.md. */
export interface Row {
  readonly what: string;
  readonly result: string;
  /** What the result should be; empty where it is only noted. */
  readonly aim: string;
  /** Whether it is; `undefined` where it is only noted. */
  readonly holds: boolean | undefined;
}

/** For a quick look that everything still runs: small sizes, and figures that mean nothing. */
export const smoke = process.argv.includes("--smoke");

/** Prints rows for people, or with `--json` for the script that writes the table. */
export function say(rows: readonly Row[]): void {
  if (process.argv.includes("--json")) {
    console.log(JSON.stringify(rows));
    return;
  }
  for (const { what, result, aim, holds } of rows) {
    console.log(`${what}: ${result}${aim === "" ? "" : ` (aim: ${aim}${holds === false ? "; NOT MET" : ""})`}`);
  }
}

/** A result that must stay below a bound. */
export function atMost(what: string, value: number, bound: number, unit: string, more = ""): Row {
  const digits = bound < 20 ? 2 : 0;
  return {
    what,
    result: `${value.toFixed(digits)} ${unit}${more}`,
    aim: `at most ${bound} ${unit}`,
    holds: value <= bound,
  };
}

/** The value that 95 of a hundred do not pass. */
export function p95(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(0.95 * sorted.length) - 1)] ?? Number.NaN;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
