import type { DocumentLink } from "vscode-languageserver";
import { usedFiles } from "../../language/edit/uses.ts";
import type { Feature, Server } from "./feature.ts";
import { rangeOf } from "./places.ts";

/** Opens the file that a `use` names. */
export const links: Feature = {
  capabilities: { documentLinkProvider: { resolveProvider: false } },
  register(server) {
    server.connection.onDocumentLinks(({ textDocument }) => linksIn(server, textDocument.uri));
  },
};

async function linksIn({ session }: Server, uri: string): Promise<DocumentLink[]> {
  const own = (await session.current(uri))?.designs[0];
  if (own === undefined) return [];
  return usedFiles(own, session.rootOf(own.uri)).map(({ use, uri: target }) => ({
    range: rangeOf(use.path.span),
    target: session.addressOf(target),
    tooltip: `Open ${use.path.text}`,
  }));
}
