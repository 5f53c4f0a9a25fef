import { globSync } from "node:fs";

/**
 * Build files read, derived and judged, each with what is expected of it written out. Furniture by chance and texts spoiled
 * at random are left out: they cost more for each change than all the others together. So is what reads the sources.
 */
const builds = [
  "tests/unit/derive/!(properties).test.ts",
  "tests/unit/fit/!(catalogue|codes|fixes).test.ts",
  "tests/unit/service/{findings,workspace}.test.ts",
];

/** What is changed, and the tests that should notice. */
export const groups = {
  core: { mutate: ["language/core/*.ts"], tests: ["tests/unit/core/*.test.ts"] },
  rules: { mutate: ["language/derive/rules/*.ts"], tests: builds },
  boxes: {
    mutate: inDerive("bought", "box", "box-parts", "float", "groove", "mounts", "packing", "slides"),
    tests: builds,
  },
  cases: {
    mutate: inDerive(
      "case",
      "case-depths",
      "case-panels",
      "edging",
      "end-joint",
      "layout",
      "openings",
      "shelf",
      "spanned",
      "walls",
    ),
    tests: builds,
  },
  fronts: {
    mutate: inDerive(
      "front",
      "front-gap",
      "front-parts",
      "hand-part",
      "hardware",
      "hinging",
      "opening-angle",
      "screw-sizes",
    ),
    tests: builds,
  },
  numbers: {
    mutate: inDerive(
      "context",
      "defaults",
      "derive",
      "evaluate",
      "like",
      "model",
      "names",
      "parts",
      "read-figures",
      "readings",
      "stock",
    ),
    tests: builds,
  },
  islands: { mutate: inDerive("islands", "stages", "words-in"), tests: builds },
  "fit-boxes": { mutate: inFit("box", "joint", "packing", "slide"), tests: builds },
  "fit-fronts": { mutate: inFit("door", "fit", "frame", "front"), tests: builds },
  "fit-rest": {
    mutate: [
      "language/fit/!(catalogue|fix-all|index).ts",
      ...inFit("case", "catalogue", "handling", "length", "name", "opening", "part", "pockets"),
      ...inFit("screw", "shelf", "statement", "stock"),
    ],
    tests: builds,
  },
  fixes: {
    mutate: ["language/fit/{catalogue,fix-all,index}.ts"],
    tests: ["tests/unit/fit/{catalogue,fixes}.test.ts"],
  },
};

/** The files of the core, of derivation and of fits that stand in no group: none, and a test holds that. */
export function inNoGroup(root) {
  const inGroups = new Set(Object.values(groups).flatMap(({ mutate }) => globSync(mutate, { cwd: root })));
  return globSync("language/{core,derive,fit}/**/*.ts", { cwd: root })
    .filter((path) => !inGroups.has(path))
    .map((path) => path.replaceAll("\\", "/"));
}

function inDerive(...names) {
  return names.map((name) => `language/derive/${name}.ts`);
}

function inFit(...folders) {
  return folders.map((folder) => `language/fit/${folder}/*.ts`);
}
