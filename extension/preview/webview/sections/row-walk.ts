import type { SectionHost } from "../section.ts";

/** What a row stands for. */
export interface WalkedRow {
  readonly id: string;
  /** What is said of it while the user is at it, if there is more to say than it shows. */
  readonly explanation: string | undefined;
}

/** The rows of a table as one stop of the tab key, walked with the arrows. */
export interface RowWalk {
  /** Says what an element stands for. */
  know(element: HTMLElement, row: WalkedRow): void;
  /** Makes a change in which rows may come or go, and keeps the walker's place. */
  change(change: () => void): void;
}

const ROWS = "tbody tr[tabindex]:not([hidden])";

/** Lets the rows be walked, pointed at and followed to where they are written; begins at the row with the id given. */
export function createRowWalk(table: HTMLElement, host: SectionHost, startRow: string): RowWalk {
  const known = new WeakMap<Element, WalkedRow>();
  let current: HTMLElement | undefined;
  let place = 0;

  const rows = () => [...table.querySelectorAll<HTMLElement>(ROWS)];
  const rowAt = (target: EventTarget | null) =>
    target instanceof Element ? (target.closest<HTMLElement>(ROWS) ?? undefined) : undefined;
  const knownAt = (element: HTMLElement | undefined) => (element === undefined ? undefined : known.get(element));

  function settleAt(element: HTMLElement): void {
    if (current !== undefined) current.tabIndex = -1;
    current = element;
    current.tabIndex = 0;
    place = rows().indexOf(element);
  }

  function goTo(index: number): void {
    const all = rows();
    const element = all[Math.min(Math.max(index, 0), all.length - 1)];
    element?.focus();
    element?.scrollIntoView({ block: "nearest" });
  }

  function follow(element: HTMLElement | undefined): void {
    const row = knownAt(element);
    if (row !== undefined) host.reveal(row.id);
  }

  table.addEventListener("focusin", (event) => {
    const element = rowAt(event.target);
    if (element === undefined) return;
    settleAt(element);
    host.explain(known.get(element)?.explanation);
    host.remember(known.get(element)?.id ?? "");
  });
  table.addEventListener("focusout", (event) => {
    if (rowAt(event.relatedTarget) !== undefined) return;
    host.explain(undefined);
  });
  table.addEventListener("mouseover", (event) => host.explain(knownAt(rowAt(event.target) ?? focused())?.explanation));
  table.addEventListener("mouseleave", () => host.explain(knownAt(focused())?.explanation));
  table.addEventListener("click", (event) => {
    // Who drags over a size to copy it does not want to go anywhere.
    if (document.getSelection()?.isCollapsed !== false) follow(rowAt(event.target));
  });
  table.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const steps = new Map([
      ["ArrowDown", place + 1],
      ["ArrowUp", place - 1],
      ["Home", 0],
      ["End", Number.MAX_SAFE_INTEGER],
    ]);
    const step = steps.get(event.key);
    if (step !== undefined) goTo(step);
    else if (event.key === "Enter") follow(rowAt(event.target));
    else return;
    event.preventDefault();
  });

  /** The row the keyboard is at; none while the keyboard is in another part of the window. */
  function focused(): HTMLElement | undefined {
    return document.hasFocus() && current !== undefined && current === document.activeElement ? current : undefined;
  }

  return {
    know: (element, row) => {
      known.set(element, row);
      if (element === focused()) host.explain(row.explanation);
    },
    change: (change) => {
      const wasFocused = focused() !== undefined;
      change();
      if (current?.isConnected === true) {
        place = rows().indexOf(current);
        return;
      }
      const all = rows();
      const wanted = current === undefined ? all.find((each) => known.get(each)?.id === startRow) : undefined;
      const next = wanted ?? all[Math.min(place, all.length - 1)];
      current = undefined;
      if (next === undefined) return;
      settleAt(next);
      if (wasFocused) next.focus();
    },
  };
}
