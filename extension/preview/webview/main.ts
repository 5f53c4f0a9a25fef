import "./style.css";
import { readHostMessage, readSavedState } from "../messages.ts";
import { createPage } from "./page.ts";

interface EditorApi {
  postMessage(message: unknown): void;
  getState(): unknown;
  setState(state: unknown): void;
}

declare function acquireVsCodeApi(): EditorApi;

const SCROLL_REST_MS = 200;

const api = acquireVsCodeApi();
const root = document.getElementById("rod");
if (root !== null) start(root);

function start(element: HTMLElement): void {
  const saved = readSavedState(api.getState());
  const clock = { now: () => performance.now(), later: (task: () => void, ms: number) => void setTimeout(task, ms) };
  const page = createPage(
    element,
    { post: (m) => api.postMessage(m), save: (state) => api.setState(state), clock },
    saved,
  );

  let unscrolled = saved !== undefined;
  window.addEventListener("message", (event: MessageEvent<unknown>) => {
    const message = readHostMessage(event.data);
    if (message === undefined) return;
    page.receive(message);
    if (unscrolled && message.type === "show") {
      unscrolled = false;
      if (message.view.uri === saved?.uri) window.scrollTo(0, saved.scroll);
    }
  });
  let rest = 0;
  window.addEventListener("scroll", () => {
    window.clearTimeout(rest);
    rest = window.setTimeout(() => page.scrolledTo(window.scrollY), SCROLL_REST_MS);
  });
  api.postMessage({ type: "ready" });
}
