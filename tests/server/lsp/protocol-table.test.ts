import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { InitializeResult, ServerCapabilities } from "vscode-languageserver-protocol";
import * as protocol from "vscode-languageserver-protocol";
import { features } from "../../../server/lsp/features.ts";

const root = fileURLToPath(new URL("../../..", import.meta.url));

interface Row {
  readonly methods: readonly string[];
  readonly answer: string;
  readonly why: string;
}

/** The rows of every table of the page whose first cell names requests. */
const rows: readonly Row[] = readFileSync(`${root}docs/editor.md`, "utf8")
  .split("\n")
  .flatMap((line): Row[] => {
    const [, first = "", answer = "", why = ""] = line.split("|").map((cell) => cell.trim());
    const methods = [...first.matchAll(/`([^`]+)`/g)].map((match) => match[1]!);
    return methods.length === 0 || (answer !== "yes" && answer !== "no") ? [] : [{ methods, answer, why }];
  });

const of = (answer: string): readonly string[] =>
  rows.filter((row) => row.answer === answer).flatMap((row) => row.methods);

/** Every request and notification that the protocol's own package knows. */
const known: readonly string[] = Object.values(protocol as Record<string, unknown>).flatMap((one) => {
  const { method, messageDirection } = (one ?? {}) as { method?: unknown; messageDirection?: unknown };
  return typeof method === "string" && typeof messageDirection === "string" ? [method] : [];
});

/** Names of registrations, which are no messages. */
const registrations = new Set(["notebookDocument/sync", "textDocument/semanticTokens"]);

describe("the table of the protocol's requests", () => {
  test("names every one of them, once", () => {
    const wanted = [...new Set(known)].filter((method) => !registrations.has(method)).sort();
    expect(wanted.length).toBeGreaterThan(80);
    expect(rows.flatMap(({ methods }) => methods).sort()).toEqual(wanted);
  });

  test("shows a test for each yes, and says why for each no", () => {
    for (const { methods, answer, why } of rows) {
      const files = [...why.matchAll(/`(tests\/[^`]+\.test\.ts)`/g)].map((match) => match[1]!);
      if (answer === "yes") expect([methods, files.length]).not.toEqual([methods, 0]);
      else expect([methods, why.length]).not.toEqual([methods, 0]);
      for (const file of files) expect([file, existsSync(root + file)]).toEqual([file, true]);
    }
  });

  test("the tests that it names ask what they are named for", () => {
    for (const { methods, answer, why } of rows) {
      if (answer === "no") continue;
      const texts = [...why.matchAll(/`(tests\/server\/lsp\/[^`]+)`/g)].map((match) =>
        readFileSync(root + match[1]!, "utf8"),
      );
      if (texts.length === 0) continue;
      const asked = methods.filter((method) => texts.some((text) => text.includes(`"${method}"`)));
      // Settings are asked for by the server: the test's editor answers them.
      expect([
        methods,
        methods.filter((method) => !asked.includes(method) && method !== "workspace/configuration"),
      ]).toEqual([methods, []]);
    }
  });
});

/** The requests that a server answers by what it announces. */
function announced(all: ServerCapabilities): readonly string[] {
  const completion = all.completionProvider;
  const tokens = all.semanticTokensProvider as { full?: unknown; range?: unknown } | undefined;
  const has: Readonly<Record<string, unknown>> = {
    "textDocument/hover": all.hoverProvider,
    "textDocument/completion": completion,
    "completionItem/resolve": completion?.resolveProvider,
    "textDocument/signatureHelp": all.signatureHelpProvider,
    "textDocument/inlineCompletion": all.inlineCompletionProvider,
    "textDocument/definition": all.definitionProvider,
    "textDocument/declaration": all.declarationProvider,
    "textDocument/implementation": all.implementationProvider,
    "textDocument/typeDefinition": all.typeDefinitionProvider,
    "textDocument/references": all.referencesProvider,
    "textDocument/documentHighlight": all.documentHighlightProvider,
    "textDocument/rename": all.renameProvider,
    "textDocument/prepareRename": isSaid(all.renameProvider, "prepareProvider"),
    "textDocument/linkedEditingRange": all.linkedEditingRangeProvider,
    "textDocument/documentSymbol": all.documentSymbolProvider,
    "textDocument/foldingRange": all.foldingRangeProvider,
    "textDocument/selectionRange": all.selectionRangeProvider,
    "textDocument/documentLink": all.documentLinkProvider,
    "documentLink/resolve": all.documentLinkProvider?.resolveProvider,
    "textDocument/codeLens": all.codeLensProvider,
    "codeLens/resolve": all.codeLensProvider?.resolveProvider,
    "textDocument/codeAction": all.codeActionProvider,
    "codeAction/resolve": isSaid(all.codeActionProvider, "resolveProvider"),
    "textDocument/formatting": all.documentFormattingProvider,
    "textDocument/rangeFormatting": all.documentRangeFormattingProvider,
    "textDocument/rangesFormatting": isSaid(all.documentRangeFormattingProvider, "rangesSupport"),
    "textDocument/onTypeFormatting": all.documentOnTypeFormattingProvider,
    "textDocument/semanticTokens/full": tokens?.full,
    "textDocument/semanticTokens/full/delta": isSaid(tokens?.full, "delta"),
    "textDocument/semanticTokens/range": tokens?.range,
    "textDocument/inlayHint": all.inlayHintProvider,
    "inlayHint/resolve": isSaid(all.inlayHintProvider, "resolveProvider"),
    "textDocument/inlineValue": all.inlineValueProvider,
    "textDocument/documentColor": all.colorProvider,
    "textDocument/prepareCallHierarchy": all.callHierarchyProvider,
    "textDocument/prepareTypeHierarchy": all.typeHierarchyProvider,
    "textDocument/moniker": all.monikerProvider,
    "textDocument/diagnostic": all.diagnosticProvider,
    "workspace/symbol": all.workspaceSymbolProvider,
    "workspaceSymbol/resolve": isSaid(all.workspaceSymbolProvider, "resolveProvider"),
    "workspace/executeCommand": all.executeCommandProvider,
    "workspace/willRenameFiles": all.workspace?.fileOperations?.willRename,
    "workspace/didRenameFiles": all.workspace?.fileOperations?.didRename,
    "workspace/willCreateFiles": all.workspace?.fileOperations?.willCreate,
    "workspace/didCreateFiles": all.workspace?.fileOperations?.didCreate,
    "workspace/willDeleteFiles": all.workspace?.fileOperations?.willDelete,
    "workspace/didDeleteFiles": all.workspace?.fileOperations?.didDelete,
    "workspace/textDocumentContent": all.workspace?.textDocumentContent,
    "notebookDocument/didOpen": all.notebookDocumentSync,
  };
  for (const method of Object.keys(has)) expect(known).toContain(method);
  return Object.keys(has).filter((method) => has[method] !== undefined && has[method] !== false);
}

function isSaid(capability: unknown, word: string): unknown {
  return typeof capability === "object" && capability !== null
    ? (capability as Readonly<Record<string, unknown>>)[word]
    : undefined;
}

test("what the server announces is marked yes, and what it does not is marked no", () => {
  const all: InitializeResult["capabilities"] = Object.assign({}, ...features.map(({ capabilities }) => capabilities));
  const yes = announced(all);
  expect(yes.length).toBeGreaterThan(20);
  for (const method of yes) expect(of("yes")).toContain(method);
  const silent = announced(everything()).filter((method) => !yes.includes(method));
  for (const method of silent) expect(of("no")).toContain(method);
  // No capability that this test does not know of.
  const keys = Object.keys(all).filter((key) => key !== "workspace");
  expect(keys.filter((key) => !(key in everything()))).toEqual([]);
});

/** Each capability said, so that each of its requests is named. */
function everything(): ServerCapabilities {
  const resolves = { resolveProvider: true };
  const files = { filters: [] };
  return {
    hoverProvider: true,
    completionProvider: resolves,
    signatureHelpProvider: {},
    inlineCompletionProvider: true,
    definitionProvider: true,
    declarationProvider: true,
    implementationProvider: true,
    typeDefinitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    renameProvider: { prepareProvider: true },
    linkedEditingRangeProvider: true,
    documentSymbolProvider: true,
    foldingRangeProvider: true,
    selectionRangeProvider: true,
    documentLinkProvider: resolves,
    codeLensProvider: resolves,
    codeActionProvider: resolves,
    documentFormattingProvider: true,
    documentRangeFormattingProvider: { rangesSupport: true },
    documentOnTypeFormattingProvider: { firstTriggerCharacter: "}" },
    semanticTokensProvider: { legend: { tokenTypes: [], tokenModifiers: [] }, full: { delta: true }, range: true },
    inlayHintProvider: resolves,
    inlineValueProvider: true,
    colorProvider: true,
    callHierarchyProvider: true,
    typeHierarchyProvider: true,
    monikerProvider: true,
    diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: true },
    workspaceSymbolProvider: resolves,
    executeCommandProvider: { commands: [] },
    notebookDocumentSync: { notebookSelector: [] },
    workspace: {
      fileOperations: {
        willRename: files,
        didRename: files,
        willCreate: files,
        didCreate: files,
        willDelete: files,
        didDelete: files,
      },
      textDocumentContent: { schemes: [] },
    },
  };
}
