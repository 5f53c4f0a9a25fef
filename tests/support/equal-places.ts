import { expect } from "vitest";
import { plain, type Span } from "../../language/core/span.ts";

// Places that move with a stretch of text work out their ends: two of them are equal where all that they say is.
expect.addEqualityTesters([
  (a, b) => {
    if (!isPlace(a) || !isPlace(b)) return undefined;
    return JSON.stringify(plain(a)) === JSON.stringify(plain(b));
  },
]);

function isPlace(value: unknown): value is Span {
  if (typeof value !== "object" || value === null) return false;
  return (
    ["uri", "start", "end", "line", "column", "endLine", "endColumn"].every((field) => field in value) && moves(value)
  );
}

/** A place that is plain data is compared as such data is, with whatever else stands in it. */
function moves(value: object): boolean {
  return !Object.hasOwn(value, "start") || Object.keys(value).length === 7;
}
