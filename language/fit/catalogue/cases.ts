import { type CatalogueRow, error, hint, orElse, warning } from "./row.ts";

/** Cases, shelves, handling, and fits on their worst case. */
export const cases: Readonly<Record<string, CatalogueRow>> = {
  "case/no-size": error("Case without a size", "A case lacks its width, height or depth."),
  "case/no-panels": error("Case without panels", "A frameless case does not say what its panels are made of."),
  "case/may-tip": warning(
    "Chest that may tip",
    "A free-standing chest is in the scope of the stability standard for clothing storage.",
    "ASTM F2057-23 cl. 1.1; 16 CFR 1261; CPSC business guidance",
  ),
  "case/toe-space": hint(
    "Little room for a foot",
    "The kick of a case is smaller than published work allows.",
    "ANSI/KCMA A161.1, from an association's copy: 3 in high and 2 in deep",
  ),
  "shelf/made-of-nothing": error("Shelf made of nothing", "A shelf does not say what it is made of."),
  "shelf/sags": warning(
    "Shelf that sags",
    "A shelf sags by more than a 144th of its span.",
    "Architectural Woodwork Standards, 1st ed. (2009), section 10 cl. 1.2.21; Wood Handbook Eq. 9-2",
  ),
  "shelf/over-design-load": warning(
    "More than one shelf may hold",
    "A shelf is to hold more than any one shelf is designed for.",
    "Architectural Woodwork Standards, 1st ed. (2009), section 10 cl. 1.2.21: 200 lb",
  ),
  "shelf/meets-door": error("Shelf meets an inset door", "A shelf reaches to where an inset door closes."),
  "shelf/above-opening": error(
    "Shelf that is not in its opening",
    "A shelf is said to be higher above the floor of its opening than that is high.",
  ),
  "shelf/close": hint(
    "Shelves close together",
    "Shelves leave less than a hand's room between them.",
    "NAVEDTRA 14045 (Builder 3 & 2), ch. 5: 3 to 12 in apart",
  ),
  "handling/heavy-part": hint(
    "Part too heavy for one",
    "A part weighs more than one person here handles alone.",
    "NIOSH 94-110 (revised 9/2021), as transcribed: 51 lb, where the file does not say",
  ),
  "handling/lift-over-constant": hint(
    "More than one should lift",
    "A lift is written above the load constant of the lifting equation.",
    "NIOSH 94-110 (revised 9/2021), as transcribed: 51 lb",
  ),
  "handling/thin-to-plane": warning(
    "Too thin to plane",
    "A board is thinner than a planer should be fed.",
    "common practice: a shop audit sheet; the planer's own manual goes before it",
  ),
  "fit/slides": orElse(
    warning("Slides that may not fit", "The room that a box leaves its slides can fall outside what they forgive."),
    "error",
  ),
  "fit/panel-in-groove": orElse(
    warning("Panel that may not fit its groove", "A panel can be too thick or too thin for the groove of its frame."),
    "error",
  ),
  "fit/bottom-in-groove": orElse(
    warning("Bottom that may not fit its groove", "A bottom can be too thick or too thin for its groove."),
    "error",
  ),
  "fit/housing": orElse(
    warning(
      "Panel that may not fit its housing",
      "A panel can be too thick or too thin for the dado or groove of a case or corner.",
    ),
    "error",
  ),
  "fit/bottom-size": orElse(
    warning("Bottom that may hold the corners open", "A bottom can come out wider than its grooves allow."),
    "error",
  ),
  "fit/inset-gap": orElse(warning("Gap that may close", "The gap round an inset front can close altogether."), "error"),
  "fit/frame-flush": orElse(
    warning("Face frame that may not be flush", "A face frame can come out wider or narrower than its case."),
    "error",
  ),
};
