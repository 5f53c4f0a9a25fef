import type { SignatureHelp } from "vscode-languageserver";
import { MarkupKind } from "vscode-languageserver";
import { outlineOf } from "../../language/edit/outline.ts";
import { signaturesAt } from "../../language/edit/signature.ts";
import type { Feature } from "./feature.ts";
import { offsetAt } from "./scene.ts";

/** Shows how the property being written is written, and which of its words comes next. */
export const signatureHelp: Feature = {
  capabilities: { signatureHelpProvider: { triggerCharacters: [" "], retriggerCharacters: [" ", ","] } },
  register({ connection, session }) {
    connection.onSignatureHelp(async ({ textDocument, position }): Promise<SignatureHelp | null> => {
      const text = session.file(textDocument.uri)?.text ?? (await session.current(textDocument.uri))?.text;
      if (text === undefined) return null;
      const found = signaturesAt(outlineOf(text), offsetAt(text, position));
      if (found === undefined) return null;
      return {
        signatures: found.all.map(({ form, means, parts, active }) => ({
          label: form,
          documentation: { kind: MarkupKind.Markdown, value: means },
          parameters: parts.map(({ from, to }) => ({ label: [from, to] as [number, number] })),
          // Past the last one none is marked.
          activeParameter: active ?? parts.length,
        })),
        activeSignature: found.active,
      };
    });
  },
};
