// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { el, unbroken } from "../../../extension/preview/webview/dom.ts";

test.each([
  ["16 1/8 − × 3 27/32 − × 17 1/32 −", ["16 1/8 −", "×", "3 27/32 −", "×", "17 1/32 −"]],
  ["box deep-1, deep-2", ["box", "deep-1,", "deep-2"]],
  ["long-run 18", ["long-run", "18"]],
  ["#8 × 5/8 in", ["#8", "×", "5/8", "in"]],
  ["349.5 × 20 +", ["349.5", "×", "20 +"]],
])("%s breaks between its words, and in no size", (text, words) => {
  const cell = el("td", {}, ...unbroken(text));
  expect([...cell.querySelectorAll(".word")].map((word) => word.textContent)).toEqual(words);
  expect(cell.textContent).toBe(text);
});
