export interface MutateGroup {
  /** Patterns of the files that are changed. */
  readonly mutate: readonly string[];
  /** Patterns of the tests that should notice. */
  readonly tests: readonly string[];
}
export const groups: Readonly<Record<string, MutateGroup>>;
export function inNoGroup(root: string): readonly string[];
