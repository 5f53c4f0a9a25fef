import type { Finding } from "../../core/finding.ts";
import { zero } from "../../core/rational.ts";
import { startOfFile } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import type { Model } from "../../derive/model.ts";
import type { DryFit } from "../../solid/dry-fit.ts";
import { type AsCut, asCut } from "../as-cut.ts";
import { type Rescue, rescueOf } from "../rescue.ts";
import { judgedFindings } from "./judged.ts";
import { offcutFindings } from "./offcuts.ts";
import { savedText } from "./saved.ts";
import { spoiledFindings } from "./spoiled.ts";
import { surplusFindings } from "./surplus.ts";

/** What is on the bench, what of it can be saved for this file's own parts, and all that is to be said of it. */
export interface Benched {
  readonly made: AsCut;
  readonly rescue: Rescue;
  readonly findings: readonly Finding[];
}

const noRescue: Rescue = { given: [], saved: [], waste: [], recut: [], area: zero, most: zero };

/** Counts what is on the bench. Where the tool fails, nothing is taken as made, and a finding says so. */
export function benched(context: Context, model: Model, fit: DryFit | undefined): Benched {
  try {
    const made = asCut(context, model, fit);
    if (!made.isBegun) return { made, rescue: noRescue, findings: [] };
    const rescue = rescueOf([{ title: "", context, model, made }]);
    const saved = savedText(context, rescue);
    const findings = [
      ...made.findings,
      ...judgedFindings(context, made, saved),
      ...spoiledFindings(context, made, saved),
      ...surplusFindings(made, saved),
      ...offcutFindings(context, model),
    ];
    return { made, rescue, findings };
  } catch (error) {
    const none = { ...context, design: { ...context.design, cuts: [], brokenDown: [], usedOffcuts: [] } };
    return { made: asCut(none, model, fit), rescue: noRescue, findings: [failed(context, error)] };
  }
}

function failed(context: Context, error: unknown): Finding {
  return {
    code: "tool/check-failed",
    severity: "hint",
    span: startOfFile(context.design.uri),
    message: `what is cut could not be counted: ${error instanceof Error ? error.message : String(error)}`,
    reason: "This is a fault of the tool, not of the file; all else was worked out.",
    remedy: "Please report it with the file.",
    related: [],
    fixes: [],
  };
}
