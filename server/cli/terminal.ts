import { harmless } from "./harmless.ts";

/** A stream as far as a line of progress needs one. */
export interface Screen {
  readonly isTTY?: boolean | undefined;
  readonly columns?: number | undefined;
  write(text: string): unknown;
}

/** One line that says what is under way, each in the place of the one before. */
export interface ProgressLine {
  show(text: string): void;
  /** Takes it away; to be called before anything else is printed. */
  clear(): void;
}

/** Milliseconds between two lines: more could not be read. */
const apart = 100;

/** Shows nothing where nobody looks at a terminal, nor on one that cannot take a line back. */
export function progressLine(screen: Screen, environment: Readonly<Record<string, string | undefined>>): ProgressLine {
  const isShown = screen.isTTY === true && environment["TERM"] !== "dumb";
  let last = Number.NEGATIVE_INFINITY;
  let isThere = false;
  return {
    show(text) {
      if (!isShown || performance.now() < last + apart) return;
      last = performance.now();
      isThere = true;
      // One column is left free: a full line would wrap, and only its second half would go.
      const columns = screen.columns ?? 0;
      const room = (columns <= 1 ? 80 : columns) - 1;
      screen.write(`\r\u001b[2K${[...harmless(text)].slice(0, room).join("")}`);
    },
    clear() {
      if (!isThere) return;
      isThere = false;
      screen.write("\r\u001b[2K");
    },
  };
}
