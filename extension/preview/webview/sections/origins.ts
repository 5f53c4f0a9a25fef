import type { RodView } from "../../../../language/view/types.ts";

/** Where sizes come from, for who points at one of them. */
export interface Origins {
  update(view: RodView): void;
  /** Where the sizes of the part come from; `undefined` for one that the cut list does not name. */
  whyOf(part: string): string | undefined;
}

/** Puts the origin of each length and width of the cut list under the mouse; the line below says it for the keyboard. */
export function createOrigins(table: HTMLElement): Origins {
  let whys = new Map<string, string>();
  table.addEventListener("mouseover", ({ target }) => {
    const cell = target instanceof Element ? target.closest<HTMLElement>("td.size") : null;
    const why = whys.get(cell?.closest("tr")?.getAttribute("data-part") ?? "");
    if (cell === null || why === undefined) return;
    const part = /col-(length|width)/.exec(cell.className)?.[1];
    const origin = why.split("; width: ");
    const text =
      part === "length" ? origin[0] : part === "width" && 1 < origin.length ? `width: ${origin[1]}` : undefined;
    if (text === undefined) return;
    const rounded = /^Rounded [^\n]*/.exec(cell.title)?.[0];
    const title = rounded === undefined ? text : `${rounded}\n${text}`;
    if (cell.title !== title) cell.title = title;
  });
  return {
    whyOf: (part) => whys.get(part),
    update: (view) => {
      whys = new Map(view.batches.flatMap((batch) => batch.rows.map((row) => [row.id, row.why] as const)));
    },
  };
}
