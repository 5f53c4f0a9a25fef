// @vitest-environment happy-dom
import { beforeEach, describe, expect, test } from "vitest";
import type { PageMessage, SavedState } from "../../../extension/preview/messages.ts";
import { createPage } from "../../../extension/preview/webview/page.ts";
import { rodOf, row } from "../rods.ts";

/** A page in a document of its own, with a clock that a test moves on. */
function setUp(saved?: SavedState) {
  const posted: PageMessage[] = [];
  const states: SavedState[] = [];
  let now = 0;
  let due: { readonly at: number; readonly task: () => void }[] = [];
  const clock = {
    now: () => now,
    later: (task: () => void, ms: number) => {
      due.push({ at: now + ms, task });
    },
  };
  const root = document.createElement("div");
  document.body.replaceChildren(root);
  const port = { post: (m: PageMessage) => posted.push(m), save: (s: SavedState) => states.push(s), clock };
  const page = createPage(root, port, saved);
  const pass = (ms: number) => {
    now += ms;
    const ripe = due.filter(({ at }) => at <= now);
    due = due.filter(({ at }) => now < at);
    for (const { task } of ripe) task();
  };
  const show = (view: ReturnType<typeof rodOf>, stale = false, broken: readonly string[] = []) =>
    page.receive({ type: "show", view, stale, broken });
  return { page, posted, states, pass, show };
}

function one(selector: string): HTMLElement {
  const found = document.querySelector<HTMLElement>(selector);
  if (found === null) throw new Error(`There is no ${selector}.`);
  return found;
}

function rows(): HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>("table#cut-list tr[data-part]")];
}

function ids(): (string | null)[] {
  return rows().map((each) => each.getAttribute("data-part"));
}

function cells(element: HTMLElement | undefined): (string | null)[] {
  return [...(element?.querySelectorAll("td") ?? [])].map((cell) => cell.textContent);
}

function press(key: string): void {
  document.activeElement?.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
}

beforeEach(() => document.body.replaceChildren());

describe("the cut list", () => {
  test("has a body for each stock, headed by its name, and a row for each part", () => {
    const { show } = setUp();
    const batches = [
      { stock: "birch-12", note: "sheet, 15/32 thick", rows: [row("a"), row("b", { quantity: 1 })] },
      { stock: "maple", note: "board, 3/4 thick", rows: [row("c", { notes: ["groove 1/4", "tongue 3/8"] })] },
    ];
    show(rodOf([row("a")], { batches, pieces: 5 }));
    const bodies = [...document.querySelectorAll("#cut-list tbody")];
    expect(bodies.map((body) => body.querySelector("th")?.textContent)).toEqual([
      "birch-12 sheet, 15/32 thick 3 pieces",
      "maple board, 3/4 thick 2 pieces",
    ]);
    expect([...document.querySelectorAll("#cut-list thead th")].map((each) => each.textContent)).toEqual([
      ...["Mark", "No.", "Part", "Of", "Length", "Width", "Thick", "Grain", "Notes"],
    ]);
    expect(cells(rows()[1])).toEqual(["B", "1", "side", "box inks", "20", "5 1/2", "15/32", " along", ""]);
    expect(rows()[2]?.querySelectorAll(".col-notes .note-line")).toHaveLength(2);
  });

  test("says each row in words, the rounded sizes too", () => {
    const { show } = setUp();
    show(rodOf([row("a", { length: "7 5/32 −", grain: "any", notes: ["groove 1/4"] })]));
    expect(rows()[0]?.getAttribute("aria-label")).toBe(
      "A: 2 side; box inks; 7 5/32, rounded down, by 5 1/2 by 15/32; grain any way; groove 1/4",
    );
    expect(rows()[0]?.querySelector(".col-length")?.getAttribute("title")).toContain("Rounded down");
  });

  test("draws the grain and names it", () => {
    const { show } = setUp();
    show(rodOf([row("a", { grain: "along" }), row("b", { grain: "across" }), row("c", { grain: "any" })]));
    const drawn = rows().map((each) => each.querySelector(".grain-mark path")?.getAttribute("d"));
    expect(new Set(drawn).size).toBe(3);
    expect(rows().map((each) => each.querySelector(".grain")?.textContent?.trim())).toEqual(["along", "across", "any"]);
  });

  test("touches only the rows that have changed", async () => {
    const { show } = setUp();
    show(rodOf([row("a"), row("b"), row("c")]));
    const before = rows();
    const changes: string[] = [];
    const observer = new MutationObserver((records) => {
      for (const { target } of records) {
        const element = target instanceof Element ? target : target.parentElement;
        changes.push(element?.closest("tr[data-part]")?.getAttribute("data-part") ?? "elsewhere");
      }
    });
    observer.observe(one("#cut-list tbody"), { subtree: true, childList: true, characterData: true });
    show(rodOf([row("a"), row("b", { length: "21" }), row("c")]));
    await new Promise((wake) => setTimeout(wake, 0));
    observer.disconnect();
    expect(new Set(changes)).toEqual(new Set(["b"]));
    expect(rows()).toEqual(before);
    expect(cells(rows()[1])[4]).toBe("21");
  });

  test("puts rows that come, go and move in their places without making the others anew", () => {
    const { show } = setUp();
    show(rodOf([row("a"), row("b"), row("c"), row("d")]));
    const kept = rows().filter((each) => each.getAttribute("data-part") !== "b");
    show(rodOf([row("x"), row("d"), row("a"), row("c")]));
    expect(ids()).toEqual(["x", "d", "a", "c"]);
    expect(kept.every((each) => each.isConnected)).toBe(true);
    show(rodOf([]));
    expect(ids()).toEqual([]);
  });

  test("shows two rows of one id as two", () => {
    const { show } = setUp();
    show(rodOf([row("a"), row("a", { length: "9" })]));
    expect(rows().map((each) => cells(each)[4])).toEqual(["20", "9"]);
  });

  test("names full of markup stay text", () => {
    const { show } = setUp();
    const nasty = '<img src=x onerror="alert(1)"><b>&amp;';
    const view = rodOf([row("a", { name: nasty, of: nasty, mark: nasty, grain: nasty, notes: [nasty], why: nasty })], {
      title: nasty,
      notes: [nasty],
      batches: [{ stock: nasty, note: nasty, rows: [row("a", { name: nasty, notes: [nasty], grain: nasty })] }],
      tables: [
        {
          id: "boxes",
          title: nasty,
          columns: [{ title: nasty, align: "left" }],
          rows: [{ cells: [nasty], target: undefined }],
          note: nasty,
        },
      ],
    });
    show(view);
    rows()[0]?.focus();
    expect(document.querySelectorAll("img, b, script")).toHaveLength(0);
    expect(one("h1").textContent).toBe(nasty);
    expect(one(".col-part").textContent).toBe("Part");
    expect(one("td.col-part").textContent).toBe(nasty);
    expect(one("#table-boxes td").textContent).toBe(nasty);
  });
});

describe("walking the rows", () => {
  test("there is one stop for the tab key, and the arrows move it", () => {
    const { show } = setUp();
    show(rodOf([row("a"), row("b"), row("c")]));
    expect(rows().map((each) => each.tabIndex)).toEqual([0, -1, -1]);
    rows()[0]?.focus();
    press("ArrowDown");
    expect(document.activeElement).toBe(rows()[1]);
    press("End");
    press("ArrowDown");
    expect(document.activeElement).toBe(rows()[2]);
    press("ArrowUp");
    expect(rows().map((each) => each.tabIndex)).toEqual([-1, 0, -1]);
    press("Home");
    expect(document.activeElement).toBe(rows()[0]);
  });

  test("a click, or Enter, asks for where the row is written", () => {
    const { show, posted } = setUp();
    show(rodOf([row("a"), row("b")]));
    rows()[1]?.querySelector("td")?.click();
    rows()[0]?.focus();
    press("Enter");
    expect(posted).toEqual([
      { type: "reveal", row: "b" },
      { type: "reveal", row: "a" },
    ]);
  });

  test("why a size is what it is stands in the footer for the row at hand", () => {
    const { show } = setUp();
    show(rodOf([row("a"), row("b")]));
    const hint = one(".why").textContent;
    rows()[0]?.focus();
    expect(one(".why").textContent).toBe("A, side of box inks: why a");
    rows()[1]?.dispatchEvent(new MouseEvent("mouseover", { bubbles: true }));
    expect(one(".why").textContent).toBe("B, side of box inks: why b");
    one("#cut-list").dispatchEvent(new MouseEvent("mouseleave"));
    expect(one(".why").textContent).toBe("A, side of box inks: why a");
    rows()[0]?.blur();
    expect(one(".why").textContent).toBe(hint);
  });

  test("the footer follows when the size of the row at hand changes", () => {
    const { show } = setUp();
    show(rodOf([row("a")]));
    rows()[0]?.focus();
    show(rodOf([row("a", { why: "another reason" })]));
    expect(one(".why").textContent).toBe("A, side of box inks: another reason");
  });

  test("when the row at hand goes, the one in its place has the focus", () => {
    const { show } = setUp();
    show(rodOf([row("a"), row("b"), row("c")]));
    rows()[1]?.focus();
    show(rodOf([row("a"), row("c")]));
    expect(document.activeElement).toBe(rows()[1]);
    expect(rows().map((each) => each.tabIndex)).toEqual([-1, 0]);
  });
});

describe("what stands over the list", () => {
  test("the title, the pieces and the reading, and the findings by kind", () => {
    const { show } = setUp();
    show(rodOf([row("a")], { counts: { errors: 2, warnings: 1, hints: 0 } }));
    expect(one("h1").textContent).toBe("Seed store");
    expect(one(".facts").textContent).toBe("2 pieces · inches · read to 1/32 in");
    expect([...document.querySelectorAll(".counts li")].map((each) => each.textContent)).toEqual([
      "2 errors",
      "1 warning",
    ]);
    show(rodOf([row("a")]));
    expect([...document.querySelectorAll(".counts li")].map((each) => each.textContent)).toEqual(["no findings"]);
  });

  test("a quiet note while the text is broken", () => {
    const { show, page } = setUp();
    const note = () => one(".note");
    show(rodOf([row("a")]));
    expect(note().hidden).toBe(true);
    show(rodOf([row("a")], { whole: false }));
    expect(note().textContent).toContain("these are the parts that are whole");
    show(rodOf([row("a")], { whole: false, notes: ["Broken at line 3.", "Rounded."] }), true);
    expect(note().textContent).toBe("Broken at line 3.");
    expect(one(".notes").textContent).toBe("Rounded.");
    page.receive({ type: "offline" });
    expect(note().textContent).toContain("not answering");
    expect(ids()).toEqual(["a"]);
    show(rodOf([row("a")]));
    expect(note().hidden).toBe(true);
  });

  test("how to begin, while there is nothing to show", () => {
    const { page, show } = setUp();
    page.receive({ type: "begin" });
    expect(one(".empty").hidden).toBe(false);
    expect(one(".cut-list").hidden).toBe(true);
    show(rodOf([row("a")]));
    expect(one(".empty").hidden).toBe(true);
    expect(one(".cut-list").hidden).toBe(false);
    show(rodOf([]));
    expect(one(".empty").hidden).toBe(false);
    expect(one("h1").textContent).toBe("Seed store");
  });
});

describe("what is said aloud", () => {
  test("is said at most once a second, and then the last of it", () => {
    const { show, pass } = setUp();
    const said = () => one('[role="status"]').textContent;
    show(rodOf([row("a", { quantity: 1 })]));
    expect(said()).toBe("Seed store. 1 piece · inches · read to 1/32 in. no findings");
    for (const quantity of [2, 3, 4]) {
      pass(200);
      show(rodOf([row("a", { quantity })]));
      expect(said()).toContain("1 piece");
    }
    pass(400);
    expect(said()).toContain("4 pieces");
  });
});

describe("further lists", () => {
  const boxes = {
    id: "boxes" as const,
    title: "Boxes",
    columns: [
      { title: "box", align: "left" as const },
      { title: "holds", align: "right" as const },
    ],
    rows: [{ cells: ["inks", "0.6 ft³"], target: row("a").target }],
    note: "Clear: past the front of the case.",
  };

  test("stand below, each under its heading, and lead to the text", () => {
    const { show, posted } = setUp();
    show(rodOf([row("a")], { tables: [boxes] }));
    expect(one("#table-title-boxes").textContent).toBe("Boxes");
    expect([...document.querySelectorAll("#table-boxes td")].map((each) => each.textContent)).toEqual([
      "inks",
      "0.6 ft³",
    ]);
    one("#table-boxes td").click();
    expect(posted).toEqual([{ type: "reveal", row: "#boxes/0" }]);
  });

  test("are not there when they are empty", () => {
    const { show } = setUp();
    show(rodOf([row("a")], { tables: [boxes] }));
    show(rodOf([row("a")], { tables: [{ ...boxes, rows: [] }] }));
    expect(document.querySelector("#table-boxes")).toBeNull();
  });
});

describe("the mark of the cursor", () => {
  test("stands at the rows it is told of until the next rod", () => {
    const { page, show } = setUp();
    const marked = () => rows().filter((each) => each.getAttribute("aria-current") === "true");
    show(rodOf([row("a"), row("b")]));
    page.receive({ type: "mark", rows: ["b", "gone"] });
    expect(marked()).toEqual([rows()[1]]);
    page.receive({ type: "mark", rows: ["a"] });
    expect(marked()).toEqual([rows()[0]]);
    show(rodOf([row("a"), row("b")]));
    expect(marked()).toEqual([]);
  });
});

describe("drawings", () => {
  const part = '<g role="img" aria-label="side, 20 long" data-id="side" data-uri="file:///job.scant" data-line="4">';
  const drawing = {
    id: "front",
    title: "Front <b>",
    scale: "1 : 10",
    svg: `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" viewBox="0 0 200 100" onload="alert(1)">${part}<path class="heavy none" d="M0 0L9 9"/></g><script>alert(1)</script><text x="1" y="2">13 3/4 &lt; 14</text></svg>`,
    textEquivalent: { columns: ["part", "size"], rows: [["side <i>", "20"]] },
  };
  const titles = [drawing, { id: "plan", title: "Plan", scale: "" }].map(({ id, title, scale }) => ({
    id,
    title,
    scale,
  }));
  function opened(saved?: SavedState) {
    const made = setUp(saved);
    made.show(rodOf([row("a")]));
    made.page.receive({ type: "drawings", answer: { titles, drawing } });
    return made;
  }

  test("are not there before there are parts, nor where they are not wanted", () => {
    const { page, show } = setUp();
    const section = () => one('section[aria-label="Drawings"]');
    expect(section().hidden).toBe(true);
    show(rodOf([row("a")]));
    expect(section().hidden).toBe(false);
    page.receive({ type: "undrawn" });
    show(rodOf([row("a")]));
    expect(section().hidden).toBe(true);
  });

  test("are asked for when they are opened, and no more when they are closed", () => {
    const { posted, states } = opened();
    const fold = one(".drawings") as HTMLDetailsElement;
    fold.open = true;
    fold.dispatchEvent(new Event("toggle"));
    expect(posted.at(-1)).toEqual({ type: "draw", id: "" });
    const choice = one("select") as HTMLSelectElement;
    choice.value = "plan";
    choice.dispatchEvent(new Event("change"));
    expect(posted.at(-1)).toEqual({ type: "draw", id: "plan" });
    expect(states.at(-1)?.drawing).toBe("plan");
    fold.open = false;
    fold.dispatchEvent(new Event("toggle"));
    expect(posted.at(-1)).toEqual({ type: "draw", id: undefined });
    expect(states.at(-1)).not.toHaveProperty("drawing");
  });

  test("hold nothing but what drawings are made of, and say the same in words", () => {
    opened();
    expect([...document.querySelectorAll(".drawings option")].map((each) => each.textContent)).toEqual([
      "Front <b>, 1 : 10",
      "Plan",
    ]);
    expect(document.querySelectorAll("script, b, i, [onload]")).toHaveLength(0);
    expect(one(".pane svg").getAttribute("viewBox")).toBe("0 0 200 100");
    expect(one(".pane svg text").textContent).toBe("13 3/4 < 14");
    expect([...document.querySelectorAll(".words td")].map((each) => each.textContent)).toEqual(["side <i>", "20"]);
  });

  test("are moved and looked at closer with keys and buttons", () => {
    opened();
    const pane = one(".pane");
    const box = () => (one(".pane svg").getAttribute("viewBox") ?? "").split(" ").map(Number);
    const key = (name: string) => pane.dispatchEvent(new KeyboardEvent("keydown", { key: name, bubbles: true }));
    key("+");
    const [x = 0, , width = 0] = box();
    expect(width).toBeCloseTo(160);
    expect(x).toBeCloseTo(20);
    pane.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowRight", shiftKey: true, bubbles: true }));
    expect(box()[0]).toBeCloseTo(36);
    key("0");
    expect(box()).toEqual([0, 0, 200, 100]);
    document.querySelector<HTMLElement>('.zoom [aria-label="Zoom in"]')?.click();
    expect(box()[2]).toBeCloseTo(160);
  });

  test("a click on a part asks for where it is written, and pointing at it says what it is", () => {
    const { posted } = opened();
    const path = document.querySelector(".pane path");
    for (const type of ["pointerdown", "pointerup"]) {
      path?.dispatchEvent(new PointerEvent(type, { bubbles: true, button: 0, clientX: 5, clientY: 5 }));
    }
    expect(posted.at(-1)).toEqual({ type: "revealDrawn", part: "side", on: "drawings" });
    path?.dispatchEvent(new MouseEvent("mouseover", { bubbles: true }));
    expect(one(".why").textContent).toBe("side, 20 long");
  });
});

describe("drawings walked with the keyboard", () => {
  const group = (id: string, more = "") =>
    `<g role="img" aria-label="${id}" data-id="${id}" data-uri="file:///job.scant" data-line="4"><path class="heavy none" d="M0 0L9 9"/>${more}</g>`;
  const drawing = (inner: string) => ({
    id: "front",
    title: "Front",
    scale: "",
    svg: `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" data-drawing="front" viewBox="0 0 200 100">${inner}</svg>`,
    textEquivalent: { columns: ["part"], rows: [] },
  });
  const show = (page: ReturnType<typeof setUp>["page"], inner: string) =>
    page.receive({
      type: "drawings",
      answer: { titles: [{ id: "front", title: "Front", scale: "" }], drawing: drawing(inner) },
    });
  const at = () => document.activeElement?.getAttribute("data-id");

  test("arrows go from part to part, Enter leads to the text, Escape back to the pane", () => {
    const made = setUp();
    made.show(rodOf([row("side", { why: "length: 20 written" })]));
    show(made.page, group("side") + group("back"));
    one(".pane").focus();
    press("ArrowRight");
    expect(at()).toBe("side");
    expect(document.activeElement?.getAttribute("role")).toBe("link");
    expect(one(".why").textContent).toBe("side. length: 20 written");
    press("ArrowRight");
    expect(at()).toBe("back");
    press("Home");
    expect(at()).toBe("side");
    press("End");
    press("Enter");
    expect(made.posted.at(-1)).toEqual({ type: "revealDrawn", part: "back", on: "drawings" });
    press("Escape");
    expect(document.activeElement).toBe(one(".pane"));
  });

  test("only what changed is drawn anew, and the part that has the focus keeps it", () => {
    const made = setUp();
    made.show(rodOf([row("side")]), false, ["side"]);
    show(made.page, group("side") + group("back"));
    one(".pane").focus();
    press("ArrowRight");
    const [side, back] = document.querySelectorAll(".pane [data-id]");
    expect(side?.hasAttribute("data-broken")).toBe(true);
    show(made.page, group("lid") + group("side") + group("back", '<path class="fine none" d="M1 1L2 2"/>'));
    const now = [...document.querySelectorAll(".pane [data-id]")];
    expect(now.map((each) => each.getAttribute("data-id"))).toEqual(["lid", "side", "back"]);
    expect(now[1]).toBe(side);
    expect(now[2]).not.toBe(back);
    expect(at()).toBe("side");
  });
});

describe("the filter", () => {
  const batches = [
    { stock: "birch-12", note: "", rows: [row("a", { name: "side" }), row("b", { name: "bottom" })] },
    { stock: "maple", note: "", rows: [row("c", { name: "rail", of: "box inks" })] },
  ];
  const filter = (text: string) => {
    const field = one(".filter input") as HTMLInputElement;
    field.value = text;
    field.dispatchEvent(new Event("input"));
  };
  const shown = () =>
    rows()
      .filter((each) => !each.hidden)
      .map((each) => each.getAttribute("data-part"));

  test("leaves what it names, by piece or by stock, and goes on doing so", () => {
    const { show } = setUp();
    show(rodOf([row("a")], { batches }));
    filter("maple");
    expect(shown()).toEqual(["c"]);
    expect([...document.querySelectorAll<HTMLElement>("#cut-list tbody")].map((body) => body.hidden)).toEqual([
      true,
      false,
    ]);
    expect(one(".filter .stock-note").textContent).toBe("1 of 3 lines");
    expect(rows().map((each) => each.tabIndex)).toEqual([-1, -1, 0]);
    filter("birch BOTT");
    expect(shown()).toEqual(["b"]);
    show(rodOf([row("a")], { batches: [{ ...batches[0]!, rows: [row("d", { name: "bottom" }), row("a")] }] }));
    expect(shown()).toEqual(["d"]);
    one(".filter input").dispatchEvent(new KeyboardEvent("keydown", { key: "Escape" }));
    expect(shown()).toEqual(["d", "a"]);
  });

  test("the walk passes by what is filtered out", () => {
    const { show } = setUp();
    show(rodOf([row("a", { name: "rail" }), row("b"), row("c", { name: "rail" })]));
    filter("rail");
    rows()[0]?.focus();
    press("ArrowDown");
    expect(document.activeElement).toBe(rows()[2]);
  });
});

describe("where sizes come from, and what is broken", () => {
  test("a size that is pointed at says its own origin, behind how it was rounded", () => {
    const { show } = setUp();
    show(rodOf([row("a", { length: "7 5/32 −", why: "length: opening less two; width: written" })]));
    const point = (column: string) => {
      one(`td.col-${column} .whole`).dispatchEvent(new MouseEvent("mouseover", { bubbles: true }));
      return one(`td.col-${column}`).title;
    };
    expect(point("width")).toBe("width: written");
    expect(point("length")).toMatch(/^Rounded down[^\n]*\nlength: opening less two$/);
    rows()[0]?.focus();
    expect(rows()[0]?.getAttribute("aria-describedby")).toBe("why");
    expect(one("#why").textContent).toContain("opening less two");
  });

  test("rows that are broken are marked until they are not", () => {
    const { show } = setUp();
    show(rodOf([row("a"), row("b")]), true, ["b"]);
    expect(rows().map((each) => each.hasAttribute("data-broken"))).toEqual([false, true]);
    expect(rows()[1]?.getAttribute("aria-description")).toContain("error");
    show(rodOf([row("a"), row("b")]));
    expect(rows().map((each) => each.hasAttribute("data-broken"))).toEqual([false, false]);
  });
});

describe("plan, buying, settings, sticks and dry fit", () => {
  const sheet = {
    id: "plan ply 1",
    title: "ply 1",
    scale: "1 : 20",
    svg: '<svg xmlns="http://www.w3.org/2000/svg" class="drawing" viewBox="0 0 90 50"><g role="img" aria-label="A side" data-id="box a/side#1" data-uri="file:///job.scant"><path d="M0 0L9 9"/></g></svg>',
    textEquivalent: { columns: ["mark"], rows: [["A"]] },
  };
  const nasty = "<img src=x onerror=alert(1)>";
  const section = {
    id: "plan" as const,
    notes: ["ply: 1 sheet; no fewer is possible.", nasty],
    tables: [],
    cautions: ["Use a push stick."],
    plan: {
      titles: [{ id: "plan ply 1", title: "ply 1", scale: "1 : 20" }],
      drawing: sheet,
      steps: [
        { number: 1, text: "rip", heavy: false },
        { number: 2, text: nasty, heavy: true },
      ],
      keep: ["offcut of ply 12 in x 40 in"],
    },
  };
  const searching = { state: "searching" as const, percent: 40 };

  function unfold(part: string): void {
    const fold = one(`#part-${part}`) as HTMLDetailsElement;
    fold.open = true;
    fold.dispatchEvent(new Event("toggle"));
  }

  test("are asked for when they are opened, remembered, and begin as they were", () => {
    const { show, posted, states } = setUp();
    show(rodOf([row("a")]));
    unfold("fit");
    unfold("plan");
    expect(posted.at(-1)).toEqual({ type: "bench", parts: ["plan", "fit"], sheet: "" });
    expect(states.at(-1)?.parts).toEqual(["plan", "fit"]);
    const again = setUp(states.at(-1));
    again.show(rodOf([row("a")]));
    expect((one("#part-plan") as HTMLDetailsElement).open).toBe(true);
    expect((one("#part-sticks") as HTMLDetailsElement).open).toBe(false);
  });

  test("the plan is drawn and said, its steps are counted, its offcuts can be kept, and markup stays text", () => {
    const { show, page, posted } = setUp();
    show(rodOf([row("a")]));
    page.receive({ type: "bench", answer: { sections: [section], search: searching } });
    expect([...document.querySelectorAll("#part-plan .said li")].map((each) => each.textContent)).toEqual(
      section.notes,
    );
    expect([...document.querySelectorAll(".steps li")].map((each) => each.textContent)).toEqual(["rip", nasty]);
    expect(document.querySelectorAll("img")).toHaveLength(0);
    expect(one("#part-plan .cautions").textContent).toContain("push stick");
    for (const type of ["pointerdown", "pointerup"]) {
      const init = { bubbles: true, button: 0, clientX: 5, clientY: 5 };
      one("#part-plan .pane path").dispatchEvent(new PointerEvent(type, init));
    }
    expect(posted.at(-1)).toEqual({ type: "revealDrawn", part: "box a/side#1", on: "plan" });
    const keep = [...document.querySelectorAll("button")].find((each) => each.textContent?.startsWith("Keep"));
    keep?.click();
    expect(posted.at(-1)).toEqual({ type: "keep" });
  });

  test("of what the plan is can be chosen where something is cut; the choice has a name, is asked for and remembered", () => {
    const { show, page, posted, states } = setUp();
    show(rodOf([row("a")]));
    unfold("plan");
    const bar = one(".plan-scope");
    const choice = one(".plan-scope select") as HTMLSelectElement;
    page.receive({ type: "bench", answer: { sections: [section], search: searching } });
    expect(bar.hidden).toBe(true);
    page.receive({ type: "bench", answer: { sections: [section], search: searching, scope: "left" } });
    expect(bar.hidden).toBe(false);
    expect([...choice.options].map((each) => each.textContent)).toEqual(["what is left to cut", "the whole job"]);
    expect(choice.value).toBe("left");
    expect(one(`label[for="${choice.id}"]`).textContent).toBe("Plan for");
    expect(states.at(-1)?.plan).toBeUndefined();
    choice.value = "whole";
    choice.dispatchEvent(new Event("change"));
    expect(posted.at(-1)).toEqual({ type: "bench", parts: ["plan"], sheet: "", scope: "whole" });
    expect(states.at(-1)).toMatchObject({ version: 1, plan: "whole" });
    const again = setUp(states.at(-1));
    again.show(rodOf([row("a")]));
    unfold("plan");
    expect(again.posted.at(-1)).toEqual({ type: "bench", parts: ["plan"], sheet: "", scope: "whole" });
    // Of a file of which nothing is cut there is nothing to choose, whatever was chosen before.
    again.page.receive({ type: "bench", answer: { sections: [section], search: searching } });
    expect(one(".plan-scope").hidden).toBe(true);
  });

  test("the search is shown quietly, stopped and gone on with; only its end is said aloud", () => {
    const { show, page, posted, pass } = setUp();
    show(rodOf([row("a")]));
    page.receive({ type: "bench", answer: { sections: [section], search: searching } });
    pass(5000);
    const said = () => one('[role="status"]').textContent;
    const before = said();
    const bar = one(".search progress") as HTMLProgressElement;
    expect(bar.value).toBe(40);
    for (const percent of [50, 60]) page.receive({ type: "searched", search: { state: "searching", percent } });
    expect(bar.value).toBe(60);
    expect(said()).toBe(before);
    const button = one(".search button");
    button.click();
    expect(posted.at(-1)).toEqual({ type: "search", go: "stop" });
    page.receive({ type: "searched", search: { state: "halted", percent: 100 } });
    expect(said()).toContain("best plan found");
    expect(bar.hidden).toBe(true);
    button.click();
    expect(posted.at(-1)).toEqual({ type: "search", go: "on" });
    page.receive({ type: "searched", search: { state: "finished", percent: 100 } });
    expect(button.hidden).toBe(true);
  });

  test("a drawing is opened when the host says so, and the item wanted has the focus once it is there", () => {
    const { show, page, posted } = setUp();
    show(rodOf([row("a")]));
    page.receive({ type: "openDrawn", drawn: { drawing: "case c/front", item: "opening b" } });
    expect((one(".drawings") as HTMLDetailsElement).open).toBe(true);
    expect(posted).toContainEqual({ type: "draw", id: "case c/front" });
    const group = (id: string): string =>
      `<g data-id="${id}" data-uri="file:///a" data-line="1" data-column="0" data-end-line="1" data-end-column="4" role="img" aria-label="${id}"><path d="M0 0"/></g>`;
    const drawing = {
      id: "case c/front",
      title: "Front",
      scale: "1:8",
      svg: `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10" role="img">${group("opening a")}${group("opening b")}</svg>`,
      textEquivalent: { columns: ["what"], rows: [["b"]] },
    };
    const titles = [{ id: drawing.id, title: drawing.title, scale: drawing.scale }];
    page.receive({ type: "drawings", answer: { titles, drawing } });
    expect(document.activeElement?.getAttribute("data-id")).toBe("opening b");
  });

  test("a part is opened and brought into view when the host says so, and its tables lead to the text", () => {
    const { show, page, posted } = setUp();
    show(rodOf([row("a")]));
    page.receive({ type: "openPart", part: "fit" });
    expect((one("#part-fit") as HTMLDetailsElement).open).toBe(true);
    const table = {
      id: "fit-weights",
      title: "Weights",
      columns: [{ title: "what", align: "left" as const }],
      rows: [{ cells: ["case chest"], target: row("a").target }],
      note: "",
    };
    const fit = { id: "fit" as const, notes: [], tables: [table], cautions: [] };
    page.receive({ type: "bench", answer: { sections: [fit], search: searching } });
    one("#table-fit-weights td").click();
    expect(posted.at(-1)).toEqual({ type: "reveal", row: "#fit-weights/0" });
  });
});

describe("what is remembered", () => {
  test("the file, the row and how far down", () => {
    const { show, states, page } = setUp();
    show(rodOf([row("a"), row("b")]));
    rows()[1]?.focus();
    page.scrolledTo(340);
    expect(states.at(-1)).toEqual({ version: 1, uri: "file:///job.scant", row: "b", scroll: 340 });
  });

  test("the walk begins where it left off", () => {
    const { show } = setUp({ version: 1, uri: "file:///job.scant", row: "b", scroll: 0 });
    show(rodOf([row("a"), row("b")]));
    expect(rows().map((each) => each.tabIndex)).toEqual([-1, 0]);
  });
});
