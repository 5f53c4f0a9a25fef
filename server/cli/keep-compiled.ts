import { renameSync, writeFileSync } from "node:fs";
import { compiledIn } from "./compiled.ts";

// For the build only: `node - FOLDER WORDS…` runs the program of the folder with these words, and keeps what V8 has
// compiled by then. Functions that nothing has called are compiled when they are wanted, from the text, as ever.
const [, , folder, ...words] = process.argv;
if (folder === undefined) throw new Error("no folder is named");
process.argv = [process.execPath, "scantling", ...words];
const { script, keptAt, run } = compiledIn(folder);
process.on("exit", () => {
  // Named only once it is whole.
  writeFileSync(`${keptAt}~`, script.createCachedData());
  renameSync(`${keptAt}~`, keptAt);
});
run();
