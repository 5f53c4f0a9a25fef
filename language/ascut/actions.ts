import type { Edit } from "../core/finding.ts";
import type { CutRow } from "../plan/cut-list.ts";
import { cutList } from "../plan/cut-list.ts";
import { doneIn } from "./left.ts";
import { type Book, type RecordRequest, recordEdits } from "./record.ts";

/** Something that can be written down about a part, with the edits that do. */
export interface CutAction {
  readonly title: string;
  readonly edits: readonly Edit[];
}

/** A word that stands for more rows than this gets one action for each only. */
const fewRows = 2;

/** What can be written down about the parts that are stated between two offsets of the book's own file: the word `sides`, say. */
export function cutActionsAt(book: Book, start: number, end: number): readonly CutAction[] {
  const isHere = ({ parts }: CutRow): boolean =>
    parts.some(({ source }) => source.uri === book.own.uri && source.start <= end && start <= source.end);
  const rows = cutList(book.model)
    .flatMap((batch) => batch.rows)
    .filter(isHere);
  const done = doneIn(book.made);
  return rows.flatMap((row) => {
    const left = row.quantity - done(row.parts);
    const what = `${row.mark}, ${[...new Set(row.parts.map(({ name }) => name))].join(" and ")}`;
    return [
      ...(1 < left ? write(book, `Record as cut: all ${left} left of ${what}`, { part: row.mark, count: left }) : []),
      ...(left === 1 || (1 < left && rows.length <= fewRows)
        ? write(book, `Record as cut: one of ${what}`, { part: row.mark, count: 1 })
        : []),
      ...(rows.length <= fewRows
        ? write(book, `Record as spoiled: one of ${what}`, { part: row.mark, count: 1, spoiled: true })
        : []),
    ];
  });
}

function write(book: Book, title: string, request: RecordRequest): readonly CutAction[] {
  const recording = recordEdits(book, [request]);
  return "refused" in recording ? [] : [{ title, edits: recording.edits }];
}
