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
      if (isUnder(text)) element.title = "Rounded down to what the tape reads: the exact size is a hair more.";
      else element.removeAttribute("title");
    },
  };
}

/** The row in words, for those who hear it. */
function spoken(row: RodRow): string {
  const [length, width, thickness] = [row.length, row.width, row.thickness].map((text) =>
    isUnder(text) ? `${text.slice(0, -1).trim()}, a hair under` : text,
  );
  const grain = row.grain === "none" ? "no grain" : `grain ${row.grain}`;
  const parts = [`${row.mark}: ${row.quantity} ${row.name}`, row.of, `${length} by ${width} by ${thickness}`, grain];
  return [...parts, ...row.notes].filter((text) => text !== "").join("; ");
}

/** A trailing minus sign marks a size that was rounded down. */
function isUnder(text: string): boolean {
  return text.endsWith("−");
}
