import { closeSync, constants, existsSync, fstatSync, openSync, readSync, realpathSync } from "node:fs";
import { dirname, isAbsolute, join, relative, resolve, sep } from "node:path";
import { URI } from "vscode-uri";

/** A build file bigger than this is no build file. */
export const mostBytes = 4 * 1024 * 1024;

/** A text, or why there is none; `missing` where there simply is no such file. */
export type ReadText = { readonly text: string } | { readonly failure: string; readonly missing?: boolean };

/** Reads a text file; a failure is the end of a sentence that begins with the file's name. Never throws. */
export function readText(path: string): ReadText {
  try {
    // Not waiting: opening a named pipe that nobody writes to would never come back.
    const handle = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    try {
      const kind = fstatSync(handle);
      if (kind.isDirectory()) return { failure: "is a folder; name the build files in it" };
      if (!kind.isFile()) return { failure: "is not a file" };
      if (mostBytes < kind.size) return { failure: `is too big (${sizeText(kind.size)}; the limit is 4 MiB)` };
      return textFrom(readAll(handle, kind.size));
    } finally {
      closeSync(handle);
    }
  } catch (error) {
    return { failure: readFailure(error), ...(isMissing(error) ? { missing: true } : {}) };
  }
}

/** The text in bytes, which must be UTF-8; a mark of its order at the start is left out. */
export function textFrom(bytes: Uint8Array): ReadText {
  if (mostBytes < bytes.length) return { failure: "is too big (the limit is 4 MiB)" };
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
    return { failure: "is UTF-16 text; save it as UTF-8" };
  }
  if (bytes.includes(0)) return { failure: "is not a text file" };
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return { failure: "is not UTF-8 text; save it as UTF-8" };
  }
}

/**
 * The text of a `file:` address that lies, links followed, inside the root; `undefined` for all others. A link inside
 * the root that leads out of it is such another: what a build uses may not depend on the rest of the machine.
 */
export async function readInside(uri: string, root: string): Promise<string | undefined> {
  try {
    const path = realpathSync(URI.parse(uri, true).fsPath);
    if (!isInside(path, realpathSync(URI.parse(root, true).fsPath))) return undefined;
    const read = readText(path);
    return "text" in read ? read.text : undefined;
  } catch {
    return undefined;
  }
}

/**
 * The folder that a build file's `use` may not leave: the nearest one up with a `.git` in it, else the working folder if
 * the file lies in it, else the file's own.
 */
export function rootFor(path: string, cwd: string): string {
  const own = dirname(resolve(cwd, path));
  for (let folder = own; ; folder = dirname(folder)) {
    if (existsSync(join(folder, ".git"))) return folder;
    if (folder === dirname(folder)) break;
  }
  return isInside(own, cwd) ? cwd : own;
}

/** Whether the path is the folder or lies in it; both absolute. */
export function isInside(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

function readAll(handle: number, size: number): Uint8Array {
  const bytes = new Uint8Array(size);
  let filled = 0;
  for (;;) {
    const count = readSync(handle, bytes, filled, size - filled, filled);
    filled += count;
    if (count === 0 || filled === size) return bytes.subarray(0, filled);
  }
}

function sizeText(bytes: number): string {
  return `${(bytes / 1024 / 1024).toFixed(1)} MiB`;
}

function isMissing(error: unknown): boolean {
  return (error as NodeJS.ErrnoException | undefined)?.code === "ENOENT";
}

function readFailure(error: unknown): string {
  switch ((error as NodeJS.ErrnoException).code) {
    case "ENOENT":
    case "ENOTDIR":
      return "does not exist";
    case "EACCES":
    case "EPERM":
      return "may not be read by you";
    case "EISDIR":
      return "is a folder; name the build files in it";
    case "ELOOP":
      return "is a link that leads back to itself";
    case "ENAMETOOLONG":
      return "is too long a name";
    default:
      return `could not be read: ${error instanceof Error ? error.message : String(error)}`;
  }
}
