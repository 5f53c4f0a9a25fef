import { fileURLToPath } from "node:url";

/** Where pictures and evidence go: SCANTLING_EDITOR_OUT, or a folder in the checkout that git ignores. Emptied by each run. */
export const outFolder: string =
  process.env.SCANTLING_EDITOR_OUT ?? fileURLToPath(new URL("../../.cache/editor-tests", import.meta.url));
