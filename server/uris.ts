import { URI, Utils } from "vscode-uri";

/** A file's address in the one spelling that the language uses, whatever the editor's; bad input comes back as it is. */
export function canonical(uri: string): string {
  try {
    return URI.parse(uri, true).toString();
  } catch {
    return uri;
  }
}

/** The folder that a file lies in, as an address without a slash at its end. */
export function folderOf(uri: string): string {
  return Utils.dirname(URI.parse(uri)).toString().replace(/\/$/, "");
}

/** The innermost of the folders that holds the file, if any does. */
export function rootOf(uri: string, folders: readonly string[]): string | undefined {
  return folders
    .filter((folder) => uri.startsWith(`${folder.replace(/\/$/, "")}/`))
    .sort((a, b) => b.length - a.length)[0];
}

/** The address and those of all folders that it lies in, innermost first. */
export function withFoldersOf(uri: string): readonly string[] {
  const ends = [...uri.matchAll(/\//g)].map(({ index }) => index).reverse();
  return [uri, ...ends.map((end) => uri.slice(0, end))];
}
