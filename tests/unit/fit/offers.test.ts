import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import type { Finding } from "../../../language/core/finding.ts";
import type { Span } from "../../../language/core/span.ts";
import { type Fixture, findingsOf, fixtureFiles, fixtureRoot, parseFixture } from "../../support/carets.ts";

/**
 * What each fixture's finding points to besides its own word, and what it offers, best first, as a maker sees it:
 *
 *     slide/too-long
 *       24
 *         see 23 1/2: there is this depth
 *         fix Write 22, the longest that fits
 *
 * `SCANTLING_WRITE=1` writes it anew; whoever does that reads what changed.
 */
const page = fileURLToPath(new URL("../../fixtures/offers.txt", import.meta.url));
const folder = fileURLToPath(new URL("../../fixtures/findings/", import.meta.url));
const shop = readFileSync(`${folder}shop.scant`, "utf8");

test("each finding points to what else is meant, and offers what mends it", () => {
  const made = fixtureFiles(folder)
    .map(({ name, text }) => offersOf(parseFixture(name, text, shop)))
    .filter((text) => text !== "")
    .join("\n");
  if (process.env.SCANTLING_WRITE === "1") writeFileSync(page, made);
  expect(made).toBe(readFileSync(page, "utf8"));
});

function offersOf(fixture: Fixture): string {
  const own = findingsOf(fixture.files).filter(({ code }) => code === fixture.name);
  const said = own.flatMap((finding) => linesOf(fixture, finding));
  return said.length === 0 ? "" : `${[fixture.name, ...said].join("\n")}\n`;
}

function linesOf(fixture: Fixture, { span, related, fixes }: Finding): readonly string[] {
  const lines = [
    ...related.map((one) => `    see ${wordsAt(fixture, one.span)}: ${one.message}`),
    ...fixes.map((fix) => `    fix ${fix.title}`),
  ];
  return lines.length === 0 ? [] : [`  ${wordsAt(fixture, span)}`, ...lines];
}

function wordsAt({ files }: Fixture, { uri, start, end }: Span): string {
  const text = files.get(uri.slice(fixtureRoot.length + 1)) ?? "";
  const words = text.slice(start, end).replace(/\s+/g, " ");
  return words.length <= 40 ? words : `${words.slice(0, 30)} ... ${words.slice(-6)}`;
}
