import type { InlayHint } from "vscode-languageserver";
import { MarkupKind } from "vscode-languageserver";
import type { HintSettings } from "../../language/edit/hints.ts";
import { hintDefaults, hintsOf } from "../../language/edit/hints.ts";
import type { Feature, Server } from "./feature.ts";
import { rangeOf } from "./places.ts";
import { sceneAt } from "./scene.ts";
import { tell } from "./tell.ts";

/** Shows derived sizes behind the words that they follow from, as far as the maker wants to see them. */
export const inlayHints: Feature = {
  capabilities: { inlayHintProvider: { resolveProvider: false } },
  register(server) {
    const { connection } = server;
    let known: HintSettings | undefined;
    connection.onDidChangeConfiguration(() => {
      known = undefined;
      if (server.client().refreshes.hints) tell(() => connection.languages.inlayHint.refresh());
    });
    connection.languages.inlayHint.on(async ({ textDocument, range }) => {
      known ??= await settingsOf(server);
      const scene = await sceneAt(server, textDocument.uri);
      if (scene === undefined) return [];
      const inRange = hintsOf(scene, known).filter(
        ({ at }) => range.start.line <= at.endLine && at.endLine <= range.end.line,
      );
      return inRange.map(
        ({ at, label, tooltip }): InlayHint => ({
          position: rangeOf(at).end,
          label,
          paddingLeft: true,
          ...(tooltip === "" ? {} : { tooltip: { kind: MarkupKind.Markdown, value: tooltip } }),
        }),
      );
    });
  },
};

/** What the editor's settings say; what they do not say is as it is without settings. */
async function settingsOf({ connection, client }: Server): Promise<HintSettings> {
  if (!client().hasConfiguration) return hintDefaults;
  try {
    const said = (await connection.workspace.getConfiguration("scantling.inlayHints")) as Partial<HintSettings> | null;
    const of = (name: keyof HintSettings): boolean =>
      typeof said?.[name] === "boolean" ? said[name] : hintDefaults[name];
    return { boxSizes: of("boxSizes"), shares: of("shares"), slides: of("slides"), openings: of("openings") };
  } catch {
    return hintDefaults;
  }
}
