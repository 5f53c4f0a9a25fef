import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const folder = fileURLToPath(new URL("../extension", import.meta.url));

/** Where the texts that the extension's code shows are kept for translators. */
export const bundlePath: string = fileURLToPath(new URL("../l10n/bundle.l10n.json", import.meta.url));

/** The bundle as it should be: every text given to `t`, in the order of the alphabet, standing for itself. */
export function bundleText(): string {
  const messages = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts") && !name.startsWith(join("preview", "webview")))
    .flatMap((name) => messagesIn(readFileSync(join(folder, name), "utf8")));
  const sorted = [...new Set(messages)].sort();
  return `${JSON.stringify(Object.fromEntries(sorted.map((message) => [message, message])), undefined, 2)}\n`;
}

/** The texts that a source gives to `t` or `vscode.l10n.t`; throws where something else than a text is given. */
export function messagesIn(source: string): readonly string[] {
  return [...source.matchAll(/\bt\(\s*(?=([^\s)][^\n]*))/g)].map(([, rest = ""]) => {
    const literal = /^"((?:[^"\\]|\\.)*)"/.exec(rest)?.[0];
    if (literal === undefined) throw new Error(`A translator could not find the text of t(${rest}`);
    return JSON.parse(literal) as string;
  });
}
