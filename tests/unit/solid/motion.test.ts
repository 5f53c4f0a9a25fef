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
