import type { BuildFilesResult } from "../protocol.ts";
import { buildFiles } from "../protocol.ts";
import type { Server } from "./feature.ts";

/** More than any folder of build files holds; the rest is not looked at. */
const most = 2000;

/**
 * Makes every build file in the open folders known. The editor says which there are; one that does not know the
 * question is taken to have none but those that are open or used by one that is.
 */
export async function buildFilesKnown({ connection, session }: Server): Promise<void> {
  try {
    const answer = await connection.sendRequest<BuildFilesResult>(buildFiles);
    const uris = Array.isArray(answer?.uris) ? answer.uris.filter((uri) => typeof uri === "string") : [];
    await session.learn(uris.slice(0, most));
  } catch {
    // An editor of another make.
  }
}
