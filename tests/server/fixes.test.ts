import { expect, test } from "vitest";
import type { Finding, Fix } from "../../language/core/finding.ts";
import { applied, safeEdits } from "../../server/fixes.ts";

const file = "file:///a.scant";
const text = "box for a { slides runner 24 }";

test("safe fixes are made together, and the text between them stays", () => {
  const edits = safeEdits([finding([fix([edit(4, 7, "FOR")])]), finding([fix([edit(26, 28, "22")])])], file);
  expect(applied(text, edits)).toBe("box FOR a { slides runner 22 }");
});

test("a fix is left out if it is not safe, not the best, leads out of the file, or meets another", () => {
  const other = { ...edit(0, 3, "BOX"), span: { ...edit(0, 3, "").span, uri: "file:///b.scant" } };
  const findings = [
    finding([fix([edit(0, 3, "unsafe")], "ask")]),
    finding([fix([edit(0, 3, "unsafe")], "ask"), fix([edit(0, 3, "second best")])]),
    finding([fix([edit(4, 7, "whole or not at all"), other])]),
    finding([fix([edit(19, 28, "first")])]),
    finding([fix([edit(26, 28, "meets it")])]),
    finding([fix([edit(19, 19, "at one place")])]),
    finding([]),
  ];
  expect(applied(text, safeEdits(findings, file))).toBe("box for a { slides first }");
});

test("what two findings ask for alike is done once", () => {
  const same = [finding([fix([edit(26, 28, "22")])]), finding([fix([edit(26, 28, "22"), edit(0, 3, "BOX")])])];
  expect(applied(text, safeEdits(same, file))).toBe("BOX for a { slides runner 22 }");
});

function edit(start: number, end: number, by: string): Fix["edits"][number] {
  return { text: by, span: { uri: file, start, end, line: 0, column: start, endLine: 0, endColumn: end } };
}

function fix(edits: Fix["edits"], kind: "safe" | "ask" = "safe"): Fix {
  return { title: "Mend it", edits, safe: kind === "safe" };
}

function finding(fixes: readonly Fix[]): Finding {
  const { span } = edit(0, 3, "");
  return { code: "a/b", severity: "error", span, message: "m", reason: "r", remedy: "r", related: [], fixes };
}
