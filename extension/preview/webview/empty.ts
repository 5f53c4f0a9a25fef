import { FIRST_BUILD_FILE } from "../first-build-file.ts";
import { el } from "./dom.ts";

/** What stands on the page while there is nothing to show: how to begin. */
export function createEmpty(): HTMLElement {
  return el(
    "section",
    { class: "empty", "aria-labelledby": "empty-title" },
    el("h2", { id: "empty-title" }, "Nothing is set out yet"),
    el("p", {}, "State an opening, the stock, and what goes into the opening. The parts appear here as you write."),
    el("p", {}, "This much makes a drawer, in a file that ends in ", el("code", {}, ".scant"), ":"),
    el("pre", { tabindex: "0", "aria-label": "A build file to begin with" }, FIRST_BUILD_FILE),
  );
}
