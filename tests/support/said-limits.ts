/** The limits that docs/trust.md states, and where in the program each stands, in its own spelling. */
export const limits: readonly {
  readonly what: string;
  readonly value: string;
  readonly where: { readonly file: string; readonly pattern: RegExp };
}[] = [
  of("characters of a file", "2,000,000", "language/syntax/lower.ts", /longestFile = 2_000_000;/),
  of(
    "bytes of a file that the command line reads",
    "4 MiB",
    "server/cli/read-files.ts",
    /mostBytes = 4 \* 1024 \* 1024;/,
  ),
  of("brackets inside brackets", "64", "language/syntax/limits.ts", /deepest = 64;/),
  of("signs in a row", "32", "language/syntax/limits.ts", /mostSigns = 32;/),
  of("signs of arithmetic in one length", "500", "language/syntax/limits.ts", /mostOperators = 500;/),
  of("signs that one number is written with", "200", "language/syntax/lower-expr.ts", /mostDigits = 200;/),
  of("names that one size is taken through", "100", "language/derive/readings.ts", /farthest = 100;/),
  of("files that one build uses", "100", "language/service.ts", /mostFiles = 100;/),
  of(
    "places of one file that cannot be read, said one by one",
    "500",
    "language/syntax/lower.ts",
    /mostProblems = 500;/,
  ),
];

function of(what: string, value: string, file: string, pattern: RegExp) {
  return { what, value, where: { file, pattern } };
}
