import { type Direction, towards } from "./towards.ts";

/** The parts of a drawing, walked from one to the next with the arrows. */
export interface PartWalk {
  /** Goes to the part that lies that way; to the first one from outside. */
  go(direction: Direction): void;
  /** Goes to the first part, or the last. */
  goToEnd(end: "first" | "last"): void;
  /** Goes to the part with this id, if there is one. */
  goTo(id: string): void;
  /** The part that has the focus. */
  current(): Element | undefined;
}

const PART = "[data-uri][data-id]";

/** `shown` gives the drawing at hand; `reached` is told of each part that was gone to. */
export function createPartWalk(shown: () => Element | undefined, reached: (part: Element) => void): PartWalk {
  const parts = () => [...(shown()?.querySelectorAll<SVGElement>(PART) ?? [])];

  function settle(part: SVGElement | undefined): void {
    if (part === undefined) return;
    // The browser would scroll the pane to what is zoomed out of it; the pane moves the drawing instead.
    part.focus({ preventScroll: true });
    reached(part);
  }

  function current(): Element | undefined {
    const focused = document.activeElement;
    return focused !== null && shown()?.contains(focused) === true ? (focused.closest(PART) ?? undefined) : undefined;
  }

  return {
    current,
    goTo: (id) => settle(parts().find((part) => part.getAttribute("data-id") === id)),
    goToEnd: (end) => settle(end === "first" ? parts()[0] : parts().at(-1)),
    go: (direction) => {
      const all = parts();
      const from = all.indexOf(current() as SVGElement);
      if (from < 0) return settle(all[0]);
      const next = towards(all.map(middleOf), from, direction);
      // What lies all in one place, or is the last one that way, goes on in the order of the drawing.
      const onward = direction === "right" || direction === "down" ? from + 1 : from - 1;
      settle(all[next === from ? onward : next]);
    },
  };
}

/** Lets the parts of a drawing have the focus, each a way to where it is written. */
export function makeWalkable(drawing: Element): void {
  for (const part of drawing.querySelectorAll(PART)) {
    part.setAttribute("tabindex", "-1");
    // What the line at the foot says of it is heard as well.
    part.setAttribute("aria-describedby", "why");
    if (part.getAttribute("role") === "img") part.setAttribute("role", "link");
  }
}

function middleOf(part: Element): { readonly x: number; readonly y: number } {
  const { left, top, width, height } = part.getBoundingClientRect();
  return { x: left + width / 2, y: top + height / 2 };
}
