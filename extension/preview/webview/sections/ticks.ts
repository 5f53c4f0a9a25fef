import type { RodRow } from "../../../../language/view/types.ts";
import { el, type Kept, setText } from "../dom.ts";
import type { SectionHost } from "../section.ts";

/** How many pieces there are of a row, how many of them are cut, and the box that ticks them off. */
export function createTick(host: SectionHost): Kept<RodRow> {
  const count = el("span", { class: "count-cut" });
  const box = el("span", { class: "tick", role: "checkbox" });
  const element = el("span", {}, count, box);
  let shown: RodRow | undefined;
  box.addEventListener("click", (event) => {
    // A click beside the box leads to where the row is written; this one does not.
    event.stopPropagation();
    if (shown !== undefined) tick(host, shown, "all");
  });
  return {
    element,
    update: (row) => {
      shown = row;
      const done = row.done ?? 0;
      setText(count, row.done === undefined ? String(row.quantity) : `${done}/${row.quantity}`);
      box.setAttribute("aria-checked", done <= 0 ? "false" : done < row.quantity ? "mixed" : "true");
      box.setAttribute("aria-label", `${row.mark}, ${row.name}: ${cutText(row)}`);
      box.title = `${cutText(row)}. Space ticks off the row, + and − a single piece.`;
    },
  };
}

/** `2 of 4 cut`. */
export function cutText({ done = 0, quantity }: RodRow): string {
  return `${done} of ${quantity} cut`;
}

/** Space ticks off the row that the keyboard is at, or takes the tick away; + and − write down one piece more or fewer. */
export function tickByKeys(
  table: HTMLElement,
  host: SectionHost,
  rowOf: (element: Element) => RodRow | undefined,
): void {
  const steps: ReadonlyMap<string, Step> = new Map([
    [" ", "all"],
    ["+", "more"],
    ["-", "fewer"],
    ["−", "fewer"],
  ]);
  table.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || !(event.target instanceof Element)) return;
    const step = steps.get(event.key);
    const row = rowOf(event.target);
    if (step === undefined || row === undefined) return;
    event.preventDefault();
    tick(host, row, step);
  });
}

type Step = "all" | "more" | "fewer";

function tick(host: SectionHost, row: RodRow, step: Step): void {
  const { done = 0, quantity } = row;
  const all = done < quantity ? quantity - done : -done;
  const count = step === "all" ? all : step === "more" ? 1 : -1;
  // Fewer than none are not there; whether there is one at all, the file knows.
  if (step === "fewer" && done === 0) host.announce(`${row.mark}: none is written down as cut`);
  else host.tick(row, count);
}
