import { readFileSync } from "node:fs";
import type { Desk } from "../../../language/draw/desk.ts";
import { deskFor } from "../../../language/draw/drawing-view.ts";
import type { Build } from "../../../language/service.ts";
import { createWorkspace } from "../../../language/service.ts";

/** The build of one of the examples, with the files that it uses. */
export function exampleBuild(name: string): Build {
  const uri = new URL(`../../../examples/${name}`, import.meta.url);
  return buildOf(readFileSync(uri, "utf8"), uri.href);
}

/** The build of a text that stands where the examples stand. */
export function buildOf(text: string, uri = new URL("../../../examples/made-up.scant", import.meta.url).href): Build {
  const workspace = createWorkspace({ root: undefined });
  workspace.set(uri, text);
  for (const used of workspace.missing(uri)) workspace.set(used, readFileSync(new URL(used), "utf8"));
  return workspace.build(uri);
}

export function deskOf({ derivation }: Build): Desk {
  return deskFor(derivation.context, derivation.model);
}

export const examples = ["print-room.scant", "seed-store.scant", "sewing-room.scant"] as const;
