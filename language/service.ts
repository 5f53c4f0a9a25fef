import type { Finding } from "./core/finding.ts";
import type { ListDocument, RodView } from "./view/types.ts";

/** A set of build files in memory. Nothing here reads or writes files: the host says what they hold. */
export interface Workspace {
  /** Sets a file's text; builds that use the file are made anew when next asked for. */
  set(uri: string, text: string): void;
  /** Says that there is no such file (any more). */
  forget(uri: string): void;
  /** The text last set, if any. */
  textOf(uri: string): string | undefined;
  /** The files that are used by this one, near or far, that have not been set; the host should read and set them. */
  missing(uri: string): readonly string[];
  /** The files set that use this one, near or far. */
  usersOf(uri: string): readonly string[];
  /** The build of a file; made once and kept until a file it rests on changes. Never throws. */
  build(uri: string): Build;
}

/** All that is known from one build file and the files it uses. */
export interface Build {
  readonly uri: string;
  /** Sorted by file and place; those in used files included. */
  readonly findings: readonly Finding[];
  /** Whether the text of the file itself could be read to its end without trouble. */
  readonly whole: boolean;
  list(): ListDocument;
  rod(): RodView;
  /** The cut list as RFC 4180 text with CRLF line ends. */
  csv(): string;
  markdown(): string;
  /** The cut list for a terminal, at most 80 columns wide. */
  text(): string;
}

export interface WorkspaceOptions {
  /** The folder that `use` may not leave, as a URI; missing: the build file's own folder. */
  readonly root: string | undefined;
}

export function createWorkspace(_options: WorkspaceOptions): Workspace {
  throw new Error("not built yet");
}
