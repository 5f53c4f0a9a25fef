import { expect, test } from "vitest";
import { createNonce, pageHtml } from "../../extension/preview/page-html.ts";

const parts = { nonce: "0123", script: "https://a/webview.js", style: "https://a/webview.css", source: "https://a" };

test("the page runs the one script and reaches for nothing but its style sheet", () => {
  const html = pageHtml(parts);
  const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1] ?? "";
  const rules = new Map(policy.split(";").map((rule) => [rule.trim().split(" ")[0], rule.trim().split(" ").slice(1)]));
  expect(rules.get("default-src")).toEqual(["'none'"]);
  expect(rules.get("script-src")).toEqual(["'nonce-0123'"]);
  expect(rules.get("style-src")).toEqual(["https://a"]);
  expect(policy).not.toMatch(/unsafe|\*/);
  expect(html.match(/<script/g)).toHaveLength(1);
  expect(html).toContain('<script nonce="0123" src="https://a/webview.js">');
  expect(html).not.toMatch(/\son\w+=|style="|javascript:/);
});

test("an address can't end its attribute", () => {
  expect(pageHtml({ ...parts, style: 'https://a/"><script>' })).not.toContain('"><script>');
});

test("nonces are 128 bits and differ", () => {
  const nonces = Array.from({ length: 100 }, createNonce);
  expect(new Set(nonces).size).toBe(100);
  for (const nonce of nonces) expect(nonce).toMatch(/^[0-9a-f]{32}$/);
});
