import type { CodeAction, CodeActionParams, Diagnostic, Range } from "vscode-languageserver";
import { CodeActionKind } from "vscode-languageserver";
import type { Finding } from "../../language/core/finding.ts";
import { safeEdits } from "../../language/service.ts";
import { cutActionKind, cutActions } from "./cut-actions.ts";
import type { Feature, Server } from "./feature.ts";
import { rangeOf, touches } from "./places.ts";
import { textActionKinds, textActions } from "./text-actions.ts";
import { workspaceEdit } from "./workspace-edit.ts";

/** Mends all that can be mended unseen; a kind of its own, so that it can be run on saving. */
const fixAllKind = `${CodeActionKind.SourceFixAll}.scantling`;

/** Offers the fixes of the findings at a place, best first, all safe ones of a file at once, and changes where nothing is wrong. */
export const codeActions: Feature = {
  capabilities: {
    codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, ...textActionKinds, cutActionKind, fixAllKind] },
  },
  register(server) {
    server.connection.onCodeAction((params) => actionsFor(server, params));
  },
};

async function actionsFor(server: Server, params: CodeActionParams): Promise<CodeAction[]> {
  const { session, problems } = server;
  await session.settled(params.textDocument.uri);
  const file = session.file(params.textDocument.uri);
  // A newer text has come in meanwhile: the places would be wrong, and the editor asks again.
  if (file === undefined || problems.versionOf(file.uri) !== file.version) return [];
  const findings = problems.of(file.uri);
  const { only, diagnostics } = params.context;
  return [
    ...(isWanted(CodeActionKind.QuickFix, only) ? quickFixes(server, findings, params.range, diagnostics) : []),
    // Among the quick fixes of a place it would only be in the way.
    ...(only !== undefined && isWanted(fixAllKind, only) ? fixAll(server, findings, file.uri) : []),
    ...(await textActions(server, params, (kind) => isWanted(kind, only))),
    ...(await cutActions(server, params, (kind) => isWanted(kind, only))),
  ];
}

/** Kinds form a tree: who asks for `source` gets `source.fixAll.scantling` too. */
function isWanted(kind: string, only: readonly string[] | undefined): boolean {
  return only === undefined || only.some((asked) => kind === asked || asked === "" || kind.startsWith(`${asked}.`));
}

function quickFixes(
  server: Server,
  findings: readonly Finding[],
  range: Range,
  asked: readonly Diagnostic[],
): readonly CodeAction[] {
  return findings
    .filter((finding) => touches(rangeOf(finding.span), range))
    .flatMap((finding) =>
      finding.fixes.map(
        ({ title, edits }, index): CodeAction => ({
          title,
          kind: CodeActionKind.QuickFix,
          isPreferred: index === 0,
          diagnostics: asked.filter((diagnostic) => isOf(diagnostic, finding)),
          edit: workspaceEdit(server, edits),
        }),
      ),
    );
}

function isOf(diagnostic: Diagnostic, finding: Finding): boolean {
  const { start, end } = diagnostic.range;
  const of = rangeOf(finding.span);
  const same = (a: Range["start"], b: Range["start"]): boolean => a.line === b.line && a.character === b.character;
  return diagnostic.code === finding.code && same(start, of.start) && same(end, of.end);
}

function fixAll(server: Server, findings: readonly Finding[], uri: string): readonly CodeAction[] {
  const edits = safeEdits(findings, uri);
  if (edits.length === 0) return [];
  return [{ title: "Mend all that is clear", kind: fixAllKind, edit: workspaceEdit(server, edits) }];
}
