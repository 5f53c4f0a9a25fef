/** A place in a build file: offsets from its start and zero-based lines and columns, end exclusive. */
export interface Span {
  readonly uri: string;
  readonly start: number;
  readonly end: number;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** A word as it stands in a file. */
export interface Word {
  readonly text: string;
  readonly span: Span;
}

/** The place from the start of `a` to the end of `b`, both of one file. */
export function spanFrom(a: Span, b: Span): Span {
  return { ...a, end: b.end, endLine: b.endLine, endColumn: b.endColumn };
}

/** Whether the place holds the offset, its end counted in, so that a cursor behind a word still finds it. */
export function holds(span: Span, uri: string, offset: number): boolean {
  return span.uri === uri && span.start <= offset && offset <= span.end;
}

/** The very beginning of a file, for what concerns it as a whole. */
export function startOfFile(uri: string): Span {
  return { uri, start: 0, end: 0, line: 0, column: 0, endLine: 0, endColumn: 0 };
}
