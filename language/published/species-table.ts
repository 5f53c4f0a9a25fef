import { type Cited, cite, type Source } from "./cited.ts";

/** What is known of one wood; shrinkage in percent from green to ovendry, movement as fraction of the size per point of moisture, gravity at 12 %. */
export type Species = {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly shrinkage?: {
    readonly radial?: Cited<number>;
    readonly tangential: Cited<number>;
    readonly volumetric?: Cited<number>;
  };
  readonly movement?: { readonly radial: Cited<number>; readonly tangential: Cited<number> };
  readonly specificGravity?: Cited<number>;
  readonly modulusMpa?: Cited<number>;
  readonly modulusPsi?: Cited<number>;
};

const memory = (of: string): Source => ({ tag: "from memory", source: `from memory of ${of}` });
const shrinkP: Source = { tag: "published", source: "Wood Handbook FPL-GTR-190 (2010), Table 4-3" };
const shrinkT: Source = { tag: "as transcribed", source: "Wood Handbook FPL-GTR-282 (2021), Table 4-3, p. 4-8" };
const importedP: Source = { tag: "published", source: "Wood Handbook FPL-GTR-190 (2010), Table 4-4" };
const shrinkM = memory("Wood Handbook Table 4-3");
const moveP: Source = { tag: "published", source: "Wood Handbook FPL-GTR-190 (2010), Table 13-5, p. 13-16" };
const moveT: Source = { tag: "as transcribed", source: "Wood Handbook Table 13-5, from a reprint" };
const moveTrade: Source = { tag: "as transcribed", source: "Wood Handbook Table 13-5, from a trade page" };
const moveExample: Source = { tag: "published", source: "Wood Handbook FPL-GTR-190 (2010), ch. 13, worked example" };
const moveM = memory("Wood Handbook Table 13-5");
const mechT: Source = {
  tag: "as transcribed",
  source: "Wood Handbook FPL-GTR-282 (2021), Table 5-3, at 12 % moisture",
};
const mechP: Source = { tag: "published", source: "Wood Handbook FPL-GTR-190 (2010), Table 5-3, at 12 % moisture" };
const psiT: Source = { tag: "as transcribed", source: "Wood Handbook Table 5-3b, from public notes" };
const psiAws: Source = { tag: "published", source: "Architectural Woodwork Standards, 1st ed. (2009), p. 279" };
const mechM = memory("Wood Handbook Table 5-3");

type Wood = Omit<Species, "name" | "aliases">;
const wood = (name: string, aliases: readonly string[], facts: Wood): Species => ({ name, aliases, ...facts });
const shrinks = (radial: number, tangential: number, volumetric: number, from: Source): Wood => ({
  shrinkage: { radial: cite(radial, from), tangential: cite(tangential, from), volumetric: cite(volumetric, from) },
});
const moves = (radial: number, tangential: number, from: Source, tangentialFrom: Source = from): Wood => ({
  movement: { radial: cite(radial, from), tangential: cite(tangential, tangentialFrom) },
});
const gravity = (value: number, from: Source): Wood => ({ specificGravity: cite(value, from) });
const mpa = (value: number, from: Source): Wood => ({ modulusMpa: cite(value, from) });
const mpsi = (value: number, from: Source): Wood => ({ modulusPsi: cite(Math.round(value * 1_000_000), from) });

/** Every wood the tables hold, by its usual shop name; where the handbook prints a group ("Red oak, commercial") the group's row is used. */
export const speciesTable: readonly Species[] = [
  wood("northern red oak", ["red oak", "oak northern red"], {
    ...shrinks(4.0, 8.6, 13.7, shrinkT),
    ...moves(0.00158, 0.00369, moveP),
    ...gravity(0.63, mechT),
    ...mpa(12_500, mechT),
    ...mpsi(1.82, psiAws),
  }),
  wood("white oak", ["oak white"], {
    ...shrinks(5.6, 10.5, 16.3, shrinkP),
    ...moves(0.0018, 0.00365, moveP),
    ...gravity(0.68, mechT),
    ...mpa(12_300, mechT),
    ...mpsi(1.78, psiT),
  }),
  wood("hard maple", ["sugar maple", "rock maple", "black maple", "maple sugar"], {
    ...shrinks(4.8, 9.9, 14.7, shrinkT),
    ...moves(0.00165, 0.00353, moveP),
    ...gravity(0.63, mechT),
    ...mpa(12_600, mechT),
    ...mpsi(1.83, psiT),
  }),
  wood("red maple", ["soft maple", "maple red"], {
    ...shrinks(4.0, 8.2, 12.6, shrinkM),
    ...moves(0.00137, 0.00289, moveP),
    ...gravity(0.54, psiT),
    ...mpsi(1.64, psiT),
  }),
  wood("silver maple", ["maple silver"], moves(0.00102, 0.00252, moveP)),
  wood("black cherry", ["cherry"], {
    ...shrinks(3.7, 7.1, 11.5, shrinkP),
    ...moves(0.00126, 0.00248, moveP),
    ...gravity(0.5, mechT),
    ...mpa(10_300, mechT),
    ...mpsi(1.49, psiT),
  }),
  wood("black walnut", ["walnut", "american walnut"], {
    ...shrinks(5.5, 7.8, 12.8, shrinkP),
    ...moves(0.0019, 0.00274, moveP),
    ...gravity(0.55, psiT),
    ...mpsi(1.68, psiT),
  }),
  wood("yellow-poplar", ["poplar", "tulip poplar", "tulipwood"], {
    ...shrinks(4.6, 8.2, 12.7, shrinkP),
    ...moves(0.00158, 0.00289, moveM),
    ...gravity(0.42, mechT),
    ...mpa(10_900, mechT),
    ...mpsi(1.58, psiT),
  }),
  wood("yellow birch", ["birch", "sweet birch"], {
    ...shrinks(7.3, 9.5, 16.8, shrinkP),
    ...moves(0.00256, 0.00338, moveP),
    ...gravity(0.62, mechT),
    ...mpsi(2.01, psiT),
  }),
  wood("american beech", ["beech"], {
    ...shrinks(5.5, 11.9, 17.2, shrinkP),
    ...moves(0.0019, 0.00431, moveP),
    ...gravity(0.64, mechT),
    ...mpsi(1.72, psiT),
  }),
  wood("white ash", ["ash", "green ash"], {
    ...shrinks(4.9, 7.8, 13.3, shrinkP),
    ...moves(0.00169, 0.00274, moveP),
    ...gravity(0.6, mechT),
    ...mpa(12_000, mechT),
    ...mpsi(1.74, psiT),
  }),
  wood("red alder", ["alder"], { ...shrinks(4.4, 7.3, 12.6, shrinkP), ...moves(0.00151, 0.00256, moveP) }),
  wood("american basswood", ["basswood"], { ...shrinks(6.6, 9.3, 15.8, shrinkP), ...moves(0.0023, 0.0033, moveP) }),
  wood("pecan hickory", ["hickory", "pecan"], moves(0.00169, 0.00315, moveP)),
  wood("mahogany", ["true mahogany", "genuine mahogany", "honduras mahogany"], {
    ...shrinks(3.0, 4.1, 7.8, importedP),
    ...moves(0.00172, 0.00238, moveT),
    ...gravity(0.45, mechM),
    ...mpsi(1.5, mechM),
  }),
  wood("african mahogany", ["khaya"], shrinks(2.5, 4.5, 8.8, importedP)),
  wood("eastern white pine", ["white pine"], {
    ...shrinks(2.1, 6.1, 8.2, shrinkM),
    ...moves(0.00071, 0.00212, moveT),
    ...gravity(0.35, mechM),
    ...mpsi(1.24, mechM),
  }),
  wood("ponderosa pine", [], { ...gravity(0.4, mechP), ...mpa(8_900, mechP), ...mpsi(1.29, mechM) }),
  wood("sugar pine", [], { ...gravity(0.36, mechP), ...mpa(8_200, mechP), ...mpsi(1.19, mechM) }),
  wood("douglas-fir", ["coast douglas-fir"], {
    ...shrinks(4.8, 7.6, 12.4, shrinkP),
    ...moves(0.00165, 0.00267, moveM, moveTrade),
    ...gravity(0.48, mechT),
    ...mpa(13_400, mechT),
    ...mpsi(1.95, psiT),
  }),
  wood("white fir", [], {
    shrinkage: { tangential: cite(7.0, shrinkM) },
    ...moves(0.00112, 0.00245, moveExample),
  }),
  wood("western redcedar", ["western red cedar"], {
    ...shrinks(2.4, 5.0, 6.8, shrinkP),
    ...moves(0.00111, 0.00234, moveM),
    ...gravity(0.32, mechM),
    ...mpsi(1.11, mechM),
  }),
];
