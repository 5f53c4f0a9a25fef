import type { Finding } from "../../core/finding.ts";
import { catalogue } from "../../fit/catalogue.ts";
import type { Proposal } from "./proposal.ts";
import { named, ranks } from "./proposal.ts";

/** The codes of findings, those that were found here first. */
export function codeProposals(found: readonly Finding[]): readonly Proposal[] {
  return Object.entries(catalogue).map(([code, { title, severity, means, source }]) => {
    const here = found.find((finding) => finding.code === code);
    const why = source === undefined ? "" : `\n\n${source}`;
    return named(code, "code", {
      detail: here === undefined ? `${severity}: ${title}` : `found on line ${here.span.line + 1}: ${title}`,
      about: () => `${means}${why}`,
      text: code,
      snippet: `${code} "\${1:why it is meant}"`,
      rank: here === undefined ? ranks.plain : ranks.best,
    });
  });
}
