import { describe, expect, test } from "vitest";
import { readHostMessage, readPageMessage, readSavedState } from "../../extension/preview/messages.ts";
import { rodOf, row } from "./rods.ts";

describe("what the host says", () => {
  test("a rod is read as it was sent, through JSON", () => {
    const message = {
      type: "show",
      view: rodOf([row("a", { notes: ["<b>not</b> markup"] })]),
      stale: false,
      broken: ["a"],
    };
    expect(readHostMessage(JSON.parse(JSON.stringify(message)))).toEqual(message);
    expect(readHostMessage({ type: "begin" })).toEqual({ type: "begin" });
    expect(readHostMessage({ type: "offline" })).toEqual({ type: "offline" });
  });

  test("a rod with any field missing or of another kind is not read", () => {
    const whole = { type: "show", view: rodOf([row("a")]), stale: false, broken: ["a"] };
    let tried = 0;
    for (const path of pathsIn(whole)) {
      for (const wrong of [undefined, null, -1, "?", {}, [1], true]) {
        const changed = structuredClone(whole);
        if (!isOtherKind(valueAt(changed, path), wrong)) continue;
        setAt(changed, path, wrong);
        expect(readHostMessage(changed), `${path.join(".")} = ${JSON.stringify(wrong)}`).toBeUndefined();
        tried += 1;
      }
    }
    expect(tried).toBeGreaterThan(150);
  });

  test("drawings are read as they were sent, and not with any field of another kind", () => {
    const drawing = {
      id: "case chest/front",
      title: "Case chest: front",
      scale: "1 : 10",
      svg: "<svg/>",
      textEquivalent: { columns: ["part"], rows: [["side"]] },
    };
    const whole = { type: "drawings", answer: { titles: [{ id: "a", title: "b", scale: "" }], drawing } };
    expect(readHostMessage(JSON.parse(JSON.stringify(whole)))).toEqual(whole);
    const none = { type: "drawings", answer: { titles: [], drawing: null } };
    expect(readHostMessage(none)).toEqual(none);
    for (const path of pathsIn(whole)) {
      const changed = structuredClone(whole);
      setAt(changed, path, 7);
      expect(readHostMessage(changed), path.join(".")).toBeUndefined();
    }
  });

  test("marks are lists of ids", () => {
    expect(readHostMessage({ type: "mark", rows: ["a"] })).toEqual({ type: "mark", rows: ["a"] });
    expect(readHostMessage({ type: "mark", rows: [3] })).toBeUndefined();
    expect(readHostMessage({ type: "undrawn" })).toEqual({ type: "undrawn" });
  });

  test.each([undefined, null, 7, "show", [], {}, { type: "other" }])("%j is no message", (data) => {
    expect(readHostMessage(data)).toBeUndefined();
    expect(readPageMessage(data)).toBeUndefined();
    expect(readSavedState(data)).toBeUndefined();
  });
});

describe("what the page says", () => {
  test("is read, and only its own fields are passed on", () => {
    expect(readPageMessage({ type: "ready", more: 1 })).toEqual({ type: "ready" });
    expect(readPageMessage({ type: "reveal", row: "box inks/side", uri: "file:///etc/x" })).toEqual({
      type: "reveal",
      row: "box inks/side",
    });
    expect(readPageMessage({ type: "reveal", row: 3 })).toBeUndefined();
    expect(readPageMessage({ type: "draw" })).toEqual({ type: "draw", id: undefined });
    expect(readPageMessage({ type: "draw", id: "a" })).toEqual({ type: "draw", id: "a" });
    expect(readPageMessage({ type: "draw", id: null })).toBeUndefined();
    const drawn = { type: "revealDrawn", part: "a", on: "plan" };
    expect(readPageMessage(drawn)).toEqual(drawn);
    expect(readPageMessage({ ...drawn, on: "elsewhere" })).toBeUndefined();
    expect(readPageMessage({ type: "revealDrawn" })).toBeUndefined();
  });
});

describe("what is said of the parts beside list and drawings", () => {
  test("the host's answer is read as it was sent, and not with any field of another kind", () => {
    const table = {
      id: "saw",
      title: "Saw",
      columns: [{ title: "to", align: "right" }],
      rows: [{ cells: ["4"] }],
      note: "",
    };
    const drawing = {
      id: "p",
      title: "ply 1",
      scale: "1 : 20",
      svg: "<svg/>",
      textEquivalent: { columns: ["a"], rows: [["b"]] },
    };
    const plan = {
      titles: [{ id: "p", title: "ply 1", scale: "1 : 20" }],
      drawing,
      steps: [{ number: 1, text: "rip", heavy: true }],
      keep: ["offcut of ply 12 in x 40 in"],
    };
    const sections = [{ id: "plan", notes: ["one sheet"], tables: [table], cautions: ["mind"], plan }];
    const whole = { type: "bench", answer: { sections, search: { state: "searching", percent: 40 } } };
    expect(readHostMessage(JSON.parse(JSON.stringify(whole)))).toEqual(whole);
    let tried = 0;
    for (const path of pathsIn(whole)) {
      const changed = structuredClone(whole);
      setAt(changed, path, typeof valueAt(whole, path) === "number" ? "7" : 7);
      expect(readHostMessage(changed), path.join(".")).toBeUndefined();
      tried += 1;
    }
    expect(tried).toBeGreaterThan(25);
    expect(readHostMessage({ type: "searched", search: { state: "lost", percent: 1 } })).toBeUndefined();
    expect(readHostMessage({ type: "openPart", part: "plan" })).toEqual({ type: "openPart", part: "plan" });
    expect(readHostMessage({ type: "openPart", part: "attic" })).toBeUndefined();
    const openDrawn = { type: "openDrawn", drawn: { drawing: "case c/front", item: "opening b" } };
    expect(readHostMessage(openDrawn)).toEqual(openDrawn);
    expect(readHostMessage({ type: "openDrawn", drawn: { drawing: "case c/front" } })).toBeUndefined();
  });

  test("the page's wishes are read, and no others", () => {
    const bench = { type: "bench", parts: ["plan", "fit"], sheet: "" };
    expect(readPageMessage(bench)).toEqual(bench);
    expect(readPageMessage({ ...bench, scope: "left" })).toEqual({ ...bench, scope: "left" });
    expect(readPageMessage({ ...bench, scope: "half" })).toBeUndefined();
    expect(readPageMessage({ ...bench, parts: ["plan", "attic"] })).toBeUndefined();
    expect(readPageMessage({ type: "search", go: "stop" })).toEqual({ type: "search", go: "stop" });
    expect(readPageMessage({ type: "search", go: "faster" })).toBeUndefined();
    expect(readPageMessage({ type: "keep", lines: ["x"] })).toEqual({ type: "keep" });
  });
});

describe("what the page remembers", () => {
  const state = { version: 1, uri: "file:///job.scant", row: "box inks/side", scroll: 120 };

  test("is read in its version and no other", () => {
    expect(readSavedState(state)).toEqual(state);
    expect(readSavedState({ ...state, drawing: "a" })).toEqual({ ...state, drawing: "a" });
    expect(readSavedState({ ...state, plan: "whole" })).toEqual({ ...state, plan: "whole" });
    expect(readSavedState({ ...state, plan: "half" })).toBeUndefined();
    expect(readSavedState({ ...state, drawing: 3 })).toBeUndefined();
    expect(readSavedState({ ...state, parts: ["plan"] })).toEqual({ ...state, parts: ["plan"] });
    expect(readSavedState({ ...state, parts: ["attic"] })).toBeUndefined();
    expect(readSavedState({ ...state, version: 2 })).toBeUndefined();
    expect(readSavedState({ ...state, uri: "" })).toBeUndefined();
    expect(readSavedState({ ...state, row: null })).toBeUndefined();
    expect(readSavedState({ ...state, scroll: Number.NaN })).toBeUndefined();
    expect(readSavedState({ ...state, scroll: -4 })).toBeUndefined();
  });
});

type Path = readonly (string | number)[];

/** Where each value stands that is neither an object nor a list, and each list. */
function pathsIn(value: unknown, at: Path = []): readonly Path[] {
  if (Array.isArray(value)) return [at, ...value.flatMap((each, index) => pathsIn(each, [...at, index]))];
  if (typeof value !== "object" || value === null) return [at];
  return Object.entries(value).flatMap(([name, each]) => pathsIn(each, [...at, name]));
}

function isOtherKind(right: unknown, wrong: unknown): boolean {
  if (typeof right === "number") return typeof wrong !== "number" || wrong < 0;
  // Any text will do where a text is wanted, and any list of texts where one of those is.
  return Array.isArray(right) ? !Array.isArray(wrong) || typeof wrong[0] === "number" : typeof right !== typeof wrong;
}

function valueAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>((inner, step) => (inner as Record<string, unknown>)[step], value);
}

function setAt(value: unknown, path: Path, to: unknown): void {
  const holder = valueAt(value, path.slice(0, -1)) as Record<string, unknown>;
  holder[path.at(-1) ?? ""] = to;
}
