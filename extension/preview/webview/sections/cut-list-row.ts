import type { RodRow } from "../../../../language/view/types.ts";
import { el, type Kept, setText } from "../dom.ts";
import { grainMark } from "../grain-mark.ts";
import { splitSize } from "../size.ts";
import type { RowWalk } from "./row-walk.ts";

/** One part: its mark, how many, what it is, its sizes, its grain, and notes. */
export function createRow(walk: RowWalk): Kept<RodRow> {
  const mark = el("span", { class: "mark" });
  const quantity = el("td", { class: "col-no" });
  const name = el("td", { class: "col-part" });
  const of = el("td", { class: "col-of" });
  const sizes = (["length", "width", "thickness"] as const).map((key) => ({ key, ...createSize(key) }));
  const grain = el("td", { class: "col-grain" });
  const notes = el("td", { class: "col-notes" });
  const markCell = el("td", { class: "col-mark" }, mark);
  const cells = [markCell, quantity, name, of, ...sizes.map((size) => size.element), grain, notes];
  const element = el("tr", { tabindex: "-1" }, ...cells);
  return {
    element,
    update: (row) => {
      walk.know(element, row);
      element.setAttribute("data-part", row.id);
      element.setAttribute("aria-label", spoken(row));
      setText(mark, row.mark);
      setText(quantity, String(row.quantity));
      setText(name, row.name);
      setText(of, row.of);
      for (const size of sizes) size.update(row[size.key]);
      grain.replaceChildren(el("span", { class: "grain" }, grainMark(row.grain), " ", el("span", {}, row.grain)));
      notes.replaceChildren(...row.notes.map((note) => el("span", { class: "note-line" }, note)));
    },
  };
}

function createSize(key: string): Kept<string> {
  const whole = el("span", { class: "whole" });
  const gap = document.createTextNode("");
  const rest = el("span", { class: "rest" });
  const element = el("td", { class: `size col-${key}` }, whole, gap, rest);
  return {
    element,
    update: (text) => {
      const split = splitSize(text);
      setText(whole, split.whole);
      gap.data = split.gap;
      setText(rest, split.rest);
      const rounded = roundedTo(text);
      if (rounded === undefined) element.removeAttribute("title");
      else element.title = `Rounded ${rounded} to what the tape reads`;
    },
  };
}

/** The row in words, for those who hear it. */
function spoken(row: RodRow): string {
  const [length, width, thickness] = [row.length, row.width, row.thickness].map((text) => {
    const rounded = roundedTo(text);
    return rounded === undefined ? text : `${text.slice(0, -1).trim()}, rounded ${rounded},`;
  });
  const size = `${length} by ${width} by ${thickness}`.replace(/,$/, "");
  const grain = row.grain === "any" ? "grain any way" : `grain ${row.grain}`;
  const texts = [`${row.mark}: ${row.quantity} ${row.name}`, row.of, size, grain, ...row.notes];
  return texts.filter((text) => text !== "").join("; ");
}

/** Which way a size was rounded, as the sign behind it says; `undefined` if it is exact. */
function roundedTo(text: string): "down" | "up" | undefined {
  if (/\s[−-]$/.test(text)) return "down";
  return /\s\+$/.test(text) ? "up" : undefined;
}
