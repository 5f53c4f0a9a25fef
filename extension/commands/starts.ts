/** A build file to begin with, in `extension/starts` under its id. */
export interface Start {
  readonly id: "framed" | "frameless" | "openings";
  /** What it is saved as, without the ending, if the name is free. */
  readonly file: string;
}

/** In the order in which they are offered. */
export const STARTS: readonly Start[] = [
  { id: "framed", file: "base-case" },
  { id: "frameless", file: "wall-case" },
  { id: "openings", file: "drawers" },
];

/** The first of `base-case.scant`, `base-case-2.scant` and so on that is not taken. */
export async function freeName(file: string, isTaken: (name: string) => Promise<boolean>): Promise<string> {
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? `${file}.scant` : `${file}-${number}.scant`;
    if (!(await isTaken(name))) return name;
  }
}
