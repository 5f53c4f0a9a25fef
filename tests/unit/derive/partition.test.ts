import { describe, expect, test } from "vitest";
import { allParts, built, machiningOf, partOf, partsOf } from "../../support/built.ts";
import { stock, store } from "../../support/store.ts";

const across = "across { opening one  partition  opening two }";
const partitions = (properties: string) =>
  partsOf(store(properties), "case store").filter((part) => part.includes("partition"));

// t = 23/32; from bottom to top 30 − 1 7/16 = 28 9/16.
describe("a partition", () => {
  test("is as high as the case is inside: less a kick, more where the top is open", () => {
    expect(partitions(across)).toEqual(["1 partition 28 9/16 x 12"]);
    // 28 9/16 − 4; 30 − 23/32 = 29 9/32; a top of 15/32: 30 − 23/32 − 15/32 = 28 13/16, though not with stretchers of ply
    expect(partitions(`kick 4 high 3 deep  ${across}`)).toEqual(["1 partition 24 9/16 x 12"]);
    expect(partitions(`top none  ${across}`)).toEqual(["1 partition 29 9/32 x 12"]);
    expect(partitions(`top panel thin  ${across}`)).toEqual(["1 partition 28 13/16 x 12"]);
    expect(partitions(`top stretchers  ${across}`)).toEqual(["1 partition 28 9/16 x 12"]);
    expect(partitions(`bottom thin  ${across}`)).toEqual(["1 partition 28 13/16 x 12"]);
  });

  test("goes into a dado below, and into one above where there is a top", () => {
    expect(partitions(`joint dado 1/4  ${across}`)).toEqual(["1 partition 29 1/16 x 12"]);
    // 29 9/32 + 1/4; 28 9/16 + 1/4
    expect(partitions(`joint dado 1/4  top none  ${across}`)).toEqual(["1 partition 29 17/32 x 12"]);
    expect(partitions(`joint dado 1/4  top stretchers  ${across}`)).toEqual(["1 partition 28 13/16 x 12"]);
  });

  test("that ends at a rail is only as high as its opening, and is cut to fit", () => {
    const under = store("down { opening one 10  rail  across { opening two  partition  opening three } }");
    // 28 9/16 − 10 − 23/32 = 17 27/32
    expect(partsOf(under, "case store")).toContain("1 partition 17 27/32 x 12");
    expect(partOf(under, "case store", "partition").cutToFit).toMatch(/between other members/);
    const over = store("down { across { opening two  partition  opening three }  rail  opening one 10 }");
    expect(partsOf(over, "case store")).toContain("1 partition 17 27/32 x 12");
    expect(partOf(over, "case store", "partition").cutToFit).toBeDefined();
  });

  test("with rails at its sides runs whole", () => {
    const beside = store("across { down { opening one  rail  opening two }  partition  opening three }");
    expect(partsOf(beside, "case store")).toContain("1 partition 28 9/16 x 12");
    expect(partOf(beside, "case store", "partition").cutToFit).toBeUndefined();
    const both = store(
      "across { down { opening one  rail  opening two }  partition  down { opening three 8  rail  opening four } }",
    );
    expect(partsOf(both, "case store")).toContain("1 partition 28 9/16 x 12");
  });

  test("stands behind the stiles of a frame only where the case has partitions", () => {
    const framed = (more: string) =>
      partitions(`${more} frame oak { stiles 2  across { opening one  stile  opening two } }`);
    // 12 − 3/4 behind the frame
    expect(framed("partitions ply")).toEqual(["1 partition 28 9/16 x 11 1/4"]);
    expect(framed("")).toEqual([]);
  });

  test("behind a stile that ends at a mid rail is as high as the stile", () => {
    const build = store(`partitions ply
      frame oak { stiles 2  rails 2  down { opening one 10  rail  across { opening two  stile  opening three } } }`);
    // 30 − 4 − 10 − 2 = 14
    expect(partsOf(build, "case store")).toContain("1 partition 14 x 11 1/4");
  });

  test("alike is counted, and its dados with it", () => {
    const three = store("joint dado 1/4  across { opening a  partition  opening b  partition  opening c }");
    expect(partsOf(three, "case store")).toContain("2 partition 29 1/16 x 12");
    const dados = ["dado inside face, 23/32 wide, 1/4 deep, 2 times"];
    expect(machiningOf(partOf(three, "case store", "bottom"))).toEqual(dados);
    expect(machiningOf(partOf(three, "case store", "top"))).toEqual(dados);
    // Of another thickness the dado is as wide as the partition.
    const thin = store(`joint dado 1/4  partitions thin  ${across}`);
    expect(machiningOf(partOf(thin, "case store", "bottom"))).toEqual([
      "dado inside face, 15/32 wide, 1/4 deep, 1 times",
    ]);
    // One that ends at a rail does not come to the bottom of the case.
    const over = store(
      "joint dado 1/4  down { across { opening two  partition  opening three }  rail  opening one 10 }",
    );
    expect(machiningOf(partOf(over, "case store", "bottom"))).toEqual([]);
  });

  test("is notched for the nailers that run past it, unless they lie behind a back in grooves", () => {
    const cut = (properties: string) =>
      machiningOf(partOf(store(`${properties}  ${across}`), "case store", "partition"));
    expect(cut("nailers 3 1/2")).toEqual(["notch back edge, 3 1/2 wide, 23/32 deep, 2 times"]);
    expect(cut("nailers 3 1/2 from oak")).toEqual(["notch back edge, 3 1/2 wide, 3/4 deep, 2 times"]);
    expect(cut("nailers 3 1/2  back quarter applied")).toEqual(["notch back edge, 3 1/2 wide, 23/32 deep, 2 times"]);
    expect(cut("nailers 3 1/2  back quarter in groove 1/4")).toEqual([]);
    expect(cut("")).toEqual([]);
  });

  test("has the case's edging on its front, and is narrower by it", () => {
    const edged = store(`edging band on front  ${across}`);
    expect(partsOf(edged, "case store")).toContain("1 partition 28 9/16 x 11 31/32");
    expect(machiningOf(partOf(edged, "case store", "partition"))).toEqual(["edging front edge"]);
    for (const name of ["side", "bottom", "top"])
      expect(machiningOf(partOf(edged, "case store", name))).toEqual(["edging front edge"]);
  });
});

describe("what holds a case together", () => {
  const sides = (properties: string) => partOf(store(`${properties}  opening one`), "case store", "side").machining;

  test("the dados in its sides are for bottom and top, or for the bottom alone where it is open", () => {
    expect(sides("joint dado 1/4")).toMatchObject([{ kind: "dado", count: 2, note: "bottom and top" }]);
    expect(sides("joint dado 1/4  top none")).toMatchObject([{ kind: "dado", note: "bottom" }]);
    expect(sides("joint dado 1/4  top none")[0]?.count).toBeUndefined();
    expect(sides("joint dowels")).toEqual([]);
  });

  test("bottom, top, stretchers and partitions are bored at both ends for screws or dowels, by their width", () => {
    const bored = (properties: string, name: string) =>
      machiningOf(partOf(store(`${properties}  ${across}`), "case store", name));
    // 12 deep less a 7/32 back: 11 between the outer two at most, so three at each end.
    expect(bored("joint pocket screws", "bottom")).toEqual(["pockets outside face, both ends, 6 times"]);
    expect(bored("joint pocket screws", "partition")).toEqual(["pockets outside face, both ends, 6 times"]);
    expect(bored("joint dowels", "top")).toEqual(["holes both ends, 6 times"]);
    // A stretcher 4 wide has two.
    expect(bored("joint dowels  top stretchers", "stretcher")).toEqual(["holes both ends, 4 times"]);
    expect(bored("joint pocket screws", "side")).toEqual([]);
  });

  test("a back in grooves stands above the kick, in front of a ledge as deep as the nailers are thick", () => {
    const build = store("kick 4 high 3 deep  back quarter in groove 1/4  nailers 3 from oak  opening one");
    // 30 − 4 = 26 high; 34 9/16 + 2 × 1/4 − 1/16 = 35 wide; inside 12 − 3/4 − 7/32 = 11 1/32
    expect(partsOf(build, "case store")).toContain("1 back 26 x 35");
    expect(partsOf(build, "case store")).toContain("1 bottom 34 9/16 x 11 1/32");
    expect(machiningOf(partOf(build, "case store", "side"))).toEqual([
      "notch front bottom corner, 3 wide, 4 deep",
      "groove inside face, back edge, 7/32 wide, 1/4 deep, 3/4 from",
    ]);
    // In rabbets it runs down to the floor.
    expect(partsOf(store("kick 4 high 3 deep  back quarter in rabbet 3/8  opening one"), "case store")).toContain(
      "1 back 30 x 35 5/16",
    );
  });

  test("a third nailer is for more than 60 in", () => {
    const nailers = (high: string) =>
      allParts(
        built(`${stock}case tall { wide 36  high ${high}  deep 12  panels ply  nailers 3  opening one }`),
      ).filter((part) => part.name === "nailer")[0]?.quantity;
    expect([nailers("60"), nailers("60 1/64")]).toEqual([2, 3]);
  });

  test("between openings one above the other a case without a frame has a stretcher 4 in wide", () => {
    expect(partsOf(store("down { opening one 10  rail  opening two }"), "case store")).toContain(
      "1 stretcher 34 9/16 x 4",
    );
  });
});
