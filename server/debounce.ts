export interface Debounce {
  /** Something changed: runs when nothing more has for a while, or when it has waited long enough. */
  later(): void;
  /** Runs as soon as what has arrived together is read. */
  soon(): void;
  /** Forgets what is pending. */
  cancel(): void;
}

export interface Waits {
  /** Milliseconds without a change until it runs. */
  readonly idle: number;
  /** Milliseconds from the first change after which it runs though changes go on. */
  readonly longest: number;
}

/** Runs something once for many changes. */
export function createDebounce({ idle, longest }: Waits, run: () => void): Debounce {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let first: number | undefined;

  const cancel = (): void => {
    clearTimeout(timer);
    timer = undefined;
    first = undefined;
  };
  const runIn = (wait: number): void => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      cancel();
      run();
    }, wait);
  };
  return {
    later() {
      const now = Date.now();
      first ??= now;
      runIn(Math.max(0, Math.min(idle, first + longest - now)));
    },
    soon() {
      first ??= Date.now();
      runIn(0);
    },
    cancel,
  };
}
