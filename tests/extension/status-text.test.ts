import { expect, test } from "vitest";
import { statusOf } from "../../extension/status-text.ts";
import { asWritten } from "../../extension/translate.ts";
import { rodOf, row } from "./rods.ts";

test.each([
  [{ errors: 0, warnings: 0, hints: 0 }, "No findings", "good"],
  [{ errors: 1, warnings: 0, hints: 2 }, "1 error, 2 hints", "error"],
  [{ errors: 0, warnings: 3, hints: 1 }, "3 warnings, 1 hint", "warning"],
  [{ errors: 0, warnings: 0, hints: 4 }, "4 hints", "good"],
])("%j is said as %s", (counts, text, grade) => {
  const status = statusOf(rodOf([row("a")], { counts }), asWritten);
  expect(status).toEqual({ text, detail: "2 pieces, read to 1/32 in", grade });
});
