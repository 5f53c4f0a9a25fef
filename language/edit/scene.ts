import type { Design } from "../core/design.ts";
import type { Reading } from "../core/length.ts";
import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import type { DryFit } from "../solid/dry-fit.ts";
import type { NameIndex } from "./names.ts";
import { nameIndex } from "./names.ts";
import type { Outline } from "./outline.ts";
import { outlineOf } from "./outline.ts";

/** A file as an editor asks about it: its text, what was derived from it, and where each name stands. */
export interface Scene {
  readonly uri: string;
  readonly text: string;
  /** Worked out when first asked for, as is `names`. */
  readonly outline: Outline;
  /** The file's own and those that it uses. */
  readonly designs: readonly Design[];
  readonly names: NameIndex;
  readonly context: Context;
  readonly model: Model;
  readonly reading: Reading;
  /** The piece put together, where that has been done already: it is too dear to do for a question. */
  readonly fit: DryFit | undefined;
}

export interface SceneParts {
  readonly uri: string;
  readonly text: string;
  readonly designs: readonly Design[];
  readonly context: Context;
  readonly model: Model;
  readonly fit: DryFit | undefined;
}

/** What the questions of an editor are answered from. */
export function sceneOf(parts: SceneParts): Scene {
  let outline: Outline | undefined;
  let names: NameIndex | undefined;
  return {
    ...parts,
    reading: parts.context.reading,
    get outline() {
      outline ??= outlineOf(parts.text);
      return outline;
    },
    get names() {
      names ??= nameIndex(parts.designs);
      return names;
    },
  };
}
