import { expect, test } from "vitest";
import { built } from "../../support/built.ts";

const back = (stock: string) =>
  built(`inches
sheet ply { called 3/4  measures 23/32  size 48 x 96 }
board cherry { thick 1/2  wide 5 1/2, 7 1/4  long 96  species black cherry  moisture 7% }
place { shop 7%  driest 5%  dampest 11% }
case hutch { wide 42  high 72  deep 16  panels ply  back ${stock} in rabbet 3/8  opening plates }
shelf in plates { from ply  fixed  holds 20 lb }
`).findings.filter(({ code }) => code === "part/wider-than-board" || code === "wood/across-grain");

test("a solid back is to be made of loose boards, not glued up in one", () => {
  // 42 − 2 × (23/32 − 3/8) = 41 5/16 of boards of 7 1/4: five and a little
  const found = back("cherry").map(({ remedy }) => remedy);
  expect(found).toEqual([
    expect.stringMatching(/^Make it of 6 boards or more side by side, each lapped or tongued into the next/),
    expect.stringMatching(/^Make it of loose boards, each lapped or tongued into the next/),
  ]);
  expect(back("ply")).toEqual([]);
});
