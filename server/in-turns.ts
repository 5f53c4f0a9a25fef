import type { Stepwise } from "../language/core/stepwise.ts";

/** Milliseconds of work between two looks at what else has come in. */
const slice = 20;

/** How work is watched: told what it is at now and then, and asked as often whether it was called off. */
export interface Watch {
  readonly onStep?: ((what: string) => void) | undefined;
  readonly isCancelled?: (() => boolean) | undefined;
}

/** Does work in slices, so that nothing else waits for it long; `undefined` once it was called off. */
export async function inTurns<T>(work: Stepwise<T>, { onStep, isCancelled }: Watch): Promise<T | undefined> {
  let end = performance.now() + slice;
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    if (performance.now() < end) continue;
    await aTurn();
    if (isCancelled?.() === true) return undefined;
    onStep?.(step.value);
    end = performance.now() + slice;
  }
}

/** Until everything that has come in meanwhile was looked at. */
export function aTurn(): Promise<void> {
  return new Promise((go) => setTimeout(go, 0));
}
