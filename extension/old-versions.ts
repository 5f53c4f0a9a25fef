import type { Middleware } from "vscode-languageclient";

/** Where the window keeps files as they were before; what it makes up for a comparison lies in no file system at all. */
const OLD_VERSIONS = new Set(["git", "vscode-local-history"]);

interface Addressed {
  readonly uri: { readonly scheme: string };
}

/**
 * Keeps old versions of files, as on the left of a comparison, from the server: one is no file of the build, nothing that
 * it uses lies beside it, and the server would find troubles where there are none. `isInFiles` says whether there are
 * files of a scheme.
 */
export function withoutOldVersions(isInFiles: (scheme: string) => boolean): Middleware {
  const isOld = ({ uri: { scheme } }: Addressed) =>
    OLD_VERSIONS.has(scheme) || (scheme !== "untitled" && scheme !== "file" && !isInFiles(scheme));
  return {
    didOpen: (document, next) => (isOld(document) ? Promise.resolve() : next(document)),
    didChange: (event, next) => (isOld(event.document) ? Promise.resolve() : next(event)),
    didClose: (document, next) => (isOld(document) ? Promise.resolve() : next(document)),
  };
}
