import type { RecordCutResult } from "../../server/protocol.ts";
import type { Translate } from "../translate.ts";

/** What to tell the user of what was written down; `failed` where not all of it was. */
export function recordedNotice(
  answer: NonNullable<RecordCutResult> | undefined,
  t: Translate,
): { readonly text: string; readonly failed: boolean } {
  if (answer === undefined) return { text: t("The language server knows nothing of this file."), failed: true };
  const { understood, problems } = answer;
  const sentences = [
    ...(understood.length === 0 ? [] : [t("Recorded: {0}.", understood.join("; "))]),
    ...problems.map((problem) => t("Not recorded: {0}.", problem)),
  ];
  return { text: sentences.join(" "), failed: 0 < problems.length };
}
