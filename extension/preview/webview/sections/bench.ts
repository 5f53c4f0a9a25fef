import type { BenchTable } from "../../../../language/view/bench.ts";
import { BENCH_PARTS } from "../../bench-messages.ts";
import type { BenchAnswer, BenchPart, BenchSection, PlanScope, SearchState } from "../../messages.ts";
import { el, keepChildren, setText } from "../dom.ts";
import type { Section, SectionHost } from "../section.ts";
import { createPlanPart } from "./plan-part.ts";
import { createTable } from "./tables.ts";

/** Cutting plan, buying list, settings, story sticks and dry fit: each closed, and not made, until it is wanted. */
export interface Bench extends Section {
  show(answer: BenchAnswer): void;
  searched(search: SearchState): void;
  /** Opens a part and brings it into view. */
  open(part: BenchPart): void;
}

const TITLES: Readonly<Record<BenchPart, string>> = {
  plan: "Cutting plan",
  buying: "Buying list",
  settings: "Settings",
  sticks: "Story sticks",
  fit: "Dry fit",
};

/** What was open, the row that had the focus, and of what the plan was to be. */
export interface BenchStart {
  readonly parts: readonly BenchPart[];
  readonly row: string;
  readonly scope: PlanScope | undefined;
}

/** Begins where it was left. */
export function createBench(host: SectionHost, start: BenchStart): Bench {
  const parts = BENCH_PARTS.map((id) => ({ id, ...createPart(id, host, start, tell) }));
  const element = el("div", {}, ...parts.map((part) => part.element));
  element.hidden = true;

  function tell(): void {
    const open = parts.filter(({ fold }) => fold.open).map(({ id }) => id);
    const plan = parts[0]?.plan;
    host.bench(open, plan?.sheet() ?? "", plan?.scope());
  }

  for (const { id, fold } of parts) {
    fold.open = start.parts.includes(id);
    fold.addEventListener("toggle", tell);
  }
  return {
    element,
    update: (view) => {
      element.hidden = view.pieces === 0;
    },
    hide: () => {
      element.hidden = true;
    },
    show: ({ sections, search, scope }) => {
      parts[0]?.plan?.planned(scope);
      for (const section of sections) parts.find(({ id }) => id === section.id)?.update(section);
      parts[0]?.plan?.searched(search);
    },
    searched: (search) => parts[0]?.plan?.searched(search),
    open: (wanted) => {
      const part = parts.find(({ id }) => id === wanted);
      if (part === undefined) return;
      part.fold.open = true;
      part.element.scrollIntoView({ block: "start" });
    },
  };
}

function createPart(id: BenchPart, host: SectionHost, start: BenchStart, choose: () => void) {
  const title = el("span", { class: "fold-title", role: "heading", "aria-level": "2" }, TITLES[id]);
  const wait = el("p", { class: "stock-note" }, "Being worked out.");
  const notes = el("ul", { class: "said", "aria-label": TITLES[id] });
  const tables = el("div");
  const cautions = el("ul", { class: "cautions", "aria-label": "Cautions" });
  const plan = id === "plan" ? createPlanPart(host, start.scope, choose) : undefined;
  const body = el("div", {}, notes, ...(plan === undefined ? [] : [plan.element]), tables, cautions);
  const fold = el("details", { class: "part", id: `part-${id}` }, el("summary", {}, title), wait, body);
  const keepNotes = keepChildren<string>(notes, (text) => text, createItem);
  const keepCautions = keepChildren<string>(cautions, (text) => text, createItem);
  const keepTables = keepChildren<BenchTable>(
    tables,
    (table) => table.id,
    (table) => createTable(table.id, host, start.row, "h3"),
  );
  body.hidden = true;
  return {
    element: el("section", { class: "further", "aria-label": TITLES[id] }, fold),
    fold,
    plan,
    update: (section: BenchSection) => {
      wait.hidden = true;
      body.hidden = false;
      keepNotes(section.notes);
      notes.hidden = section.notes.length === 0;
      keepTables(section.tables.filter((table) => 0 < table.rows.length));
      keepCautions(section.cautions);
      cautions.hidden = section.cautions.length === 0;
      if (section.plan !== undefined) plan?.update(section.plan);
    },
  };
}

function createItem() {
  const element = el("li");
  return { element, update: (text: string) => setText(element, text) };
}
