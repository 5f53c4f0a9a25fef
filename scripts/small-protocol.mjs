import { dirname } from "node:path";

/**
 * The command line speaks no protocol, but langium takes three small things from the package that has all of it. Taken
 * from where they are made, they are a thirtieth of it, and every start of the command line is shorter. A plugin for esbuild.
 */
export const smallProtocol = {
  name: "small-protocol",
  setup(build) {
    build.onResolve({ filter: /^vscode-languageserver-protocol$/ }, async ({ resolveDir, kind }) => {
      const whole = await build.resolve("vscode-jsonrpc", { resolveDir, kind });
      if (0 < whole.errors.length) return { errors: whole.errors };
      return { path: "used-by-langium", namespace: "small-protocol", pluginData: dirname(whole.path) };
    });
    build.onLoad({ filter: /.*/, namespace: "small-protocol" }, ({ pluginData }) => ({
      contents,
      resolveDir: pluginData,
    }));
  },
};

const contents = `
  export { CancellationToken, CancellationTokenSource } from "./cancellation.js";
  export { Emitter } from "./events.js";
  export { ResponseError } from "./messages.js";
  // Language Server Protocol 3.17, ErrorCodes
  export const LSPErrorCodes = { ServerCancelled: -32802, RequestFailed: -32803 };
`;
