/** Long enough for an editor that shares two cores with others; a wait that is fulfilled never costs it. */
export const PATIENCE_MS = 60_000;

const POLL_MS = 100;

/**
 * Asks until the answer is neither `false` nor `undefined` and resolves to it; rejects after `timeout` ms, saying what
 * was waited for and, if the asking threw, the last reason.
 */
export async function eventually<T>(
  what: string,
  ask: () => Promise<T | false | undefined>,
  timeout = PATIENCE_MS,
): Promise<T> {
  const end = Date.now() + timeout;
  for (;;) {
    let reason = "";
    try {
      const answer = await ask();
      if (answer !== false && answer !== undefined) return answer;
    } catch (error) {
      reason = `: ${error instanceof Error ? error.message : String(error)}`;
    }
    if (end <= Date.now()) throw new Error(`Waited ${timeout} ms in vain for ${what}${reason}`);
    await new Promise((wake) => setTimeout(wake, POLL_MS));
  }
}
