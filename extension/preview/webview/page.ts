import type { RodView } from "../../../language/view/types.ts";
import type { HostMessage, PageMessage, SavedState } from "../messages.ts";
import { type Clock, createAnnouncer } from "./announcer.ts";
import { el, setText } from "./dom.ts";
import { createEmpty } from "./empty.ts";
import { createHead } from "./head.ts";
import type { SectionHost } from "./section.ts";
import { createCutList } from "./sections/cut-list.ts";
import { createDrawings } from "./sections/drawings.ts";
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

const HINT = "Point at a part to see where its size comes from. Enter or a click leads to where it is written.";

/** Builds the page into an element; it shows nothing until the first message. Begins where the saved state left off. */
export function createPage(root: HTMLElement, port: PagePort, saved: SavedState | undefined): Page {
  let uri = saved?.uri ?? "";
  let row = saved?.row ?? "";
  let scroll = saved?.scroll ?? 0;
  let drawing = saved?.drawing;
  const save = () => {
    if (uri !== "") port.save({ version: 1, uri, row, scroll, ...(drawing === undefined ? {} : { drawing }) });
  };

  const why = el("p", { class: "why" }, HINT);
  const host: SectionHost = {
    reveal: (id) => port.post({ type: "reveal", row: id }),
    revealDrawn: (part) => port.post({ type: "revealDrawn", part }),
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
  const drawings = createDrawings(host, drawing);
  const sections = [cutList, createTables(host, row), drawings];
  const empty = createEmpty();
  const region = el("p", { class: "unseen", role: "status", "aria-live": "polite" });
  const announce = createAnnouncer(region, port.clock);
  const main = el("main", {}, head.element, empty, ...sections.map((section) => section.element));
  main.hidden = true;
  root.replaceChildren(main, el("footer", {}, why), region);

  function show(view: RodView, stale: boolean): void {
    head.update(view, stale);
    for (const section of sections) section.update(view);
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
      if (message.type === "drawings") return drawings.show(message.answer);
      if (message.type === "undrawn") return drawings.forbid();
      if (message.type === "show") show(message.view, message.stale);
      else if (message.type === "offline") announce(head.offline());
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
