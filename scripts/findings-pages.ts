import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Finding } from "../language/core/finding.ts";
import type { CatalogueRow } from "../language/fit/catalogue/row.ts";
import { catalogue, catalogueGroups, pageName } from "../language/fit/catalogue.ts";
import { findingsOf, parseFixture } from "../tests/support/carets.ts";

const fixtures = fileURLToPath(new URL("../tests/fixtures/findings/", import.meta.url));

/** What no build file of a sensible size can show, in the words of the code that makes it. */
const withoutExample: Readonly<Record<string, { readonly why: string; readonly does: string }>> = {
  "tool/check-failed": {
    why: "This is a fault of the tool, not of the file; all other checks were made.",
    does: "Please report it with the file.",
  },
  "syntax/too-long": {
    why: "A longer file is not read, so that the editor stays quick.",
    does: 'Move cases into files of their own and use them: use "file.scant".',
  },
  "syntax/too-much": {
    why: "All else is set aside, so that the editor stays quick whatever a file holds.",
    does: "Move cases into files of their own and use them.",
  },
  "length/too-many-digits": {
    why: "No tape and no calliper reads so finely; exact arithmetic with ever more digits would stop the editor.",
    does: "Check the number.",
  },
  "length/too-far": {
    why: "No drawing takes a size through so many names; following them without end would stop the editor.",
    does: "Write one of the lengths on the way as a number.",
  },
  "use/too-many": {
    why: "Files are read each time one of them changes; so many would make the editor slow.",
    does: "Put files together.",
  },
  "length/broken": {
    why: "Half a line is reported where it breaks off; a length that hangs on it stays silent until the line is finished.",
    does: "Finish the line.",
  },
};

/** All pages of the findings, by file name: one for each code, the index and the shop that the examples use. */
export function findingPages(): ReadonlyMap<string, string> {
  const shop = readFileSync(`${fixtures}shop.scant`, "utf8");
  const pages = Object.entries(catalogue).map(([code, row]): [string, string] => [
    pageName(code),
    page(code, row, shop),
  ]);
  return new Map([["README.md", index(shop)], ...pages]);
}

function page(code: string, row: CatalogueRow, shop: string): string {
  const path = `${fixtures}${code}.scant`;
  const text = existsSync(path) ? readFileSync(path, "utf8") : undefined;
  const found =
    text === undefined ? undefined : findingsOf(parseFixture(code, text, shop).files).find((one) => one.code === code);
  const words = found === undefined ? withoutExample[code] : { why: found.reason, does: found.remedy };
  return [
    `# ${row.title}`,
    `\`${code}\` · ${row.severity}${row.or === undefined ? "" : ` or ${row.or}`}`,
    row.means,
    ...(found === undefined ? [] : ["## What it says", `> ${escaped(found.message)}`]),
    "## Why",
    escaped(words?.why ?? row.means),
    "## What to do",
    escaped(words?.does ?? ""),
    ...fixesOf(found),
    ...(text === undefined
      ? []
      : [
          "## An example",
          "What has the finding is marked by carets; the line marked `// fine` has not.",
          `\`\`\`scant\n${example(text)}\n\`\`\``,
        ]),
    ...(text?.includes('use "shop.scant"')
      ? ["The stocks and slides that it uses stand in the [index](README.md#the-shop-of-the-examples)."]
      : []),
    "## Source",
    row.source ?? "Geometry, or the language itself: no published value decides it.",
    "## When it is meant",
    silenced(code),
  ]
    .join("\n\n")
    .concat("\n");
}

function fixesOf(found: Finding | undefined): readonly string[] {
  if (found === undefined || found.fixes.length === 0) return [];
  const lines = found.fixes.map(
    (fix) => `- ${escaped(fix.title)}${fix.safe ? " (safe: may be applied with all others)" : ""}`,
  );
  return [`The editor offers:\n\n${lines.join("\n")}`];
}

function silenced(code: string): string {
  if (code.startsWith("syntax/")) return "It cannot be allowed: what cannot be read cannot be built.";
  return `Write \`allow ${code} "the reason"\` inside the block, or at the top of the file for all of it.`;
}

function example(text: string): string {
  return text
    .split("\n")
    .filter((line) => !/^\s*\/\/ besides: /.test(line))
    .join("\n")
    .trimEnd();
}

function index(shop: string): string {
  const groups = catalogueGroups.map(({ title, rows }) => {
    const lines = Object.entries(rows).map(
      ([code, row]) => `| [\`${code}\`](${pageName(code)}) | ${row.severity} | ${row.title} |`,
    );
    return `## ${title}\n\n| code | | |\n|---|---|---|\n${lines.join("\n")}`;
  });
  return [
    "# Findings",
    "What the tool can find wrong with a build file, or worth knowing. Errors can't be built or won't work; warnings will bind, sag, split or show; hints are worth knowing. The tool certifies nothing: the machine's manual, local codes and licensed practice go before it.",
    ...groups,
    "## The shop of the examples",
    `\`\`\`scant\n${shop.trimEnd()}\n\`\`\``,
  ]
    .join("\n\n")
    .concat("\n");
}

/** Messages name things as they are written; signs that mean something in markdown are shown as they are. */
function escaped(text: string): string {
  return text.replace(/[\\`*_<>[\]]/g, (sign) => `\\${sign}`);
}
