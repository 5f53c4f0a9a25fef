import type { BaseLanguageClient, CancellationToken, Disposable } from "vscode-languageclient";
import { WorkDoneProgress } from "vscode-languageserver-protocol";
import type { ListDocument } from "../language/view/types.ts";
import {
  type BenchAnswer,
  bench,
  cutList,
  type DrawingsAnswer,
  drawings,
  type FileParams,
  type KeepOffcutsParams,
  type KeepOffcutsResult,
  keepOffcuts,
  list,
  type PaperKind,
  type PapersResult,
  type PlanParams,
  type PlanResult,
  type PlanScope,
  type PlanSearchedParams,
  papers,
  plan,
  planSearched,
  type RecordCutParams,
  type RecordCutResult,
  type RodAnswer,
  type RodChangedParams,
  recordCut,
  rod,
  rodChanged,
  type TextFile,
} from "../server/protocol.ts";
import type { BenchOrder } from "./preview/bench-controller.ts";
import { isSearchState, readBenchAnswer } from "./preview/bench-messages.ts";
import { isRodView, readDrawingsAnswer } from "./preview/messages.ts";
import type { Translate } from "./translate.ts";

/** The server's own messages, seen from the window. All requests reject when the server is not answering. */
export interface Feed {
  /** `undefined` for a file the server knows nothing of. */
  rod(uri: string): Promise<RodAnswer | undefined>;
  /** `undefined` for a file the server knows nothing of. */
  cutList(uri: string): Promise<readonly TextFile[] | undefined>;
  /** Every part and every finding; `undefined` for a file the server knows nothing of. */
  list(uri: string): Promise<ListDocument | undefined>;
  /** The names of the drawings and the one with the id, or else the first; `undefined` as above. */
  drawings(uri: string, id: string): Promise<DrawingsAnswer | undefined>;
  /** The parts of the rod that are open; `undefined` as above. */
  bench(uri: string, order: BenchOrder): Promise<BenchAnswer | undefined>;
  /** The cutting plan, searched for so long; called off it is the best found until then. `undefined` as above. */
  plan(uri: string, order: PlanOrder, watch?: Watch): Promise<NonNullable<PlanResult> | undefined>;
  /** Papers of these kinds; rejects when it is called off. `undefined` as above. */
  papers(uri: string, kinds: readonly PaperKind[], watch: Watch): Promise<NonNullable<PapersResult> | undefined>;
  /** Writes down what was cut, by a line as it is typed or by ticks; `undefined` as above. */
  recordCut(
    uri: string,
    what: Pick<RecordCutParams, "line" | "ticks">,
  ): Promise<NonNullable<RecordCutResult> | undefined>;
  /** Writes offcuts of a plan into a file, in place of those of an earlier plan of the same job; `undefined` as above. */
  keepOffcuts(
    uri: string,
    what: Pick<KeepOffcutsParams, "into" | "lines">,
  ): Promise<NonNullable<KeepOffcutsResult> | undefined>;
  onRodChanged(listener: (uri: string, version: number) => void): Disposable;
  onPlanSearched(listener: (search: PlanSearchedParams) => void): Disposable;
}

/** How long a plan is searched for, and of what it is; by itself of what is left, once something is recorded as cut. */
export interface PlanOrder {
  readonly seconds: number;
  readonly scope: PlanScope | undefined;
}

/** How long work is looked after. */
export interface Watch {
  readonly token: CancellationToken;
  /** Of the work, 0 to 100, and what is being done or was found. */
  readonly onProgress: (percent: number, message: string | undefined) => void;
}

export function createFeed(client: BaseLanguageClient, t: Translate): Feed {
  const send = createSender(client, t);
  const ask = (name: string, params: FileParams & { readonly id?: string }) => send(name, params);
  const watched = createWatched(client, send);
  const changed = createListeners<RodChangedParams>(client, rodChanged);
  const searched = createListeners<PlanSearchedParams>(client, planSearched);
  return {
    rod: async (uri) => readAnswer(await ask(rod, { uri })),
    cutList: async (uri) => readFiles(await ask(cutList, { uri })),
    list: async (uri) => readList(await ask(list, { uri })),
    drawings: async (uri, id) => readDrawings(await ask(drawings, { uri, id })),
    bench: async (uri, order) => readBench(await send(bench, { uri, ...order })),
    plan: async (uri, { seconds, scope }, watch) => {
      const of = scope === undefined ? {} : { scope };
      const params: Omit<PlanParams, "workDoneToken"> = { uri, seconds, keepBest: true, ...of };
      return readPlan(await watched(plan, params, watch));
    },
    papers: async (uri, kinds, watch) => readPapers(await watched(papers, { uri, kinds }, watch)),
    recordCut: async (uri, what) => readRecorded(await send(recordCut, { uri, ...what })),
    keepOffcuts: async (uri, what) => readKept(await send(keepOffcuts, { uri, ...what })),
    onPlanSearched: (listener) =>
      searched.listen((search) => {
        if (isSearchState(search)) listener(search);
      }),
    onRodChanged: (listener) => changed.listen(({ uri, version }) => listener(uri, version)),
  };
}

/** The client holds one listener to a message and drops the last one for the next: here all of them hear it. */
function createListeners<T>(client: BaseLanguageClient, name: string) {
  const listeners = new Set<(message: T) => void>();
  client.onNotification(name, (message: T) => {
    for (const listener of [...listeners]) listener(message);
  });
  return {
    listen: (listener: (message: T) => void): Disposable => {
      listeners.add(listener);
      return { dispose: () => void listeners.delete(listener) };
    },
  };
}

type Watched = (name: string, params: object, watch: Watch | undefined) => Promise<unknown>;

type Send = (name: string, params: object, token?: CancellationToken) => Promise<unknown>;

/** Requests that say what to do where the server is gone, before or while it should answer. */
function createSender(client: BaseLanguageClient, t: Translate): Send {
  return async (name, params, token) => {
    try {
      // A token that is not there would be sent as a parameter of its own.
      return await client.sendRequest<unknown>(name, params, ...(token === undefined ? [] : [token]));
    } catch (error) {
      if (client.isRunning()) throw error;
      throw new Error(t("the language server is not running; “Restart the Language Server” starts it again"));
    }
  };
}

/** Requests whose progress is told and that can be called off. */
function createWatched(client: BaseLanguageClient, send: Send): Watched {
  let count = 0;
  return async (name, params, watch) => {
    if (watch === undefined) return send(name, params);
    count += 1;
    const workDoneToken = `scantling-${count}`;
    const heard = client.onProgress(WorkDoneProgress.type, workDoneToken, (value) => {
      if (value.kind === "report") watch.onProgress(value.percentage ?? 0, value.message);
    });
    try {
      return await send(name, { ...params, workDoneToken }, watch.token);
    } finally {
      heard.dispose();
    }
  };
}

function readAnswer(data: unknown): RodAnswer | undefined {
  if (data === null || data === undefined) return undefined;
  const { version, view, stale, broken } = data as Partial<RodAnswer>;
  if (typeof version !== "number" || typeof stale !== "boolean" || !isRodView(view) || !Array.isArray(broken)) {
    throw new Error("The language server sent a rod that this extension can't read.");
  }
  return { version, view, stale, broken };
}

function readFiles(data: unknown): readonly TextFile[] | undefined {
  if (data === null || data === undefined) return undefined;
  const { files } = data as { readonly files?: unknown };
  if (!Array.isArray(files) || !files.every(isTextFile)) {
    throw new Error("The language server sent a cut list that this extension can't read.");
  }
  return files;
}

function readList(data: unknown): ListDocument | undefined {
  if (data === null || data === undefined) return undefined;
  const { schema, parts, findings } = data as Partial<ListDocument>;
  if (schema !== "scantling/list/1" || !Array.isArray(parts) || !Array.isArray(findings)) {
    throw new Error("The language server sent a list that this extension can't read.");
  }
  return data as ListDocument;
}

function readDrawings(data: unknown): DrawingsAnswer | undefined {
  if (data === null || data === undefined) return undefined;
  const answer = readDrawingsAnswer(data);
  if (answer === undefined) throw new Error("The language server sent drawings that this extension can't read.");
  return answer;
}

function readBench(data: unknown): BenchAnswer | undefined {
  if (data === null || data === undefined) return undefined;
  const answer = readBenchAnswer(data);
  if (answer === undefined)
    throw new Error("The language server sent parts of the rod that this extension can't read.");
  return answer;
}

function readPlan(data: unknown): NonNullable<PlanResult> | undefined {
  if (data === null || data === undefined) return undefined;
  const { document, uris, text } = data as Partial<NonNullable<PlanResult>>;
  if (document?.schema !== "scantling/plan/1" || !Array.isArray(uris) || typeof text !== "string") {
    throw new Error("The language server sent a plan that this extension can't read.");
  }
  return data as NonNullable<PlanResult>;
}

function readPapers(data: unknown): NonNullable<PapersResult> | undefined {
  if (data === null || data === undefined) return undefined;
  const { files, refused } = data as Partial<NonNullable<PapersResult>>;
  if (!Array.isArray(files) || !Array.isArray(refused)) {
    throw new Error("The language server sent papers that this extension can't read.");
  }
  return { files, refused };
}

function readRecorded(data: unknown): NonNullable<RecordCutResult> | undefined {
  if (data === null || data === undefined) return undefined;
  const { understood, problems } = data as Partial<NonNullable<RecordCutResult>>;
  if (!Array.isArray(understood) || !Array.isArray(problems)) {
    throw new Error("The language server sent a record that this extension can't read.");
  }
  return { understood, problems };
}

function readKept(data: unknown): NonNullable<KeepOffcutsResult> | undefined {
  if (data === null || data === undefined) return undefined;
  const { added, takenOut, held, stay, problem } = data as Partial<NonNullable<KeepOffcutsResult>>;
  if (
    typeof added !== "number" ||
    typeof takenOut !== "number" ||
    typeof held !== "number" ||
    typeof stay !== "number"
  ) {
    throw new Error("The language server sent an answer about offcuts that this extension can't read.");
  }
  return { added, takenOut, held, stay, ...(typeof problem === "string" ? { problem } : {}) };
}

function isTextFile(data: unknown): data is TextFile {
  const { name, text } = (data ?? {}) as Partial<TextFile>;
  return typeof name === "string" && typeof text === "string";
}
