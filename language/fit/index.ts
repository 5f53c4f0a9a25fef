import type { Finding } from "../core/finding.ts";
import { startOfFile } from "../core/span.ts";
import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import { boxMustNotTouchBack } from "./box/too-deep.ts";
import { boxMustClearAboveAndBelow } from "./box/too-high.ts";
import { boxMustLeaveSlidesRoom } from "./box/too-wide.ts";
import type { Check } from "./check.ts";
import { slideMustNotPassBox } from "./slide/longer-than-box.ts";
import { someSlideMustFit } from "./slide/none-fits.ts";
import { slideMustBeSold } from "./slide/not-sold.ts";
import { slideTooLong } from "./slide/too-long.ts";

/** Every check, in the order in which they are run. */
export const checks: readonly Check[] = [
  slideTooLong,
  someSlideMustFit,
  slideMustBeSold,
  slideMustNotPassBox,
  boxMustLeaveSlidesRoom,
  boxMustClearAboveAndBelow,
  boxMustNotTouchBack,
];

/** What all checks find. A check that fails says so and takes no other down. */
export function runChecks(context: Context, model: Model): readonly Finding[] {
  return checks.flatMap((check) => {
    try {
      return check.run(context, model);
    } catch (error) {
      return [failed(context, check, error)];
    }
  });
}

function failed(context: Context, check: Check, error: unknown): Finding {
  return {
    code: "tool/check-failed",
    severity: "hint",
    span: startOfFile(context.design.uri),
    message: `the check for ${check.codes.join(", ")} could not be made: ${error instanceof Error ? error.message : String(error)}`,
    reason: "This is a fault of the tool, not of the file; all other checks were made.",
    remedy: "Please report it with the file.",
    related: [],
    fixes: [],
  };
}
