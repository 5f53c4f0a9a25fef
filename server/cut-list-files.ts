import { URI, Utils } from "vscode-uri";
import type { Build } from "../language/service.ts";
import type { TextFile } from "./protocol.ts";

export type CutListKind = "csv" | "markdown";

/** The cut list of a build in the forms asked for, each with the name that it takes beside the build file. */
export function cutListFiles(build: Build, kinds: readonly CutListKind[]): readonly TextFile[] {
  const name = Utils.basename(URI.parse(build.uri)).replace(/\.scant$/, "");
  return kinds.map((kind) =>
    kind === "csv"
      ? { name: `${name}.cutlist.csv`, text: build.csv() }
      : { name: `${name}.cutlist.md`, text: build.markdown() },
  );
}
