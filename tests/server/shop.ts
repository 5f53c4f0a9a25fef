import { posix } from "node:path";
import { URI } from "vscode-uri";
import type { Io } from "../../server/cli/io.ts";
import type { ReadText } from "../../server/cli/read-files.ts";
import { run } from "../../server/cli/run.ts";

/** The program with a world of its own in memory. */
export interface Shop {
  /** What has been written, by its path. */
  readonly written: ReadonlyMap<string, string>;
  run(...words: readonly string[]): Promise<Outcome>;
}

export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export interface ShopOptions {
  readonly stdin?: string;
  readonly colour?: boolean;
  /** Why nothing can be written, if it can't. */
  readonly protectedBy?: string;
  /** The user stops it once so many files are written. */
  readonly stopAfter?: number;
}

/** Files by their paths from the working folder, which is also the root. */
export function shop(files: Readonly<Record<string, string>>, options: ShopOptions = {}): Shop {
  const cwd = "/shop";
  const texts = new Map(Object.entries(files).map(([name, text]) => [posix.resolve(cwd, name), text]));
  const written = new Map<string, string>();
  const read = (path: string): ReadText => {
    const text = written.get(path) ?? texts.get(path);
    return text === undefined ? { failure: "does not exist", missing: true } : { text };
  };
  const { protectedBy } = options;
  return {
    written,
    async run(...words) {
      const printed = { out: "", err: "" };
      const io: Io = {
        cwd,
        colour: options.colour === true,
        version: "1.2.3",
        out: (text) => {
          printed.out += text;
        },
        err: (text) => {
          printed.err += text;
        },
        progress: () => undefined,
        heedStop: () => () => (options.stopAfter ?? Number.POSITIVE_INFINITY) <= written.size,
        read,
        readStdin: async () => ({ text: options.stdin ?? "" }),
        readUsed: async (uri) => texts.get(URI.parse(uri).fsPath),
        rootFor: () => cwd,
        makeFolder: () => undefined,
        write: (path, content) => {
          const text = typeof content === "string" ? content : Buffer.from(content).toString("latin1");
          if (protectedBy !== undefined) return { path, outcome: "failed", failure: protectedBy };
          const outcome = written.get(path) === text ? "unchanged" : "written";
          written.set(path, text);
          return { path, outcome };
        },
      };
      return { code: await run(words, io), ...printed };
    },
  };
}
