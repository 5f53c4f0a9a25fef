/** What of other people's is in what users run, and under which licences: read off the lockfile and the packages. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Licences that ask for no more than that their text goes along. */
export const plainLicences = [
  "MIT",
  "ISC",
  "Apache-2.0",
  "BlueOak-1.0.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "0BSD",
  "MIT AND OFL-1.1",
];

/** Licences that a package states in its own licence text and not in its manifest, as read there. */
const readInText = { "png-js": "MIT" };

/**
 * Every package that is not only for development, near or far, by name and version: `{ name, version, licence, path,
 * hasInstallScript, text }`; `text` is its licence's, and those of its typeface, undefined where it brings none.
 */
export function runtimePackages() {
  const { packages } = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8"));
  return Object.entries(packages)
    .filter(([path, { dev, devOptional }]) => path !== "" && dev !== true && devOptional !== true)
    .map(([path, { version, license, hasInstallScript }]) => {
      const name = path.slice(path.lastIndexOf("node_modules/") + "node_modules/".length);
      const licence = license ?? readInText[name];
      return { name, version, licence, path, hasInstallScript: hasInstallScript === true, text: textOf(path) };
    })
    .sort((a, b) => (a.name < b.name ? -1 : b.name < a.name ? 1 : a.version < b.version ? -1 : 1));
}

function textOf(path) {
  const folder = join(root, path);
  if (!existsSync(folder)) return undefined;
  const names = readdirSync(folder).filter((name) => /^(licen[cs]e|copying|notice)/i.test(name));
  const texts = names.sort().map((name) => readFileSync(join(folder, name), "utf8").replaceAll("\r\n", "\n").trim());
  return texts.length === 0 ? undefined : [...new Set(texts)].join("\n\n");
}

/** THIRD-PARTY.md: a table, and each licence text once with the packages that are under it. */
export function thirdPartyText() {
  const all = runtimePackages();
  const byText = new Map();
  for (const one of all) {
    const text = one.text ?? `(${one.name} brings no licence text of its own; its manifest says ${one.licence}.)`;
    byText.set(text, [...(byText.get(text) ?? []), `${one.name} ${one.version}`]);
  }
  const rows = all.map(({ name, version, licence }) => `| ${name} | ${version} | ${licence} |`);
  const texts = [...byText].map(([text, names]) => {
    const fence = text.includes("```") ? "~~~~" : "```";
    return `## ${names.join(", ")}\n\n${fence}\n${text}\n${fence}\n`;
  });
  return `# Third-party software

What users of Scantling run holds these packages, whole or in part. Made by \`node scripts/write-third-party.mjs\`; a test holds it fresh.

| package | version | licence |
|---|---|---|
${rows.join("\n")}

${texts.join("\n")}`;
}
