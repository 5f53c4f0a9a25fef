// npm run demo: builds the program, checks and lists an example, writes its cut list, and says what it did.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const example = "examples/print-room.scant";

step("Building the command line, the server and the extension");
run(["esbuild.mjs"], "ignore");

step(`Checking ${example}`);
run(["dist/scantling.cjs", "check", example]);

step(`Its parts, as the terminal shows them (the first lines)`);
const list = spawnSync(process.execPath, ["dist/scantling.cjs", "list", example], { cwd: root, encoding: "utf8" });
const lines = list.stdout.trimEnd().split("\n");
console.log([...lines.slice(0, 24), `… and ${Math.max(0, lines.length - 24)} more lines`].join("\n"));
if (list.status !== 0) process.exit(list.status ?? 1);

step("Writing its cut list");
run(["dist/scantling.cjs", "list", example, "-o", "examples"]);

console.log(`
Done. What to do next:
  npm run editor     a real VS Code in your browser, with the extension and these examples
  npm run package    scantling.vsix; in your own VS Code: Extensions, … menu, Install from VSIX
                     then open examples/print-room.scant and run "Scantling: Open the Rod"
  npm test           the whole test suite`);

function step(text) {
  console.log(`\n── ${text}`);
}

/** @param {string[]} args @param {"inherit" | "ignore"} output */
function run(args, output = "inherit") {
  const done = spawnSync(process.execPath, args, { cwd: root, stdio: ["ignore", output, "inherit"] });
  if (done.status !== 0) process.exit(done.status ?? 1);
}
