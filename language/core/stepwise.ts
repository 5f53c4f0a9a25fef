/**
 * Long work in steps of a few milliseconds, each of which says what it makes: whoever runs it can look at other things
 * between two of them, tell how far it is, or leave it where it stands.
 */
export type Stepwise<T> = Generator<string, T, void>;

/** The whole work, without a look at anything else. */
export function atOnce<T>(work: Stepwise<T>): T {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}
