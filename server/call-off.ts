import type { ConnectionStrategy } from "vscode-languageserver";

/** What a request that was called off answers with, by the protocol. */
export const requestCancelled = -32800;

/**
 * A request that is called off before its turn is not begun: while the server is busy an editor calls off most of what
 * it has asked since. One under way sees it in its token.
 */
export const callOff: ConnectionStrategy = {
  cancelUndispatched: () => ({
    jsonrpc: "2.0",
    // Whose answer this is, the connection puts in.
    id: null,
    error: { code: requestCancelled, message: "This was called off before its turn." },
  }),
};
