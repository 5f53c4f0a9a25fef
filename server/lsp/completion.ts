import type { CompletionItem, CompletionList, CompletionParams } from "vscode-languageserver";
import { CompletionItemKind, CompletionTriggerKind, InsertTextFormat, MarkupKind } from "vscode-languageserver";
import type { Completion } from "../../language/edit/completion.ts";
import { completionAt } from "../../language/edit/completion.ts";
import type { Proposal, ProposalKind } from "../../language/edit/propose/proposal.ts";
import { buildFilesKnown } from "./build-files.ts";
import type { Feature, Server } from "./feature.ts";
import { rangeOf } from "./places.ts";
import type { Recent } from "./scene.ts";
import { offsetAt, recentScenes } from "./scene.ts";

/** Proposes words, names and sizes where they can stand; what they mean is worked out when the editor shows it. */
export const completion: Feature = {
  capabilities: { completionProvider: { resolveProvider: true, triggerCharacters: [" ", ".", '"'] } },
  register(server) {
    const { connection } = server;
    // While someone types, the names of a moment ago will do: the whole file is not read again for every letter.
    const recent = recentScenes(server);
    let shown: { readonly id: number; readonly proposals: readonly Proposal[] } = { id: 0, proposals: [] };
    connection.onCompletion(async (params): Promise<CompletionList | null> => {
      const found = await proposed(server, recent, params);
      if (found === undefined) return null;
      shown = { id: shown.id + 1, proposals: found.proposals };
      return { isIncomplete: false, items: found.proposals.map((_, index) => itemOf(server, found, index, shown.id)) };
    });
    connection.onCompletionResolve((item) => {
      const { id, index } = (item.data ?? {}) as Partial<ItemData>;
      const value = id === shown.id && index !== undefined ? shown.proposals[index]?.about() : undefined;
      if (value === undefined || value === "") return item;
      return { ...item, documentation: { kind: MarkupKind.Markdown, value } };
    });
  },
};

/** Which list an item belongs to, and its place there: only the last list is still known. */
interface ItemData {
  readonly id: number;
  readonly index: number;
}

/** As far back as the beginning of a `use` is looked for. */
const longestPath = 300;

async function proposed(
  server: Server,
  recent: Recent,
  { textDocument, position, context }: CompletionParams,
): Promise<Completion | undefined> {
  const sign = context?.triggerKind === CompletionTriggerKind.TriggerCharacter ? context.triggerCharacter : undefined;
  const scene = await recent.sceneAt(textDocument.uri);
  if (scene === undefined) return undefined;
  const offset = offsetAt(scene.text, position);
  const isPath = /\buse\s*"[^"\n\r]*$/.test(scene.text.slice(Math.max(0, offset - longestPath), offset));
  if (isPath) await buildFilesKnown(server);
  return completionAt(scene, offset, {
    unasked: sign === " ",
    findings: server.problems.of(scene.uri),
    files: isPath ? server.session.known().map(({ uri }) => uri) : [],
  });
}

function itemOf(server: Server, { span, proposals }: Completion, index: number, id: number): CompletionItem {
  const { label, kind, detail, text, snippet, rank } = proposals[index]!;
  const withGaps = snippet !== undefined && server.client().snippets;
  const data: ItemData = { id, index };
  return {
    label,
    kind: kinds[kind],
    ...(detail === "" ? {} : { detail }),
    sortText: String(index).padStart(4, "0"),
    ...(index === 0 && rank === 0 ? { preselect: true } : {}),
    ...(withGaps ? { insertTextFormat: InsertTextFormat.Snippet } : {}),
    textEdit: { range: rangeOf(span), newText: withGaps ? snippet : text },
    data,
  };
}

const kinds: Readonly<Record<ProposalKind, CompletionItemKind>> = {
  statement: CompletionItemKind.Keyword,
  property: CompletionItemKind.Property,
  choice: CompletionItemKind.EnumMember,
  stock: CompletionItemKind.Struct,
  hardware: CompletionItemKind.Interface,
  opening: CompletionItemKind.Field,
  case: CompletionItemKind.Class,
  part: CompletionItemKind.Module,
  length: CompletionItemKind.Constant,
  size: CompletionItemKind.Value,
  code: CompletionItemKind.Event,
  file: CompletionItemKind.File,
};
