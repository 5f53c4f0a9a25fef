import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import manifest from "../package.json" with { type: "json" };
import { plainLicences, runtimePackages, thirdPartyText } from "../scripts/third-party.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const read = (path: string): string => readFileSync(join(root, path), "utf8");

describe("what is other people's in what users run", () => {
  const all = runtimePackages();

  test("each package that is asked for by name has its reason in DEVELOPERS.md", () => {
    const [, table = ""] = /\| runtime dependency \| why \|\n((?:\|.*\n)+)/.exec(read("DEVELOPERS.md")) ?? [];
    const rows = table.split("\n").map((row) => row.split("|")[1]?.trim() ?? "");
    // `vscode-languageserver, -protocol` names two.
    const named = rows.flatMap((cell) =>
      cell.split(/,\s*/).map((name, index, cells) => (name.startsWith("-") && 0 < index ? cells[0] + name : name)),
    );
    expect(Object.keys(manifest.dependencies).filter((name) => !named.includes(name))).toEqual([]);
  });

  test("is few packages, all under licences that ask for no more than to be passed on", () => {
    expect(all.length).toBeGreaterThan(10);
    expect(all.length).toBeLessThanOrEqual(45);
    expect(all.filter(({ licence }) => licence === undefined || !plainLicences.includes(licence))).toEqual([]);
  });

  test("is listed with its licences, and the list goes along in the package", () => {
    expect(read("THIRD-PARTY.md") === thirdPartyText(), "node scripts/write-third-party.mjs").toBe(true);
    expect(read(".vscodeignore").split("\n")).toContain("!THIRD-PARTY.md");
  });

  test("runs nothing when it is installed", () => {
    expect(all.filter(({ hasInstallScript }) => hasInstallScript).map(({ name }) => name)).toEqual([]);
    const hooks = ["preinstall", "install", "postinstall", "prepare", "vscode:uninstall"];
    expect(hooks.filter((hook) => hook in manifest.scripts)).toEqual([]);
  });

  test("reads nothing from outside: every package comes from the lockfile, with its hash", () => {
    const { packages } = JSON.parse(read("package-lock.json")) as {
      packages: Record<string, { integrity?: string; link?: boolean; inBundle?: boolean }>;
    };
    const loose = Object.entries(packages).filter(
      ([path, { integrity, inBundle }]) => path !== "" && integrity === undefined && inBundle !== true,
    );
    expect(loose.map(([path]) => path)).toEqual([]);
  });
});
