import type { Middleware } from "vscode-languageclient";

/** What an editor shows beside a file as it was before is no file of the build: nothing that it uses lies beside it. */
const OLD_VERSIONS = new Set(["git"]);

interface Addressed {
  readonly uri: { readonly scheme: string };
}

/** Keeps old versions of files, as on the left of a comparison, from the server: it would find troubles where there are none. */
export const withoutOldVersions: Middleware = {
  didOpen: (document, next) => (isOld(document) ? Promise.resolve() : next(document)),
  didChange: (event, next) => (isOld(event.document) ? Promise.resolve() : next(event)),
  didClose: (document, next) => (isOld(document) ? Promise.resolve() : next(document)),
};

function isOld({ uri }: Addressed): boolean {
  return OLD_VERSIONS.has(uri.scheme);
}
