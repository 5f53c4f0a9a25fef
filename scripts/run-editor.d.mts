import type { EditorPaths } from "./real-editor.mjs";

/** A running editor: where to open it, its exit code once it has ended, and how to end it with all it started. */
export interface RunningEditor {
  readonly url: string;
  readonly ended: Promise<number>;
  readonly stop: () => Promise<void>;
}

export function installExtension(
  editor: EditorPaths,
  options: { readonly vsix: string; readonly home: string; readonly extensions: string; readonly log?: string },
): Promise<void>;

export function startEditor(
  editor: EditorPaths,
  options: {
    readonly folder: string;
    readonly home: string;
    readonly extensions: string;
    readonly settings?: Readonly<Record<string, unknown>>;
    readonly log?: string;
    readonly port?: number;
  },
): Promise<RunningEditor>;
