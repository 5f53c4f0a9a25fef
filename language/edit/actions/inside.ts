import type { Edit } from "../../core/finding.ts";
import type { Span } from "../../core/span.ts";
import type { Scene } from "../scene.ts";

/** The blanks that a line begins with. */
export function marginOf(text: string, offset: number): string {
  const start = Math.max(text.lastIndexOf("\n", offset - 1), text.lastIndexOf("\r", offset - 1)) + 1;
  return /^[ \t]*/.exec(text.slice(start, offset))![0];
}

/** Puts a line at the beginning of a block, or some words where the whole block stands on one line; `open` is the place behind its bracket. */
export function insideBlock({ text }: Scene, open: Span, written: string): Edit {
  const goesOn = /^[ \t]*[^\s]/.test(text.slice(open.start));
  return { span: open, text: goesOn ? ` ${written}  ` : `\n${marginOf(text, open.start)}  ${written}` };
}
