import { asCut } from "./catalogue/as-cut.ts";
import { cases } from "./catalogue/cases.ts";
import { dryFit } from "./catalogue/dry-fit.ts";
import { joints } from "./catalogue/joints.ts";
import { language } from "./catalogue/language.ts";
import { openings } from "./catalogue/openings.ts";
import type { CatalogueRow } from "./catalogue/row.ts";
import { stock } from "./catalogue/stock.ts";

/** Every code that a finding can have, wherever it is made. A test holds it to the sources. */
export const catalogue: Readonly<Record<string, CatalogueRow>> = {
  ...language,
  ...stock,
  ...openings,
  ...joints,
  ...cases,
  ...dryFit,
  ...asCut,
};

/** The catalogue in its groups, for an index. */
export const catalogueGroups: readonly {
  readonly title: string;
  readonly rows: Readonly<Record<string, CatalogueRow>>;
}[] = [
  { title: "The language", rows: language },
  { title: "Stock and parts", rows: stock },
  { title: "Layout, openings, slides, boxes and packing", rows: openings },
  { title: "Joints, screws, frames, fronts and doors", rows: joints },
  { title: "Cases, shelves, handling and fits", rows: cases },
  { title: "The dry fit: put together, moved, loaded and lifted", rows: dryFit },
  { title: "As cut: what is on the bench", rows: asCut },
];

/** Where the page of a code lies, from the root of the repository: `docs/findings/slide-too-long.md`. */
export function pagePath(code: string): string {
  return `docs/findings/${pageName(code)}`;
}

/** The file name of a code's page: `slide-too-long.md`. */
export function pageName(code: string): string {
  return `${code.replace("/", "-")}.md`;
}
