/**
 * The words of the build language: which block takes which property, its form and what it means. Lowering checks by
 * this table, the editor completes from it and the language reference is made of it.
 */
export type BlockWord =
  | "sheet"
  | "board"
  | "edging"
  | "slides"
  | "hinges"
  | "screws"
  | "saw"
  | "grooves"
  | "pockets"
  | "place"
  | "times"
  | "case"
  | "rear"
  | "face frame"
  | "opening"
  | "box"
  | "front"
  | "door"
  | "shelf"
  | "part";

export interface PropertyWord {
  /** How it is written, names in capitals. */
  readonly form: string;
  readonly means: string;
}

export interface BlockEntry {
  readonly form: string;
  readonly gives: string;
  readonly properties: Readonly<Record<string, PropertyWord>>;
}

const costs = (per: string): PropertyWord => ({
  form: "costs AMOUNT [per UNIT]",
  means: `its price; ${per} unless a unit is said`,
});
const edging: PropertyWord = {
  form: "edging NAME [on EDGES]",
  means: "a thin band glued to these edges, or to all; its thickness comes off the core",
};
const grain: PropertyWord = {
  form: "grain long | across | none",
  means: "which way the face grain runs, or that it does not matter",
};
const shelfOrPart = { edging };

const front: Readonly<Record<string, PropertyWord>> = {
  overlay: {
    form: "overlay LENGTH [EDGE], ...",
    means: "how far it covers the opening's edge, on all edges or on the ones named",
  },
  "full-overlay": { form: "full-overlay", means: "it covers the case's outside edge but for the reveal" },
  inset: { form: "inset", means: "it stands inside the opening" },
  reveal: { form: "reveal LENGTH", means: "what a full overlay leaves uncovered at each edge" },
  gap: {
    form: "gap LENGTH [round | between], ...",
    means:
      "the gap round an inset front, or of a pair the one between its two leaves; each by its word where both are said",
  },
  pair: { form: "pair", means: "two leaves that meet in the middle" },
  slab: { form: "slab STOCK", means: "one piece of this stock" },
  frame: { form: "frame BOARD [LENGTH wide]", means: "frame and panel, stiles and rails of this board" },
  panel: {
    form: "panel STOCK [solid] [flush back | centred]",
    means: "what stands in the frame, and where its groove sits",
  },
  stiles: { form: "stiles LENGTH", means: "width of the stiles, where it is not the frame's" },
  rails: { form: "rails LENGTH, ...", means: "width of the rails, top and bottom alike or each" },
  joint: { form: "joint tongue | tenon LENGTH | dowels | mitred", means: "how its frame is joined" },
  mitred: { form: "mitred", means: "its frame is mitred at the corners" },
  float: { form: "float LENGTH", means: "the room that the panel has in its groove at each edge" },
  mid: {
    form: "mid rails | stiles COUNT",
    means: "members between the outer ones, evenly spread",
  },
  edging,
  grain,
  matched: {
    form: "matched",
    means: "these fronts come from one strip, so that the grain runs on from one to the next",
  },
  hinged: { form: "hinged left | right | top | bottom", means: "the edge that it turns on" },
  hinges: { form: "hinges NAME [COUNT]", means: "the hinges, and how many if not as derived" },
  opens: {
    form: "opens NUMBER degrees",
    means: "how far this door opens, where it is not as its hinges do: a stop, or a wall beside it",
  },
  pulls: { form: "pulls COUNT", means: "how many pulls or knobs" },
  wide: { form: "wide LENGTH", means: "its width; checked against what is derived" },
  high: { form: "high LENGTH", means: "its height; checked against what is derived" },
};

export const vocabulary: Readonly<Record<BlockWord, BlockEntry>> = {
  sheet: {
    form: "sheet NAME { ... }",
    gives: "a sheet stock: plywood, board material, hardboard",
    properties: {
      called: {
        form: "called LENGTH",
        means: "its label; used to talk about it, and for its thickness while it has not been measured",
      },
      measures: {
        form: "measures LENGTH, ...",
        means: "its thickness by the calliper, in one place or several; every derived size uses this",
      },
      size: { form: "size LENGTH x LENGTH", means: "the whole sheet; face grain runs along the second figure" },
      costs: costs("a sheet"),
      have: { form: "have COUNT", means: "how many whole sheets are in the rack" },
      grain,
      faces: { form: "faces COUNT", means: "how many of its faces are good enough to show" },
      density: { form: "density NUMBER", means: "its weight in pounds per cubic foot" },
      core: { form: "core WORD", means: "what it is made of: veneer, mdf, particle, hardboard" },
    },
  },
  board: {
    form: "board NAME { ... }",
    gives: "a solid-wood stock",
    properties: {
      called: { form: "called LENGTH", means: "its nominal thickness, by which it is bought" },
      thick: { form: "thick LENGTH", means: "its thickness as it is used" },
      wide: { form: "wide LENGTH, ...", means: "the widths that can be bought" },
      long: { form: "long LENGTH, ...", means: "the lengths that can be bought" },
      species: { form: "species WORDS", means: "the wood: weight, stiffness and movement follow from it" },
      moisture: { form: "moisture NUMBER %", means: "its moisture content when it is worked" },
      sawn: { form: "sawn flat | quarter", means: "how it was sawn; flat-sawn wood moves more" },
      costs: costs("a board foot"),
      have: { form: "have COUNT", means: "how many pieces are in the rack" },
      rough: { form: "rough", means: "it is bought rough and still has to be planed" },
      density: { form: "density NUMBER", means: "its weight in pounds per cubic foot, where the species is not known" },
    },
  },
  edging: {
    form: "edging NAME { ... }",
    gives: "a thin band for edges",
    properties: {
      thick: { form: "thick LENGTH", means: "its thickness, which comes off the core" },
      wide: { form: "wide LENGTH", means: "its width on the roll" },
      long: { form: "long LENGTH", means: "what a roll or strip holds" },
      costs: costs("a foot"),
    },
  },
  slides: {
    form: "slides NAME { ... }",
    gives: "a series of drawer slides",
    properties: {
      mount: { form: "mount side | under | centre", means: "where they sit on the box" },
      extension: { form: "extension standard | full | over", means: "how far they pull out" },
      lengths: { form: "lengths FIRST to LAST by STEP, or a list", means: "the lengths that can be bought" },
      clearance: {
        form: "clearance LENGTH [+LENGTH] [-LENGTH]",
        means: "what they take on each side, and how much of an error they forgive",
      },
      above: { form: "above LENGTH", means: "free height above the box" },
      below: { form: "below LENGTH", means: "free height below the box" },
      behind: { form: "behind LENGTH", means: "free depth behind the slide" },
      high: { form: "high LENGTH", means: "the height of the slide itself" },
      travel: { form: "travel LENGTH", means: "how far they travel, where it is not as the extension says" },
      longer: { form: "longer LENGTH", means: "how much longer they really are than their name" },
      inside: { form: "inside LENGTH", means: "under-mounted: how much narrower than the opening the box is inside" },
      thickest: { form: "thickest LENGTH", means: "the thickest box side that they take" },
      carries: { form: "carries WEIGHT", means: "the load that a pair is rated for" },
      screws: { form: "screws NAME", means: "the screws that they are put up with" },
      costs: costs("a pair"),
    },
  },
  hinges: {
    form: "hinges NAME { ... }",
    gives: "a hinge",
    properties: {
      cup: {
        form: "cup LENGTH",
        means: "the diameter of its cup; a hinge that says no cup, and not how one is bored, is let into the edge",
      },
      overlay: { form: "overlay LENGTH", means: "the overlay that it is made for" },
      bore: { form: "bore LENGTH", means: "from the door's edge to the edge of the cup" },
      deep: { form: "deep LENGTH", means: "how deep the cup is bored" },
      inset: { form: "inset", means: "it is made for inset doors" },
      opens: { form: "opens NUMBER degrees", means: "how far it lets its door open; to a right angle unless said" },
      costs: costs("a piece"),
    },
  },
  screws: {
    form: "screws NAME { ... }",
    gives: "a screw",
    properties: {
      gauge: { form: "gauge #NUMBER", means: "its gauge" },
      thick: { form: "thick LENGTH", means: "its diameter, where it is sold by that and not by gauge" },
      long: { form: "long LENGTH", means: "its length" },
      costs: costs("a hundred"),
    },
  },
  saw: {
    form: "saw { ... }",
    gives: "what the shop's saw takes and reaches",
    properties: {
      kerf: { form: "kerf LENGTH", means: "the width of the cut" },
      trim: { form: "trim LENGTH", means: "what is cut off each edge of a new sheet" },
      table: {
        form: "table left LENGTH right LENGTH outfeed LENGTH",
        means: "how far the table reaches from the blade",
      },
      jointer: { form: "jointer LENGTH", means: "the shortest piece that is jointed on its own" },
      planer: { form: "planer LENGTH", means: "the shortest piece that is planed on its own" },
    },
  },
  grooves: {
    form: "grooves { ... }",
    gives: "the cutters for frame-and-panel work",
    properties: {
      wide: { form: "wide LENGTH", means: "the width of groove and tongue" },
      deep: { form: "deep LENGTH", means: "the depth of the groove and the length of the tongue" },
    },
  },
  pockets: {
    form: "pockets { ... }",
    gives: "how pocket screws are set",
    properties: {
      apart: { form: "apart LENGTH", means: "the largest distance between two" },
      edge: { form: "edge LENGTH", means: "the least distance from an edge" },
      thinnest: { form: "thinnest LENGTH", means: "the thinnest stock that takes one" },
      narrowest: { form: "narrowest LENGTH", means: "the narrowest piece that takes two" },
      screws: { form: "screws NAME", means: "the screws used" },
    },
  },
  place: {
    form: "place { ... }",
    gives: "the air that the wood is worked and used in, as moisture contents of the wood",
    properties: {
      shop: { form: "shop NUMBER %", means: "the wood's moisture content in the shop" },
      driest: { form: "driest NUMBER %", means: "its moisture content in the driest season of its place" },
      dampest: { form: "dampest NUMBER %", means: "its moisture content in the dampest season of its place" },
    },
  },
  times: {
    form: "times { ... }",
    gives: "how long the shop's work takes, for the report of a day",
    properties: {
      breakdown: {
        form: "breakdown NUMBER minutes",
        means: "to fetch a whole sheet or board, trim it and bring it to the saw",
      },
      setting: { form: "setting NUMBER minutes", means: "to set fence or stop, and to try it in scrap" },
      sawing: { form: "sawing NUMBER minutes", means: "to make one cut" },
    },
  },
  case: {
    form: "case NAME { ... }",
    gives: "panels, kick, frame members, nailers and openings",
    properties: {
      wide: { form: "wide LENGTH", means: "outside width" },
      high: { form: "high LENGTH", means: "outside height, kick counted in" },
      deep: { form: "deep LENGTH", means: "outside depth, face frame counted in, fronts not" },
      panels: { form: "panels STOCK", means: "what sides, bottom, top and partitions are made of" },
      back: {
        form: "back STOCK [applied | in rabbet LENGTH | in groove LENGTH]",
        means: "the back and how it is held",
      },
      bottom: { form: "bottom STOCK [in dado LENGTH]", means: "the bottom, where it differs from the panels" },
      partitions: { form: "partitions STOCK", means: "what stands between columns, where it differs from the panels" },
      packing: { form: "packing STOCK, ...", means: "the sheets that slide mounts are built up from" },
      top: { form: "top panel [STOCK] | stretchers [LENGTH] | none", means: "what closes the top" },
      kick: { form: "kick LENGTH high LENGTH deep", means: "the recess at the foot" },
      nailers: {
        form: "nailers LENGTH [from STOCK]",
        means: "strips behind the back edge, by which it is fixed to a wall",
      },
      joint: {
        form: "joint dado LENGTH | pocket screws | dowels",
        means: "how bottom and top are held between the sides, and partitions between them",
      },
      edging,
      frame: { form: "frame BOARD { ... }", means: "the face frame; leave it out for a frameless case" },
      corner: {
        form: "corner left CASE | right CASE",
        means: "the case that it meets at an inside corner there, faces at a right angle; what opens must clear",
      },
      wall: {
        form: "wall SIDE LENGTH [trim LENGTH] [past LENGTH]",
        means:
          "a wall of the room, left or right, this far from its outside; how far the trim of a doorway stands out of it, and how far past the face it runs, where it ends; what opens must clear",
      },
      rear: {
        form: "rear { ... }",
        means: "frame and openings on the back face, which share the case's depth with those in front",
      },
      freestanding: { form: "freestanding", means: "it is not fixed to a wall" },
      "on-wall": { form: "on-wall", means: "it hangs on a wall" },
    },
  },
  rear: {
    form: "rear { ... }",
    gives: "openings on the back face of a case",
    properties: { frame: { form: "frame BOARD { ... }", means: "the face frame of the back" } },
  },
  "face frame": {
    form: "frame BOARD { ... }",
    gives: "stiles and rails, and the openings between them",
    properties: {
      stiles: { form: "stiles LENGTH", means: "width of the outer stiles, and of inner ones unless said" },
      rails: { form: "rails LENGTH", means: "width of the outer rails, and of inner ones unless said" },
      joint: { form: "joint pocket screws | tenon LENGTH | dowels", means: "how rails meet stiles" },
    },
  },
  opening: {
    form: "opening NAME { ... }",
    gives: "an opening as it stands, measured",
    properties: {
      wide: {
        form: "wide LENGTH, ...",
        means: "its width, in one place or several; the smallest governs a box, the largest a front",
      },
      high: { form: "high LENGTH, ...", means: "its height, likewise" },
      deep: { form: "deep LENGTH, ...", means: "its depth, from its front edge to what stands behind" },
      beside: {
        form: "beside LENGTH left, LENGTH right",
        means: "how far the case side lies behind the opening's edge",
      },
    },
  },
  box: {
    form: "box for OPENINGS { ... }",
    gives: "sides, front, back, bottom, dividers, slide mounts, screws",
    properties: {
      sides: { form: "sides STOCK", means: "what its sides, front and back are made of" },
      front: { form: "front STOCK", means: "its front, where it differs from the sides" },
      back: { form: "back STOCK", means: "its back, where it differs from the sides" },
      bottom: {
        form: "bottom STOCK [under | in groove LENGTH [up LENGTH] [from behind] | in rabbet LENGTH]",
        means: "its bottom and how it is held",
      },
      packing: { form: "packing STOCK, ...", means: "the sheets that its slide mounts are built up from" },
      corners: {
        form: "corners JOINT [LENGTH] [ends over sides]",
        means:
          "how the corners are made: pocket screws, screws, nails, rabbet, dado, dovetails, half-blind dovetails, fingers",
      },
      slides: { form: "slides NAME [LENGTH]", means: "the slides, and which length if not the longest that fits" },
      wide: { form: "wide LENGTH", means: "its outside width; checked against the opening" },
      high: { form: "high LENGTH", means: "its height, bottom counted in; checked against the opening" },
      deep: { form: "deep LENGTH", means: "its outside depth, where it is not the slide's length" },
      at: { form: "at LENGTH", means: "the height of the slide's middle above the floor of the opening" },
      lap: { form: "lap LENGTH", means: "what half-blind dovetails leave in front" },
      play: { form: "play LENGTH", means: "how much smaller than its grooves the bottom is, over all" },
      holds: { form: "holds WEIGHT", means: "what it will carry" },
      dividers: { form: "dividers COUNT [along | across] [from STOCK]", means: "dividers, evenly spread" },
    },
  },
  front: {
    form: "front for | spanning OPENINGS { ... }",
    gives: "slabs, or stiles, rails and panels",
    properties: front,
  },
  door: {
    form: "door for | spanning OPENINGS { ... }",
    gives: "slabs, or stiles, rails and panels, and hinges",
    properties: front,
  },
  shelf: {
    form: "shelf in OPENINGS { ... }",
    gives: "shelves",
    properties: {
      from: {
        form: "from STOCK [in dado LENGTH]",
        means: "what it is made of; a fixed one may be housed in dados in what it stands between",
      },
      adjustable: { form: "adjustable", means: "it lies on pins in rows of holes" },
      fixed: { form: "fixed", means: "it is fixed between the sides" },
      holds: { form: "holds WEIGHT", means: "what it will carry" },
      count: { form: "count NUMBER", means: "how many" },
      at: {
        form: "at LENGTH, ...",
        means:
          "how high its upper face is above the floor of the opening, one for each; spread evenly unless said; at nought it lies behind the rail below",
      },
      rows: { form: "rows LENGTH", means: "the spacing of the holes" },
      set: { form: "set LENGTH", means: "how far its front edge stands back" },
      gap: { form: "gap LENGTH", means: "the play at each end of an adjustable shelf" },
      ...shelfOrPart,
    },
  },
  part: {
    form: "part NAME { ... }",
    gives: "any other part, so that nothing needs a second list",
    properties: {
      from: { form: "from STOCK", means: "what it is made of" },
      long: { form: "long LENGTH", means: "its length; the grain runs along it unless said" },
      wide: { form: "wide LENGTH", means: "its width" },
      thick: { form: "thick LENGTH", means: "its thickness, where it is not the stock's" },
      count: { form: "count NUMBER", means: "how many" },
      grain,
      ...shelfOrPart,
    },
  },
};

export function propertiesOf(block: BlockWord): ReadonlyMap<string, PropertyWord> {
  return tables[block];
}

/** The blocks that take a property. */
export function belongsIn(key: string): readonly string[] {
  return Object.entries(vocabulary).flatMap(([block, entry]) => (Object.hasOwn(entry.properties, key) ? [block] : []));
}

/** The block's word with its article, to begin a sentence: `A box`. */
export function article(block: BlockWord): string {
  return `${/^[aeiou]/.test(block) ? "An" : "A"} ${block}`;
}

const tables = Object.fromEntries(
  Object.entries(vocabulary).map(([block, entry]) => [block, new Map(Object.entries(entry.properties))]),
) as unknown as Record<BlockWord, ReadonlyMap<string, PropertyWord>>;
