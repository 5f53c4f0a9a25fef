import { expect, test } from "vitest";
import type { BaseLanguageClient } from "vscode-languageclient";
import { createFeed } from "../../extension/feed.ts";
import { asWritten } from "../../extension/translate.ts";

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
  const feed = createFeed(client, asWritten);
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
  const feed = createFeed(client, asWritten);
  const heard: unknown[] = [];
  feed.onPlanSearched((search) => void heard.push(search));
  const search = { uri: "a", state: "searching", percent: 3, better: false };
  send("scantling/planSearched", search);
  send("scantling/planSearched", { uri: "a", state: "lost" });
  expect(heard).toEqual([search]);
});

test("a server that goes while it should answer is said to be gone, with what to do; what it refuses is said as it is", async () => {
  let isRunning = true;
  const client = {
    ...fakeClient().client,
    isRunning: () => isRunning,
    sendRequest: (...sent: readonly unknown[]) => {
      expect(sent).not.toContain(undefined);
      return Promise.reject(new Error("Pending response rejected since connection got disposed"));
    },
    onProgress: () => ({ dispose: () => undefined }),
  } as unknown as BaseLanguageClient;
  const feed = createFeed(client, asWritten);
  const watch = { token: {} as never, onProgress: () => undefined };
  const all = () => [
    ...[feed.rod("a"), feed.cutList("a"), feed.list("a"), feed.drawings("a", ""), feed.recordCut("a", { line: "" })],
    ...[feed.bench("a", { parts: [], seconds: 0 }), feed.papers("a", [], watch)],
    ...[feed.plan("a", { seconds: 0, scope: undefined }), feed.plan("a", { seconds: 0, scope: undefined }, watch)],
  ];
  for (const asked of all()) await expect(asked).rejects.toThrow("Pending response");
  isRunning = false;
  for (const asked of all()) await expect(asked).rejects.toThrow("Restart the Language Server");
});
