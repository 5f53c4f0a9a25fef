import type { BaseLanguageClient, Disposable } from "vscode-languageclient";
import type { RodAnswer } from "./preview/controller.ts";
import { isRodView } from "./preview/messages.ts";

/** A file the server has written in memory, to stand beside the build file. */
export interface ListFile {
  /** A bare file name. */
  readonly name: string;
  readonly text: string;
}

/** The server's own messages, seen from the window. All requests reject when the server is not answering. */
export interface Feed {
  rod(uri: string): Promise<RodAnswer | undefined>;
  /** `undefined` for a file the server knows nothing of. */
  cutList(uri: string): Promise<readonly ListFile[] | undefined>;
  onRodChanged(listener: (uri: string, version: number) => void): Disposable;
}

export function createFeed(client: BaseLanguageClient): Feed {
  return {
    rod: async (uri) => readAnswer(await client.sendRequest<unknown>("scantling/rod", { uri })),
    cutList: async (uri) => readFiles(await client.sendRequest<unknown>("scantling/cutList", { uri })),
    onRodChanged: (listener) =>
      client.onNotification("scantling/rodChanged", (params: { readonly uri: string; readonly version: number }) =>
        listener(params.uri, params.version),
      ),
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

function readFiles(data: unknown): readonly ListFile[] | undefined {
  if (data === null || data === undefined) return undefined;
  const { files } = data as { readonly files?: unknown };
  if (!Array.isArray(files) || !files.every(isListFile)) {
    throw new Error("The language server sent a cut list that this extension can't read.");
  }
  return files;
}

function isListFile(data: unknown): data is ListFile {
  const { name, text } = (data ?? {}) as Partial<ListFile>;
  return typeof name === "string" && typeof text === "string";
}
