// @vitest-environment happy-dom
import { beforeEach, describe, expect, test } from "vitest";
import type { PageMessage } from "../../../extension/preview/messages.ts";
import { createPage } from "../../../extension/preview/webview/page.ts";
import type { RodRow } from "../../../language/view/types.ts";
import { rodOf, row } from "../rods.ts";

function setUp(rows: readonly RodRow[]) {
  const posted: PageMessage[] = [];
  const root = document.createElement("div");
  document.body.replaceChildren(root);
  const clock = { now: () => 0, later: () => undefined };
  const page = createPage(root, { post: (m) => posted.push(m), save: () => undefined, clock }, undefined);
  const show = (all: readonly RodRow[]) => page.receive({ type: "show", view: rodOf(all), stale: false, broken: [] });
  show(rows);
  return { posted, show };
}

function rowOf(id: string): HTMLElement {
  return document.querySelector<HTMLElement>(`tr[data-part="${id}"]`)!;
}

function boxOf(id: string): HTMLElement {
  return rowOf(id).querySelector<HTMLElement>("[role=checkbox]")!;
}

function press(id: string, key: string, more: KeyboardEventInit = {}): KeyboardEvent {
  const event = new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true, ...more });
  rowOf(id).focus();
  rowOf(id).dispatchEvent(event);
  return event;
}

beforeEach(() => document.body.replaceChildren());

describe("a tick beside every row", () => {
  const rows = [
    row("a", { quantity: 4 }),
    row("b", { quantity: 4, done: 0 }),
    row("c", { quantity: 4, done: 3 }),
    row("d", { quantity: 4, done: 4 }),
  ];

  test("shows by its state, its name and a count how much is cut", () => {
    setUp(rows);
    const states = ["a", "b", "c", "d"].map((id) => [
      boxOf(id).getAttribute("aria-checked"),
      boxOf(id).getAttribute("aria-label"),
      rowOf(id).querySelector(".col-no")?.textContent?.trim(),
    ]);
    expect(states).toEqual([
      ["false", "A, side: 0 of 4 cut", "4"],
      ["false", "B, side: 0 of 4 cut", "0/4"],
      ["mixed", "C, side: 3 of 4 cut", "3/4"],
      ["true", "D, side: 4 of 4 cut", "4/4"],
    ]);
    expect(rowOf("c").getAttribute("aria-label")).toContain("; 3 of 4 cut; ");
    expect(rowOf("a").getAttribute("aria-label")).not.toContain("cut");
    expect(document.querySelector("header .facts")?.textContent).toContain("7 of 16 pieces cut");
  });

  test("a click ticks off what is left of the row, or takes the whole tick away, and leads nowhere", () => {
    const { posted } = setUp(rows);
    posted.length = 0;
    for (const id of ["a", "c", "d"]) boxOf(id).click();
    expect(posted).toEqual([
      { type: "tick", mark: "A", row: "a", count: 4 },
      { type: "tick", mark: "C", row: "c", count: 1 },
      { type: "tick", mark: "D", row: "d", count: -4 },
    ]);
  });

  test("so does the space bar; plus and minus count single pieces", () => {
    const { posted } = setUp(rows);
    posted.length = 0;
    expect(press("c", " ").defaultPrevented).toBe(true);
    press("c", "+");
    press("c", "-");
    press("b", "-");
    expect(posted.filter(({ type }) => type === "tick")).toEqual([
      { type: "tick", mark: "C", row: "c", count: 1 },
      { type: "tick", mark: "C", row: "c", count: 1 },
      { type: "tick", mark: "C", row: "c", count: -1 },
    ]);
    expect(press("c", " ", { ctrlKey: true }).defaultPrevented).toBe(false);
  });

  test("follows what the file says then", () => {
    const { show, posted } = setUp(rows);
    show([row("a", { quantity: 4, done: 4 }), ...rows.slice(1)]);
    expect(boxOf("a").getAttribute("aria-checked")).toBe("true");
    posted.length = 0;
    press("a", " ");
    expect(posted).toEqual([{ type: "tick", mark: "A", row: "a", count: -4 }]);
  });
});
