import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { findingPages } from "./findings-pages.ts";

const folder = fileURLToPath(new URL("../docs/findings/", import.meta.url));
const pages = findingPages();
mkdirSync(folder, { recursive: true });
for (const name of readdirSync(folder)) if (name.endsWith(".md") && !pages.has(name)) rmSync(`${folder}${name}`);
for (const [name, text] of pages) writeFileSync(`${folder}${name}`, text);
