/** Three paths: the Node that runs code-server, code-server's entry, and Chromium. */
export interface EditorPaths {
  readonly node: string;
  readonly entry: string;
  readonly chromium: string;
}

export function cacheFolder(): string;

export function setUpEditor(options?: { readonly say?: (line: string) => void }): Promise<EditorPaths>;
