import fc from "fast-check";
import type { Length, Units } from "../../language/core/length.ts";
import { writtenText } from "../../language/core/length.ts";
import { ratio } from "../../language/core/rational.ts";

/** A build file of random but sensible content: its statements in either kind of unit, in the order they were made. */
export interface RandomDesign {
  readonly statements: (units: Units) => readonly string[];
}

type Say = (length: Length) => string;
type Statement = (say: Say) => string;

/** A length on a mark of the tape between two whole inches. */
const between = (least: number, most: number): fc.Arbitrary<Length> =>
  fc.integer({ min: least * 16, max: most * 16 }).map((sixteenths) => ratio(sixteenths, 16));

const corners = fc.constantFrom(
  "screws",
  "pocket screws",
  "rabbet",
  "dado",
  "dovetails",
  "half-blind dovetails",
  "fingers",
);
const frameJoints = fc.constantFrom("", "joint tongue", "joint dowels", "mitred");
const backs = fc.constantFrom("", "back thin applied", "back thin in rabbet", "back thin in groove");

/** Stocks and slides that all random designs share; their thicknesses vary. */
const shop: fc.Arbitrary<Statement[]> = fc
  .record({
    ply: between(1, 1),
    full: fc.integer({ min: 40, max: 48 }),
    half: fc.integer({ min: 26, max: 32 }),
    step: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ full, half, step }) => [
    (say) =>
      `sheet ply { called ${say(ratio(3, 4))}  measures ${say(ratio(full, 64))}  size ${say(ratio(48))} x ${say(ratio(96))} }`,
    (say) =>
      `sheet thin { called ${say(ratio(1, 2))}  measures ${say(ratio(half, 64))}  size ${say(ratio(48))} x ${say(ratio(96))} }`,
    (say) =>
      `board oak { thick ${say(ratio(3, 4))}  wide ${say(ratio(11, 2))}  long ${say(ratio(96))}  species white oak }`,
    (say) => `edging band { thick ${say(ratio(1, 32))} }`,
    (say) =>
      `slides runner { mount side  lengths ${say(ratio(8))} to ${say(ratio(28))} by ${say(ratio(step))}  behind ${say(ratio(1, 2))} }`,
    (say) => `slides low { mount under  lengths ${say(ratio(9))} to ${say(ratio(27))} by ${say(ratio(3))} }`,
    () => "hinges cup { cup 35mm  bore 5mm }",
  ]);

const boxText = (opening: string): fc.Arbitrary<Statement> =>
  fc
    .record({
      corner: corners,
      slides: fc.constantFrom("runner", "low"),
      bottom: fc.constantFrom(
        "",
        "bottom thin under",
        "bottom thin in groove",
        "bottom thin in groove from behind",
        "bottom thin in rabbet",
      ),
      high: fc.option(between(2, 3)),
      dividers: fc.integer({ min: 0, max: 2 }),
    })
    .map(
      ({ corner, slides, bottom, high, dividers }): Statement =>
        (say) =>
          `box for ${opening} { sides ply  slides ${slides}  corners ${corner}  ${bottom}  ${high === null ? "" : `high ${say(high)}`}  dividers ${dividers} }`,
    );

const frontText = (kind: "front" | "door", opening: string): fc.Arbitrary<Statement> =>
  fc
    .record({
      joint: frameJoints,
      slab: fc.boolean(),
      placed: fc.constantFrom("overlay", "inset", "full-overlay"),
      overlay: fc.integer({ min: 1, max: 3 }),
      edging: fc.constantFrom("", "edging band", "edging band on left, top"),
      mid: fc.constantFrom("", "mid rails 1", "mid stiles 1"),
    })
    .map(
      ({ joint, slab, placed, overlay, edging, mid }): Statement =>
        (say) => {
          const at = placed === "overlay" ? `overlay ${say(ratio(overlay, 8))}` : placed;
          const made = slab ? `slab ply ${edging}` : `frame oak ${say(ratio(3, 2))} wide  panel thin  ${joint}  ${mid}`;
          return `${kind} for ${opening} { ${at}  ${made}  ${kind === "door" ? "hinged left  hinges cup" : ""} }`;
        },
    );

/** A case with a column of drawers and, perhaps, a door beside it. */
const caseText = (name: string): fc.Arbitrary<Statement[]> =>
  fc
    .record({
      wide: between(24, 60),
      high: between(20, 40),
      deep: between(12, 26),
      column: between(9, 14),
      drawers: fc.integer({ min: 1, max: 4 }),
      framed: fc.boolean(),
      kick: fc.boolean(),
      back: backs,
      boxes: boxText(`${name}-d-1 to ${name}-d-N`),
      fronts: frontText("front", `${name}-d-1 to ${name}-d-N`),
      door: frontText("door", `${name}-rest`),
    })
    .map(({ wide, high, deep, column, drawers, framed, kick, back, boxes, fronts, door }) => {
      const numbered =
        (statement: Statement): Statement =>
        (say) =>
          statement(say).replaceAll("-d-N", `-d-${drawers}`);
      const whole: Statement = (say) => {
        const [upright, lying] = framed ? ["stile", "rails"] : ["partition", "rails"];
        const drawerColumn = `down ${say(column)} { openings ${name}-d-1 to ${name}-d-${drawers} equal, ${lying} }`;
        const layout = `across { ${drawerColumn}  ${upright}  opening ${name}-rest rest }`;
        const face = framed ? `frame oak { stiles ${say(ratio(2))}  rails ${say(ratio(3, 2))}  ${layout} }` : layout;
        const foot = kick ? `kick ${say(ratio(4))} high ${say(ratio(3))} deep` : "";
        return `case ${name} { wide ${say(wide)}  high ${say(high)}  deep ${say(deep)}  panels ply  ${back}  ${foot}  ${face} }`;
      };
      const shelf: Statement = () => `shelf in ${name}-rest { from ply  adjustable }`;
      return [whole, numbered(boxes), numbered(fronts), door, shelf];
    });

/** An opening that stands, measured in three places, with a box and a front. */
const standing: fc.Arbitrary<Statement[]> = fc
  .record({
    wide: between(10, 24),
    high: between(4, 10),
    deep: between(12, 26),
    slack: fc.integer({ min: 0, max: 3 }),
    box: boxText("alone"),
    front: frontText("front", "alone"),
  })
  .map(({ wide, high, deep, slack, box, front }) => {
    const more = (length: Length): Length => ({ n: length.n * 16n + BigInt(slack) * length.d, d: length.d * 16n });
    const lowest = (length: Length): Length => ratio(length.n, length.d);
    return [
      (say) =>
        `opening alone { wide ${say(wide)}, ${say(lowest(more(wide)))}  high ${say(high)}, ${say(lowest(more(high)))}  deep ${say(deep)}  beside ${say(ratio(5, 4))} }`,
      box,
      front,
    ];
  });

export const randomDesign: fc.Arbitrary<RandomDesign> = fc
  .tuple(shop, caseText("one"), fc.option(caseText("two")), fc.option(standing))
  .map((groups) => groups.flatMap((group) => group ?? []))
  .map((statements) => ({
    statements: (units) => [units, ...statements.map((statement) => statement((length) => writtenText(length, units)))],
  }));
