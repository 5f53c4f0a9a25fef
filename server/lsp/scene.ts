import type { Position } from "vscode-languageserver";
import type { Scene } from "../../language/edit/scene.ts";
import { sceneOf } from "../../language/edit/scene.ts";
import type { Build } from "../../language/service.ts";
import type { Server } from "./feature.ts";

/** What was last made of a build, with what the dry fit of it was at the time. */
const made = new WeakMap<Build, Scene>();

/** The scene of a file as it stands; `undefined` if there is none. The dry fit is in it once the file has been checked. */
export async function sceneAt(server: Server, uri: string): Promise<Scene | undefined> {
  const { session, problems } = server;
  const current = await session.current(uri);
  if (current === undefined) return undefined;
  const { text } = current;
  const build = current.build();
  if (build === undefined) return undefined;
  const file = session.file(current.uri);
  const checked = file !== undefined && problems.versionOf(file.uri) === file.version;
  const known = made.get(build);
  if (known !== undefined && (known.fit !== undefined || !checked)) return known;
  const { context, model } = build.derivation;
  const fit = checked ? build.dryFit() : undefined;
  const scene = sceneOf({ uri: current.uri, text, designs: build.designs, context, model, fit });
  made.set(build, scene);
  return scene;
}

/** The builds that were last checked, by the address of their file. */
export interface Recent {
  /**
   * The scene of an open file as it stands, but with the names and sizes of the last check where the text has changed
   * since: nothing is read or derived for it. As `sceneAt` where nothing has been checked yet.
   */
  sceneAt(uri: string): Promise<Scene | undefined>;
}

/** Follows the checks of a session from here on. */
export function recentScenes(server: Server): Recent {
  const { session } = server;
  const checked = new Map<string, Build>();
  session.onChecked((all) => {
    for (const { file, build } of all) checked.set(file.uri, build);
  });
  session.onClosed(({ uri }) => void checked.delete(uri));
  return {
    async sceneAt(uri) {
      const file = session.file(uri);
      const build = file === undefined ? undefined : checked.get(file.uri);
      if (file === undefined || build === undefined || server.problems.versionOf(file.uri) === file.version)
        return sceneAt(server, uri);
      const { designs, derivation } = build;
      const { context, model } = derivation;
      return sceneOf({ uri: file.uri, text: file.text, designs, context, model, fit: undefined });
    },
  };
}

/** The offset of a place in a text; that of the nearest place there is where the text has no such line or column. */
export function offsetAt(text: string, { line, character }: Position): number {
  let start = 0;
  for (let left = line; 0 < left; left--) {
    const next = lineEnd(text, start);
    if (text.length <= next.end) return text.length;
    start = next.after;
  }
  return Math.min(start + Math.max(0, character), lineEnd(text, start).end);
}

/** The place of an offset. */
export function positionAt(text: string, offset: number): Position {
  let [line, start] = [0, 0];
  for (;;) {
    const { end, after } = lineEnd(text, start);
    if (offset < after || text.length <= end) return { line, character: Math.min(offset, end) - start };
    line++;
    start = after;
  }
}

/** Where a line ends without its break, and where the next one starts. */
function lineEnd(text: string, start: number): { readonly end: number; readonly after: number } {
  for (let at = start; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 10) return { end: at, after: at + 1 };
    if (code === 13) return { end: at, after: text.charCodeAt(at + 1) === 10 ? at + 2 : at + 1 };
  }
  return { end: text.length, after: text.length };
}
