import type { ReadText } from "./read-files.ts";
import type { Written } from "./write-files.ts";

/** All that a command may do to the world; paths are absolute. */
export interface Io {
  /** The working folder. */
  readonly cwd: string;
  /** Whether what is printed is looked at on a terminal that shows colours. */
  readonly colour: boolean;
  /** The program's own version. */
  readonly version: string;
  out(text: string): void;
  err(text: string): void;
  read(path: string): ReadText;
  readStdin(): Promise<ReadText>;
  /** The text of a used file's address inside the root, itself an address; `undefined` if there is none. */
  readUsed(uri: string, root: string): Promise<string | undefined>;
  /** Says what is under way, on one line that the next takes the place of; nothing where nobody looks at a terminal. */
  progress(text: string): void;
  /**
   * From now on a wish to stop, as by Ctrl+C, does not end the program by itself: whoever calls this looks between two
   * steps whether there was one, and leaves the event loop a turn for it to be seen. A second wish ends it at once.
   */
  heedStop(): () => boolean;
  /** The folder that a build file's `use` may not leave. */
  rootFor(path: string): string;
  /** Makes a folder, and those above it, where there is none; what stood in the way, as the end of a sentence. */
  makeFolder(path: string): string | undefined;
  write(path: string, content: string | Uint8Array): Written;
}
