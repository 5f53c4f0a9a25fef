import { expect, test } from "vitest";
import type { BaseLanguageClient } from "vscode-languageclient";
import { createFeed } from "../../extension/feed.ts";

type Handler = (message: unknown) => void;

/** A client that, like the real one, keeps one handler for each message. */
function fakeClient() {
  const handlers = new Map<string, Handler>();
  const client = {
    onNotification: (name: string, handler: Handler) => {
      handlers.set(name, handler);
      return { dispose: () => void handlers.delete(name) };
    },
  };
  return {
    client: client as unknown as BaseLanguageClient,
    send: (name: string, data: unknown) => handlers.get(name)?.(data),
  };
}

test("all who listen hear of a change, and one that leaves takes no other with it", () => {
  const { client, send } = fakeClient();
  const feed = createFeed(client);
  const heard: string[] = [];
  const first = feed.onRodChanged((uri, version) => void heard.push(`rod ${uri} ${version}`));
  feed.onRodChanged((uri, version) => void heard.push(`status ${uri} ${version}`));
  send("scantling/rodChanged", { uri: "a", version: 1 });
  first.dispose();
  send("scantling/rodChanged", { uri: "a", version: 2 });
  expect(heard).toEqual(["rod a 1", "status a 1", "status a 2"]);
});

test("word of a search is passed on, and what is none is not", () => {
  const { client, send } = fakeClient();
  const feed = createFeed(client);
  const heard: unknown[] = [];
  feed.onPlanSearched((search) => void heard.push(search));
  const search = { uri: "a", state: "searching", percent: 3, better: false };
  send("scantling/planSearched", search);
  send("scantling/planSearched", { uri: "a", state: "lost" });
  expect(heard).toEqual([search]);
});
