import { expect, test, vi } from "vitest";
import { CancellationTokenSource } from "vscode-languageserver-protocol/node";
import { createWorkspace } from "../../language/service.ts";
import { createJobPlans, type JobPlan } from "../../server/job-plans.ts";
import { bench } from "../../server/lsp/bench.ts";
import type { Server } from "../../server/lsp/feature.ts";
import type { BenchAnswer, BenchParams, PapersResult, PlanResult, PlanSearchedParams } from "../../server/protocol.ts";
import type { Editor } from "./editor.ts";
import { inProcess } from "./editor.ts";
import { fits } from "./texts.ts";

const TRIMMED =
  "First trim 1/4 in off each edge of a new sheet: all settings are from trimmed edges, or from those of an offcut.";

const uri = "file:///shop/job.scant";

/** Pieces of many sizes whose plan stays two sheets over what is proven, so that a search has no end but its time. */
const pieces = Array.from(
  { length: 45 },
  (_, n) => `part piece-${n} { from ply  long ${19 + ((n * 7) % 12)} 3/8  wide ${14 + ((n * 5) % 6)} 1/8  count 2 }`,
).join("\n");
const job = `inches\nsheet ply { measures 3/4  size 48 x 96 }\n${pieces}\n`;

async function opened(text: string): Promise<{
  readonly editor: Editor;
  readonly ask: (params: Partial<BenchParams>) => Promise<BenchAnswer>;
  readonly told: readonly PlanSearchedParams[];
}> {
  const editor = await inProcess({});
  const told: PlanSearchedParams[] = [];
  editor.connection.onNotification("scantling/planSearched", (params: PlanSearchedParams) => void told.push(params));
  editor.open(uri, text);
  await editor.diagnosticsOf(uri, 1);
  const ask = (params: Partial<BenchParams>) =>
    editor.connection.sendRequest<BenchAnswer>("scantling/bench", { uri, parts: [], seconds: 0, ...params });
  return { editor, ask, told };
}

test("only what is open is made, and the plan is drawn, said and counted out in steps", async () => {
  const { ask } = await opened(fits);
  expect((await ask({ parts: [] })).sections).toEqual([]);
  const { sections } = await ask({ parts: ["plan", "settings", "buying", "sticks", "fit"] });
  expect(sections.map(({ id }) => id)).toEqual(["plan", "settings", "buying", "sticks", "fit"]);
  const [plan, settings, buying, , fit] = sections;
  expect(plan?.notes).toEqual(["ply: 1 sheet; no fewer is possible.", TRIMMED]);
  expect(plan?.plan?.titles.map(({ id }) => id)).toEqual(["plan ply 1"]);
  expect(plan?.plan?.drawing?.svg).toMatch(/^<svg .*data-uri="file:\/\/\/shop\/job.scant"/);
  expect(plan?.plan?.steps.map(({ number }) => number)).toEqual(plan?.plan?.steps.map((_, index) => index + 1));
  expect(plan?.plan?.steps.length).toBeGreaterThan(3);
  expect(plan?.cautions.length).toBeGreaterThan(0);
  expect(settings?.tables[0]?.rows.some(({ cells }) => cells[1] === "fence")).toBe(true);
  expect(buying?.tables[0]?.rows.some(({ cells }) => cells[2] === "ply" && cells[0] === "1")).toBe(true);
  expect(fit?.notes[0]).toMatch(/pieces are put together/);
  expect(fit?.notes[1]).toMatch(/Nothing here certifies/);
});

test("the plan is searched for behind everything else, told of, stopped, and gone on with", async () => {
  const { editor, ask, told } = await opened(job);
  const first = await ask({ parts: ["plan"], seconds: 600 });
  expect(first.search.state).toBe("searching");
  expect(first.sections[0]?.plan?.titles.length).toBeGreaterThan(1);
  // What is typed meanwhile is answered.
  expect(await editor.connection.sendRequest("scantling/rod", { uri })).not.toBeNull();
  await editor.until("a word of the search", () => told.some(({ state }) => state === "searching"));
  expect((await ask({ parts: ["plan"], seconds: 0 })).search.state).toBe("halted");
  const count = told.length;
  await new Promise((go) => setTimeout(go, 900));
  expect(told.length).toBeLessThanOrEqual(count + 1);
  expect((await ask({ parts: ["plan"], seconds: 600 })).search.state).toBe("searching");
  expect((await ask({ parts: [] })).search.state).toBe("finished");
});

test("a search ends when its time is over, and says so", async () => {
  const { editor, ask, told } = await opened(job);
  expect((await ask({ parts: ["plan"], seconds: 0.4 })).search.state).toBe("searching");
  await editor.until("the end", () => told.at(-1)?.state === "halted");
  expect((await ask({ parts: ["plan"], seconds: 0.4 })).search.state).toBe("halted");
});

test("a search whose time is over goes on when it is given more", async () => {
  const { editor, ask, told } = await opened(job);
  await ask({ parts: ["plan"], seconds: 0.2 });
  await editor.until("the end", () => told.at(-1)?.state === "halted");
  const count = told.length;
  expect((await ask({ parts: ["plan"], seconds: 0.6 })).search.state).toBe("searching");
  await editor.until("another end", () => count < told.length && told.at(-1)?.state === "halted");
});

test("a change that leaves parts and stock alone keeps the plan, and what it leads to moves with the text", async () => {
  const { editor, ask } = await opened(job);
  const before = await ask({ parts: ["plan"], seconds: 0.2 });
  await new Promise((go) => setTimeout(go, 600));
  const searched = await ask({ parts: ["plan"], seconds: 0.2 });
  expect(searched.search.state).toBe("halted");
  editor.change(uri, `# a note\n\n${job}`, 2);
  const noted = await ask({ parts: ["plan"], seconds: 0.2 });
  // Had it begun anew it would be searching.
  expect(noted.search.state).toBe("halted");
  const lineIn = (answer: BenchAnswer): number =>
    Number(/data-line="(\d+)"/.exec(answer.sections[0]?.plan?.drawing?.svg ?? "")?.[1]);
  expect(lineIn(noted)).toBe(lineIn(searched) + 2);
  editor.change(uri, job.replace("wide 14 1/8", "wide 13 7/8"), 3);
  expect((await ask({ parts: ["plan"], seconds: 0.2 })).search.state).toBe("searching");
  expect(before.sections[0]?.plan?.titles.length).toBeGreaterThan(0);
});

test("once something is cut the plan is of what is left, unless the whole job is asked for; before, there is no choice", async () => {
  const sawn = "inches\nsheet ply { measures 3/4  size 48 x 96 }\npart side { from ply  long 40  wide 20  count 16 }\n";
  const { editor, ask } = await opened(sawn);
  const bought = ({ sections }: BenchAnswer) => sections[1]?.tables[0]?.rows.map(({ cells }) => cells.slice(0, 3));
  const parts = ["plan", "buying"] as const;
  const before = await ask({ parts });
  expect(before.scope).toBeUndefined();
  // Two side by side on 48 in, and two of those behind one another on 96 in: four to a sheet.
  expect(before.sections[0]?.notes).toEqual(["ply: 4 sheets; no fewer is possible.", TRIMMED]);
  editor.change(uri, `${sawn}cut {\n  part side 12\n}\n`, 2);
  const left = await ask({ parts });
  expect(left.scope).toBe("left");
  expect(left.sections[0]?.notes).toEqual([
    "For what is left to cut: 4 pieces.",
    "ply: 1 sheet; no fewer is possible.",
    TRIMMED,
  ]);
  expect(left.sections[0]?.plan?.titles).toHaveLength(1);
  expect(left.sections[0]?.plan?.drawing?.textEquivalent.rows).toHaveLength(4);
  expect(left.sections[1]?.notes).toEqual(["For what is left to cut: 4 pieces."]);
  expect(bought(left)).toEqual([["1", "sheet", "ply"]]);
  const whole = await ask({ parts, scope: "whole" });
  expect(whole.scope).toBe("whole");
  expect(whole.sections[0]?.notes).toEqual(before.sections[0]?.notes);
  expect(bought(whole)).toEqual([["4", "sheets", "ply"]]);
  const planned = (scope?: "whole") =>
    editor.connection.sendRequest<PlanResult>("scantling/plan", { uri, seconds: 0, keepBest: false, scope });
  expect((await planned())?.document.sheets.flatMap((sheet) => sheet.placed)).toHaveLength(4);
  expect((await planned("whole"))?.document.sheets.flatMap((sheet) => sheet.placed)).toHaveLength(16);
  editor.change(uri, `${sawn}cut {\n  part side 16\n}\n`, 3);
  const done = await ask({ parts });
  expect(done.sections[0]?.notes).toEqual(["Everything is cut: nothing is left to plan."]);
  expect(done.sections[0]?.plan?.drawing).toBeNull();
  expect(done.search.state).toBe("finished");
});

test("papers are made as they are asked for; without what writes PDF those are refused by name", async () => {
  const { editor } = await opened(fits);
  const ask = (kinds: readonly string[]) =>
    editor.connection.sendRequest<PapersResult>("scantling/papers", { uri, kinds });
  const made = await ask(["packet", "labels-a4", "svg", "csv", "json"]);
  expect(made?.refused).toEqual(["packet", "labels-a4"]);
  const names = made?.files.map(({ name }) => name) ?? [];
  expect(names.filter((name) => name.endsWith(".svg")).length).toBeGreaterThan(2);
  expect(names.some((name) => name.includes("plan-ply-1"))).toBe(true);
  expect(names.slice(-2)).toEqual(["job.cutlist.csv", "job.list.json"]);
  expect(JSON.stringify(made)).not.toContain("file:///");
  expect((await ask(["song"]))?.files).toEqual([]);
});

test("papers in PDF come whole; called off, there are none", async () => {
  const bytes = Uint8Array.from({ length: 70_000 }, (_, index) => index % 256);
  const editor = await inProcess({
    pdfPapers: async function* (desk, kinds, { onPage, isCancelled }) {
      for (const kind of kinds) {
        onPage(0, 2);
        await new Promise((go) => setTimeout(go, 20));
        if (isCancelled()) return;
        yield { kind, name: `${desk.batches.length} ${kind}.pdf`, content: bytes };
      }
    },
  });
  editor.open(uri, fits);
  const reports: unknown[] = [];
  editor.connection.onNotification("$/progress", (params) => void reports.push(params));
  const params = { uri, kinds: ["packet", "labels-a4"], workDoneToken: "papers-1" };
  const made = await editor.connection.sendRequest<PapersResult>("scantling/papers", params);
  expect(made?.files.map(({ name }) => name)).toEqual(["1 packet.pdf", "1 labels-a4.pdf"]);
  const [first] = made?.files ?? [];
  expect(first !== undefined && "base64" in first && Buffer.from(first.base64, "base64").equals(bytes)).toBe(true);
  expect(JSON.stringify(reports)).toContain("page 1 of 2");
  const source = new CancellationTokenSource();
  const refused = editor.connection.sendRequest("scantling/papers", params, source.token);
  source.cancel();
  await expect(refused).rejects.toThrow("called off");
});

test("a search that fails ends with a word of it in the log, and the server goes on", async () => {
  const workspace = createWorkspace({ root: undefined });
  workspace.set(uri, job);
  const build = workspace.build(uri);
  const plans = createJobPlans();
  const failing: JobPlan = {
    ...plans.of(build, "whole"),
    isFinished: () => false,
    advance: () => {
      throw new Error("a packer slipped");
    },
  };
  const errors: string[] = [];
  let ask: ((params: BenchParams) => Promise<BenchAnswer | null>) | undefined;
  const server = {
    connection: {
      console: { error: (text: string) => errors.push(text) },
      onRequest: (_: string, handler: typeof ask) => {
        ask = handler;
      },
      sendNotification: () => Promise.resolve(),
    },
    session: { settled: async () => build, onClosed: () => undefined, addressOf: (one: string) => one },
    plans: { of: () => failing },
  } as unknown as Server;
  bench.register(server);
  const params = { uri, parts: ["plan"], seconds: 5 } as const satisfies BenchParams;
  expect((await ask!(params))?.search.state).toBe("searching");
  await vi.waitFor(() => expect(errors.join()).toContain("a packer slipped"));
  expect((await ask!({ ...params, seconds: 0 }))?.search.state).toBe("halted");
});
