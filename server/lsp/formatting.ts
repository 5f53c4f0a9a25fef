import type { FormattingOptions, Range, TextEdit } from "vscode-languageserver";
import type { Edit } from "../../language/core/finding.ts";
import { formatEdits, formatLines } from "../../language/edit/format.ts";
import type { Feature, Server } from "./feature.ts";
import { textEdit } from "./workspace-edit.ts";

/** Puts a file, some of its lines, or the line just typed in order. */
export const formatting: Feature = {
  capabilities: {
    documentFormattingProvider: true,
    documentRangeFormattingProvider: { rangesSupport: true },
    documentOnTypeFormattingProvider: { firstTriggerCharacter: "}", moreTriggerCharacter: ["\n"] },
  },
  register(server) {
    const { connection } = server;
    connection.onDocumentFormatting(({ textDocument, options }) =>
      edits(server, textDocument.uri, (uri, text) => formatEdits(uri, text, { indent: indentOf(options) })),
    );
    connection.onDocumentRangeFormatting(({ textDocument, options, range }) =>
      edits(server, textDocument.uri, (uri, text) => inRange(uri, text, options, range)),
    );
    connection.onDocumentRangesFormatting(({ textDocument, options, ranges }) =>
      edits(server, textDocument.uri, (uri, text) => {
        const all = ranges.flatMap((range) => inRange(uri, text, options, range));
        // Two selections of one line want the same of it.
        return [...new Map(all.map((edit) => [edit.span.start, edit])).values()];
      }),
    );
    connection.onDocumentOnTypeFormatting(({ textDocument, options, position, ch }) =>
      edits(server, textDocument.uri, (uri, text) => {
        // The new line is the editor's: it has put the cursor where the maker goes on.
        const line = ch === "\n" ? position.line - 1 : position.line;
        return formatLines(uri, text, { indent: indentOf(options) }, line, line).filter(staysOneLine);
      }),
    );
  },
};

async function edits(
  { session }: Server,
  address: string,
  make: (uri: string, text: string) => readonly Edit[],
): Promise<TextEdit[] | null> {
  const current = await session.current(address);
  return current === undefined ? null : make(current.uri, current.text).map(textEdit);
}

function inRange(uri: string, text: string, options: FormattingOptions, { start, end }: Range): readonly Edit[] {
  return formatLines(uri, text, { indent: indentOf(options) }, start.line, lastLine(start.line, end));
}

function indentOf({ insertSpaces, tabSize }: FormattingOptions): string {
  return insertSpaces ? " ".repeat(Math.max(1, Math.min(8, tabSize))) : "\t";
}

/** A selection that ends before the first letter of a line does not mean that line. */
function lastLine(first: number, end: { readonly line: number; readonly character: number }): number {
  return end.character === 0 && first < end.line ? end.line - 1 : end.line;
}

function staysOneLine({ span, text }: Edit): boolean {
  return span.line === span.endLine && !text.includes("\n");
}
