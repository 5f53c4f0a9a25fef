import { type CatalogueRow, error, hint, warning } from "./row.ts";

/** Openings, slides, boxes and packing. */
export const openings: Readonly<Record<string, CatalogueRow>> = {
  "layout/member-alone": error("Member without openings", "A rail, stile or partition stands where no division is."),
  "layout/only-one": warning("Size without effect", "An opening that fills its face alone is given a size."),
  "layout/too-deep": error("Divided too often", "A face is divided more times over than any frame is."),
  "layout/too-little": error("Sizes that leave a gap", "The sizes of a division leave some of its space over."),
  "layout/too-much": error("Sizes that ask too much", "The sizes of a division ask for more than there is."),
  "layout/two-roots": error("Face laid out twice", "A face is divided twice over at the top."),
  "layout/wrong-member": error(
    "Member that cannot stand there",
    "A rail stands between columns, or a stile between rows.",
  ),
  "opening/no-size": error("Opening without a size", "A standing opening lacks its width or height."),
  "opening/no-depth": error("Opening without a depth", "A box goes into an opening whose depth is not known."),
  "opening/too-small": error("Opening too small for a box", "The slides and their clearances take all of an opening."),
  "opening/unused": hint(
    "Opening that gets nothing",
    "An opening has no box, front, door or shelf, beside others that have.",
  ),
  "opening/out-of-parallel": warning(
    "Opening out of parallel",
    "The readings of an opening differ by more than its slides forgive.",
  ),
  "opening/filled-twice": error("Two boxes in one opening", "Two boxes are described for one opening."),
  "opening/covered-twice": error("Two fronts over one opening", "Two fronts or doors are described for one opening."),
  "opening/box-and-shelf": error("Box and shelf in one opening", "A shelf stands in an opening that a box fills."),
  "slide/bad-series": error("Series that is none", "The lengths of a series of slides do not count upwards."),
  "slide/no-lengths": error("Slides without lengths", "A box needs a slide from a series that names no lengths."),
  "slide/too-long": error("Slide too long", "A slide is longer than the depth of its opening allows."),
  "slide/none-fits": error("No slide fits", "No slide of a series is short enough for an opening."),
  "slide/not-sold": error("Slide that is not sold", "A slide is named in a length that its series does not have."),
  "slide/longer-than-box": error("Slide longer than its box", "A box is shorter than the slide that it hangs on."),
  "slide/shallow": hint("Depth left unused", "A slide leaves much of the depth unused, and a longer one fits."),
  "slide/little-comes-clear": hint(
    "Little of the box comes out",
    "Less than two thirds of a box's depth comes out of the case.",
    "ANSI/KCMA A161.1 cl. 7.1, from a reproduction: drawers are tested opened two thirds of their depth",
  ),
  "slide/overloaded": error("Slide overloaded", "What a box holds and weighs is more than its slides are rated for."),
  "slide/below-test-load": warning(
    "Slide below the test load",
    "The published test load of a drawer is more than its slides are rated for.",
    "ANSI/KCMA A161.1 cl. 7.1, from a reproduction: 15 lb per square foot",
  ),
  "slide/wide-box": warning(
    "Box wider than common",
    "A box is wider than is common for ordinary slides, and wider than deep.",
    "common practice, from memory; no source",
  ),
  "slide/thick-side": error(
    "Side too thick for the slide",
    "The side of a box is thicker than its under-mounted slides take.",
  ),
  "slide/nothing-behind": error("Nothing behind the slide", "A side-mounted slide has nothing to be screwed to."),
  "slide/higher-than-box": error(
    "Slide higher than its box",
    "The side of a box is lower than the slide that lies on it.",
  ),
  "slide/off-the-box": error(
    "Slide past the edge of its box",
    "A slide is set so high or low that it passes the edge of the side.",
  ),
  "slide/no-recess": warning(
    "No recess for the slide",
    "A box on under-mounted slides has no room for them under its bottom.",
    "common practice, from memory; no source",
  ),
  "box/no-slides": error("Box without slides", "A box says nothing of its slides, from which its size follows."),
  "box/no-sides": error("Box made of nothing", "A box does not say what it is made of."),
  "box/too-wide": error("Box too wide", "A width is written that leaves the slides no room."),
  "box/too-narrow": error("Box too narrow", "A width is written that the slides do not reach across."),
  "box/too-high": error("Box too high", "A height is written that leaves no room above and below."),
  "box/too-deep": error("Box too deep", "A depth is written that meets what stands behind."),
  "box/bottom-sags": warning(
    "Bottom that sags",
    "A bottom sags past the published limit under its load.",
    "ANSI/KCMA A161.1 cl. 5.1, from a reproduction: a sixteenth of an inch to the foot; Wood Handbook Eq. 9-2",
  ),
  "packing/none-thin-enough": error(
    "Nothing thin enough to pack with",
    "Every sheet that may be used as packing is thicker than what is to be filled.",
  ),
  "packing/proud": warning(
    "Packing that may stand proud",
    "Packing may pass the edge of its opening when the worst of its sizes meet.",
  ),
  "packing/much-to-shim": hint(
    "Much left to shim",
    "The sheets at hand leave more to fill than a shim should.",
    "from memory; no source",
  ),
};
