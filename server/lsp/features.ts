import { bench } from "./bench.ts";
import { codeActions } from "./code-actions.ts";
import { completion } from "./completion.ts";
import { cutList } from "./cut-list.ts";
import { diagnostics } from "./diagnostics.ts";
import { drawings } from "./drawings.ts";
import type { Feature } from "./feature.ts";
import { formatting } from "./formatting.ts";
import { hover } from "./hover.ts";
import { inlayHints } from "./inlay-hints.ts";
import { keepOffcuts } from "./keep-offcuts.ts";
import { lenses } from "./lenses.ts";
import { links } from "./links.ts";
import { list } from "./list.ts";
import { names } from "./names.ts";
import { papers } from "./papers.ts";
import { plan } from "./plan.ts";
import { recordCut } from "./record-cut.ts";
import { refreshing } from "./refreshing.ts";
import { rename } from "./rename.ts";
import { renameFiles } from "./rename-files.ts";
import { rod } from "./rod.ts";
import { semanticTokens } from "./semantic-tokens.ts";
import { signatureHelp } from "./signature-help.ts";
import { structure } from "./structure.ts";
import { symbols } from "./symbols.ts";

/** All that the server can do: a new ability is one file and one word here. */
export const features: readonly Feature[] = [
  ...[diagnostics, codeActions, hover, inlayHints, names, rename, symbols, structure, links, lenses, renameFiles],
  ...[formatting, semanticTokens, completion, signatureHelp, refreshing],
  ...[rod, cutList, list, plan, drawings, bench, papers, recordCut, keepOffcuts],
];
