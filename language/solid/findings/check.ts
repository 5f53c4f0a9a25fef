import type { Finding } from "../../core/finding.ts";
import type { Context } from "../../derive/context.ts";
import type { DryFit } from "../dry-fit.ts";

/** One thing that the dry fit can show. Each has a file of its own. */
export interface DryFitCheck {
  /** The codes that it may give. */
  readonly codes: readonly string[];
  readonly run: (context: Context, fit: DryFit) => readonly Finding[];
}
