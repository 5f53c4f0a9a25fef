import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { callOff } from "./call-off.ts";
import { readInside } from "./cli/read-files.ts";
import { serve } from "./connection.ts";
import type { PdfPapers } from "./lsp/feature.ts";

/** What writes PDF is large and a bundle of its own: it is read when papers are wanted. */
const pdfPapers: PdfPapers = async function* (desk, kinds, progress) {
  const writer = await import("./cli/pdf/paper-files.ts");
  yield* writer.pdfPapers(desk, { kinds, size: undefined, progress });
};

// Over standard input and output, a socket or Node's own channel, as the command line says: --stdio, --socket=N, --node-ipc.
serve(createConnection(ProposedFeatures.all, callOff), { readDisk: readInside, pdfPapers });
