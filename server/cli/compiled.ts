import { readFileSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { Script } from "node:vm";

/** A program in a file of its own, ready to run, with what it was compiled to if that was kept when it was built. */
export interface Compiled {
  readonly script: Script;
  /** Where the compiled code is kept, for this Node on this kind of machine only: no other can use it. */
  readonly keptAt: string;
  run(): void;
}

/** What a CommonJS file is run in. */
const [before, after] = ["(function (exports, require, module, __filename, __dirname) { ", "\n})"];

/**
 * The program `command-line.cjs` of a folder. Kept code is taken as long as the program has not been written since: it
 * belongs to that text alone, and V8 itself compares only the length. Where V8 refuses it, the text is compiled as ever.
 * Throws when there is no program.
 */
export function compiledIn(folder: string): Compiled {
  const filename = join(folder, "command-line.cjs");
  const keptAt = join(folder, `command-line-${process.version}-${process.platform}-${process.arch}.code`);
  const script = new Script(`${before}${readFileSync(filename, "utf8")}${after}`, {
    filename,
    columnOffset: -before.length,
    cachedData: keptSince(filename, keptAt),
  });
  return {
    script,
    keptAt,
    run: () => {
      const module = { exports: {} };
      script.runInThisContext()(module.exports, createRequire(filename), module, filename, folder);
    },
  };
}

function keptSince(filename: string, keptAt: string): Buffer | undefined {
  const kept = statSync(keptAt, { throwIfNoEntry: false });
  if (kept === undefined || kept.mtimeMs < statSync(filename).mtimeMs) return undefined;
  try {
    return readFileSync(keptAt);
  } catch {
    // Without it the program starts later, and does the same.
    return undefined;
  }
}
