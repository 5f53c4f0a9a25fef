import { afterAll, afterEach, beforeEach, inject } from "vitest";
import { type EditorSession, openSession, type SessionOptions } from "./session.ts";

/**
 * Gives the tests of a file one session; a test that fails leaves it in a state nobody knows, so that the next one, or
 * the same tried again, gets a new one. Keeps evidence of every failure. Call the result inside a test to get the session.
 */
export function useEditor(options: SessionOptions = {}): () => EditorSession {
  let session: EditorSession | undefined;
  let failures = 0;
  const close = async () => {
    await session?.close();
    session = undefined;
  };
  beforeEach(async () => {
    session ??= await openSession(
      { editorPaths: inject("editorPaths"), installedExtensions: inject("installedExtensions") },
      options,
    );
  });
  afterEach(async ({ task }) => {
    if (task.result?.state !== "fail") return;
    try {
      failures += 1;
      await session?.keepEvidence(`failed-${failures}-${task.name.replace(/[^a-z0-9]+/gi, "-")}`);
    } finally {
      await close();
    }
  });
  afterAll(close);
  return () => {
    if (session === undefined) throw new Error("The editor's session exists only while a test runs.");
    return session;
  };
}
