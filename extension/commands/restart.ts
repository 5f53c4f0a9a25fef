import type { BaseLanguageClient } from "vscode-languageclient";

/** Stops the server and starts another; one that does not answer any more is given up. */
export async function restart(client: Pick<BaseLanguageClient, "needsStop" | "stop" | "start">): Promise<void> {
  // It is most often for not answering that it is to be started again, and then it does not answer to this either.
  if (client.needsStop()) await client.stop().catch(() => undefined);
  await client.start();
}
