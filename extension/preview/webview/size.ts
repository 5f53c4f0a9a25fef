/** A size in two halves, so that sizes below each other end their whole numbers on one line. */
export interface SplitSize {
  readonly whole: string;
  /** A fraction, decimals, a sign, with the space before it: all that is not whole. */
  readonly rest: string;
}

/** `13 3/4` is `13` and ` 3/4`, `45/64` only a rest, `349.5` is `349` and `.5`; together they are the text again. */
export function splitSize(text: string): SplitSize {
  const [, whole = "", rest = ""] = /^(\d+(?![\d/]))?([\s\S]*)$/.exec(text) ?? [];
  return { whole, rest };
}
