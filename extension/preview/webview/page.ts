import type { RodView } from "../../../language/view/types.ts";
import type { HostMessage, PageMessage, SavedState } from "../messages.ts";
import { type Clock, createAnnouncer } from "./announcer.ts";
import { el, setText } from "./dom.ts";
import { createEmpty } from "./empty.ts";
import { createHead } from "./head.ts";
import type { SectionHost } from "./section.ts";
import { createBench } from "./sections/bench.ts";
import { markBroken } from "./sections/broken.ts";
import { createCutList } from "./sections/cut-list.ts";
import { createDrawings } from "./sections/drawings.ts";
import { createFilter } from "./sections/filter.ts";
import { createOrigins } from "./sections/origins.ts";
import { createTables } from "./sections/tables.ts";

/** What the page needs of the window it stands in. */
export interface PagePort {
  post(message: PageMessage): void;
  save(state: SavedState): void;
  readonly clock: Clock;
}

export interface Page {
  receive(message: HostMessage): void;
  /** To be called when the user has scrolled to there, in pixels. */
  scrolledTo(scroll: number): void;
}

const HINT =
  "Point at a part to see where its size comes from. Enter or a click leads to where it is written; Space ticks it off.";

/** Builds the page into an element; it shows nothing until the first message. Begins where the saved state left off. */
export function createPage(root: HTMLElement, port: PagePort, saved: SavedState | undefined): Page {
  let uri = saved?.uri ?? "";
  let row = saved?.row ?? "";
  let scroll = saved?.scroll ?? 0;
  let drawing = saved?.drawing;
  let parts = saved?.parts ?? [];
  let plan = saved?.plan;
  let broken: readonly string[] = [];
  const save = () => {
    const open = { ...(drawing === undefined ? {} : { drawing }), ...(parts.length === 0 ? {} : { parts }) };
    if (uri !== "") port.save({ version: 1, uri, row, scroll, ...open, ...(plan === undefined ? {} : { plan }) });
  };

  const why = el("p", { class: "why", id: "why" }, HINT);
  const region = el("p", { class: "unseen", role: "status", "aria-live": "polite" });
  const announce = createAnnouncer(region, port.clock);
  const host: SectionHost = {
    reveal: (id) => port.post({ type: "reveal", row: id }),
    revealDrawn: (part, on) => port.post({ type: "revealDrawn", part, on }),
    bench: (open, sheet, scope) => {
      parts = open;
      plan = scope;
      save();
      port.post({ type: "bench", parts: open, sheet, scope });
    },
    search: (go) => port.post({ type: "search", go }),
    keep: () => port.post({ type: "keep" }),
    tick: ({ mark, id }, count) => port.post({ type: "tick", mark, row: id, count }),
    whyOf: (part) => origins.whyOf(part),
    announce,
    draw: (id) => {
      drawing = id;
      save();
      port.post({ type: "draw", id });
    },
    explain: (text) => setText(why, text ?? HINT),
    remember: (id) => {
      row = id;
      save();
    },
  };
  const head = createHead();
  const cutList = createCutList(host, row);
  const list = cutList.element.querySelector<HTMLElement>("#cut-list") ?? cutList.element;
  const filter = createFilter(list, host);
  const origins = createOrigins(list);
  const drawings = createDrawings(host, drawing);
  const bench = createBench(host, { parts, row, scope: plan });
  const sections = [cutList, createTables(host, row), drawings, bench];
  const empty = createEmpty();
  cutList.element.prepend(filter.element);
  const main = el("main", {}, head.element, empty, ...sections.map((section) => section.element));
  main.hidden = true;
  root.replaceChildren(main, el("footer", {}, why), region);

  // What the line at the foot says of a row is heard when the keyboard comes to it.
  main.addEventListener("focusin", ({ target }) => {
    if (target instanceof Element && target.matches("tr")) target.setAttribute("aria-describedby", "why");
  });

  function show(view: RodView, stale: boolean): void {
    head.update(view, stale);
    for (const section of sections) section.update(view);
    origins.update(view);
    filter.apply();
    markBroken(main, broken);
    empty.hidden = 0 < view.pieces;
    announce(head.summary());
    if (uri !== view.uri) {
      uri = view.uri;
      save();
    }
  }

  return {
    receive: (message) => {
      if (message.type === "mark") return cutList.mark(message.rows);
      if (message.type === "drawings" || message.type === "bench") {
        if (message.type === "drawings") drawings.show(message.answer);
        else bench.show(message.answer);
        return markBroken(main, broken);
      }
      if (message.type === "searched") return bench.searched(message.search);
      if (message.type === "openPart") return bench.open(message.part);
      if (message.type === "openDrawn") return drawings.open(message.drawn);
      if (message.type === "undrawn") return drawings.forbid();
      if (message.type === "show") {
        broken = message.broken;
        show(message.view, message.stale);
      } else if (message.type === "offline") announce(head.offline());
      else {
        head.clear();
        for (const section of sections) section.hide();
        empty.hidden = false;
      }
      main.hidden = false;
    },
    scrolledTo: (to) => {
      scroll = to;
      save();
    },
  };
}
