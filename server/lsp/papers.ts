import type { CancellationToken } from "vscode-languageserver";
import { LSPErrorCodes, ResponseError } from "vscode-languageserver";
import { paperDesk } from "../../language/papers/desk.ts";
import { aTurn } from "../in-turns.ts";
import type { PaperFile } from "../paper-files.ts";
import { pdfKinds, textPapers } from "../paper-files.ts";
import { searchInSlices } from "../plan-search.ts";
import type { PaperContent, PaperKind, PapersParams, PapersResult } from "../protocol.ts";
import { papers as papersRequest } from "../protocol.ts";
import type { Feature, Server } from "./feature.ts";
import { progressOn } from "./progress.ts";

/** Seconds of search for the plan that is printed, besides what it was searched for already. */
const planSeconds = 2;

/** Makes the papers of a file; writing them is the editor's part. */
export const papers: Feature = {
  capabilities: {},
  register(server) {
    server.connection.onRequest(papersRequest, (params: PapersParams, token) => papersOf(server, params, token));
  },
};

async function papersOf(server: Server, params: PapersParams, token: CancellationToken): Promise<PapersResult> {
  const { session, plans, pdfPapers } = server;
  const build = await session.settled(params.uri);
  if (build === undefined) return null;
  const asked: readonly PaperKind[] = Array.isArray(params.kinds) ? params.kinds : [];
  const refused = pdfPapers === undefined ? asked.filter((kind) => pdfKinds.includes(kind)) : [];
  const kinds = asked.filter((kind) => !refused.includes(kind));
  const say = progressOn(server.connection, params.workDoneToken);
  const isCancelled = (): boolean => token.isCancellationRequested;

  const job = kinds.includes("packet") || kinds.includes("svg") ? plans.of(build, "whole") : undefined;
  if (job !== undefined) {
    const watch = { seconds: planSeconds, isCancelled, onSlice: (percent: number) => say(percent / 5, "cutting plan") };
    await searchInSlices(job, watch);
  }
  const desk = paperDesk(build, job?.plan());
  const files: PaperContent[] = [];
  const take = async ({ name, content }: PaperFile): Promise<void> => {
    // So that whoever wants to call it off is heard.
    await aTurn();
    if (isCancelled()) throw new ResponseError(LSPErrorCodes.RequestCancelled, "The papers were called off.");
    say(60, name);
    files.push(typeof content === "string" ? { name, text: content } : { name, base64: base64Of(content) });
  };
  const onStep = (what: string): void => say(20, what);
  if (pdfPapers !== undefined && kinds.some((kind) => pdfKinds.includes(kind))) {
    const onPage = (done: number, of: number): void => say(20 + (40 * done) / of, `page ${done + 1} of ${of}`);
    for await (const file of pdfPapers(desk, kinds, { onPage, onStep, isCancelled })) await take(file);
  }
  const labelOf = labelFrom(build.uri);
  const watch = { onStep, isCancelled };
  for await (const file of textPapers({ build, desk, kinds, labelOf, watch })) await take(file);
  if (isCancelled()) throw new ResponseError(LSPErrorCodes.RequestCancelled, "The papers were called off.");
  return { files, refused };
}

/** What a file is called from the folder of the build file; one from elsewhere by its bare name. */
function labelFrom(own: string): (uri: string) => string {
  const folder = own.slice(0, own.lastIndexOf("/") + 1);
  return (uri) => decoded(uri.startsWith(folder) ? uri.slice(folder.length) : uri.slice(uri.lastIndexOf("/") + 1));
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** Bytes as base64, a stretch at a time: all at once would be too many arguments. */
function base64Of(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(text);
}
