import type { Design } from "../language/core/design.ts";
import type { Build, Workspace } from "../language/service.ts";
import { createWorkspace } from "../language/service.ts";
import type { Waits } from "./debounce.ts";
import { createDebounce } from "./debounce.ts";
import { canonical, folderOf, rootOf, withFoldersOf } from "./uris.ts";

/** A document that an editor has open. Its text governs, whatever is on disk. */
export interface OpenFile {
  /** As the language spells it; what findings and edits are placed in. */
  readonly uri: string;
  /** As the editor spells it; what it wants to be told about. */
  readonly clientUri: string;
  readonly version: number;
  readonly text: string;
}

/** An open file with the build of exactly this text. */
export interface Checked {
  readonly file: OpenFile;
  readonly build: Build;
}

/** A file as it stands. */
export interface Current {
  readonly uri: string;
  readonly text: string;
  /** What it says and what the files that it uses say, its own first. */
  readonly designs: readonly Design[];
  /** The build of exactly this text; `undefined` only where building failed. */
  build(): Build | undefined;
}

/** What is open, and what was made of it. Files not open are read when an open one uses them. */
export interface Session {
  /** An editor opened a document. */
  open(file: OpenFile): void;
  /** An open document's text changed. */
  change(file: OpenFile): void;
  /** From here on what is on disk counts. */
  close(uri: string): void;
  /** Files came, went or changed on disk, or whole folders came or went, of whose files nothing need be said. */
  changedOnDisk(uris: readonly string[]): void;
  /** The folders that are open in the editor, as addresses: what `use` may not leave. */
  setFolders(folders: readonly string[]): void;
  folders(): readonly string[];
  file(uri: string): OpenFile | undefined;
  /** A file's address as the editor spells it, if it ever opened it. */
  addressOf(uri: string): string;
  /** Checks what is pending; then the build of the file, open or on disk. `undefined` if there is none. */
  settled(uri: string): Promise<Build | undefined>;
  /** The file as it stands, open or on disk, with all that it uses read; nothing is checked for it. */
  current(uri: string): Promise<Current | undefined>;
  /** What every known build says that the file belongs to, each build's own file first; that of the file itself is the first. */
  families(uri: string): readonly (readonly Design[])[];
  /** Every file whose text is known, each once, in the order of their addresses. */
  known(): readonly Design[];
  /** Reads these files, as far as there are any, so that they are known until the next check. */
  learn(uris: readonly string[]): Promise<void>;
  textOf(uri: string): string | undefined;
  /** The folder that what the file uses lies in. */
  rootOf(uri: string): string;
  /** Told after each check of the open files that were checked anew; all texts are then those last set. */
  onChecked(listener: (checked: readonly Checked[]) => void): void;
  onClosed(listener: (file: OpenFile) => void): void;
}

export interface SessionHost {
  /** The text of a file that is not open; `undefined` if there is none inside `root`. May reject. */
  read(uri: string, root: string): Promise<string | undefined>;
  /** Something failed that never should: the session goes on. */
  fault(what: string, error: unknown): void;
}

/** A file on its way from disk. */
interface Reading {
  readonly uri: string;
  /** Whether it has changed since the reading began. */
  isStale: boolean;
}

/** Quick enough to seem at once, slow enough not to check every letter of a word. */
export const waits: Waits = { idle: 60, longest: 250 };

export function createSession(host: SessionHost): Session {
  const files = new Map<string, OpenFile>();
  const dirty = new Set<string>();
  /** Files that were looked for and not found, until something says that they came. */
  const absent = new Set<string>();
  const checkedListeners: ((checked: readonly Checked[]) => void)[] = [];
  const closedListeners: ((file: OpenFile) => void)[] = [];
  const addresses = new Map<string, string>();
  /** Files whose texts came from disk. */
  const fromDisk = new Set<string>();
  let folders: readonly string[] = [];
  /** One per folder, since a folder is what `use` may not leave; the key of files in none is `undefined`. */
  const workspaces = new Map<string | undefined, Workspace>();
  let running: Promise<void> = Promise.resolve();
  /** Files that are being read now. */
  const reading = new Set<Reading>();
  /** How many are at work on files that need not be open: until they are done, what was read for them stays. */
  let holds = 0;

  const run = (): Promise<void> => {
    running = running.then(check).catch((error) => host.fault("The check failed.", error));
    return running;
  };
  const debounce = createDebounce(waits, run);

  function workspaceOf(uri: string): Workspace {
    const root = rootOf(uri, folders);
    const workspace = workspaces.get(root) ?? createWorkspace({ root });
    workspaces.set(root, workspace);
    return workspace;
  }

  function setText(file: OpenFile): void {
    const own = workspaceOf(file.uri);
    for (const workspace of new Set([own, ...workspaces.values()])) {
      if (workspace === own || workspace.textOf(file.uri) !== undefined) workspace.set(file.uri, file.text);
    }
    files.set(file.uri, file);
    addresses.set(file.uri, file.clientUri);
    fromDisk.delete(file.uri);
    absent.delete(file.uri);
    dirty.add(file.uri);
  }

  /** Its text is asked for anew when next needed. */
  function drop(uri: string): void {
    forget(uri);
    for (const one of reading) if (one.uri === uri) one.isStale = true;
    absent.delete(uri);
    dirty.add(uri);
  }

  /** The files that are not open and of which something is known, or is being read, at these addresses or below. */
  function concerned(changed: ReadonlySet<string>): readonly string[] {
    const set = [...workspaces.values()].flatMap((workspace) => workspace.uris());
    const all = new Set([...set, ...absent, ...[...reading].map(({ uri }) => uri)]);
    return [...all].filter((uri) => !files.has(uri) && withFoldersOf(uri).some((place) => changed.has(place)));
  }

  function forget(uri: string): void {
    for (const workspace of workspaces.values()) workspace.forget(uri);
    fromDisk.delete(uri);
  }

  /** The open files that have changed or use one that has. */
  function affected(): readonly OpenFile[] {
    const uris = new Set(dirty);
    for (const workspace of workspaces.values()) {
      for (const uri of dirty) for (const user of workspace.usersOf(uri)) uris.add(user);
    }
    return [...uris].flatMap((uri) => files.get(uri) ?? []);
  }

  /** Sets the texts of all that the file uses and that can be had. */
  async function gather(uri: string): Promise<void> {
    const workspace = workspaceOf(uri);
    const root = rootOf(uri, folders) ?? folderOf(uri);
    for (;;) {
      const wanted = workspace.missing(uri).filter((used) => !absent.has(used));
      if (wanted.length === 0 || !isCurrent(workspace)) return;
      await Promise.all(wanted.map((used) => supply(workspace, used, root)));
    }
  }

  async function supply(workspace: Workspace, uri: string, root: string): Promise<void> {
    const read = files.get(uri)?.text ?? (await onDisk(uri, root));
    // It may have been opened while it was read.
    const text = files.get(uri)?.text ?? read;
    // What may be read may be another thing since.
    if (!isCurrent(workspace)) return;
    if (text === undefined) absent.add(uri);
    else setFromHost(workspace, uri, text);
  }

  /** The text of a file that is not open; read once more where it changed while it was read. */
  async function onDisk(uri: string, root: string): Promise<string | undefined> {
    const own: Reading = { uri, isStale: false };
    reading.add(own);
    const text = await host.read(uri, root).catch(() => undefined);
    reading.delete(own);
    return own.isStale ? onDisk(uri, root) : text;
  }

  /** Whether the folders are still those that the workspace was made for. */
  function isCurrent(workspace: Workspace): boolean {
    return [...workspaces.values()].includes(workspace);
  }

  function setFromHost(workspace: Workspace, uri: string, text: string): void {
    workspace.set(uri, text);
    if (!files.has(uri)) fromDisk.add(uri);
  }

  async function check(): Promise<void> {
    const seen = new Set<string>();
    while (0 < dirty.size) {
      const batch = affected();
      dirty.clear();
      for (const { uri } of batch) seen.add(uri);
      await Promise.all(batch.map(({ uri }) => gather(uri)));
    }
    // Nothing is awaited from here on: every build is of the texts as they now are.
    const checked = [...seen].flatMap((uri): readonly Checked[] => {
      const file = files.get(uri);
      const build = file === undefined ? undefined : built(uri);
      return file === undefined || build === undefined ? [] : [{ file, build }];
    });
    tell(checkedListeners, checked);
    forgetUnused();
  }

  function built(uri: string): Build | undefined {
    try {
      return workspaceOf(uri).build(uri);
    } catch (error) {
      host.fault(`${uri} could not be built.`, error);
      return undefined;
    }
  }

  function forgetUnused(): void {
    if (0 < holds) return;
    const open = [...files.keys()];
    const used = new Set(
      [...workspaces.values()]
        .flatMap((workspace) =>
          open.flatMap((uri) => (workspace.textOf(uri) === undefined ? [] : workspace.designsOf(uri))),
        )
        .map(({ uri }) => uri),
    );
    for (const uri of [...fromDisk]) if (!used.has(uri)) forget(uri);
  }

  /** Does something with files that need not be open, none of which is forgotten meanwhile. */
  async function holding<T>(work: () => Promise<T>): Promise<T> {
    holds++;
    try {
      return await work();
    } finally {
      holds--;
    }
  }

  function tell<T>(listeners: readonly ((value: T) => void)[], value: T): void {
    for (const listener of listeners) {
      try {
        listener(value);
      } catch (error) {
        host.fault("A listener failed.", error);
      }
    }
  }

  function loaded(uri: string): Promise<Build | undefined> {
    return holding(async () => ((await isRead(uri)) ? built(uri) : undefined));
  }

  /** Sets the texts of the file and of all that it uses; says whether there is such a file. */
  async function isRead(uri: string): Promise<boolean> {
    const workspace = workspaceOf(uri);
    if (!files.has(uri)) {
      const text = await onDisk(uri, rootOf(uri, folders) ?? folderOf(uri));
      if (text === undefined) return false;
      if (!files.has(uri)) setFromHost(workspace, uri, text);
    }
    await gather(uri);
    return isCurrent(workspace) || isRead(uri);
  }

  return {
    open(file) {
      setText(file);
      debounce.soon();
    },
    change(file) {
      setText(file);
      debounce.later();
    },
    close(uri) {
      const file = files.get(uri);
      if (file === undefined) return;
      files.delete(uri);
      drop(uri);
      tell(closedListeners, file);
      debounce.later();
    },
    changedOnDisk(uris) {
      const changed = concerned(new Set(uris.map((uri) => canonical(uri).replace(/\/$/, ""))));
      for (const uri of changed) drop(uri);
      if (0 < changed.length) debounce.later();
    },
    setFolders(next) {
      folders = next.map(canonical);
      workspaces.clear();
      fromDisk.clear();
      absent.clear();
      for (const file of files.values()) setText(file);
      debounce.soon();
    },
    folders: () => folders,
    file: (uri) => files.get(canonical(uri)),
    addressOf: (uri) => addresses.get(uri) ?? uri,
    async settled(uri) {
      debounce.cancel();
      await run();
      return loaded(canonical(uri));
    },
    current(uri) {
      const own = canonical(uri);
      return holding(async () => {
        if (!(await isRead(own))) return undefined;
        const workspace = workspaceOf(own);
        const text = workspace.textOf(own);
        if (text === undefined) return undefined;
        return { uri: own, text, designs: workspace.designsOf(own), build: () => built(own) };
      });
    },
    families(uri) {
      const own = canonical(uri);
      const workspace = workspaceOf(own);
      return [own, ...workspace.usersOf(own)].map((root) => workspace.designsOf(root));
    },
    known() {
      const designs = [...workspaces.values()].flatMap((workspace) =>
        workspace.uris().flatMap((uri) => workspace.designOf(uri) ?? []),
      );
      const byUri = new Map(designs.map((design) => [design.uri, design]));
      return [...byUri.keys()].sort().map((uri) => byUri.get(uri)!);
    },
    async learn(uris) {
      const unread = uris.map(canonical).filter((uri) => workspaceOf(uri).textOf(uri) === undefined);
      await holding(() => Promise.all(unread.map(isRead)));
    },
    textOf: (uri) => workspaceOf(canonical(uri)).textOf(canonical(uri)),
    rootOf: (uri) => rootOf(canonical(uri), folders) ?? folderOf(canonical(uri)),
    onChecked: (listener) => void checkedListeners.push(listener),
    onClosed: (listener) => void closedListeners.push(listener),
  };
}
