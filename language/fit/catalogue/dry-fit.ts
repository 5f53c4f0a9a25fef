import { type CatalogueRow, error, hint, orElse, warning } from "./row.ts";

/** What the dry fit shows: parts in their places, moved, loaded and lifted. */
export const dryFit: Readonly<Record<string, CatalogueRow>> = {
  "dryfit/clash": error("Parts that run into each other", "Two parts claim one space when the piece is put together."),
  "dryfit/gap": warning(
    "Faces that do not meet",
    "Faces that are meant to meet stand apart by more than their fit allows.",
  ),
  "dryfit/unsupported": warning("Shelf with nothing to lie on", "An end of a shelf has nothing under it."),
  "dryfit/adrift": warning("Part that touches nothing", "A part meets no other when the piece is put together."),
  "motion/drawer-blocked": error("Drawer that does not come out", "Something stands in the path of a drawer."),
  "motion/opposed-drawers": error(
    "Drawers that meet back to back",
    "Drawers of both faces of a case take more than its depth together.",
  ),
  "motion/door-blocked": orElse(
    error(
      "Door that does not open",
      "Something stands in the way of a door before it is open to a right angle, or as far as its hinges go.",
    ),
    "warning",
  ),
  "motion/door-meets-wall": orElse(
    warning(
      "Door that meets a wall",
      "A door, or its pull, meets the wall beside its case before it is open to a right angle, or as far as its hinges go.",
    ),
    "hint",
  ),
  "wood/across-grain": warning(
    "Wood held across its grain",
    "Solid wood is held fast across its grain by what does not move with it.",
    "Wood Handbook FPL-GTR-190, Eq. 13-2 and Table 13-5; what a joint forgives is common practice",
  ),
  "wood/bottom-bursts": warning(
    "Solid bottom that pushes its sides apart",
    "A solid bottom swells by more than its grooves leave.",
    "Wood Handbook FPL-GTR-190, Eq. 13-2 and Table 13-5",
  ),
  "wood/bottom-slips-out": warning(
    "Solid bottom that leaves its groove",
    "A solid bottom shrinks by more than its grooves hold.",
    "Wood Handbook FPL-GTR-190, Eq. 13-2 and Table 13-5",
  ),
  "wood/inset-binds": warning(
    "Solid inset front that jams",
    "A solid inset front swells by more than the gaps round it leave.",
    "Wood Handbook FPL-GTR-190, Eq. 13-2 and Table 13-5",
  ),
  "load/case-bottom-sags": warning(
    "Case bottom that sags",
    "The bottom of a case sags past the published limit.",
    "Architectural Woodwork Standards, 1st ed. (2009), section 10 cl. 1.2.21; Wood Handbook Eq. 9-2",
  ),
  "load/rail-sags": warning(
    "Rail that sags",
    "A rail under a slide sags past the published limit.",
    "Wood Handbook Eq. 9-2 and Table 9-1",
  ),
  "stability/tips": orElse(
    warning(
      "Chest that tips",
      "The weight of a chest lies before its feet when its drawers are open.",
      "ASTM F2057-23 cl. 1.1; 16 CFR 1261; the balance is geometry",
    ),
    "hint",
  ),
  "handling/heavy-sheet": hint(
    "Sheet too heavy for one",
    "A whole sheet weighs more than one person here lifts alone.",
    "NIOSH 94-110 (revised 9/2021), as transcribed",
  ),
  "handling/heavy-assembly": hint(
    "Case too heavy for one",
    "A case that is put together weighs more than one person here lifts alone.",
    "NIOSH 94-110 (revised 9/2021), as transcribed",
  ),
  "handling/reach": hint(
    "Reach that allows less",
    "At the reach and height written the lifting equation allows less than is written.",
    "NIOSH 94-110 (revised 9/2021), as transcribed",
  ),
};
