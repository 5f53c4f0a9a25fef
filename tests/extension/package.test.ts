import { existsSync, readFileSync } from "node:fs";
import { join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { deflateRawSync } from "node:zlib";
import { listFiles, PackageManager } from "@vscode/vsce";
import esbuild from "esbuild";
import { beforeAll, describe, expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import { papersApart } from "../../scripts/papers-apart.mjs";

const root = fileURLToPath(new URL("../..", import.meta.url));
const kB = 1024;

/** What writes PDF, with the typeface beside it; loaded only when papers are wanted. */
const PAPERS = "dist/papers.cjs";

/** Every bundle the package may hold, with the most it may weigh minified. */
const BUNDLES: readonly {
  readonly out: string;
  readonly entry: string;
  readonly node: boolean;
  readonly most: number;
}[] = [
  { out: "dist/extension.cjs", entry: "extension/main.ts", node: true, most: 600 * kB },
  { out: "dist/extension-web.cjs", entry: "extension/main-browser.ts", node: false, most: 600 * kB },
  { out: "dist/server.cjs", entry: "server/main.ts", node: true, most: 1500 * kB },
  { out: "dist/server-worker.js", entry: "server/main-browser.ts", node: false, most: 1500 * kB },
  { out: "dist/webview.js", entry: "extension/preview/webview/main.ts", node: false, most: 60 * kB },
  { out: PAPERS, entry: "server/cli/pdf/paper-files.ts", node: true, most: 1600 * kB },
];
/** The most that all of it may weigh, packed. */
const MOST = 2048 * kB;

let files: readonly string[] = [];
let bundles: ReadonlyMap<string, { readonly bytes: Uint8Array; readonly inputs: readonly string[] }>;

beforeAll(async () => {
  // Whether dist/ has been built does not matter: its files are made here, as they are for the package.
  files = (await listFiles({ cwd: root, packageManager: PackageManager.None })).map(normalize);
  const built = await Promise.all(BUNDLES.map(build));
  bundles = new Map(built);
}, 120_000);

async function build({ out, entry, node }: (typeof BUNDLES)[number]) {
  const { outputFiles, metafile } = await esbuild.build({
    absWorkingDir: root,
    entryPoints: [entry],
    outfile: out,
    bundle: true,
    minify: true,
    write: false,
    metafile: true,
    external: ["vscode"],
    platform: node ? "node" : "browser",
    format: "cjs",
    target: node ? "node22" : "es2022",
    logLevel: "silent",
    plugins: [papersApart],
  });
  const script = outputFiles.find(({ path }) => /\.c?js$/.test(path));
  if (script === undefined) throw new Error(`${entry} makes no script.`);
  return [out, { bytes: script.contents, inputs: Object.keys(metafile.inputs) }] as const;
}

describe("the package", () => {
  test("holds what is named here, and nothing else", () => {
    const kinds = [
      /^(package\.json|package\.nls\.json|README\.md|LICENSE|THIRD-PARTY\.md|CHANGELOG\.md)$/,
      /^dist\/(extension|extension-web|server|papers)\.cjs$|^dist\/fonts\/\w+(\.ttf)?$|^dist\/(server-worker|webview)\.js$|^dist\/webview\.css$/,
      /^l10n\/bundle\.l10n\.json$/,
      /^docs\/findings\/[a-z-]+\.md$|^docs\/findings\/README\.md$/,
      /^docs\/images\/[a-z-]+\.png$/,
      /^extension\/(icon\.png|language-configuration\.json|syntaxes\/scantling\.tmLanguage\.json)$/,
      /^extension\/(snippets\/scantling\.json|starts\/[a-z]+\.scant|walkthrough\/[a-z-]+\.svg)$/,
    ];
    expect(files.filter((file) => !kinds.some((kind) => kind.test(file)))).toEqual([]);
    for (const kind of kinds.filter((each) => !each.source.includes("dist"))) {
      expect(
        files.some((file) => kind.test(file)),
        String(kind),
      ).toBe(true);
    }
  });

  test("holds no command line, no tests and no maps", () => {
    expect(files.filter((file) => /scantling\.cjs|\.(map|ts)$|^tests\//.test(file))).toEqual([]);
  });

  test("holds every file that its manifest and its texts point at", () => {
    const readme = readFileSync(join(root, "README.md"), "utf8");
    const pictures = [...readme.matchAll(/!\[[^\]]*\]\(([^)]+)\)/g)].map(([, path]) => path ?? "");
    const steps = manifest.contributes.walkthroughs.flatMap((each) => each.steps.map(({ media }) => media.svg));
    for (const path of [...pictures, ...steps, manifest.icon].map(normalize)) expect(files).toContain(path);
    const entries = [manifest.main, manifest.browser].map(normalize);
    for (const path of entries) expect(BUNDLES.map(({ out }) => out)).toContain(path);
  });

  test.each(BUNDLES)("$out is no heavier than it may be", ({ out, most }) => {
    const { bytes } = bundles.get(out)!;
    expect(bytes.byteLength).toBeGreaterThan(most / 10);
    expect(bytes.byteLength).toBeLessThanOrEqual(most);
  });

  test("has one copy of the protocol in each half, and no langium in the window", () => {
    for (const { out } of BUNDLES) {
      const { inputs } = bundles.get(out)!;
      const copies = new Set(inputs.flatMap((path) => /^.*node_modules\/vscode-jsonrpc\//.exec(path)?.[0] ?? []));
      expect(copies.size, out).toBeLessThanOrEqual(1);
      if (/extension|webview/.test(out))
        expect(
          inputs.filter((path) => path.includes("/langium/")),
          out,
        ).toEqual([]);
      const writesPdf = inputs.some((path) => /\/pdfkit\//.test(path));
      expect(writesPdf, out).toBe(out === PAPERS);
    }
  });

  test("is small", () => {
    const rest = files.filter((file) => !file.startsWith("dist/") && existsSync(join(root, file)));
    const packed = [
      ...[...bundles.values()].map(({ bytes }) => bytes),
      ...rest.map((file) => readFileSync(join(root, file))),
    ]
      .map((bytes) => deflateRawSync(bytes).byteLength)
      .reduce((sum, size) => sum + size, 0);
    expect(packed).toBeGreaterThan(500 * kB);
    expect(packed).toBeLessThanOrEqual(MOST);
  });
});
