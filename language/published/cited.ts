/** How far a value can be trusted: read from the document, from a transcription of it, usual in the trade without a source, or remembered. */
export type Tag = "published" | "as transcribed" | "common practice" | "from memory";

/** A value with its standing and the place it was read. */
export type Cited<T> = { readonly value: T; readonly tag: Tag; readonly source: string };

/** The standing and place shared by every row of a table. */
export type Source = { readonly tag: Tag; readonly source: string };

const trust: readonly Tag[] = ["published", "as transcribed", "common practice", "from memory"];

/** Joins a value to the source it was read from. */
export function cite<T>(value: T, from: Source): Cited<T> {
  return { value, tag: from.tag, source: from.source };
}

/** The least trusted of the given tags, so that a result never claims more than its weakest input; "published" for an empty list. */
export function weakest(tags: readonly Tag[]): Tag {
  return trust[Math.max(0, ...tags.map((tag) => trust.indexOf(tag)))] ?? "from memory";
}

/** True for a finite number of zero or more, the only quantities the formulas of this folder accept. */
export function isQuantity(value: number): boolean {
  return Number.isFinite(value) && 0 <= value;
}
