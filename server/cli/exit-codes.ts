/** What the program says to whoever started it. */
export const exitCodes = {
  /** No errors; there may be warnings and hints. */
  fine: 0,
  /** Errors stand in a build file. */
  errors: 1,
  /** The arguments make no sense, or a file could not be read or written. */
  unusable: 2,
  /** The user stopped it, as by Ctrl+C: 128 and the number of that signal, as shells count. */
  stopped: 130,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** The graver of two: what could not be done at all outweighs what is wrong in a file. */
export function graver(a: ExitCode, b: ExitCode): ExitCode {
  return a < b ? b : a;
}
