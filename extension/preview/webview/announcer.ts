const APART_MS = 1000;

/** What the announcer needs of the clock. */
export interface Clock {
  now(): number;
  later(task: () => void, ms: number): void;
}

/** Says a text in a live region, at most one a second; of those that come quicker, the last one is said. */
export function createAnnouncer(region: Element, clock: Clock): (text: string) => void {
  let last = Number.NEGATIVE_INFINITY;
  let waiting: string | undefined;
  const say = () => {
    if (waiting === undefined) return;
    if (region.textContent !== waiting) region.textContent = waiting;
    waiting = undefined;
    last = clock.now();
  };
  return (text) => {
    const pending = waiting !== undefined;
    waiting = text;
    if (pending) return;
    const wait = last + APART_MS - clock.now();
    if (wait <= 0) say();
    else clock.later(say, wait);
  };
}
