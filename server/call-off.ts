import { type ConnectionStrategy, LSPErrorCodes } from "vscode-languageserver";

/**
 * A request that is called off before its turn is not begun: while the server is busy an editor calls off most of what
 * it has asked since. One under way sees it in its token.
 */
export const callOff: ConnectionStrategy = {
  cancelUndispatched: () => ({
    jsonrpc: "2.0",
    // Whose answer this is, the connection puts in.
    id: null,
    error: { code: LSPErrorCodes.RequestCancelled, message: "This was called off before its turn." },
  }),
};
