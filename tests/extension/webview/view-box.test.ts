import { describe, expect, test } from "vitest";
import { fitting, moved, zoomed } from "../../../extension/preview/webview/view-box.ts";

const whole = { x: 0, y: 0, width: 200, height: 100 };

describe("a view of a drawing", () => {
  test("begins as its viewBox, and as one unit where that is none", () => {
    expect(fitting("0 0 200 100")).toEqual(whole);
    for (const text of ["", "0 0 200", "0 0 0 100", "a b c d", "0 0 -1 2"]) expect(fitting(text).width).toBe(1);
  });

  test("comes closer about the place that is pointed at", () => {
    const near = zoomed(whole, whole, 2, 0.25, 0.5);
    expect(near).toEqual({ x: 25, y: 25, width: 100, height: 50 });
    // What was a quarter across still is.
    expect(near.x + near.width * 0.25).toBe(50);
  });

  test("never shows more than the whole, nor less than a fortieth", () => {
    expect(zoomed(whole, whole, 0.5, 0.5, 0.5)).toEqual(whole);
    expect(zoomed(whole, whole, 1000, 0.5, 0.5).width).toBe(5);
  });

  test("stays on the drawing", () => {
    const near = zoomed(whole, whole, 2, 0, 0);
    expect(moved(near, whole, -10, 1000)).toEqual({ x: 0, y: 50, width: 100, height: 50 });
  });
});
