import type { PlanLine } from "../../../../language/view/bench.ts";
import type { PlanScope, PlanView, SearchState } from "../../messages.ts";
import { el, type Kept, keepChildren, setText } from "../dom.ts";
import type { SectionHost } from "../section.ts";
import { createViewer } from "../viewer.ts";

/** What the cutting plan shows besides its sentences: sheets drawn, the search, cuts in order, what is worth keeping. */
export interface PlanPart {
  readonly element: HTMLElement;
  update(plan: PlanView): void;
  searched(search: SearchState): void;
  /** Of what the plan is; `undefined` where there is nothing to choose. */
  planned(scope: PlanScope | undefined): void;
  /** The drawing looked at, by its id. */
  sheet(): string;
  /** Of what the user wants the plan to be; `undefined` while that was not chosen. */
  scope(): PlanScope | undefined;
}

/** `choose` is told when the user looks at another sheet, or wants the plan of something else. */
export function createPlanPart(host: SectionHost, start: PlanScope | undefined, choose: () => void): PlanPart {
  const scope = createScope(start, choose);
  const viewer = createViewer(host, { label: "Sheet or board", on: "plan", start: "", choose });
  const search = createSearch(host);
  const steps = el("ol", { class: "steps" });
  const keepSteps = keepChildren<PlanLine>(steps, ({ number }) => String(number), createStep);
  const stepsTitle = el("h3", { class: "stock" }, "Cuts, in order");
  const lines = el("pre", { tabindex: "0", "aria-label": "Offcuts worth keeping, as lines of a build file" });
  const write = el("button", { type: "button" }, "Keep the Offcuts…");
  const kept = el("div", {}, el("h3", { class: "stock" }, "Worth keeping"), lines, write);
  const element = el("div", {}, scope.element, search.element, viewer.element, stepsTitle, steps, kept);
  write.addEventListener("click", () => host.keep());
  return {
    element,
    sheet: viewer.chosen,
    scope: scope.chosen,
    planned: scope.show,
    searched: search.update,
    update: (plan) => {
      viewer.show(plan.titles, plan.drawing);
      keepSteps(plan.steps);
      for (const each of [stepsTitle, steps]) each.hidden = plan.steps.length === 0;
      setText(lines, plan.keep.join("\n"));
      kept.hidden = plan.keep.length === 0;
    },
  };
}

/** The choice between the whole job and what is left of it; there is none before something is recorded as cut. */
function createScope(start: PlanScope | undefined, choose: () => void) {
  const option = (value: PlanScope) => el("option", { value }, SCOPES[value]);
  const choice = el("select", { id: "plan-scope" }, option("left"), option("whole"));
  const label = el("label", { for: "plan-scope" }, "Plan for");
  const element = el("p", { class: "plan-scope" }, label, choice);
  let chosen = start;
  element.hidden = true;
  choice.addEventListener("change", () => {
    chosen = choice.value === "whole" ? "whole" : "left";
    choose();
  });
  return {
    element,
    chosen: () => chosen,
    show: (scope: PlanScope | undefined) => {
      element.hidden = scope === undefined;
      if (scope !== undefined) choice.value = scope;
    },
  };
}

const SCOPES: Readonly<Record<PlanScope, string>> = { left: "what is left to cut", whole: "the whole job" };

function createStep(): Kept<PlanLine> {
  const element = el("li");
  return {
    element,
    update: ({ text, heavy }) => {
      setText(element, text);
      element.classList.toggle("heavy-step", heavy);
    },
  };
}

/** A quiet line: that it is being searched, how far, and a button to leave it or go on. Only its end is said aloud. */
function createSearch(host: SectionHost) {
  const words = el("span");
  const bar = el("progress", { max: "100", "aria-label": "Search for a better plan" });
  const button = el("button", { type: "button" });
  const element = el("p", { class: "search" }, bar, words, " ", button);
  let state: SearchState["state"] | undefined;
  element.hidden = true;
  button.addEventListener("click", () => host.search(state === "searching" ? "stop" : "on"));
  return {
    element,
    update: (now: SearchState) => {
      const text = SAID[now.state];
      element.hidden = false;
      bar.hidden = now.state !== "searching";
      bar.value = now.percent;
      setText(words, text);
      setText(button, now.state === "searching" ? "Stop" : "Search on");
      button.hidden = now.state === "finished";
      if (state === "searching" && now.state !== "searching") host.announce(text);
      state = now.state;
    },
  };
}

const SAID: Readonly<Record<SearchState["state"], string>> = {
  searching: "Searching for a better plan.",
  finished: "Nothing better is left to find.",
  halted: "This is the best plan found in the time given.",
};
