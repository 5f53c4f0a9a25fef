import { brokenParts } from "../preview-feed.ts";
import type { FileParams, RodChangedParams, RodResult } from "../protocol.ts";
import { rodChanged, rod as rodRequest } from "../protocol.ts";
import type { Feature, Server } from "./feature.ts";
import { tell } from "./tell.ts";

/** Says when the rod of an open file changes, and gives it when asked. */
export const rod: Feature = {
  capabilities: {},
  register(server) {
    const { connection, session, feed } = server;
    session.onChecked((checked) => {
      for (const { file, build } of checked) feed.checked(file.uri, build);
    });
    session.onClosed((file) => feed.closed(file.uri));
    connection.onRequest(rodRequest, (params: FileParams) => rodOf(server, params.uri));
  },
};

async function rodOf({ session, feed }: Server, uri: string): Promise<RodResult> {
  const build = await session.settled(uri);
  if (build === undefined) return null;
  return (
    feed.get(build.uri) ?? { version: feed.version(), view: build.rod(), stale: false, broken: brokenParts(build) }
  );
}

/** What the feed is made with: tells the editor in its own spelling of the address. */
export function rodNotifier({ connection, session }: Pick<Server, "connection" | "session">) {
  return (uri: string, version: number): void => {
    const params: RodChangedParams = { uri: session.addressOf(uri), version };
    tell(() => connection.sendNotification(rodChanged, params));
  };
}
