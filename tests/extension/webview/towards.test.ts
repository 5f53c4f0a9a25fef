import { expect, test } from "vitest";
import { towards } from "../../../extension/preview/webview/towards.ts";

/** Two rows of three, and one far out to the right of the upper row. */
const SPOTS = [...[0, 10, 20].map((x) => ({ x, y: 0 })), ...[0, 10, 20].map((x) => ({ x, y: 10 })), { x: 90, y: 2 }];

test("goes to the nearest that way, and stays where there is none", () => {
  expect(towards(SPOTS, 0, "right")).toBe(1);
  expect(towards(SPOTS, 1, "down")).toBe(4);
  expect(towards(SPOTS, 4, "left")).toBe(3);
  expect(towards(SPOTS, 5, "up")).toBe(2);
  expect(towards(SPOTS, 2, "right")).toBe(6);
  expect(towards(SPOTS, 0, "left")).toBe(0);
  expect(towards(SPOTS, 0, "up")).toBe(0);
  expect(towards([], 0, "up")).toBe(0);
});

test("what lies more to the side than ahead is not that way", () => {
  expect(
    towards(
      [
        { x: 0, y: 0 },
        { x: 3, y: 9 },
      ],
      0,
      "right",
    ),
  ).toBe(0);
  expect(
    towards(
      [
        { x: 0, y: 0 },
        { x: 3, y: 9 },
      ],
      0,
      "down",
    ),
  ).toBe(1);
});
