/** Whole designs drawn by chance from a seed: every way of building a case, a box, a front and a shelf that fits by its own rules. */
export function design(seed: number): string {
  const dice = diceOf(seed);
  const metric = dice.chance(1, 3);
  const framed = dice.chance(1, 2);
  const shop = metric ? metricShop(dice) : inchShop(dice);
  // Without a partition behind its stile a shelf would have nothing to lie on at one end.
  const partitioned = !framed || dice.chance(2, 3);
  const parts = [
    caseText(dice, shop, framed, partitioned),
    boxText(dice, shop, "d-1 to d-3"),
    frontText(dice, shop, "d-1 to d-3", framed),
    cupboard(dice, shop, partitioned),
    alone(dice, shop),
  ];
  return [shop.head, ...parts].join("\n");
}

interface Shop {
  readonly head: string;
  /** A length in inches, or its like in millimetres. */
  readonly say: (inches: number) => string;
}

interface Dice {
  readonly whole: (least: number, most: number) => number;
  readonly chance: (of: number, among: number) => boolean;
  readonly pick: <T>(from: readonly T[]) => T;
}

/** A small generator of its own (mulberry32), so that a seed gives one design for ever. */
function diceOf(seed: number): Dice {
  let state = (seed * 0x9e3779b9 + 0x6d2b79f5) | 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  const whole = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  return { whole, chance: (of, among) => next() < of / among, pick: (from) => from[whole(0, from.length - 1)]! };
}

function inchShop(dice: Dice): Shop {
  const [thick, half, quarter] = [dice.whole(42, 49), dice.whole(28, 32), dice.whole(12, 16)];
  const head = `project "Drawn by chance"
inches
sheet ply { called 3/4  measures ${thick}/64  size 60 x 120 }
sheet half { called 1/2  measures ${half}/64  size 60 x 120 }
sheet thin { called 1/4  measures ${quarter}/64  size 60 x 120 }
board wood { thick ${dice.pick(["3/4", "13/16"])}  wide 6, 8  long 96  species ${dice.pick(["hard maple", "black cherry", "white oak"])}  moisture 8% }
board leaf { thick 3/8  wide 6, 8  long 96  species hard maple  moisture 8% }
edging band { thick 1/32 }
slides side-run { mount side  extension full  lengths 8 to 28 by 2  clearance 1/2 +1/32 -0  behind 1/2  carries 100 lb }
slides under-run { mount under  extension full  lengths 9 to 30 by 3  carries 75 lb }
hinges cup { cup 35mm  overlay 1/2 }
grooves { wide 1/4  deep ${dice.pick(["3/8", "7/16"])} }`;
  return { head, say: (inches) => sixteenths(inches) };
}

function metricShop(dice: Dice): Shop {
  const [thick, half, quarter] = [dice.whole(174, 192), dice.whole(115, 124), dice.whole(52, 62)];
  const head = `project "Drawn by chance"
millimetres
sheet ply { called 18  measures ${thick / 10}  size 1500 x 3000 }
sheet half { called 12  measures ${half / 10}  size 1500 x 3000 }
sheet thin { called 6  measures ${quarter / 10}  size 1500 x 3000 }
board wood { thick 20  wide 150, 200  long 2400  species ${dice.pick(["hard maple", "black cherry", "white oak"])}  moisture 8% }
board leaf { thick 9  wide 150  long 2400  species hard maple  moisture 8% }
edging band { thick 0.6 }
slides side-run { mount side  extension full  lengths 200 to 700 by 50  clearance 12.7 +0.8 -0  behind 13  carries 45 kg }
slides under-run { mount under  extension full  lengths 200 to 750 by 50  carries 30 kg }
hinges cup { cup 35  overlay 13  bore 5 }
grooves { wide 6  deep ${dice.pick([10, 11])} }`;
  return { head, say: (inches) => String(Math.round(inches * 25.4 * 2) / 2) };
}

function sixteenths(inches: number): string {
  const steps = Math.round(inches * 16);
  const [whole, rest] = [Math.floor(steps / 16), steps % 16];
  if (rest === 0) return String(whole);
  return whole === 0 ? `${rest}/16` : `${whole} ${rest}/16`;
}

/** Three openings in a column of drawers beside a cupboard, so that every size can be worked out. */
function caseText(dice: Dice, { say }: Shop, framed: boolean, partitioned: boolean): string {
  const back = dice.pick(["back thin", "back thin in groove", "back half in rabbet", "back half applied"]);
  const lines = [
    `case hold {`,
    `  wide ${say(dice.whole(36, 56))}  high ${say(dice.whole(30, 42))}  deep ${say(dice.whole(18, 27))}`,
    `  panels ply  ${back}`,
    dice.chance(1, 2) ? `  kick ${say(dice.whole(3, 5))} high ${say(dice.whole(2, 4))} deep` : "",
    dice.chance(1, 3) ? `  joint dado` : "",
    dice.chance(1, 4) ? `  bottom half` : "",
    dice.chance(1, 4) ? `  top ${dice.pick(["stretchers", "panel half", "none"])}` : "",
    dice.chance(1, 4) ? `  edging band on front` : "",
    dice.chance(1, 4) ? `  nailers ${say(3)} from half` : "",
    framed && partitioned ? `  partitions ply` : "",
    framed ? frameText(dice, say) : layoutText(dice, say, "partition"),
    "}",
  ];
  return lines.filter((line) => line !== "").join("\n");
}

function frameText(dice: Dice, say: Shop["say"]): string {
  const joint = dice.pick(["", `joint tenon ${say(0.75)}`, "joint dowels"]);
  return `  frame wood { stiles ${say(dice.whole(3, 5) / 2)}  rails ${say(1.5)}  ${joint}\n${layoutText(dice, say, "stile")}  }`;
}

function layoutText(dice: Dice, say: Shop["say"], upright: "stile" | "partition"): string {
  const rails = upright === "stile" || dice.chance(1, 2);
  const between = rails ? `, rails${upright === "stile" ? ` ${say(1.5)}` : ""}` : "";
  const column = `down ${say(dice.whole(14, 18))} { openings d-1 to d-3 equal${between} }`;
  const other = "down rest { opening cupboard rest }";
  return `  across { ${dice.chance(1, 2) ? `${column} ${upright} ${other}` : `${other} ${upright} ${column}`} }\n`;
}

function boxText(dice: Dice, { say }: Shop, openings: string): string {
  const under = dice.chance(1, 3);
  const sides = under ? "half" : dice.pick(["half", "ply"]);
  const groove = `thin in groove ${say(0.25)} up ${say(0.5)}`;
  const bottom = dice.pick(["thin under", groove, `${groove} from behind`, `half in rabbet ${say(0.25)}`]);
  const corners = dice.pick([
    "pocket screws",
    "screws",
    `rabbet ${say(0.25)}`,
    `dado ${say(0.25)}`,
    "dovetails",
    "half-blind dovetails",
    "fingers",
    "mitred",
  ]);
  const dividers = dice.chance(1, 3) ? `dividers ${dice.whole(1, 4)} ${dice.pick(["along", "across"])} from thin` : "";
  const front = dice.chance(1, 4) ? "front ply" : "";
  return `box for ${openings} { sides ${sides}  ${front}  bottom ${bottom}  corners ${corners}  slides ${under ? "under-run" : "side-run"}  ${dividers}  holds 20 lb }`;
}

function frontText(dice: Dice, { say }: Shop, openings: string, framed: boolean): string {
  const lies = framed ? dice.pick([`overlay ${say(0.5)}`, "inset"]) : dice.pick(["full-overlay", "inset"]);
  return `front for ${openings} { ${lies}  ${dice.chance(1, 2) ? slab(dice) : framedLeaf(dice, say)} }`;
}

function slab(dice: Dice): string {
  return `slab ply${dice.chance(1, 2) ? "  edging band" : ""}`;
}

function framedLeaf(dice: Dice, say: Shop["say"]): string {
  const panel = dice.pick(["panel thin", "panel half flush back", "panel half", "panel leaf"]);
  const joint = dice.pick(["", "", "joint dowels", `joint tenon ${say(1)}`, "mitred"]);
  return `frame wood ${say(1.5)} wide  ${panel}  ${joint}`;
}

function cupboard(dice: Dice, { say }: Shop, shelved: boolean): string {
  const hung = dice.pick(["hinged left", "hinged right", "pair  hinged left"]);
  const mid = dice.chance(1, 3) ? `mid ${dice.pick(["rails 1", "stiles 1", "rails 2"])}` : "";
  const made = dice.chance(1, 2) ? slab(dice) : `${framedLeaf(dice, say)}  ${mid}`;
  const door = dice.chance(2, 3) ? `door for cupboard { ${hung}  hinges cup  ${made} }\n` : "";
  if (!shelved) return door;
  const shelf = `shelf in cupboard { from ply  ${dice.chance(1, 2) ? "adjustable" : "fixed"}  count ${dice.whole(1, 3)} ${dice.chance(1, 2) ? " edging band on front" : ""} }`;
  return `${door}${shelf}`;
}

/** An opening that stands already, out of parallel. */
function alone(dice: Dice, shop: Shop): string {
  const { say } = shop;
  const wide = dice.whole(14, 22);
  const opening = `opening bay {\n  wide ${say(wide + 1 / 16)}, ${say(wide)}, ${say(wide + 1 / 8)}\n  high ${say(dice.whole(7, 10))}  deep ${say(dice.whole(18, 24))}\n  beside ${say(1.25)} left, ${say(1.25)} right\n}`;
  return `${opening}\n${boxText(dice, shop, "bay")}\nfront for bay { overlay ${say(0.5)}  ${slab(dice)} }`;
}
