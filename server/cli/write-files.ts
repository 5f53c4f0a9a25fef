import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  statSync,
  unlinkSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";

export type Written =
  | { readonly path: string; readonly outcome: "written" | "unchanged" }
  /** The end of a sentence that begins with the file's name. */
  | { readonly path: string; readonly outcome: "failed"; readonly failure: string };

/**
 * Writes text or bytes so that a reader, or a machine that stops half way, finds the old file or the new one, no part:
 * into a file beside it that is flushed and then takes its name. A file that says the same already is not touched; one
 * that is replaced keeps its permissions; a link stays one. Never throws.
 */
export function writeWhole(path: string, content: string | Uint8Array): Written {
  try {
    const target = followed(path);
    const before = statSync(target, { throwIfNoEntry: false });
    if (before?.isDirectory() === true) return failed(path, "is a folder");
    if (before !== undefined && !before.isFile()) return failed(path, "is not a plain file");
    if (before !== undefined) {
      const bytes = typeof content === "string" ? Buffer.from(content) : content;
      if (readFileSync(target).equals(bytes)) return { path, outcome: "unchanged" };
      // Taking its name would get round this, and whoever protected it meant it.
      if ((before.mode & 0o222) === 0) return failed(path, "is read-only");
      accessSync(target, constants.W_OK);
    }
    replace(target, content, before?.mode);
    return { path, outcome: "written" };
  } catch (error) {
    return failed(path, writeFailure(error, dirname(path)));
  }
}

/** Where a link leads; the path itself if nothing is there yet. */
function followed(path: string): string {
  try {
    return realpathSync(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return path;
    throw error;
  }
}

function replace(target: string, content: string | Uint8Array, mode: number | undefined): void {
  const beside = join(dirname(target), `.${basename(target)}.${crypto.randomUUID().slice(0, 8)}.tmp`);
  const handle = openSync(beside, "wx");
  try {
    try {
      writeFileSync(handle, content);
      if (mode !== undefined) fchmodSync(handle, mode & 0o7777);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(beside, target);
  } catch (error) {
    tryTo(() => unlinkSync(beside));
    throw error;
  }
  // So that the new name outlasts a power cut too. Not every system lets a folder be opened.
  tryTo(() => flushFolder(dirname(target)));
}

function flushFolder(folder: string): void {
  const handle = openSync(folder, "r");
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

function tryTo(act: () => void): void {
  try {
    act();
  } catch {
    // What is asked for is done, or has failed, without it.
  }
}

function failed(path: string, failure: string): Written {
  return { path, outcome: "failed", failure };
}

function writeFailure(error: unknown, folder: string): string {
  switch ((error as NodeJS.ErrnoException).code) {
    case "ENOENT":
      return `cannot be written: there is no folder ${folder}`;
    case "ENOTDIR":
      return `cannot be written: ${folder} is not a folder`;
    case "EACCES":
    case "EPERM":
      return "may not be written by you";
    case "EROFS":
      return "cannot be written: the disk is read-only";
    case "ENOSPC":
    case "EDQUOT":
      return "cannot be written: the disk is full";
    case "EFBIG":
      return "cannot be written: it is larger than the system lets you write";
    default:
      return `could not be written: ${error instanceof Error ? error.message : String(error)}`;
  }
}

/** Makes a folder and those above it; what stood in the way, as the end of a sentence that begins with its name. */
export function makeFolder(path: string): string | undefined {
  try {
    mkdirSync(path, { recursive: true });
    return undefined;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "EEXIST" || code === "ENOTDIR") return "cannot be made: there is a file of that name";
    return `cannot be made: ${error instanceof Error ? error.message : String(error)}`;
  }
}
