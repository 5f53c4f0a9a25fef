// npm run reference: writes the made sections of docs/language.md from the vocabulary and the defaults.
import { readFileSync, writeFileSync } from "node:fs";
import { withSections } from "../language/view/reference.ts";

const file = new URL("../docs/language.md", import.meta.url);
const before = readFileSync(file, "utf8");
const after = withSections(before);
if (before !== after) writeFileSync(file, after);
console.log(before === after ? "docs/language.md is current" : "docs/language.md written");
