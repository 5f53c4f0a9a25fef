import type { Translate } from "../translate.ts";
import type { Outcome } from "./write-files.ts";

export interface PapersNotice {
  readonly text: string;
  readonly failed: boolean;
  /** The one to open from the notice: the packet if it is among them, else the first; none if nothing is there. */
  readonly open: string | undefined;
}

/** What to tell of papers that were written into a folder, with the number of errors that stand in the build file. */
export function papersNotice(outcome: Outcome, folder: string, errors: number, t: Translate): PapersNotice {
  const { written, unchanged, kept, failed } = outcome;
  const there = [...written, ...unchanged];
  const sentences = [
    ...(written.length === 0 ? [] : [filesSentence(written, folder, t)]),
    ...(unchanged.length === 0 ? [] : [t("As they were already: {0}.", unchanged.length)]),
    ...(kept.length === 0 ? [] : [t("Left as they were, for their unsaved edits: {0}.", kept.join(", "))]),
    ...failed.map(({ name, reason }) => t("{0} could not be written: {1}.", name, reason)),
    ...(there.length + kept.length + failed.length === 0 ? [t("No papers were written.")] : []),
    ...(0 < errors && 0 < there.length
      ? [t("Errors stand in the build file, and the papers say so: look before you cut.")]
      : []),
  ];
  const packet = there.find((name) => name.endsWith(".papers.pdf"));
  return { text: sentences.join(" "), failed: 0 < failed.length, open: packet ?? there[0] };
}

function filesSentence(written: readonly string[], folder: string, t: Translate): string {
  const [only] = written;
  return written.length === 1 && only !== undefined
    ? t("Wrote {0} into {1}.", only, folder)
    : t("Wrote {0} files into {1}.", written.length, folder);
}
