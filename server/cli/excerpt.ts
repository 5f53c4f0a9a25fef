import { cellsOf } from "../../language/view/wrap.ts";
import { isHarmful } from "./harmless.ts";

/** A place in one line, in UTF-16 units from its start, end exclusive. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export interface Excerpt {
  readonly source: string;
  /** Spaces, then carets under the stretch. */
  readonly carets: string;
}

/** More of a line than this on either side of the stretch is never shown. */
const reach = 400;

/** A line of source with carets under a stretch of it, cut to so many columns around the stretch. Never throws. */
export function excerptOf(line: string, stretch: Stretch, columns: number): Excerpt {
  const from = Math.min(Math.max(0, stretch.from), line.length);
  const to = Math.min(Math.max(from, stretch.to), line.length);
  const start = Math.max(0, from - reach);
  const end = Math.min(line.length, from + reach);
  const { cells, cellAt } = cellsIn(line.slice(start, end));
  const marked = {
    from: cellAt(from - start),
    to: Math.max(cellAt(from - start) + 1, cellAt(Math.min(to, end) - start)),
  };
  const window = windowOf(Math.max(cells.length, marked.to), marked, columns);
  const shown = cells.slice(window.from, window.to);
  if (0 < window.from || 0 < start) {
    // Half a wide character that is left over is blank.
    if (shown[1] === "") shown[1] = " ";
    shown[0] = "…";
  }
  if (window.to < cells.length || end < line.length) {
    if (shown.at(-1) === "") shown[shown.length - 2] = " ";
    shown[shown.length - 1] = "…";
  }
  const last = Math.min(marked.to, window.to);
  return {
    source: shown.join("").trimEnd(),
    carets: `${" ".repeat(marked.from - window.from)}${"^".repeat(Math.max(1, last - marked.from))}`,
  };
}

interface Cells {
  /** One per column: the second half of a wide character is empty, marks that join stand with what they join. */
  readonly cells: string[];
  /** The column at which the character at an offset begins. */
  cellAt(offset: number): number;
}

function cellsIn(text: string): Cells {
  const cells: string[] = [];
  const starts: number[] = [];
  for (const character of text) {
    for (let unit = 0; unit < character.length; unit++) starts.push(cells.length);
    const shown = shownAs(character);
    const width = cellsOf(shown.charAt(0) === " " ? " " : shown);
    if (width === 0 && 0 < cells.length) cells[cells.length - 1] += shown;
    else if (shown.length === 2 && shown === "  ") cells.push(" ", " ");
    else cells.push(shown, ...(width === 2 ? [""] : []));
  }
  return { cells, cellAt: (offset) => starts[offset] ?? cells.length };
}

/** A tab is two spaces wide wherever it stands; what would move the cursor or change the terminal is shown as a dot. */
function shownAs(character: string): string {
  if (character === "\t") return "  ";
  return isHarmful(character) ? "·" : character;
}

/** The columns to show: all if they fit, else the stretch with as much on either side as there is room for. */
function windowOf(total: number, marked: Stretch, columns: number): Stretch {
  if (total <= columns) return { from: 0, to: total };
  const length = Math.min(marked.to - marked.from, columns - 2);
  const before = Math.floor((columns - length) / 2);
  const from = Math.max(0, Math.min(marked.from - before, total - columns));
  return { from, to: from + columns };
}
