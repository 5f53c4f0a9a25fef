import type { BaseLanguageClient, Disposable } from "vscode-languageclient";
import type { ListDocument } from "../language/view/types.ts";
import {
  cutList,
  type DrawingsAnswer,
  drawings,
  type FileParams,
  list,
  type RodAnswer,
  type RodChangedParams,
  rod,
  rodChanged,
  type TextFile,
} from "../server/protocol.ts";
import { isRodView, readDrawingsAnswer } from "./preview/messages.ts";

/** The server's own messages, seen from the window. All requests reject when the server is not answering. */
export interface Feed {
  /** `undefined` for a file the server knows nothing of. */
  rod(uri: string): Promise<RodAnswer | undefined>;
  /** `undefined` for a file the server knows nothing of. */
  cutList(uri: string): Promise<readonly TextFile[] | undefined>;
  /** Every part and every finding; `undefined` for a file the server knows nothing of. */
  list(uri: string): Promise<ListDocument | undefined>;
  /** The names of the drawings and the one with the id, or else the first; `undefined` as above. */
  drawings(uri: string, id: string): Promise<DrawingsAnswer | undefined>;
  onRodChanged(listener: (uri: string, version: number) => void): Disposable;
}

export function createFeed(client: BaseLanguageClient): Feed {
  const ask = (name: string, params: FileParams & { readonly id?: string }) =>
    client.sendRequest<unknown>(name, params);
  return {
    rod: async (uri) => readAnswer(await ask(rod, { uri })),
    cutList: async (uri) => readFiles(await ask(cutList, { uri })),
    list: async (uri) => readList(await ask(list, { uri })),
    drawings: async (uri, id) => readDrawings(await ask(drawings, { uri, id })),
    onRodChanged: (listener) =>
      client.onNotification(rodChanged, ({ uri, version }: RodChangedParams) => listener(uri, version)),
  };
}

function readAnswer(data: unknown): RodAnswer | undefined {
  if (data === null || data === undefined) return undefined;
  const { version, view, stale } = data as Partial<RodAnswer>;
  if (typeof version !== "number" || typeof stale !== "boolean" || !isRodView(view)) {
    throw new Error("The language server sent a rod that this extension can't read.");
  }
  return { version, view, stale };
}

function readFiles(data: unknown): readonly TextFile[] | undefined {
  if (data === null || data === undefined) return undefined;
  const { files } = data as { readonly files?: unknown };
  if (!Array.isArray(files) || !files.every(isTextFile)) {
    throw new Error("The language server sent a cut list that this extension can't read.");
  }
  return files;
}

function readList(data: unknown): ListDocument | undefined {
  if (data === null || data === undefined) return undefined;
  const { schema, parts, findings } = data as Partial<ListDocument>;
  if (schema !== "scantling/list/1" || !Array.isArray(parts) || !Array.isArray(findings)) {
    throw new Error("The language server sent a list that this extension can't read.");
  }
  return data as ListDocument;
}

function readDrawings(data: unknown): DrawingsAnswer | undefined {
  if (data === null || data === undefined) return undefined;
  const answer = readDrawingsAnswer(data);
  if (answer === undefined) throw new Error("The language server sent drawings that this extension can't read.");
  return answer;
}

function isTextFile(data: unknown): data is TextFile {
  const { name, text } = (data ?? {}) as Partial<TextFile>;
  return typeof name === "string" && typeof text === "string";
}
