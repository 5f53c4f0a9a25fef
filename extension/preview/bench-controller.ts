import type { BenchParams, PlanSearchedParams } from "../../server/protocol.ts";
import type { BenchAnswer, BenchPart, BenchSection, HostMessage, PlanScope } from "./messages.ts";
import { oneAtATime } from "./one-at-a-time.ts";

/** What is asked of the server for the open parts. */
export type BenchOrder = Pick<BenchParams, "parts" | "sheet" | "scope" | "seconds">;

/** What the controller of the parts needs of the window and the server. */
export interface BenchPort {
  /** Resolves to `undefined` for a file the server knows nothing of. */
  requestBench(uri: string, order: BenchOrder): Promise<BenchAnswer | undefined>;
  /** Seconds that a plan is searched for at a time. */
  searchSeconds(): number;
}

/** Decides what the parts beside list and drawings show: pulled when they are opened, and a while after a change. */
export interface BenchController {
  /** Another file is on the rod, or none. */
  source(uri: string | undefined): void;
  /** The rod was shown anew: what is open is pulled once nothing more has changed for a while. */
  changed(): void;
  /** The page has these open, looks at this drawing of the plan, and wants the plan to be of this, if it was chosen. */
  opened(parts: readonly BenchPart[], sheet: string, scope?: PlanScope): void;
  search(go: "on" | "stop"): void;
  /** The server says how the search gets on. */
  searched(search: PlanSearchedParams): void;
  /** Nobody looks any more: nothing is searched for. */
  hidden(): void;
  /** What was last shown. */
  sections(): readonly BenchSection[];
  /** Of what the plan last shown is; `undefined` where there is no choice. */
  scope(): PlanScope | undefined;
}

/** Milliseconds without a change before the parts are made anew: they are not what is looked at while typing. */
export const REST_MS = 400;

export function createBenchController(port: BenchPort, post: (message: HostMessage) => void): BenchController {
  let uri: string | undefined;
  let parts: readonly BenchPart[] = [];
  let sheet = "";
  let scope: PlanScope | undefined;
  let last: BenchAnswer | undefined;
  let stopped = false;
  let allowed = port.searchSeconds();
  let timer: ReturnType<typeof setTimeout> | undefined;

  const pull = oneAtATime(async () => {
    const asked = uri;
    if (asked === undefined || parts.length === 0) return;
    const wanted = scope;
    const order = { parts, sheet, seconds: stopped ? 0 : allowed, ...(wanted === undefined ? {} : { scope: wanted }) };
    const answer = await port.requestBench(asked, order).catch(() => undefined);
    // Asked for anew since, which is under way.
    if (answer === undefined || asked !== uri || order.parts !== parts || order.sheet !== sheet || wanted !== scope)
      return;
    last = answer;
    post({ type: "bench", answer });
  });

  function rest(): void {
    clearTimeout(timer);
    timer = undefined;
  }

  function leave(): void {
    rest();
    if (uri !== undefined && parts.length !== 0)
      void port.requestBench(uri, { parts: [], seconds: 0 }).catch(() => undefined);
  }

  return {
    source: (next) => {
      if (next === uri) return;
      leave();
      uri = next;
      last = undefined;
      stopped = false;
      allowed = port.searchSeconds();
      pull();
    },
    changed: () => {
      rest();
      if (parts.length !== 0) timer = setTimeout(pull, REST_MS);
    },
    opened: (now, drawing, of) => {
      if (now.length === 0) leave();
      parts = now;
      sheet = drawing;
      scope = of;
      pull();
    },
    search: (go) => {
      if (go === "on" && !stopped) allowed += Math.max(1, port.searchSeconds());
      stopped = go === "stop";
      pull();
    },
    searched: ({ uri: of, state, percent, better }) => {
      if (of !== uri || !parts.includes("plan")) return;
      post({ type: "searched", search: { state, percent } });
      if (better || state !== "searching") pull();
    },
    hidden: () => {
      leave();
      // The page is made anew when it is seen again, and says then what it has open.
      parts = [];
    },
    sections: () => last?.sections ?? [],
    scope: () => last?.scope,
  };
}
