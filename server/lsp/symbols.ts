import type { DocumentSymbol, WorkspaceSymbol } from "vscode-languageserver";
import { SymbolKind } from "vscode-languageserver";
import { fileName } from "../../language/core/file-name.ts";
import { outlineOf } from "../../language/edit/outline.ts";
import type { SymbolKind as Kind, TextSymbol } from "../../language/edit/symbols.ts";
import { symbolsOf } from "../../language/edit/symbols.ts";
import { buildFilesKnown } from "./build-files.ts";
import type { Feature, Server } from "./feature.ts";
import { rangeOf } from "./places.ts";

/** The outline of a file, and things of all files by name. */
export const symbols: Feature = {
  capabilities: { documentSymbolProvider: { label: "Scantling" }, workspaceSymbolProvider: true },
  register(server) {
    server.connection.onDocumentSymbol(async ({ textDocument }) => {
      const current = await server.session.current(textDocument.uri);
      return current === undefined ? null : symbolsOf(current.uri, outlineOf(current.text)).map(documentSymbol);
    });
    server.connection.onWorkspaceSymbol(({ query }) => found(server, query));
  },
};

function documentSymbol({ name, detail, kind, span, nameSpan, children }: TextSymbol): DocumentSymbol {
  return {
    name: name === "" ? kind : name,
    detail,
    kind: kinds[kind],
    range: rangeOf(span),
    selectionRange: rangeOf(nameSpan),
    children: children.map(documentSymbol),
  };
}

async function found(server: Server, query: string): Promise<WorkspaceSymbol[]> {
  const { session } = server;
  await buildFilesKnown(server);
  return session.known().flatMap(({ uri }) => {
    const all = symbolsOf(uri, outlineOf(session.textOf(uri) ?? "")).flatMap((symbol) => [symbol, ...symbol.children]);
    return all
      .filter(({ name, kind }) => kind !== "use" && isLike(name, query))
      .map(({ name, kind, nameSpan }) => ({
        name,
        kind: kinds[kind],
        containerName: fileName(uri),
        location: { uri: session.addressOf(uri), range: rangeOf(nameSpan) },
      }));
  });
}

/** Whether the letters asked for stand in the name, in their order. */
function isLike(name: string, query: string): boolean {
  let at = 0;
  for (const letter of query.toLowerCase()) {
    at = name.toLowerCase().indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
}

const kinds: Readonly<Record<Kind, SymbolKind>> = {
  project: SymbolKind.Package,
  use: SymbolKind.Module,
  length: SymbolKind.Constant,
  stock: SymbolKind.Struct,
  hardware: SymbolKind.Interface,
  shop: SymbolKind.Property,
  case: SymbolKind.Class,
  opening: SymbolKind.Field,
  fill: SymbolKind.Object,
  part: SymbolKind.Object,
};
