import type { CodeLens } from "vscode-languageserver";
import { lensesOf } from "../../language/edit/lenses.ts";
import type { Feature, Server } from "./feature.ts";
import { rangeOf } from "./places.ts";
import { sceneAt } from "./scene.ts";

/** The editor's command that shows what a file makes, and where an item of it is drawn. */
const openRod = "scantling.openRod";

/** Says above each block how many parts it gives, and opens the rod on it. */
export const lenses: Feature = {
  capabilities: { codeLensProvider: { resolveProvider: false } },
  register(server) {
    server.connection.onCodeLens(({ textDocument }) => lensesIn(server, textDocument.uri));
  },
};

async function lensesIn(server: Server, uri: string): Promise<CodeLens[]> {
  const scene = await sceneAt(server, uri);
  if (scene === undefined) return [];
  const address = server.session.addressOf(scene.uri);
  return lensesOf(scene).map(({ span, title, drawn }) => ({
    range: rangeOf(span),
    command: {
      title,
      command: openRod,
      arguments: drawn === undefined ? [address] : [address, drawn.drawing, drawn.item],
    },
  }));
}
