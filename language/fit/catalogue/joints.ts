import { type CatalogueRow, error, hint, orElse, warning } from "./row.ts";

/** Joints, screws, frames, fronts and doors. */
export const joints: Readonly<Record<string, CatalogueRow>> = {
  "joint/cuts-through": error("Joint that cuts through", "A groove, dado or rabbet is as deep as its piece is thick."),
  "joint/leaves-thin": warning(
    "Joint that leaves too little",
    "A groove, dado or rabbet leaves less wood than holds.",
    "from memory; no source",
  ),
  "joint/groove-meets-rabbet": warning(
    "Bottom groove meets the rabbet",
    "A bottom's groove runs out through the corner's rabbet and shows.",
  ),
  "joint/groove-meets-screw": warning(
    "Bottom groove meets the slide's screws",
    "The screws of a slide are set where the bottom's groove is.",
  ),
  "joint/little-below-groove": warning(
    "Little wood below the groove",
    "Too little wood is left under a bottom's groove.",
    "from memory; a carpentry text sets the groove 3/8 in up, as transcribed",
  ),
  "joint/lap-too-thick": error(
    "Lap as thick as the front",
    "The lap of half-blind dovetails leaves no wood for the tails.",
  ),
  "pockets/too-thin": error(
    "Too thin for a pocket",
    "A piece with pockets is thinner than a pocket screw wants.",
    "common practice; the pockets block states the shop's own",
  ),
  "pockets/too-narrow": warning(
    "Too narrow for two pockets",
    "A piece with pockets is narrower than two of them want.",
    "from memory; the pockets block states the shop's own",
  ),
  "screw/through-the-side": error(
    "Slide screw comes through",
    "The screws of a slide are longer than the side that they go into is thick.",
  ),
  "screw/through-the-joint": error(
    "Pocket screw comes through",
    "Pocket screws are longer than is usual for the pieces that they join.",
    "common practice, no source: pocket-screw lengths by thickness",
  ),
  "frame/panel-proud": warning(
    "Panel that stands out behind its frame",
    "A panel in a groove in the middle is thicker than groove and wood behind it.",
  ),
  "frame/thin-in-front": warning(
    "Too little in front of the groove",
    "A panel flush with the back leaves too little of the frame in front of its groove.",
    "from memory; no source",
  ),
  "frame/open-behind": warning(
    "Groove open at the back",
    "A panel that is no thicker than its groove is to be flush with the back of its frame.",
    "geometry",
  ),
  "frame/panel-bursts": warning(
    "Panel that bursts its frame",
    "A solid panel has less room than it swells by.",
    "Wood Handbook FPL-GTR-190, Eq. 13-2 and Table 13-5",
  ),
  "frame/panel-slips-out": hint(
    "Panel that slips out of its groove",
    "A solid panel shrinks by more than its grooves hold, if it is pushed to one side.",
    "Wood Handbook FPL-GTR-190, Eq. 13-2 and Table 13-5",
  ),
  "frame/thin-stock": warning(
    "Frame stock too thin",
    "The stock of a door or face frame is thinner than published work allows.",
    "Architectural Woodwork Standards, 1st ed. (2009), cl. 4.4.6.10.1.3 and 4.4.25.4",
  ),
  "frame/tenon-through": error("Tenon through its stile", "A tenon is as long as its stile is wide."),
  "frame/tenons-meet": error("Tenons that meet", "Tenons from both sides of a middle stile need the same wood."),
  "frame/narrow-member": warning(
    "Member too narrow for its groove",
    "A frame member keeps too little wood beside its groove.",
    "from memory; no source",
  ),
  "front/made-of-nothing": error("Front made of nothing", "A front does not say what it is made of."),
  "front/no-size": error("Nothing left of a front", "The gaps round a front take all of its opening."),
  "front/spans-apart": error(
    "Front over openings apart",
    "A front spans openings that are not in one face of one case.",
  ),
  "front/collide": error("Fronts that collide", "Two fronts cover the same place."),
  "front/meets-wall": orElse(
    error(
      "Front that strikes a wall",
      "A front at the end of a case strikes the wall beside it, or the trim on it, as it opens.",
    ),
    "warning",
  ),
  "front/inside-corner": orElse(
    error(
      "Front that cannot pass an inside corner",
      "Two cases meet at an inside corner, and what opens in one strikes the fronts, or the pulls, of the other.",
    ),
    "warning",
  ),
  "front/tight-gap": warning(
    "Fronts too close",
    "Two fronts stand closer than keeps them from rubbing.",
    "from memory; no source",
  ),
  "front/beyond-case": error(
    "Front past the case",
    "An overlay is larger than the case side or member that it lies on.",
  ),
  "front/inset-tight": warning(
    "Inset front too tight",
    "The gap round an inset front is less than published.",
    "NAVEDTRA 14045 (Builder 3 & 2), ch. 5: 1/16 in on all four edges",
  ),
  "front/inset-uneven": warning(
    "Uneven gap round an inset front",
    "An opening varies by more than the gap of its inset front.",
  ),
  "door/no-angle": error("Angle that no door opens to", "The angle that a door opens to is not one that a hinge has."),
  "door/unhinged": hint("Door without a hinge side", "Nothing says which edge a door turns on."),
  "door/cannot-clear": error(
    "Door that cannot clear its neighbour",
    "A door on hinges at its edge swings into the front beside it.",
  ),
  "door/hinge-kind": error(
    "Wrong kind of hinge",
    "A hinge for inset doors is used on an overlay door, or the other way round.",
  ),
  "door/hinge-overlay": warning(
    "Hinge for another overlay",
    "A hinge is made for an overlay that its door does not have.",
    "from memory; no source",
  ),
  "door/cup-through": error("Cup through the door", "A hinge's cup is bored deeper than the door is thick."),
  "door/cup-meets-groove": warning("Cup meets the groove", "A hinge's cup reaches into the groove of the frame."),
  "door/cup-from-edge": warning(
    "Cup at an unusual distance",
    "A cup is bored nearer to or farther from the edge than is usual.",
    "common practice, no source: boring distances of 3 to 8 mm",
  ),
  "door/too-few-hinges": warning(
    "Too few hinges",
    "A door has fewer hinges than its height and weight ask for.",
    "common practice, no source: a hinge chart whose labels were seen; the mapping of label to count is a reading",
  ),
  "door/tall-without-mid-rail": warning(
    "Tall door without a mid rail",
    "A frame-and-panel door over 60 in has no rail in its middle.",
    "Architectural Woodwork Standards, 1st ed. (2009), cl. 4.4.6.10.1.5",
  ),
};
