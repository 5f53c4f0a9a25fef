import { expect, test } from "vitest";
import { splitSize } from "../../../extension/preview/webview/size.ts";

test.each([
  ["20", "20", ""],
  ["13 3/4", "13", " 3/4"],
  ["45/64", "", "45/64"],
  ["349.5", "349", ".5"],
  ["7 5/32 −", "7", " 5/32 −"],
  ["20 −", "20", " −"],
  ["", "", ""],
  ["none fits", "", "none fits"],
])("%s is %s and %s", (text, whole, rest) => {
  const split = splitSize(text);
  expect([split.whole, split.rest]).toEqual([whole, rest]);
  expect(split.whole + split.rest).toBe(text);
});
