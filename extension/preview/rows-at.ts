import type { RodView } from "../../language/view/types.ts";

/** Where the cursor is: a file and a line of it, counted from nought. */
export interface CursorLine {
  readonly uri: string;
  readonly line: number;
}

/** The ids of the parts that are written on the line, or over it; none if there is no cursor in a build file. */
export function rowsAt(view: RodView, at: CursorLine | undefined): readonly string[] {
  if (at === undefined) return [];
  const rows = view.batches.flatMap((batch) => batch.rows);
  return rows
    .filter(({ target }) => target.uri === at.uri && target.line <= at.line && at.line <= target.endLine)
    .map(({ id }) => id);
}
