/** A word of a line, and the blanks before it: how many there are, at least should be, and at most where nothing is lined up. */
export interface Cell {
  readonly text: string;
  readonly column: number;
  readonly gap: number;
  readonly least: number;
  readonly most: number;
  /** What it is in its statement: only words of one role stand in one column on purpose. Missing: it never does. */
  readonly role: number | undefined;
}

export interface CodeLine {
  readonly margin: string;
  /** Whether it belongs to the line before: of the same depth, with no blank line between. */
  readonly joined: boolean;
  readonly cells: readonly Cell[];
  /** A comment behind the code, or alone on its line if there are no cells. */
  readonly comment: { readonly text: string; readonly column: number } | undefined;
  readonly blank: boolean;
}

/** More blanks than these between two words are only kept where they line something up. */
const widest = 3;

/**
 * The lines as texts, with what stood in columns standing in columns again: words of joined lines that began in one
 * column, one of them with more than a blank before it; and comments that began in one column, down to a blank line.
 */
export function lineUp(lines: readonly CodeLine[]): readonly string[] {
  const texts = lines.map(() => "");
  const made = lines.map(() => 0);
  for (const chain of chainsOf(lines)) {
    // Whatever stands before the chain in its lines has its place already: chains come from left to right.
    for (const [line, cell] of chain) writeUpTo(lines, texts, made, line, cell);
    const gap = Math.min(widest, ...chain.map(([line, cell]) => lines[line]!.cells[cell]!.gap));
    const ends = chain.map(([line, cell]) => texts[line]!.length + Math.max(gap, lines[line]!.cells[cell]!.least));
    const column = Math.max(...ends);
    for (const [line, cell] of chain) {
      texts[line] = texts[line]!.padEnd(column) + lines[line]!.cells[cell]!.text;
      made[line] = cell + 1;
    }
  }
  lines.forEach((line, index) => {
    writeUpTo(lines, texts, made, index, line.cells.length);
  });
  return withComments(lines, texts);
}

function writeUpTo(lines: readonly CodeLine[], texts: string[], made: number[], index: number, end: number): void {
  const { cells, margin } = lines[index]!;
  for (let at = made[index]!; at < end; at++) {
    const cell = cells[at]!;
    texts[index] =
      at === 0
        ? margin + cell.text
        : texts[index] + " ".repeat(Math.max(cell.least, Math.min(cell.gap, cell.most))) + cell.text;
  }
  made[index] = Math.max(made[index]!, end);
}

type At = readonly [line: number, cell: number];

/** Words that stand in one column, from left to right; a column of one word is none. */
function chainsOf(lines: readonly CodeLine[]): readonly (readonly At[])[] {
  const chains: { readonly column: number; readonly places: At[] }[] = [];
  let above = new Map<
    number,
    { readonly cell: Cell; readonly chain: { readonly column: number; readonly places: At[] } }
  >();
  lines.forEach((line, index) => {
    const own = new Map<
      number,
      { readonly cell: Cell; readonly chain: { readonly column: number; readonly places: At[] } }
    >();
    line.cells.forEach((cell, at) => {
      if (at === 0 || cell.role === undefined) return;
      const over = line.joined ? above.get(cell.column) : undefined;
      const tied = over !== undefined && over.cell.role === cell.role && (1 < cell.gap || 1 < over.cell.gap);
      const chain = tied ? over.chain : { column: cell.column, places: [] };
      if (!tied) chains.push(chain);
      chain.places.push([index, at]);
      own.set(cell.column, { cell, chain });
    });
    above = own;
  });
  return chains
    .filter(({ places }) => 1 < places.length)
    .sort((a, b) => a.column - b.column)
    .map(({ places }) => places);
}

function withComments(lines: readonly CodeLine[], texts: readonly string[]): readonly string[] {
  const made = [...texts];
  let run: number[] = [];
  const finish = (): void => {
    const columns = run.map((index) => lines[index]!.comment!.column);
    const ends = run.map((index) => texts[index]!.length);
    const gaps = run.map((index, at) => columns[at]! - sourceEnd(lines[index]!));
    // One alone keeps its distance; several keep their column, if the code has not grown into it.
    const column =
      run.length === 1 ? ends[0]! + Math.max(1, gaps[0]!) : Math.max(columns[0]!, ...ends.map((end) => end + 1));
    for (const index of run) made[index] = texts[index]!.padEnd(column) + lines[index]!.comment!.text;
    run = [];
  };
  lines.forEach((line, index) => {
    if (line.blank && 0 < run.length) finish();
    const { comment } = line;
    if (comment === undefined) return;
    if (line.cells.length === 0) {
      made[index] = line.margin + comment.text;
      return;
    }
    const first = run[0];
    if (first !== undefined && lines[first]!.comment!.column !== comment.column) finish();
    run.push(index);
  });
  if (0 < run.length) finish();
  return made;
}

function sourceEnd({ cells }: CodeLine): number {
  const last = cells.at(-1);
  return last === undefined ? 0 : last.column + last.text.length;
}
