import { inUnit, type Length } from "../core/length.ts";
import { ratio } from "../core/rational.ts";
import type { Sourced, Tag } from "../core/sourced.ts";
import { pocketSpacing } from "../published/pocket-screws.ts";

/** What holds when a build file says nothing, with its standing and its reason. Every one can be overridden in the file. */
interface Entry {
  readonly value: Length;
  readonly tag: Tag;
  readonly because: string;
  readonly source?: string;
}

const inch = (n: number, d = 1): Length => ratio(n, d);
const millimetres = (n: number, d = 1): Length => inUnit(ratio(n, d), "mm");

export const defaults = {
  "reading.inches": { value: inch(1, 32), tag: "common practice", because: "the finest mark that most tapes carry" },
  "reading.millimetres": { value: millimetres(1), tag: "common practice", because: "the finest mark on a metric tape" },
  "cut.tolerance": { value: inch(1, 64), tag: "from memory", because: "what careful work with a stop keeps to" },
  "saw.kerf": { value: inch(1, 8), tag: "common practice", because: "a full-kerf ten-inch blade" },
  "saw.trim": { value: inch(1, 4), tag: "common practice", because: "a factory edge is knocked about on its way" },
  "grooves.wide": { value: inch(1, 4), tag: "common practice", because: "the usual cutter pair for 3/4 in stock" },
  "grooves.deep": {
    value: inch(3, 8),
    tag: "common practice",
    because: "the usual cutter pair for 3/4 in stock",
    source: "common practice, no source: a note on the expansion of door panels gives 3/8 and 7/16 in",
  },
  "pockets.apart": {
    value: ratio(...pocketSpacing.apart.value.exact),
    tag: "from memory",
    because: "one every 6 to 8 in holds a panel edge",
  },
  "pockets.edge": {
    value: ratio(...pocketSpacing.edge.value.exact),
    tag: "from memory",
    because: "closer to an end the wood splits",
  },
  "pockets.thinnest": {
    value: inch(1, 2),
    tag: "common practice",
    because: "thinner stock leaves no wood round the screw's head",
  },
  "pockets.narrowest": {
    value: ratio(...pocketSpacing.twoFrom.value.exact),
    tag: "from memory",
    because: "two pockets side by side need this much",
  },
  "faceFrame.stiles": {
    value: inch(3, 2),
    tag: "published",
    because: "1 by 2 stock, dressed",
    source: "NAVEDTRA 14045 (Builder 3 & 2), ch. 5: face frame stock 3/4 by 1-1/2 in",
  },
  "faceFrame.rails": {
    value: inch(3, 2),
    tag: "published",
    because: "1 by 2 stock, dressed",
    source: "NAVEDTRA 14045 (Builder 3 & 2), ch. 5: face frame stock 3/4 by 1-1/2 in",
  },
  "joint.tenon": { value: inch(1), tag: "common practice", because: "long enough to glue well in a 2 in stile" },
  "slides.clearance": {
    value: inch(1, 2),
    tag: "common practice",
    because: "the thickness of an ordinary side-mounted slide",
    source: "common practice, no source: slide 12.7 mm thick, 12.9 to 13.2 mm of room",
  },
  "slides.above": {
    value: inch(1, 4),
    tag: "common practice",
    because: "with as much below, the box is half an inch lower than its opening",
  },
  "slides.below": {
    value: inch(1, 4),
    tag: "common practice",
    because: "with as much above, the box is half an inch lower than its opening",
  },
  "slides.behind": {
    value: inch(3, 8),
    tag: "common practice",
    because: "the box must not touch the back before its front is home",
    source: "common practice, no source: at least 3/8 in behind a side-mounted box",
  },
  "under.inside": {
    value: millimetres(42),
    tag: "common practice",
    because: "21 mm on each side, from the case to the inside of the box",
    source: "common practice, no source: typically 21 mm a side",
  },
  "under.above": { value: inch(7, 16), tag: "common practice", because: "with 9/16 in below, about an inch in all" },
  "under.below": { value: inch(9, 16), tag: "common practice", because: "with 7/16 in above, about an inch in all" },
  "under.behind": {
    value: inch(1, 2),
    tag: "common practice",
    because: "the catch and the rear bracket need it",
    source: "common practice, no source: at least 1/2 in behind an under-mounted box",
  },
  "under.thickest": { value: millimetres(16), tag: "from memory", because: "a thicker side does not clear the runner" },
  "slides.high": { value: inch(7, 4), tag: "common practice", because: "an ordinary ball-bearing slide" },
  "slides.staysIn": {
    value: inch(6),
    tag: "published",
    because: "a standard extension leaves four to six inches of the box inside",
    source: "Architectural Woodwork Standards, 1st ed. (2009), App. B, p. 584",
  },
  "slides.staysLeast": {
    value: inch(4),
    tag: "published",
    because: "the least that a standard extension leaves inside: what may tip is judged by it",
    source: "Architectural Woodwork Standards, 1st ed. (2009), App. B, p. 584",
  },
  "corner.rabbet": { value: inch(3, 8), tag: "common practice", because: "about half of a 3/4 in side" },
  "corner.dado": { value: inch(1, 4), tag: "common practice", because: "about a third of a 3/4 in side" },
  "corner.lap": { value: inch(1, 8), tag: "common practice", because: "what is left in front of half-blind tails" },
  "bottom.groove": { value: inch(1, 4), tag: "common practice", because: "as deep as the bottom is thick" },
  "bottom.up": {
    value: inch(3, 8),
    tag: "as transcribed",
    because: "leaves enough wood below the groove",
    source: "a carpentry text, Cases and Cupboards: bottom groove 3/8 in above the lower edge",
  },
  "bottom.rabbet": { value: inch(3, 8), tag: "common practice", because: "about half of a 3/4 in side" },
  "bottom.play": {
    value: inch(1, 16),
    tag: "from memory",
    because: "so that a square bottom does not hold the corners open",
  },
  "front.overlay": { value: inch(1, 2), tag: "common practice", because: "the usual overlay on a face frame" },
  "front.inset": {
    value: inch(1, 16),
    tag: "published",
    because: "clearance round a flush door",
    source: "NAVEDTRA 14045 (Builder 3 & 2), ch. 5: within 1/16 in around all four edges",
  },
  "front.reveal": {
    value: millimetres(3, 2),
    tag: "common practice",
    because: "half of the gap between two faces",
    source: "common practice, no source: reveals are based on a 3 mm gap",
  },
  "front.between": {
    value: millimetres(3),
    tag: "common practice",
    because: "the gap between two faces",
    source: "common practice, no source: 3 mm between faces",
  },
  "front.pair": { value: inch(1, 8), tag: "common practice", because: "room for the leaves to pass each other" },
  "front.frame": { value: inch(9, 4), tag: "common practice", because: "the usual width of a door's stiles and rails" },
  "panel.ply": { value: inch(1, 32), tag: "from memory", because: "plywood hardly moves; the panel must only go in" },
  "panel.along": {
    value: inch(1, 16),
    tag: "from memory",
    because: "along the grain wood hardly moves; the panel must only go in",
  },
  "panel.solid": {
    value: inch(1, 8),
    tag: "common practice",
    because: "room for a solid panel to swell when its wood is not known",
    source: "common practice, no source: panels allow for 1/8 in of movement on each side",
  },
  "panel.inFront": { value: inch(3, 16), tag: "from memory", because: "thinner wood in front of a groove breaks out" },
  "case.rabbet": { value: inch(3, 8), tag: "common practice", because: "half of a 3/4 in side holds the back's nails" },
  "case.groove": { value: inch(1, 4), tag: "common practice", because: "a third of a 3/4 in side" },
  "case.grooveSet": {
    value: inch(1, 2),
    tag: "common practice",
    because: "leaves a ledge behind the back for scribing and nailers",
  },
  "case.grooveTrim": { value: inch(1, 16), tag: "from memory", because: "so that the back goes into both grooves" },
  "case.dado": { value: inch(1, 4), tag: "common practice", because: "a third of a 3/4 in side" },
  "case.stretchers": { value: inch(4), tag: "common practice", because: "wide enough to screw a top to" },
  "shelf.endGap": { value: inch(1, 16), tag: "common practice", because: "the shelf must come out over its pins" },
  "shelf.set": {
    value: inch(1, 4),
    tag: "common practice",
    because: "clears the back of an overlay door and its bumpers",
  },
  "shelf.rows": {
    value: millimetres(32),
    tag: "as transcribed",
    because: "the spacing of the 32 mm system",
    source: "32 mm system: system holes are 32 mm apart and 5 mm in diameter",
  },
  "shelf.firstRow": {
    value: millimetres(37),
    tag: "as transcribed",
    because: "the front row of the 32 mm system",
    source: "32 mm system: front row 37 mm from the front of the panel",
  },
  "edging.thick": { value: inch(1, 32), tag: "common practice", because: "iron-on veneer band" },
  "stave.joint": {
    value: inch(1, 8),
    tag: "common practice",
    because: "what jointing both edges of a stave takes, before a panel is glued up from several",
  },
  "mount.beyond": {
    value: inch(3, 4),
    tag: "common practice",
    because: "a strip a little higher than the slide, so that its screws stay clear of the edges",
  },
  "pull.stands": {
    value: inch(5, 4),
    tag: "common practice",
    because: "how far an ordinary pull or knob stands out from its front",
  },
  "hinge.cup": {
    value: millimetres(35),
    tag: "as transcribed",
    because: "the usual cup",
    source: "common practice, no source: cup 35 mm",
  },
  "hinge.bore": { value: millimetres(5), tag: "common practice", because: "the middle of the usual 3 to 8 mm" },
  "hinge.fromEnd": { value: inch(3), tag: "common practice", because: "the hinge's centre from the end of the door" },
} as const satisfies Record<string, Entry>;

export type DefaultKey = keyof typeof defaults;

/** A default as a sourced length. */
export function fallback(key: DefaultKey): Sourced<Length> {
  const entry: Entry = defaults[key];
  return {
    value: entry.value,
    origin: { kind: "default", key, tag: entry.tag, because: entry.because, source: entry.source },
  };
}
