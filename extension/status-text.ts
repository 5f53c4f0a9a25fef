import type { RodView } from "../language/view/types.ts";
import type { Translate } from "./translate.ts";

/** What stands in the language status of a build file. */
export interface Status {
  readonly text: string;
  readonly detail: string;
  readonly grade: "good" | "warning" | "error";
}

/** The findings in a few words, gravest first, and what is listed. */
export function statusOf(view: RodView, t: Translate): Status {
  const { errors, warnings, hints } = view.counts;
  const counts = [
    ...(errors === 0 ? [] : [errors === 1 ? t("1 error") : t("{0} errors", errors)]),
    ...(warnings === 0 ? [] : [warnings === 1 ? t("1 warning") : t("{0} warnings", warnings)]),
    ...(hints === 0 ? [] : [hints === 1 ? t("1 hint") : t("{0} hints", hints)]),
  ];
  const pieces = view.pieces === 1 ? t("1 piece") : t("{0} pieces", view.pieces);
  return {
    text: counts.length === 0 ? t("No findings") : counts.join(", "),
    detail: t("{0}, read to {1}", pieces, view.reading),
    grade: 0 < errors ? "error" : 0 < warnings ? "warning" : "good",
  };
}
