import { type CatalogueRow, error, hint, warning } from "./row.ts";

/** What parts are made of, and the parts themselves. */
export const stock: Readonly<Record<string, CatalogueRow>> = {
  "stock/no-thickness": error(
    "Stock without a thickness",
    "Nothing says how thick a stock is, so nothing can be made of it.",
  ),
  "stock/unmeasured": warning(
    "Label instead of a measurement",
    "Parts are worked out from a label, and a label is not a thickness.",
    "PS 1 thickness categories, as transcribed from the panel association's pages",
  ),
  "stock/not-as-labelled": warning(
    "Measurement far from the label",
    "A measured thickness is farther from its label than any standard allows.",
  ),
  "stock/uneven": warning(
    "Uneven stock",
    "Readings of one thickness differ by more than sheets of one kind may.",
    "PS 1, thickness tolerance of panels up to 13/16 in: plus or minus 1/32 in, as transcribed",
  ),
  "stock/unused": hint("Stock that nothing is made of", "A stock is described in the build and not used by it."),
  "stock/unknown-species": warning(
    "Unknown wood",
    "A species is not in the tables, or could be several.",
    "Wood Handbook FPL-GTR-190 and FPL-GTR-282, tables 4-3, 5-3 and 13-5",
  ),
  "stock/offcut-too-large": warning(
    "Offcut larger than its sheet",
    "An offcut is written larger than the sheet that it came from.",
  ),
  "stock/price-unit": warning(
    "Price for something else",
    "A price is for a unit that the stock or the hardware is not sold by, so another is taken, or none.",
  ),
  "part/no-size": error("Nothing left for a part", "What stands around a part takes all the room that it had."),
  "part/unsaid": error("Part not fully stated", "A part stated by hand lacks its stock or a size."),
  "part/larger-than-sheet": error(
    "Part larger than a sheet",
    "A part cannot be cut from one sheet with its grain as it should run.",
  ),
  "part/longer-than-board": error(
    "Part longer than a board",
    "A part is longer than the longest board that can be bought.",
  ),
  "part/wider-than-board": hint("Part wider than a board", "A part has to be glued up of several boards."),
  "part/grain-across": warning(
    "Grain across a long part",
    "A long part is cut with its grain across it, where wood is weak.",
  ),
  "size/disagree": error("Sizes that disagree", "A size is written that the other statements of its block contradict."),
};
