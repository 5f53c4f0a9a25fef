import { describe, expect, it } from "vitest";
import {
  findSpecies,
  modulusOfElasticity,
  psiPerMpa,
  speciesLike,
  speciesNames,
} from "../../language/published/species.ts";
import { speciesTable } from "../../language/published/species-table.ts";

const seen = { P: "published", T: "as transcribed" } as const;

describe("movement coefficients, Wood Handbook FPL-GTR-190 Table 13-5 (the rows read or transcribed)", () => {
  it.each([
    ["red oak", 0.00158, 0.00369, "P"],
    ["white oak", 0.0018, 0.00365, "P"],
    ["sugar maple", 0.00165, 0.00353, "P"],
    ["black maple", 0.00165, 0.00353, "P"],
    ["red maple", 0.00137, 0.00289, "P"],
    ["silver maple", 0.00102, 0.00252, "P"],
    ["black cherry", 0.00126, 0.00248, "P"],
    ["black walnut", 0.0019, 0.00274, "P"],
    ["yellow birch", 0.00256, 0.00338, "P"],
    ["sweet birch", 0.00256, 0.00338, "P"],
    ["american beech", 0.0019, 0.00431, "P"],
    ["white ash", 0.00169, 0.00274, "P"],
    ["green ash", 0.00169, 0.00274, "P"],
    ["red alder", 0.00151, 0.00256, "P"],
    ["american basswood", 0.0023, 0.0033, "P"],
    ["hickory", 0.00169, 0.00315, "P"],
    ["pecan", 0.00169, 0.00315, "P"],
    ["white fir", 0.00112, 0.00245, "P"],
    ["mahogany", 0.00172, 0.00238, "T"],
    ["eastern white pine", 0.00071, 0.00212, "T"],
  ] as const)("%s", (name, radial, tangential, tag) => {
    const moves = findSpecies(name)!.movement!;
    expect([moves.radial.value, moves.tangential.value]).toEqual([radial, tangential]);
    expect(moves.tangential.tag).toBe(seen[tag]);
  });

  it("reads Douglas-fir's tangential figure from a trade page and remembers the radial", () => {
    const moves = findSpecies("Douglas-fir")!.movement!;
    expect(moves.tangential).toMatchObject({ value: 0.00267, tag: "as transcribed" });
    expect(moves.radial.tag).toBe("from memory");
  });

  it("marks what is remembered", () => {
    for (const name of ["poplar", "western red cedar"]) {
      expect(findSpecies(name)!.movement!.tangential.tag).toBe("from memory");
    }
  });
});

describe("shrinkage green to ovendry in percent, Wood Handbook Tables 4-3 and 4-4 (radial, tangential, volumetric)", () => {
  it.each([
    ["northern red oak", 4.0, 8.6, 13.7, "T"],
    ["white oak", 5.6, 10.5, 16.3, "P"],
    ["sugar maple", 4.8, 9.9, 14.7, "T"],
    ["black cherry", 3.7, 7.1, 11.5, "P"],
    ["black walnut", 5.5, 7.8, 12.8, "P"],
    ["yellow poplar", 4.6, 8.2, 12.7, "P"],
    ["yellow birch", 7.3, 9.5, 16.8, "P"],
    ["beech", 5.5, 11.9, 17.2, "P"],
    ["white ash", 4.9, 7.8, 13.3, "P"],
    ["coast douglas fir", 4.8, 7.6, 12.4, "P"],
    ["western redcedar", 2.4, 5.0, 6.8, "P"],
    ["true mahogany", 3.0, 4.1, 7.8, "P"],
    ["khaya", 2.5, 4.5, 8.8, "P"],
    ["red alder", 4.4, 7.3, 12.6, "P"],
    ["basswood", 6.6, 9.3, 15.8, "P"],
  ] as const)("%s", (name, radial, tangential, volumetric, tag) => {
    const shrinks = findSpecies(name)!.shrinkage!;
    expect([shrinks.radial?.value, shrinks.tangential.value, shrinks.volumetric?.value]).toEqual([
      radial,
      tangential,
      volumetric,
    ]);
    expect(shrinks.tangential.tag).toBe(seen[tag]);
  });

  it("marks what is remembered", () => {
    for (const name of ["red maple", "eastern white pine", "white fir"]) {
      expect(findSpecies(name)!.shrinkage!.tangential.tag).toBe("from memory");
    }
  });
});

describe("specific gravity and stiffness at 12 %, Wood Handbook Table 5-3 (MPa from FPL-GTR-282, Mpsi from notes and AWS p. 279)", () => {
  it.each([
    ["northern red oak", 0.63, 12_500, 1.82],
    ["white oak", 0.68, 12_300, 1.78],
    ["sugar maple", 0.63, 12_600, 1.83],
    ["red maple", 0.54, undefined, 1.64],
    ["cherry", 0.5, 10_300, 1.49],
    ["walnut", 0.55, undefined, 1.68],
    ["poplar", 0.42, 10_900, 1.58],
    ["birch", 0.62, undefined, 2.01],
    ["beech", 0.64, undefined, 1.72],
    ["ash", 0.6, 12_000, 1.74],
    ["douglas-fir", 0.48, 13_400, 1.95],
  ] as const)("%s", (name, gravity, mpa, mpsi) => {
    const wood = findSpecies(name)!;
    expect(wood.specificGravity?.value).toBe(gravity);
    expect(wood.modulusMpa?.value).toBe(mpa);
    expect(wood.modulusPsi?.value).toBe(Math.round(mpsi * 1_000_000));
    expect(modulusOfElasticity(wood)?.value).toBe(Math.round(mpsi * 1_000_000));
  });

  it("has red oak's stiffness from AWS itself, which prints 1 820 000 psi (p. 279)", () => {
    expect(findSpecies("red oak")!.modulusPsi).toMatchObject({ value: 1_820_000, tag: "published" });
  });

  it("keeps the two columns within 1 %, for they are rounded apart", () => {
    const both = speciesTable.filter((wood) => wood.modulusPsi !== undefined && wood.modulusMpa !== undefined);
    expect(both.length).toBeGreaterThan(6);
    for (const wood of both.filter((one) => one.modulusPsi!.tag !== "from memory")) {
      expect(Math.abs((wood.modulusMpa!.value * psiPerMpa) / wood.modulusPsi!.value - 1)).toBeLessThan(0.01);
    }
  });

  it("prefers a published metric figure to a remembered one: ponderosa 8900 and sugar pine 8200 MPa (FPL-GTR-190)", () => {
    expect(modulusOfElasticity(findSpecies("ponderosa pine")!)).toMatchObject({
      value: 8_900 * psiPerMpa,
      tag: "published",
    });
    expect(modulusOfElasticity(findSpecies("sugar pine")!)).toMatchObject({
      value: 8_200 * psiPerMpa,
      tag: "published",
    });
    expect(findSpecies("ponderosa pine")!.specificGravity).toMatchObject({ value: 0.4, tag: "published" });
    expect(findSpecies("sugar pine")!.specificGravity).toMatchObject({ value: 0.36, tag: "published" });
  });

  it("marks what is remembered", () => {
    for (const name of ["eastern white pine", "western red cedar", "mahogany"]) {
      expect(findSpecies(name)!.specificGravity!.tag).toBe("from memory");
      expect(modulusOfElasticity(findSpecies(name)!)!.tag).toBe("from memory");
    }
  });
});

describe("names", () => {
  it("reads shop names whatever their case, hyphens and spaces", () => {
    for (const name of ["hard maple", "Hard-Maple", "sugar  maple", "MAPLE, sugar"]) {
      expect(findSpecies(name)!.name).toBe("hard maple");
    }
    for (const name of speciesNames) expect(findSpecies(name)!.name).toBe(name);
  });

  it("does not guess at a word that fits several woods, and lists them instead", () => {
    expect(findSpecies("oak")).toBeUndefined();
    expect(speciesLike("oak")).toEqual(["northern red oak", "white oak"]);
    expect(speciesLike("maple")).toEqual(["hard maple", "red maple", "silver maple"]);
    expect(findSpecies("unobtainium")).toBeUndefined();
    expect(speciesLike("unobtainium")).toEqual([]);
    expect(speciesLike("  ")).toEqual([]);
    expect(findSpecies("__proto__")).toBeUndefined();
  });

  it("gives every name and alias to one wood only", () => {
    const all = speciesTable.flatMap((wood) => [wood.name, ...wood.aliases]);
    expect(new Set(all).size).toBe(all.length);
    for (const wood of speciesTable) for (const alias of wood.aliases) expect(findSpecies(alias)).toBe(wood);
  });
});
