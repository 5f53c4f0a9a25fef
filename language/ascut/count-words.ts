/** Counts as they are said; each stands at its own place. */
export const countWords: readonly string[] = "no one two three four five six seven eight nine ten eleven twelve".split(
  " ",
);

/** `two`, and figures above twelve. */
export function inWords(count: number): string {
  return countWords[count] ?? String(count);
}
