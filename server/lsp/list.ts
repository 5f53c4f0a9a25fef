import type { FileParams, ListResult } from "../protocol.ts";
import { list as listRequest } from "../protocol.ts";
import type { Feature, Server } from "./feature.ts";

/** Gives every part and every finding of a file as data for programs. */
export const list: Feature = {
  capabilities: {},
  register(server) {
    server.connection.onRequest(listRequest, (params: FileParams) => listOf(server, params.uri));
  },
};

async function listOf({ session }: Server, uri: string): Promise<ListResult> {
  return (await session.settled(uri))?.list() ?? null;
}
