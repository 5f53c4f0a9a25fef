import { type CatalogueRow, error, hint, warning } from "./row.ts";

/** The words and names of a build file, and what no build can read. */
export const language: Readonly<Record<string, CatalogueRow>> = {
  "syntax/unreadable": error(
    "Text that cannot be read",
    "A word, sign or name stands where the language has no place for it.",
  ),
  "syntax/too-long": error(
    "File too long",
    "The file has more characters than a build file may have, and is not read.",
  ),
  "syntax/too-much": error(
    "Too much at once",
    "A file holds more words than are read, so that the editor stays quick.",
  ),
  "statement/not-here": error("Property in the wrong block", "A property stands in a block that has no such property."),
  "statement/unknown-word": error(
    "Unknown word",
    "A word is none of the language's, or stands where another is wanted.",
  ),
  "statement/said-twice": error("Said twice", "One property is written twice in one block; only the first counts."),
  "statement/one-size": error(
    "One size only",
    "A thing that is still to be made has several readings where it takes one size.",
  ),
  "statement/units-twice": error("Two units", "A file says both inches and millimetres."),
  "statement/allow-without-reason": warning(
    "Allowance without a reason",
    "A finding is silenced, and nobody will know why.",
  ),
  "statement/allow-unused": hint("Allowance that matches nothing", "An allowance silences nothing any more."),
  "statement/no-effect": hint(
    "Statement without effect",
    "A property is written that makes no difference to what is made.",
  ),
  "use/missing": error("Used file is missing", "A file that is used cannot be found."),
  "use/refused": error("Used file is refused", "A file that is used lies outside the folder, or is no build file."),
  "use/circle": error("Files that use each other", "A used file leads back to the file that uses it."),
  "use/too-many": error("Too many used files", "A build uses more files than can be read as quickly as one types."),
  "name/twice": error("Name given twice", "Two things of one kind share a name; only the first counts."),
  "name/range": error(
    "Range that is none",
    "A range of names does not count upwards, or spells more names than any piece has.",
  ),
  "name/unused": hint(
    "Name that nothing uses",
    "A length, slide, hinge or screw is described in the build and not used by it.",
  ),
  "name/unknown-length": error("Unknown length", "A length is named that is not given anywhere."),
  "name/unknown-model": error("Nothing to be like", "A block is like one that does not exist."),
  "name/like-circle": error("Likeness in a circle", "Blocks are said to be like each other in a circle."),
  "name/unknown-stock": error("Unknown stock", "A sheet, board or edging is named that is not described."),
  "name/unknown-slides": error("Unknown slides", "Slides are named that are not described."),
  "name/unknown-hinges": error("Unknown hinges", "Hinges are named that are not described."),
  "name/unknown-screws": error("Unknown screws", "Screws are named that are not described."),
  "name/unknown-opening": error("Unknown opening", "An opening is named that no case or file has."),
  "length/mixed-or-minus": hint(
    "Mixed number or subtraction",
    "A dash with spaces subtracts; what stands there reads like a mixed number.",
  ),
  "length/over-nothing": error("Division by nothing", "A length is divided by nought."),
  "length/not-a-length": error("Not a length", "Lengths and plain numbers are mixed in a way that gives no length."),
  "length/not-positive": error("Nothing or less", "A size is nought or less."),
  "length/not-a-count": error("Not a number of pieces", "A count is no whole number, or more than there can be."),
  "length/too-large": error("More than a thousand feet", "A size is larger than any workshop."),
  "length/decimal-comma": error(
    "Decimal with a comma",
    "A number is written with a comma where none can part two readings, or they would be far apart.",
  ),
  "length/too-many-digits": error(
    "Number with too many digits",
    "A number is written, or worked out, with more digits than any tape reads.",
  ),
  "length/circular": error("Length that hangs on itself", "Working a length out needs the length itself."),
  "length/too-far": error(
    "Length through too many names",
    "Working a length out leads through more names than any drawing has.",
  ),
  "length/broken": error("Unfinished length", "A length breaks off before it says anything."),
  "length/tolerance-in-brackets": error(
    "Tolerance in brackets",
    "A sign hugs its number inside brackets, where it must have been meant to add or subtract.",
  ),
  "length/unit-slip": warning(
    "Size that needs another unit",
    "A bare number gives a size that no such thing has; the other unit was meant.",
  ),
  "tool/check-failed": hint(
    "A check could not be made",
    "A check broke down; all others were made. The fault is the tool's.",
  ),
};
