import { cutListFiles } from "../cut-list-files.ts";
import type { CutListResult, FileParams } from "../protocol.ts";
import { cutList as cutListRequest } from "../protocol.ts";
import type { Feature, Server } from "./feature.ts";

/** Gives the cut list of a file as texts; writing them is the editor's part. */
export const cutList: Feature = {
  capabilities: {},
  register(server) {
    server.connection.onRequest(cutListRequest, (params: FileParams) => cutListOf(server, params.uri));
  },
};

async function cutListOf({ session }: Server, uri: string): Promise<CutListResult> {
  const build = await session.settled(uri);
  return build === undefined ? null : { files: cutListFiles(build, ["csv", "markdown"]) };
}
