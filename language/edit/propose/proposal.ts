import type { Scene } from "../scene.ts";
import type { Spot } from "../spot.ts";

/** What is proposed is: a word of the language, or the name or size of something. */
export type ProposalKind =
  | "statement"
  | "property"
  | "choice"
  | "stock"
  | "hardware"
  | "opening"
  | "case"
  | "part"
  | "length"
  | "size"
  | "code"
  | "file";

/** Something that could be written at a place. */
export interface Proposal {
  readonly label: string;
  readonly kind: ProposalKind;
  /** A few words beside it: the form, the size, why it suits or does not. */
  readonly detail: string;
  /** What it means and where its numbers come from, in Markdown; made when it is asked for. */
  readonly about: () => string;
  readonly text: string;
  /** The same with gaps to fill in; `undefined` where there are none. */
  readonly snippet: string | undefined;
  /** Lower ones first; equal ones by their order. */
  readonly rank: number;
}

/** Where something is proposed, and what is known there. */
export interface Place {
  readonly scene: Scene;
  readonly spot: Spot;
}

/** Ranks of what is proposed at one place together. */
export const ranks = { best: 0, suits: 10, plain: 20, unsuited: 30, word: 40, fresh: 50, statement: 60 } as const;

/** A name as a proposal. */
export function named(
  label: string,
  kind: ProposalKind,
  more: Partial<Omit<Proposal, "label" | "kind">> = {},
): Proposal {
  return { label, kind, detail: "", about: () => "", text: label, snippet: undefined, rank: ranks.plain, ...more };
}
