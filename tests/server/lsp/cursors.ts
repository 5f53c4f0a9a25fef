import type { Position, Range, TextEdit, WorkspaceEdit } from "vscode-languageserver-protocol";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Editor } from "../editor.ts";
import { inProcess } from "../editor.ts";

/** A text with named cursors in it, written `«name»`. */
export interface Marked {
  readonly text: string;
  at(cursor: string): Position;
  /** The first place of a piece of the text, from the offset of a cursor on if one is named. */
  rangeOf(piece: string, from?: string): Range;
}

export function marked(source: string): Marked {
  const cursors = new Map<string, number>();
  let text = "";
  for (const [index, piece] of source.split(/«([^»]*)»/).entries()) {
    if (index % 2 === 0) text += piece;
    else cursors.set(piece, text.length);
  }
  const document = TextDocument.create("file:///", "scantling", 0, text);
  return {
    text,
    at(cursor) {
      const offset = cursors.get(cursor);
      if (offset === undefined) throw new Error(`no cursor ${cursor}`);
      return document.positionAt(offset);
    },
    rangeOf(piece, from) {
      const start = text.indexOf(piece, from === undefined ? 0 : cursors.get(from));
      if (start < 0) throw new Error(`no "${piece}"`);
      return { start: document.positionAt(start), end: document.positionAt(start + piece.length) };
    },
  };
}

export const mainFile = "file:///shop/main.scant";

/** An editor with a marked text open, beside others that lie in the same folder. */
export interface Bench extends Marked {
  readonly editor: Editor;
  readonly files: ReadonlyMap<string, string>;
  /** Asks about a cursor. */
  ask<T>(method: string, cursor: string, more?: object): Promise<T>;
  /** Asks about the whole file. */
  askFile<T>(method: string, more?: object): Promise<T>;
  /** The texts after an edit, by address. */
  after(edit: WorkspaceEdit | null | undefined): ReadonlyMap<string, string>;
}

/** `settings` are those of the inlay hints; the editor has none if left out. */
export async function bench(
  source: string,
  others: Readonly<Record<string, string>> = {},
  settings?: () => object,
): Promise<Bench> {
  const own = marked(source);
  const files = new Map(Object.entries(others).map(([name, text]) => [`file:///shop/${name}`, text]));
  const editor = await inProcess(
    { readDisk: async (uri) => files.get(uri) },
    {
      folders: ["file:///shop"],
      buildFiles: () => [mainFile, ...files.keys()],
      capabilities: {
        workspace: { workspaceEdit: { documentChanges: true }, configuration: settings !== undefined },
        textDocument: {
          publishDiagnostics: { relatedInformation: true },
          completion: { completionItem: { snippetSupport: true } },
        },
      },
      ...(settings === undefined ? {} : { settings }),
    },
  );
  files.set(mainFile, own.text);
  editor.open(mainFile, own.text);
  await editor.diagnosticsOf(mainFile, 1);
  const textDocument = { uri: mainFile };
  return {
    ...own,
    editor,
    files,
    ask: (method, cursor, more = {}) =>
      editor.connection.sendRequest(method, { textDocument, position: own.at(cursor), ...more }),
    askFile: (method, more = {}) => editor.connection.sendRequest(method, { textDocument, ...more }),
    after: (edit) => applied(files, edit),
  };
}

export function applied(
  files: ReadonlyMap<string, string>,
  edit: WorkspaceEdit | null | undefined,
): ReadonlyMap<string, string> {
  const texts = new Map(files);
  for (const change of edit?.documentChanges ?? []) {
    if (!("textDocument" in change)) throw new Error("only edits of texts are looked for");
    const { uri } = change.textDocument;
    const document = TextDocument.create(uri, "scantling", 0, texts.get(uri) ?? "");
    texts.set(uri, TextDocument.applyEdits(document, change.edits as TextEdit[]));
  }
  return texts;
}

export function edited(text: string, edits: readonly TextEdit[] | null): string {
  return TextDocument.applyEdits(TextDocument.create("file:///", "scantling", 0, text), [...(edits ?? [])]);
}

/** What a range holds. */
export function textIn(text: string, range: Range): string {
  return TextDocument.create("file:///", "scantling", 0, text).getText(range);
}
