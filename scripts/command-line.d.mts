import type { BuildOptions } from "esbuild";

interface Part {
  readonly entry: string;
  readonly file: string;
  /** esbuild's, beside those of every program for Node. */
  readonly options: BuildOptions;
}

/** Node begins with `start`, which runs `program`: from its compiled code, if that is kept beside it. */
export declare const commandLine: { readonly start: Part; readonly program: Part };

/** Runs the program of a folder over the examples with a Node, and keeps what it was compiled to beside it. */
export declare function keepCompiled(folder: string, node?: string): Promise<void>;
