import { CodeLensRefreshRequest } from "vscode-languageserver";
import type { Feature } from "./feature.ts";
import { tell } from "./tell.ts";

/**
 * Lets the editor ask again for what it keeps beside a text that is as it was, when a file that it uses changed: hints,
 * lenses and the meaning of words. By itself it asks again only where the text changed.
 */
export const refreshing: Feature = {
  capabilities: {},
  register({ connection, session, client }) {
    /** The version of each open file that was last checked. */
    const versions = new Map<string, number>();
    session.onChecked((checked) => {
      const isOther = checked.some(({ file }) => versions.get(file.uri) === file.version);
      for (const { file } of checked) versions.set(file.uri, file.version);
      if (!isOther) return;
      const { hints, lenses, tokens } = client().refreshes;
      if (hints) tell(() => connection.languages.inlayHint.refresh());
      if (lenses) tell(() => connection.sendRequest(CodeLensRefreshRequest.type));
      if (tokens) tell(() => connection.languages.semanticTokens.refresh());
    });
    session.onClosed(({ uri }) => void versions.delete(uri));
  },
};
