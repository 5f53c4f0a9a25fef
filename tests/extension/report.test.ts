import { describe, expect, test } from "vitest";
import { type ReportFacts, reportText } from "../../extension/commands/report-text.ts";
import { createTroubles, withoutPlaces } from "../../extension/troubles.ts";

const facts: ReportFacts = {
  version: "0.1.0",
  editor: "Editor",
  editorVersion: "1.101.0",
  host: "desktop, in a window",
  platform: "linux x64",
  language: "en",
  remote: undefined,
  server: "running",
  openBuildFiles: 2,
  settings: [],
  troubles: [],
};

describe("what went wrong of late", () => {
  test("is the last twenty, with when and of what kind", () => {
    const troubles = createTroubles(() => new Date("2026-01-02T03:04:05Z"));
    for (let count = 1; count <= 25; count += 1) troubles.note("warning", `number ${count}`);
    troubles.note("error", new Error("broken"));
    expect(troubles.list()).toHaveLength(20);
    expect(troubles.list()[0]).toBe("03:04:05 warning number 7");
    expect(troubles.list().at(-1)).toMatch(/^03:04:05 error Error: broken/);
  });

  test.each([
    ["ENOENT: open '/home/ann/jobs/kitchen/job.scant'", "ENOENT: open '…/job.scant'"],
    ["at f (file:///home/ann/x/dist/server.cjs:3:14)", "at f (…/server.cjs:3:14)"],
    ["C:\\Users\\ann\\job.scant is gone", "…/job.scant is gone"],
    ["vscode-remote://ssh+host/home/ann/rack.scant", "…/rack.scant"],
    ["a slide of 13/64 or 1/2", "a slide of 13/64 or 1/2"],
  ])("%s loses its folders", (text, without) => {
    expect(withoutPlaces(text)).toBe(without);
  });
});

describe("the report", () => {
  test("says where it runs, and that nothing was sent", () => {
    const text = reportText({ ...facts, remote: "ssh", settings: ['scantling.trace.server: "verbose"'] });
    expect(text).toContain("Scantling 0.1.0, language server running");
    expect(text).toContain("Editor 1.101.0, desktop, in a window, remote: ssh");
    expect(text).toContain('scantling.trace.server: "verbose"');
    expect(text).toContain("Nothing has been sent to anyone.");
    expect(text).toContain("Nothing was noted.");
  });

  test("keeps what was noted inside its block", () => {
    const text = reportText({ ...facts, troubles: ["03:04:05 error ```\n# not a heading"] });
    expect(text.match(/^```/gm)).toHaveLength(4);
  });
});
