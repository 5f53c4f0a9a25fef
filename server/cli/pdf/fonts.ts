import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

/** The embedded typeface, Source Sans 3 under the SIL Open Font License 1.1. */
const files = {
  regular: "400Regular/SourceSans3_400Regular.ttf",
  bold: "600SemiBold/SourceSans3_600SemiBold.ttf",
} as const;

export type Face = keyof typeof files;

/** The bytes of a face: from beside the bundle where there is one, else from the package that brings it. */
export function fontBytes(face: Face): Buffer {
  const name = files[face].slice(files[face].indexOf("/") + 1);
  const beside = typeof __dirname === "string" ? join(__dirname, "fonts", name) : undefined;
  if (beside !== undefined && existsSync(beside)) return readFileSync(beside);
  const here = typeof __filename === "string" ? __filename : import.meta.url;
  return readFileSync(createRequire(here).resolve(`@expo-google-fonts/source-sans-3/${files[face]}`));
}
