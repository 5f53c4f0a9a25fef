import type { Design, UseStatement } from "../core/design.ts";
import type { Edit } from "../core/finding.ts";
import { addressOf, usedFile } from "../uses.ts";

/** The files that a file names with `use` and may use, whether they are there or not. */
export function usedFiles(
  design: Design,
  root: string | undefined,
): readonly { readonly use: UseStatement; readonly uri: string }[] {
  return design.uses.flatMap((use) => {
    const target = usedFile(use, design.uri, root);
    return "refused" in target ? [] : [{ use, uri: target.uri }];
  });
}

/** A file or folder and where it goes to. */
export interface Move {
  readonly from: string;
  readonly to: string;
}

/** What must be written so that every `use` finds its file again after files and folders were moved; placed as before the move. */
export function usesAfter(
  designs: readonly Design[],
  moves: readonly Move[],
  rootOf: (uri: string) => string,
): readonly Edit[] {
  return designs.flatMap((design) =>
    usedFiles(design, rootOf(design.uri)).flatMap(({ use, uri }): readonly Edit[] => {
      const path = pathBetween(moved(design.uri, moves), moved(uri, moves));
      const quoted = use.path.span.end - use.path.span.start !== use.path.text.length;
      const isSame = path === undefined || addressOf(use.path.text, moved(design.uri, moves)) === moved(uri, moves);
      return isSame ? [] : [{ span: use.path.span, text: quoted ? `"${path}"` : path }];
    }),
  );
}

function moved(uri: string, moves: readonly Move[]): string {
  for (const { from, to } of moves) {
    if (uri === from) return to;
    if (uri.startsWith(`${from.replace(/\/$/, "")}/`))
      return to.replace(/\/$/, "") + uri.slice(from.replace(/\/$/, "").length);
  }
  return uri;
}

/** A path from one file to another, as `use` wants it; `undefined` where there is none, as between two machines. */
export function pathBetween(from: string, to: string): string | undefined {
  const [own, other] = [from.split("/").slice(0, -1), to.split("/")];
  if (own.slice(0, 3).join("/") !== other.slice(0, 3).join("/")) return undefined;
  let shared = 0;
  while (shared < own.length && shared < other.length - 1 && own[shared] === other[shared]) shared++;
  const up = own.slice(shared).map(() => "..");
  try {
    return [...up, ...other.slice(shared).map(decodeURIComponent)].join("/");
  } catch {
    return undefined;
  }
}
