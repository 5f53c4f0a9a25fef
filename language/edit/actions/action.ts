import type { Edit } from "../../core/finding.ts";
import type { Scene } from "../scene.ts";

/** A change of the text that someone may want at a place, whole: nothing needs to be filled in afterwards. */
export interface Action {
  readonly title: string;
  readonly kind: "extract" | "inline" | "rewrite";
  readonly edits: readonly Edit[];
}

/** Where a change is looked for: a selection of the scene's file, of no length for a cursor. */
export interface Asked {
  readonly scene: Scene;
  readonly start: number;
  readonly end: number;
  /** The text of a file that the scene's own uses. */
  readonly textOf: (uri: string) => string | undefined;
}

/** Finds what can be done at a place; nothing where it would not be exactly the same piece of furniture afterwards. */
export type Offer = (asked: Asked) => readonly Action[];
