import type { RodRow } from "../../../../language/view/types.ts";
import { el, type Kept, setText, unbroken } from "../dom.ts";
import { grainMark } from "../grain-mark.ts";
import type { SectionHost } from "../section.ts";
import { splitSize } from "../size.ts";
import type { RowWalk } from "./row-walk.ts";
import { createTick, cutText } from "./ticks.ts";

/** One part: its mark, how many and how many of them are cut, what it is, its sizes, its grain, and notes. */
export function createRow(
  walk: RowWalk,
  host: SectionHost,
  know: (element: Element, row: RodRow) => void,
): Kept<RodRow> {
  const mark = el("span", { class: "mark" });
  const tick = createTick(host);
  const name = cell("col-part");
  const of = cell("col-of");
  const sizes = (["length", "width", "thickness"] as const).map((key) => ({ key, ...createSize(key) }));
  const grain = cell("col-grain");
  const notes = cell("col-notes");
  const cells = [
    cell("col-mark", mark),
    cell("col-no", tick.element),
    name,
    of,
    ...sizes.map((size) => size.element),
    grain,
    notes,
  ];
  const element = el("tr", { role: "row", tabindex: "-1", "aria-keyshortcuts": "Space + -" }, ...cells);
  return {
    element,
    update: (row) => {
      walk.know(element, { id: row.id, explanation: explanation(row) });
      element.setAttribute("data-part", row.id);
      element.setAttribute("aria-label", spoken(row));
      setText(mark, row.mark);
      know(element, row);
      tick.update(row);
      name.replaceChildren(...unbroken(row.name));
      of.replaceChildren(...unbroken(row.of));
      for (const size of sizes) size.update(row[size.key]);
      grain.replaceChildren(el("span", { class: "grain" }, grainMark(row.grain), " ", el("span", {}, row.grain)));
      notes.replaceChildren(...row.notes.map((note) => el("span", { class: "note-line" }, note)));
    },
  };
}

function cell(className: string, ...children: readonly Node[]): HTMLElement {
  return el("td", { role: "gridcell", class: className }, ...children);
}

function createSize(key: string): Kept<string> {
  const whole = el("span", { class: "whole" });
  const rest = el("span", { class: "rest" });
  const element = cell(`size col-${key}`, whole, rest);
  return {
    element,
    update: (text) => {
      const split = splitSize(text);
      setText(whole, split.whole);
      setText(rest, split.rest);
      rest.classList.toggle("alone", /^\d/.test(split.rest));
      const rounded = roundedTo(text);
      if (rounded === undefined) element.removeAttribute("title");
      else element.title = `Rounded ${rounded} to what the tape reads`;
    },
  };
}

/** Where its sizes come from. */
function explanation(row: RodRow): string {
  const part = row.of === "" ? row.name : `${row.name} of ${row.of}`;
  return `${row.mark}, ${part}: ${row.why}`;
}

/** The row in words, for those who hear it. */
function spoken(row: RodRow): string {
  const [length, width, thickness] = [row.length, row.width, row.thickness].map((text) => {
    const rounded = roundedTo(text);
    return rounded === undefined ? text : `${text.slice(0, -1).trim()}, rounded ${rounded},`;
  });
  const size = `${length} by ${width} by ${thickness}`.replace(/,$/, "");
  const grain = row.grain === "any" ? "grain any way" : `grain ${row.grain}`;
  const cut = row.done === undefined ? "" : cutText(row);
  const texts = [`${row.mark}: ${row.quantity} ${row.name}`, row.of, cut, size, grain, ...row.notes];
  return texts.filter((text) => text !== "").join("; ");
}

/** Which way a size was rounded, as the sign behind it says; `undefined` if it is exact. */
function roundedTo(text: string): "down" | "up" | undefined {
  if (/\s[−-]$/.test(text)) return "down";
  return /\s\+$/.test(text) ? "up" : undefined;
}
