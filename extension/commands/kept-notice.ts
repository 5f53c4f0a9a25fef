import type { KeepOffcutsResult } from "../../server/protocol.ts";
import type { Translate } from "../translate.ts";

/** What to tell the user of the offcuts that were kept; `failed` where nothing could be written. */
export function keptNotice(
  answer: NonNullable<KeepOffcutsResult> | undefined,
  t: Translate,
): { readonly text: string; readonly failed: boolean } {
  if (answer === undefined) return { text: t("The language server knows nothing of this file."), failed: true };
  const { added, takenOut, held, stay, problem } = answer;
  if (problem !== undefined) return { text: problem, failed: true };
  const sentences = [
    ...(added === 0 ? [] : [t("Offcuts written down: {0}.", added)]),
    ...(held === 0 ? [] : [t("Offcuts that stood there already: {0}.", held)]),
    ...(takenOut === 0 ? [] : [t("Offcuts of an earlier plan taken out: {0}.", takenOut)]),
    ...(stay === 0 ? [] : [t("Offcuts of an earlier plan left there, since their stock is broken down: {0}.", stay)]),
  ];
  return { text: sentences.join(" "), failed: false };
}
