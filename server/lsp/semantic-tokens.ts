import type { SemanticTokens } from "vscode-languageserver";
import { SemanticTokensBuilder } from "vscode-languageserver";
import { nameIndex } from "../../language/edit/names.ts";
import { outlineOf } from "../../language/edit/outline.ts";
import { tokenModifiers, tokenTypes, typedTokens } from "../../language/edit/token-types.ts";
import type { Feature } from "./feature.ts";

/** The protocol's own word for each of ours: a unit is coloured as a word of the language. */
const legend = {
  tokenTypes: tokenTypes.map((type) => (type === "unit" ? "macro" : type)),
  tokenModifiers: [...tokenModifiers],
};

/** Says what each word is where the grammar of colours, which sees one line at a time, cannot know. */
export const semanticTokens: Feature = {
  capabilities: { semanticTokensProvider: { legend, full: true, range: true } },
  register({ connection, session }) {
    const tokensOf = async (address: string, isWanted: (line: number) => boolean): Promise<SemanticTokens> => {
      const builder = new SemanticTokensBuilder();
      const current = await session.current(address);
      if (current === undefined) return builder.build();
      const names = nameIndex(current.designs).all.filter((one) => one.span.uri === current.uri);
      for (const { line, column, length, type, declaration } of typedTokens(outlineOf(current.text), names)) {
        if (isWanted(line)) builder.push(line, column, length, tokenTypes.indexOf(type), declaration ? 1 : 0);
      }
      return builder.build();
    };
    connection.languages.semanticTokens.on(({ textDocument }) => tokensOf(textDocument.uri, () => true));
    connection.languages.semanticTokens.onRange(({ textDocument, range: { start, end } }) =>
      tokensOf(textDocument.uri, (line) => start.line <= line && line <= end.line),
    );
  },
};
