import type { CancellationToken } from "vscode-languageserver";
import { LSPErrorCodes, ResponseError } from "vscode-languageserver";
import { drawingView } from "../../language/draw/drawing-view.ts";
import { inTurns } from "../in-turns.ts";
import type { DrawingsParams, DrawingsResult } from "../protocol.ts";
import { drawings as drawingsRequest } from "../protocol.ts";
import type { Feature, Server } from "./feature.ts";

/** Milliseconds after which drawings of a text that has changed since are no longer wanted; quicker ones are a picture on the way. */
const longest = 500;

/** Gives the names of a file's drawings, and one of them: all at once would be too much for every change of the text. */
export const drawings: Feature = {
  capabilities: {},
  register(server) {
    server.connection.onRequest(drawingsRequest, (params: DrawingsParams, token) => drawingsOf(server, params, token));
  },
};

/** Nothing else waits for the drawings of a large job: they are made in turns with it. */
async function drawingsOf(
  { session }: Server,
  { uri, id }: DrawingsParams,
  token: CancellationToken,
): Promise<DrawingsResult> {
  const build = await session.settled(uri);
  if (build === undefined) return null;
  const version = session.file(build.uri)?.version;
  const end = performance.now() + longest;
  const isOutdated = (): boolean => end < performance.now() && session.file(build.uri)?.version !== version;
  const all = await inTurns(build.drawings(), {
    isCancelled: () => token.isCancellationRequested || isOutdated(),
  });
  if (all === undefined && token.isCancellationRequested)
    throw new ResponseError(LSPErrorCodes.RequestCancelled, "The drawings were called off.");
  if (all === undefined) throw new ResponseError(LSPErrorCodes.ContentModified, "The text was changed meanwhile.");
  const wanted = all.find((each) => each.id === id) ?? all[0];
  return {
    titles: all.map((each) => ({ id: each.id, title: each.title, scale: each.scale })),
    drawing: wanted === undefined ? null : drawingView(wanted),
  };
}
