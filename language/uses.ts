import { URI, Utils } from "vscode-uri";
import type { UseStatement } from "./core/design.ts";
import type { Finding } from "./core/finding.ts";

/** The file that a `use` names, or why it may not be used. */
export type UsedFile = { readonly uri: string } | { readonly refused: Finding };

/** Resolves a `use` against the file that it stands in. It may not leave the root folder, and must be a plain relative path. */
export function usedFile(use: UseStatement, from: string, root: string | undefined): UsedFile {
  const path = use.path.text;
  const why = refusal(path);
  if (why !== undefined) return { refused: refused(use, why) };
  if (from.startsWith("untitled:")) return { refused: unsaved(use) };
  const base = URI.parse(from);
  const target = URI.parse(addressOf(path, from));
  const top = root === undefined ? Utils.dirname(base) : URI.parse(root);
  const inside = `${top.path.replace(/\/$/, "")}/`;
  if (target.scheme !== top.scheme || target.authority !== top.authority || !target.path.startsWith(inside)) {
    return { refused: refused(use, "it lies outside the folder that is open") };
  }
  return { uri: target.toString() };
}

/** The address that a relative path leads to from a file. */
export function addressOf(path: string, from: string): string {
  return Utils.joinPath(Utils.dirname(URI.parse(from)), ...path.split("/")).toString();
}

function refusal(path: string): string | undefined {
  if (path.trim() === "") return "it names no file";
  if (/^[/\\]/.test(path)) return "it is an absolute path";
  if (/^[A-Za-z][A-Za-z0-9+.-]*:/.test(path)) return "it is an address or names a drive";
  if (path.includes("\\")) return 'folders are divided by "/"';
  // Half of a character that takes two, and signs that nobody sees, make no address.
  if (/[\ud800-\udfff\p{Cc}]/u.test(path) || /[?#%*<>|"]/.test(path))
    return "it holds a sign that no file name should have";
  if (!path.endsWith(".scant")) return 'build files end in ".scant"';
  return undefined;
}

function refused(use: UseStatement, why: string): Finding {
  return {
    code: "use/refused",
    severity: "error",
    span: use.path.span,
    message: `"${use.path.text}" cannot be used: ${why}`,
    reason:
      "A build file may use files of its own folder and the folders below the one that is open, so that it works the same everywhere.",
    remedy: 'Write a path from this file: use "rack.scant".',
    related: [],
    fixes: [],
  };
}

function unsaved(use: UseStatement): Finding {
  return {
    ...refused(use, "this file has not been saved yet"),
    reason: "What a build file uses is looked for from the folder that it lies in.",
    remedy: "Save this file first.",
  };
}

export function missingFile(use: UseStatement): Finding {
  return {
    code: "use/missing",
    severity: "error",
    span: use.path.span,
    message: `there is no file "${use.path.text}"`,
    reason: "What it describes is missing from this build.",
    remedy: "Check its name and folder, or take the line out.",
    related: [],
    fixes: [],
  };
}

export function circularUse(use: UseStatement): Finding {
  return {
    code: "use/circle",
    severity: "error",
    span: use.path.span,
    message: `"${use.path.text}" leads back to this file`,
    reason: "Each would have to be read before the other.",
    remedy: "Move what both need into a third file.",
    related: [],
    fixes: [],
  };
}

export function tooManyUses(use: UseStatement, most: number): Finding {
  return {
    code: "use/too-many",
    severity: "error",
    span: use.path.span,
    message: `this build uses more than ${most} files`,
    reason: "Files are read each time one of them changes; so many would make the editor slow.",
    remedy: "Put files together.",
    related: [],
    fixes: [],
  };
}
