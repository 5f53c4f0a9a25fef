import { relative, resolve, sep } from "node:path";
import { URI } from "vscode-uri";
import type { Build, Workspace } from "../../language/service.ts";
import { createWorkspace } from "../../language/service.ts";
import type { ListFinding } from "../../language/view/types.ts";
import type { Io } from "./io.ts";

/** A build with what is needed to talk about its files. */
export interface Loaded {
  readonly build: Build;
  /** The folder that `use` may not leave, as an address. */
  readonly root: string;
  /** What to call the file itself. */
  readonly label: string;
  /** What to call a file of the build: as it was named, or by its way from the working folder. */
  labelOf(uri: string): string;
  textOf(uri: string): string | undefined;
}

/** Reads a build file and all that it uses; a failure is a whole sentence. */
export async function load(name: string, io: Io): Promise<Loaded | { readonly failure: string }> {
  if (name === "") return { failure: "the name of a file is empty" };
  const isStdin = name === "-";
  const label = isStdin ? "stdin" : name;
  const path = resolve(io.cwd, isStdin ? "stdin.scant" : name);
  const read = isStdin ? await io.readStdin() : io.read(path);
  if ("failure" in read) return { failure: `${label} ${read.failure}` };

  const uri = URI.file(path).toString();
  const root = URI.file(io.rootFor(path)).toString();
  const workspace = createWorkspace({ root });
  workspace.set(uri, read.text);
  try {
    await gather(workspace, uri, root, io);
    io.progress(`working out ${label}`);
    const build = workspace.build(uri);
    return {
      build,
      root,
      label,
      labelOf: (of) => (of === uri ? label : wayTo(of, io.cwd)),
      textOf: (of) => workspace.textOf(of),
    };
  } catch (error) {
    // Never meant to happen; if it does, the other files are checked all the same.
    return { failure: `${label} could not be worked out: ${error instanceof Error ? error.message : String(error)}` };
  }
}

/** Sets the texts of all that the file uses, near or far, and that can be had. */
async function gather(workspace: Workspace, uri: string, root: string, io: Io): Promise<void> {
  const absent = new Set<string>();
  for (;;) {
    const wanted = workspace.missing(uri).filter((used) => !absent.has(used));
    if (wanted.length === 0) return;
    for (const used of wanted) {
      const text = await io.readUsed(used, root);
      if (text === undefined) absent.add(used);
      else workspace.set(used, text);
    }
  }
}

/** Findings with their files called as a person would. */
export function namedFindings({ build, labelOf }: Loaded): readonly ListFinding[] {
  return build.list().findings.map((finding) => ({ ...finding, file: labelOf(finding.file) }));
}

function wayTo(uri: string, cwd: string): string {
  const path = URI.parse(uri).fsPath;
  const way = relative(cwd, path);
  return (way.startsWith(`..${sep}`) ? path : way).replaceAll(sep, "/");
}
