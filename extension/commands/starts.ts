/** A build file to begin with, in `extension/starts` under its id. */
export interface Start {
  readonly id: "framed" | "frameless" | "openings";
}

/** In the order in which they are offered. */
export const STARTS: readonly Start[] = [{ id: "framed" }, { id: "frameless" }, { id: "openings" }];
