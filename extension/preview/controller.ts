import type { Target } from "../../language/view/types.ts";
import type { CutTick, DrawingsAnswer, PlanSearchedParams, RodAnswer } from "../../server/protocol.ts";
import { type BenchPort, createBenchController } from "./bench-controller.ts";
import { targetOfDrawn } from "./drawn-target.ts";
import {
  type BenchPart,
  type Drawn,
  type DrawnOn,
  type HostMessage,
  type PageMessage,
  type PlanScope,
  targetOfRow,
} from "./messages.ts";
import { oneAtATime } from "./one-at-a-time.ts";
import { type CursorLine, rowsAt } from "./rows-at.ts";

/** What the controller needs of the window and the server. */
export interface RodPort extends BenchPort {
  /** Resolves to `undefined` for a file the server knows nothing of; rejects when the server is not answering. */
  request(uri: string): Promise<RodAnswer | undefined>;
  /** The drawings, and the one with the id or else the first; as above. */
  requestDrawings(uri: string, id: string): Promise<DrawingsAnswer | undefined>;
  /** Whether drawings are wanted in this window. */
  wantsDrawings(): boolean;
  post(message: HostMessage): void;
  reveal(target: Target): void;
  /** Lets the user write down the offcuts of a file's plan, of the one that is shown. */
  keep(uri: string, scope: PlanScope | undefined): void;
  /** Writes down in a file what was cut of a row. */
  tick(uri: string, tick: CutTick): void;
  /** Says that nothing can be ticked off while the text is broken: the rows are those of another text. */
  cannotTick(): void;
  /** Another file is now on the rod. */
  opened(uri: string): void;
}

/**
 * Decides what the rod shows: told of a change it pulls the whole view, unless the page is hidden, and then when it is
 * shown; an answer older than the last change told of is dropped; what was good stays until there is something better.
 * A drawing is pulled only while the page has it open.
 */
export interface RodController {
  /** The file on the rod. */
  source(): string | undefined;
  /** Puts a file on the rod. */
  open(uri: string): void;
  /** Puts a file on the rod as soon as it has parts of its own: a file of stock must not clear the job off the rod. */
  consider(uri: string): void;
  /** The server has a new rod of a file. */
  changed(uri: string, version: number): void;
  /** The server has started anew and counts versions from the start, or it has stopped. */
  turned(): void;
  /** Opens a part on the page, as soon as there is one. */
  openPart(part: BenchPart): void;
  /** Opens a drawing at an item of it, as soon as there is a page. */
  openDrawn(drawn: Drawn): void;
  /** The server says how the search for a plan gets on. */
  searched(search: PlanSearchedParams): void;
  /** The cursor is now here, or in no build file. */
  cursor(at: CursorLine | undefined): void;
  hidden(): void;
  receive(message: PageMessage): void;
}

interface Source {
  readonly uri: string;
  /** The version last told of. */
  announced: number;
  last: RodAnswer | undefined;
}

/** A drawing that takes longer is not made while typing goes on; but it never waits longer than this. */
const LONG_MS = 40;
const MOST_REST_MS = 600;

export function createRodController(port: RodPort): RodController {
  let source: Source | undefined;
  let candidate: Source | undefined;
  let listening = false;
  let cursor: CursorLine | undefined;
  let marked: readonly string[] = [];
  /** The drawing the page has open; `undefined` while it shows none. */
  let wanted: string | undefined;
  let drawn: DrawingsAnswer | undefined;
  /** What the page was last told to show, as a text; `undefined` when it shows something else. */
  let onPage: string | undefined;
  /** Milliseconds that the last drawing took. */
  let drawingTook = 0;
  let drawTimer: ReturnType<typeof setTimeout> | undefined;
  let wantedPart: BenchPart | undefined;
  let wantedDrawn: Drawn | undefined;
  const bench = createBenchController(port, post);

  const pull = oneAtATime(async () => {
    const asked = source;
    if (asked === undefined || !listening) return;
    const answer = await ask(port, asked);
    // The file was changed for another while the server thought; that one has been asked for too.
    if (asked !== source) return;
    if (answer === "offline") post({ type: "offline" });
    else if (answer === "none" && asked.last === undefined) post({ type: "begin" });
    else if (typeof answer !== "string") show(asked, answer);
  });

  const pullCandidate = oneAtATime(async () => {
    const asked = candidate;
    if (asked === undefined || !listening) return;
    const answer = await ask(port, asked);
    if (asked !== candidate || typeof answer === "string" || answer.view.pieces === 0) return;
    candidate = undefined;
    source = asked;
    nowShows(asked.uri);
    show(asked, answer);
  });

  const pullDrawing = oneAtATime(async () => {
    const asked = source;
    const id = wanted;
    if (asked === undefined || id === undefined || !listening || !port.wantsDrawings()) return;
    const began = Date.now();
    const answer = await port.requestDrawings(asked.uri, id).catch(() => undefined);
    drawingTook = Date.now() - began;
    if (answer === undefined || asked !== source || id !== wanted) return;
    drawn = answer;
    post({ type: "drawings", answer });
  });

  function show(shown: Source, answer: RodAnswer): void {
    shown.last = answer;
    const { view, stale, broken } = answer;
    const text = JSON.stringify([view, stale, broken]);
    // Most keys change nothing on the rod, and the page shares its thread with the text that is typed.
    if (text !== onPage) {
      post({ type: "show", view, stale, broken });
      // The page has made its rows anew where they changed, and does not know which of them were marked.
      marked = [];
    }
    onPage = listening ? text : undefined;
    mark();
    drawSoon();
    bench.changed();
  }

  /** Where drawings take long, the list must not wait for them: they follow once nothing has changed for twice as long. */
  function drawSoon(): void {
    clearTimeout(drawTimer);
    if (drawingTook < LONG_MS) pullDrawing();
    else drawTimer = setTimeout(pullDrawing, Math.min(MOST_REST_MS, 2 * drawingTook));
  }

  function nowShows(uri: string): void {
    port.opened(uri);
    bench.source(uri);
  }

  function mark(): void {
    const rows = source?.last === undefined ? [] : rowsAt(source.last.view, cursor);
    if (rows.join("\n") === marked.join("\n")) return;
    marked = rows;
    post({ type: "mark", rows });
  }

  function post(message: HostMessage): void {
    if (message.type === "begin" || message.type === "offline") onPage = undefined;
    if (listening) port.post(message);
  }

  function open(uri: string): void {
    candidate = undefined;
    if (source?.uri !== uri) {
      source = { uri, announced: 0, last: undefined };
      nowShows(uri);
    }
    pull();
  }

  function reveal(target: Target | undefined): void {
    if (target !== undefined) port.reveal(target);
  }

  function listen(): void {
    listening = true;
    onPage = undefined;
    marked = [];
    if (!port.wantsDrawings()) post({ type: "undrawn" });
    // What was last seen is there at once; what has changed since follows.
    if (source?.last !== undefined) show(source, source.last);
    if (source === undefined) post({ type: "begin" });
    if (wantedPart !== undefined) post({ type: "openPart", part: wantedPart });
    wantedPart = undefined;
    if (wantedDrawn !== undefined) post({ type: "openDrawn", drawn: wantedDrawn });
    wantedDrawn = undefined;
    pull();
    pullCandidate();
  }

  function openPart(part: BenchPart): void {
    if (listening) post({ type: "openPart", part });
    else wantedPart = part;
  }

  function openDrawn(at: Drawn): void {
    if (listening) post({ type: "openDrawn", drawn: at });
    else wantedDrawn = at;
  }

  function drawnOn(on: DrawnOn): string {
    if (on === "drawings") return drawn?.drawing?.svg ?? "";
    return bench.sections().find(({ id }) => id === "plan")?.plan?.drawing?.svg ?? "";
  }

  return {
    source: () => source?.uri,
    open,
    consider: (uri) => {
      if (source === undefined) return open(uri);
      candidate = source.uri === uri ? undefined : { uri, announced: 0, last: undefined };
      pullCandidate();
    },
    changed: (uri, version) => {
      if (source?.uri === uri) {
        source.announced = version;
        pull();
      } else if (candidate?.uri === uri) {
        candidate.announced = version;
        pullCandidate();
      }
    },
    turned: () => {
      for (const each of [source, candidate]) if (each !== undefined) each.announced = 0;
      pull();
      pullCandidate();
    },
    cursor: (at) => {
      cursor = at;
      mark();
    },
    openPart,
    openDrawn,
    searched: bench.searched,
    hidden: () => {
      listening = false;
      clearTimeout(drawTimer);
      bench.hidden();
    },
    receive: (message) => {
      switch (message.type) {
        case "ready":
          return listen();
        case "reveal":
          return reveal(
            source?.last === undefined ? undefined : targetOfRow(source.last.view, bench.sections(), message.row),
          );
        case "revealDrawn":
          return reveal(targetOfDrawn(drawnOn(message.on), message.part));
        case "draw":
          wanted = message.id;
          return pullDrawing();
        case "bench":
          return bench.opened(message.parts, message.sheet, message.scope);
        case "search":
          return bench.search(message.go);
        case "keep":
          if (source !== undefined) port.keep(source.uri, bench.scope());
          return;
        case "tick":
          if (source?.last?.stale === true) return port.cannotTick();
          if (source !== undefined)
            port.tick(source.uri, { part: message.mark, row: message.row, count: message.count });
      }
    },
  };
}

type Answer = RodAnswer | "none" | "offline" | "outdated";

async function ask(port: RodPort, source: Source): Promise<Answer> {
  try {
    const answer = await port.request(source.uri);
    if (answer === undefined) return "none";
    return answer.version < source.announced ? "outdated" : answer;
  } catch {
    return "offline";
  }
}
