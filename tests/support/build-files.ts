import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";

export interface BuildFile {
  /** Its path from the root of the project. */
  readonly name: string;
  readonly text: string;
}

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Every build file that is committed: examples, starting points and fixtures. */
export function buildFiles(): readonly BuildFile[] {
  return ["examples", "extension/starts", "tests/fixtures"].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name.endsWith(".scant"))
      .map((entry) => join(entry.parentPath, entry.name))
      .sort()
      .map((path) => ({ name: relative(root, path).replaceAll("\\", "/"), text: readFileSync(path, "utf8") })),
  );
}
