/** A size as its text is aligned: whole numbers end on one line, and what follows them begins there. */
export interface SplitSize {
  readonly whole: string;
  /** What stands between the two. */
  readonly gap: string;
  /** A fraction, decimals, a sign: all that is not whole. */
  readonly rest: string;
}

/** `13 3/4` is `13` and `3/4`, `45/64` only a rest, `349.5` is `349` and `.5`; together they are the text again. */
export function splitSize(text: string): SplitSize {
  const [, whole = "", gap = "", rest = ""] = /^(\d+(?![\d/]))?(\s*)([\s\S]*)$/.exec(text) ?? [];
  return { whole, gap, rest };
}
