import type { Hover } from "vscode-languageserver";
import { MarkupKind } from "vscode-languageserver";
import { hoverAt } from "../../language/edit/hover.ts";
import type { Feature } from "./feature.ts";
import { rangeOf } from "./places.ts";
import { offsetAt, sceneAt } from "./scene.ts";

/** Says what a word means, what a name stands for, and where each size comes from. */
export const hover: Feature = {
  capabilities: { hoverProvider: true },
  register(server) {
    server.connection.onHover(async ({ textDocument, position }): Promise<Hover | null> => {
      const scene = await sceneAt(server, textDocument.uri);
      const found = scene === undefined ? undefined : hoverAt(scene, offsetAt(scene.text, position));
      if (found === undefined) return null;
      return { range: rangeOf(found.span), contents: { kind: MarkupKind.Markdown, value: found.markdown } };
    });
  },
};
