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

/**
 * A stretch of a file that keeps its places while it stays as it is: where it begins now. The only thing in a build that
 * changes: when lines are written above it, it is moved, and every place in it with it.
 */
export interface Stretch {
  offset: number;
  line: number;
}

/** A place of a stretch. It is read like any other place; it must not be spread, since what it says it works out. */
class PlaceInStretch implements Span {
  readonly uri: string;
  readonly column: number;
  readonly endColumn: number;
  readonly #stretch: Stretch;
  readonly #from: number;
  readonly #to: number;
  readonly #down: number;
  readonly #endDown: number;

  constructor(stretch: Stretch, place: Span) {
    this.uri = place.uri;
    this.column = place.column;
    this.endColumn = place.endColumn;
    this.#stretch = stretch;
    this.#from = place.start - stretch.offset;
    this.#to = place.end - stretch.offset;
    this.#down = place.line - stretch.line;
    this.#endDown = place.endLine - stretch.line;
  }

  get start(): number {
    return this.#stretch.offset + this.#from;
  }

  get end(): number {
    return this.#stretch.offset + this.#to;
  }

  get line(): number {
    return this.#stretch.line + this.#down;
  }

  get endLine(): number {
    return this.#stretch.line + this.#endDown;
  }

  /** The place with other ends, in the same stretch. */
  like(place: Span): Span {
    return new PlaceInStretch(this.#stretch, place);
  }

  toJSON(): Span {
    return plain(this);
  }
}

/** The place, given as it is now, as one that moves with its stretch. */
export function placeIn(stretch: Stretch, place: Span): Span {
  return new PlaceInStretch(stretch, place);
}

/** The place as it is now, in fields of its own. */
export function plain({ uri, start, end, line, column, endLine, endColumn }: Span): Span {
  return { uri, start, end, line, column, endLine, endColumn };
}

/** The place with some of its ends put elsewhere in the same file; where it moves with a stretch, they do too. */
export function placedAt(span: Span, ends: Partial<Omit<Span, "uri">>): Span {
  const place = { ...plain(span), ...ends };
  return span instanceof PlaceInStretch ? span.like(place) : place;
}

/** The place from the start of `a` to the end of `b`, both of one block. */
export function spanFrom(a: Span, b: Span): Span {
  return placedAt(a, { end: b.end, endLine: b.endLine, endColumn: b.endColumn });
}

/** The place from the start of `a` up to the start of `b`, both of one block. */
export function spanUpTo(a: Span, b: Span): Span {
  return placedAt(a, { end: b.start, endLine: b.line, endColumn: b.column });
}

/** The place of no length just behind a place. */
export function behind(span: Span): Span {
  return placedAt(span, { start: span.end, line: span.endLine, column: span.endColumn });
}

/** The place of no length just before a place. */
export function before(span: Span): Span {
  return spanUpTo(span, span);
}

/** Whether the place holds the offset, its end counted in, so that a cursor behind a word still finds it. */
export function holds(span: Span, uri: string, offset: number): boolean {
  return span.uri === uri && span.start <= offset && offset <= span.end;
}

/** The very beginning of a file, for what concerns it as a whole. */
export function startOfFile(uri: string): Span {
  return { uri, start: 0, end: 0, line: 0, column: 0, endLine: 0, endColumn: 0 };
}
