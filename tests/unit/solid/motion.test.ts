import { describe, expect, test } from "vitest";
import { built } from "../../support/built.ts";

const shop = `inches
sheet ply { called 3/4  measures 3/4  size 48 x 96 }
sheet thin { called 1/4  measures 1/4  size 48 x 96 }
board oak { thick 3/4  wide 6, 8  long 96  species white oak }
slides runner { mount side  lengths 10 to 28 by 2  clearance 1/2  behind 1/2 }
hinges cup { cup 35mm  overlay 1/2 }
`;

function motionsOf(text: string): readonly string[] {
  const { motions } = built(shop + text).dryFit()!;
  return motions.map(({ mover, travel, blocks }) => {
    const first = blocks[0];
    const stop =
      first === undefined ? "free" : `${first.part.part.name} at ${Number(first.at.toFixed(3))}: ${first.obstacle.id}`;
    return `${mover}, ${travel}: ${stop}`;
  });
}

describe("drawers along their travel", () => {
  test("come out by what their slides travel, past frame, rails and neighbours", () => {
    expect(
      motionsOf(`
case one { wide 40  high 24  deep 24  panels ply  back thin  partitions ply
  frame oak { stiles 2  rails 1 1/2  across { down 16 { openings a-1 to a-3 equal, rails 1 1/2 } stile opening b rest } } }
box for a-1 to a-3 { sides ply  bottom thin under  corners screws  slides runner }
front for a-1 to a-3 { slab ply }
door for b { slab ply  hinged left  hinges cup }
`),
    ).toEqual(["box a-1, 22: free", "box a-2, 22: free", "box a-3, 22: free", "door b, 90: free"]);
  });

  test("are not said to meet on their way what they stand in when they are shut", () => {
    // 28 deep in a case of 24: its sides lie through the back of the case, and its own back lies behind that.
    expect(
      motionsOf(`
case one { wide 20  high 8  deep 24  panels ply  back thin  frame oak { stiles 2  rails 1 1/2  opening a } }
box for a { sides ply  bottom thin under  corners screws  slides runner 28 }
`),
    ).toEqual(["box a, 28: free"]);
  });

  test("are stopped by a false front before them, where it stands", () => {
    // The box begins at the face, the false front on it.
    expect(
      motionsOf(`
opening left { wide 15  high 6  deep 20 }
box for left { sides ply  bottom thin under  corners screws  slides runner }
false front for left { slab ply }
`),
    ).toEqual(["box left, 18: side at 0: false front left/slab"]);
  });

  test("meet a door that stands open only as far as it stands in the opening", () => {
    const inner = (overlay: string): readonly string[] =>
      motionsOf(`
opening left { wide 15  high 20  deep 22 }
door for left { overlay ${overlay}  slab ply  hinged left  hinges cup }
box for left { sides ply  bottom thin under  corners screws  slides runner  high 6 }
`).slice(0, 1);
    // A door of 3/4 with an overlay of 1/4 stands 1/2 into the opening: as far as the slide's 1/2, and no further.
    expect(inner("1/4")).toEqual(["box left, 20: free"]);
    expect(inner("3/16")).toEqual(["box left, 20: side at 0.75: door left/slab"]);
  });
});

describe("a pull-out behind a door", () => {
  // Boxes begin 1/2 beside the opening's edge; a leaf of t at an angle a stands t sin a past its hinge edge, which is the
  // overlay outside the opening, and meets what comes out where its back corner's edge crosses it.
  const out = (door: string, hinges = "hinges wide { cup 35mm }\n"): string =>
    motionsOf(`${hinges}
opening left { wide 15  high 20  deep 22 }
door for left { slab ply  hinged left  hinges wide  ${door} }
box for left { sides ply  bottom thin under  corners screws  slides runner  high 6 }
`)[0]!;

  test("clears one that opens past a right angle by what it then stands in", () => {
    // 90: 3/4 − 3/16 = 0.5625. 110: 0.7048 − 0.1875 = 0.517, met on the edge from the pivot to (0.7048, 0.2565 before it),
    // at 0.6875 across: 0.2502 before the face of the door, which is 0.75 before the box. 165: 0.1941 − 0.1875 = 0.0066.
    expect(out("overlay 3/16")).toBe("box left, 20: side at 0.75: door left/slab");
    expect(out("overlay 3/16  opens 110 degrees")).toBe("box left, 20: side at 1: door left/slab");
    expect(out("overlay 3/16  opens 165 degrees")).toBe("box left, 20: free");
    expect([out("overlay 3/16  opens 165"), out("overlay 3/16  opens 165°")]).toEqual([
      "box left, 20: free",
      "box left, 20: free",
    ]);
    expect(out("overlay 3/16  opens 180 degrees")).toBe("box left, 20: free");
    // 110: 0.7048 − 1/4 = 0.4548; 90: exactly 1/2
    expect(out("overlay 1/4  opens 110 degrees")).toBe("box left, 20: free");
    // no overlay: 135 leaves 0.5303, 140 leaves 0.4821
    expect(out("overlay 0  opens 135 degrees")).toMatch(/^box left, 20: side at /);
    expect(out("overlay 0  opens 140 degrees")).toBe("box left, 20: free");
  });

  test("meets one that stops short of a right angle, and goes by what the door says before what its hinges do", () => {
    const hinges = "hinges wide { cup 35mm  opens 165 degrees }\n";
    expect(out("overlay 1/2", hinges)).toBe("box left, 20: free");
    // 75: the back of the leaf, a along it, stands a cos 75 + 0.7244 across and a sin 75 − 0.1941 before: 1 across, where
    // the side begins, that is 0.8343 before the door's face, and 1.5843 before the box.
    expect(out("overlay 1/2  opens 75 degrees", hinges)).toMatch(/^box left, 20: side at 1\.58/);
    expect(out("overlay 3/16", hinges)).toBe("box left, 20: free");
    expect(out("overlay 3/16  opens 90 degrees", hinges)).toBe("box left, 20: side at 0.75: door left/slab");
  });

  test("behind an inset door needs the gap and the thickness, whichever edge it is hinged at", () => {
    // gap 1/16 + 3/4 at 90; at 150 1/16 + 3/8 = 0.4375, at 145 1/16 + 0.4302 = 0.4927, at 140 1/16 + 0.4821 = 0.5446
    expect(out("inset  opens 90 degrees")).toMatch(/side at 0.75: door left\/slab$/);
    expect(out("inset  opens 140 degrees")).toMatch(/door left\/slab$/);
    expect(out("inset  opens 145 degrees")).toBe("box left, 20: free");
    expect(out("inset  pair  opens 145 degrees")).toBe("box left, 20: free");
    expect(out("inset  pair  opens 140 degrees")).toMatch(/door left\/slab \(1\)$/);
  });

  test("above a flap lies as the leaf lies: its own thickness above its hinges", () => {
    const flap = (door: string, box: string) =>
      motionsOf(`hinges wide { cup 35mm }
opening left { wide 15  high 20  deep 22 }
door for left { slab ply  hinged bottom  hinges wide  ${door} }
box for left { sides ply  bottom thin under  corners screws  slides runner  high 6 ${box} }
`)[0];
    // 1/4 below the box: 3/4 less an overlay of 1/2
    expect(flap("overlay 1/2", "")).toBe("box left, 20: free");
    expect(flap("overlay 3/8", "")).toMatch(/at 0.75: door left\/slab$/);
  });

  test("is told how far to come in, and that hinges which open further would do", () => {
    const of = (door: string) =>
      built(`${shop}opening left { wide 15  high 20  deep 22 }
hinges wide { cup 35mm }
door for left { slab ply  hinged left  hinges wide  ${door} }
box for left { sides ply  bottom thin under  corners screws  slides runner  high 6 }
`).findings.filter(({ code }) => code === "motion/drawer-blocked")[0]!;
    const square = of("overlay 3/16");
    expect(square.message).toBe(
      "box left comes 3/4 in out of 20 in: the side of box left meets the slab of door left, open at a right angle,",
    );
    expect(square.remedy).toBe(
      "Bring the box in by 1/16 in at the hinge side: pack its slide out there and make the box as much narrower; or use hinges that open further, and say how far: opens 165 degrees.",
    );
    expect(of("overlay 1/2  opens 75 degrees").message).toContain("open to 75 degrees");
  });
});

describe("a door beside a wall", () => {
  /** How far it opens, and where and with what it meets the wall. */
  const opened = (wall: string, door: string, frame = "stiles 2"): readonly (string | number)[] => {
    const { motions } = built(`${shop}hinges wide { cup 35mm  overlay 1/2  opens 110 degrees }
case one { wide 24  high 20  deep 16  panels ply  ${wall}  frame oak { ${frame}  rails 2  opening a } }
door for a { overlay 1/2  slab ply  hinges wide  ${door} }
`).dryFit()!;
    return motions.flatMap(({ wall: stop }) =>
      stop === undefined
        ? []
        : [Number(stop.at.toFixed(2)), stop.pull ? "pull" : "leaf", Number(stop.lacks.toFixed(3))],
    );
  };

  test("opens until its free edge, swung out beside its hinges, meets it", () => {
    // 21 wide, hinged 2 − 1/2 + 1/2 = 2 from the wall: 90 + asin(2/21) = 95.47
    expect(opened("wall left 1/2", "hinged left")).toEqual([95.47, "leaf", 0]);
    expect(opened("wall left 1 trim 1/2", "hinged left")).toEqual([95.47, "leaf", 0]);
    expect(opened("wall right 1/2", "hinged right")).toEqual([95.47, "leaf", 0]);
    // away from the other wall, and beyond what its hinges do, it opens as it is said: 21 sin 20 = 7.18
    expect(opened("wall left 1/2", "hinged right")).toEqual([]);
    expect(opened("wall left 5 1/2", "hinged left")).toEqual([109.47, "leaf", 0]);
    expect(opened("wall left 5 3/4", "hinged left")).toEqual([]);
    expect(opened("wall left 1/2", "hinged left  opens 95 degrees")).toEqual([]);
  });

  test("passes the end of a wall, or meets its corner with its face", () => {
    // The corner is 2 beside and 8 − 3/4 before the hinge edge: 90 + atan(2 ÷ 7.25) = 105.42; with 6: 90 + atan(2 ÷ 5.25) = 110.85
    expect(opened("wall left 1/2 past 8", "hinged left")).toEqual([105.42, "leaf", 0]);
    expect(opened("wall left 1/2 past 6", "hinged left")).toEqual([]);
    // The edge stands 21 cos 5.46 = 20.9 before the hinges where it meets a wall that goes on.
    expect(opened("wall left 1/2 past 22", "hinged left")).toEqual([95.47, "leaf", 0]);
    expect(opened("wall left 1/2 past 3/4", "hinged left")).toEqual([]);
  });

  test("is stopped by its pull before that", () => {
    // hypot(21, 1.25) = 21.037: 90 + asin(2 ÷ 21.037) − atan(1.25 ÷ 21) = 92.05
    expect(opened("wall left 1/2", "hinged left  pulls 1")).toEqual([92.05, "pull", 0]);
    // 22 wide, 1 from the wall: 90 + asin(1 ÷ 22.035) − atan(1.25 ÷ 22) = 89.35, and 1/4 more would do for a right angle
    expect(opened("wall left 0", "hinged left  pulls 1", "stiles 1 1/2")).toEqual([89.35, "pull", 0.25]);
  });

  test("keeps what is behind it in, where it would have opened far enough", () => {
    const inner = (wall: string) =>
      built(`${shop}hinges wide { cup 35mm  opens 165 degrees }
case one { wide 24  high 20  deep 22  panels ply  ${wall}  frame oak { stiles 3/4  rails 2  opening a } }
door for a { overlay 3/16  slab ply  hinged left  hinges wide }
box for a { sides ply  bottom thin under  corners screws  slides runner  high 6 }
`);
    const blocked = (wall: string) => inner(wall).findings.filter(({ code }) => code === "motion/drawer-blocked");
    expect(blocked("")).toEqual([]);
    expect(blocked("wall right 0")).toEqual([]);
    const [held] = blocked("wall left 1/2");
    // 22 7/8 wide, hinged 9/16 + 1/2 from the wall: 90 + asin(1.0625 ÷ 22.875) = 92.66
    expect(held?.message).toContain("open to 92 degrees");
    expect(held?.remedy).toContain("move the case away from the wall, or hinge the door on the other side");
  });
});

describe("doors through their swing", () => {
  /** An inset door of 3 in or so, 3/4 thick: its free edge swings out to the root of w² + t², 0.0923 past 3. */
  const inset = (gap: string): readonly string[] =>
    motionsOf(`
case one { wide 24  high 20  deep 16  panels ply  back thin  across { opening slim 3 + 2 * ${gap}  partition  opening other rest } }
door for slim { inset  gap ${gap}  slab ply  hinged left  hinges cup }
`);

  test("bind at the free edge where the gap is less than their thickness makes of it", () => {
    expect(inset("3/32")).toEqual(["door slim, 90: free"]);
    expect(inset("11/128")[0]).toMatch(/^door slim, 90: slab at .*: case one\/partition$/);
  });

  test("turn on the side they are hinged at, also in pairs and from behind", () => {
    const leaves = built(`${shop}
case one { wide 30  high 20  deep 24  panels ply  opening near  rear { opening far } }
door for near, far { slab ply  pair  hinged left  hinges cup }
`).dryFit()!;
    expect(leaves.motions.map(({ mover, blocks }) => `${mover}: ${blocks.length}`)).toEqual([
      "door near: 0",
      "door near: 0",
      "door far: 0",
      "door far: 0",
    ]);
  });

  test("hit a door that closes over the same edge", () => {
    // Two doors whose fronts leave no gap at the free edge of the first.
    const found = motionsOf(`
case one { wide 12  high 20  deep 16  panels ply  across { opening left 4  partition  opening right rest } }
door for left { overlay 3/8  slab ply  hinged left  hinges cup }
door for right { overlay 3/8  slab ply  hinged right  hinges cup }
`);
    expect(found[0]).toMatch(/^door left, 90: slab at .*: door right\/slab$/);
  });
});
