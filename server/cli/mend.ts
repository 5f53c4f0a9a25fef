import { resolve } from "node:path";
import { createWorkspace, fixAll } from "../../language/service.ts";
import type { ExitCode } from "./exit-codes.ts";
import { exitCodes } from "./exit-codes.ts";
import type { Io } from "./io.ts";
import { type Loaded, load } from "./load.ts";

/** A file with its safe fixes written, loaded anew; or what stood in the way. */
export interface Mended {
  readonly loaded: Loaded;
  readonly code: ExitCode;
}

/** Applies the fixes of a file that are safe unseen, says which, and writes it only when it changed. Used files are left as they are. */
export async function mend(name: string, loaded: Loaded, io: Io): Promise<Mended> {
  const { uri } = loaded.build;
  const before = loaded.textOf(uri) ?? "";
  const { text, applied } = fixAll(uri, before, (changed) => findingsWith(loaded, uri, changed));
  if (text === before) return { loaded, code: exitCodes.fine };
  const written = io.write(resolve(io.cwd, name), text);
  if (written.outcome === "failed") {
    io.err(`scantling: ${loaded.label} ${written.failure}\n`);
    return { loaded, code: exitCodes.unusable };
  }
  for (const { code, title } of applied) io.err(`${loaded.label}: ${code}: ${title}\n`);
  const again = await load(name, io);
  return { loaded: "failure" in again ? loaded : again, code: exitCodes.fine };
}

/** What is found when the file has another text and all that it uses stays. */
function findingsWith(loaded: Loaded, uri: string, text: string) {
  const workspace = createWorkspace({ root: loaded.root });
  workspace.set(uri, text);
  for (;;) {
    const wanted = workspace.missing(uri).flatMap((used) => {
      const known = loaded.textOf(used);
      return known === undefined ? [] : [{ used, known }];
    });
    if (wanted.length === 0) return workspace.build(uri).findings;
    for (const { used, known } of wanted) workspace.set(used, known);
  }
}
