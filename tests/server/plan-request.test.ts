import { expect, test } from "vitest";
import { CancellationTokenSource } from "vscode-languageserver-protocol/node";
import type { PlanResult } from "../../server/protocol.ts";
import type { Editor } from "./editor.ts";
import { inProcess } from "./editor.ts";

const uri = "file:///shop/job.scant";

/** Pieces of many sizes, so that a search has something to look for and no bound is met at once. */
const job = `inches
sheet ply { measures 3/4  size 48 x 96 }
${Array.from({ length: 40 }, (_, n) => `part piece-${n} { from ply  long ${14 + ((n * 7) % 23)} 3/8  wide ${6 + ((n * 5) % 17)} 1/8  count 2 }`).join("\n")}
`;

async function opened(): Promise<Editor> {
  const editor = await inProcess({});
  editor.open(uri, job);
  await editor.diagnosticsOf(uri, 1);
  return editor;
}

test("a plan is given for a file, and for no time at all there still is one", async () => {
  const editor = await opened();
  const made = await editor.connection.sendRequest<PlanResult>("scantling/plan", { uri, seconds: 0, keepBest: false });
  expect(made?.document.schema).toBe("scantling/plan/1");
  expect(made?.document.sheets.flatMap((sheet) => sheet.placed)).toHaveLength(80);
  expect(made?.text).toContain("Cutting plan: job");
});

test("what makes no sense as a time is no time", async () => {
  const editor = await opened();
  for (const seconds of [-1, Number.NaN, "soon", undefined]) {
    expect(await editor.connection.sendRequest("scantling/plan", { uri, seconds, keepBest: false })).not.toBeNull();
  }
});

test("while it searches, other requests are answered; called off, it gives the best so far or says that it was", async () => {
  const editor = await opened();
  const source = new CancellationTokenSource();
  const reports: unknown[] = [];
  editor.connection.onNotification("$/progress", (params) => void reports.push(params));
  const params = { uri, seconds: 60, keepBest: true, workDoneToken: "plan-1" };
  const asked = editor.connection.sendRequest<PlanResult>("scantling/plan", params, source.token);
  const rod = await editor.connection.sendRequest("scantling/rod", { uri });
  expect(rod).not.toBeNull();
  await editor.until("progress", () => 2 < reports.length);
  source.cancel();
  const made = await asked;
  expect(made?.document.sheets.length).toBeGreaterThan(0);
  expect(JSON.stringify(reports[0])).toContain("percentage");

  const second = new CancellationTokenSource();
  const refused = editor.connection.sendRequest("scantling/plan", { ...params, keepBest: false }, second.token);
  second.cancel();
  await expect(refused).rejects.toThrow("called off");
});
