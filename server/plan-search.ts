import type { JobPlan } from "./job-plans.ts";

/** Milliseconds of search between two looks at what else has come in: typing must not feel it. */
const slice = 12;

/** Rounds between two looks at the clock. */
const stretch = 16;

/** What a search is told by, and tells. */
export interface Watch {
  /** Seconds that may be spent; what was spent before counts with it if `counts` says so. */
  readonly seconds: number;
  readonly isCancelled: () => boolean;
  /** Called after each slice with what was spent of the time, 0 to 100. */
  readonly onSlice: (percent: number) => void;
}

/** Searches in slices, so that nothing else waits for it: until nothing is left to find (true), called off, or time is over. */
export async function searchInSlices(job: JobPlan, { seconds, isCancelled, onSlice }: Watch): Promise<boolean> {
  const began = performance.now();
  const end = began + 1000 * seconds;
  for (;;) {
    const from = performance.now();
    let isFinished = job.isFinished();
    // However short the time, and however slow a round, each slice gets somewhere.
    do isFinished ||= job.advance(stretch);
    while (!isFinished && performance.now() < from + slice);
    const now = performance.now();
    job.spent.seconds += (now - from) / 1000;
    if (isFinished) return true;
    if (isCancelled() || end <= now) return false;
    onSlice(Math.min(100, Math.floor((100 * (now - began)) / (end - began))));
    await new Promise((go) => setTimeout(go, 0));
  }
}
