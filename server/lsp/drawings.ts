import type { DrawingsParams, DrawingsResult } from "../protocol.ts";
import { drawings as drawingsRequest } from "../protocol.ts";
import type { Feature, Server } from "./feature.ts";

/** Gives the names of a file's drawings, and one of them: all at once would be too much for every change of the text. */
export const drawings: Feature = {
  capabilities: {},
  register(server) {
    server.connection.onRequest(drawingsRequest, (params: DrawingsParams) => drawingsOf(server, params));
  },
};

async function drawingsOf({ session }: Server, { uri, id }: DrawingsParams): Promise<DrawingsResult> {
  const build = await session.settled(uri);
  if (build === undefined) return null;
  const all = build.drawings();
  return {
    titles: all.map((each) => ({ id: each.id, title: each.title, scale: each.scale })),
    drawing: all.find((each) => each.id === id) ?? all[0] ?? null,
  };
}
