import { type Cited, type Tag, weakest } from "./cited.ts";
import { type Species, speciesTable } from "./species-table.ts";

/** Pounds-force per square inch in one megapascal. */
export const psiPerMpa = 145.037_738;

/** The names a maker can write, one per wood, for completion. */
export const speciesNames: readonly string[] = speciesTable.map((wood) => wood.name);

/** The wood of that shop name or alias, whatever its case, hyphens or spacing; undefined when unknown or when it fits several ("oak", "pine"). */
export function findSpecies(name: string): Species | undefined {
  return byName.get(plain(name));
}

/** The names of woods that a vague word could mean ("oak" gives the red and the white), for a message; empty when there is none. */
export function speciesLike(word: string): readonly string[] {
  const wanted = plain(word);
  if (wanted === "") return [];
  return speciesTable
    .filter((wood) => [wood.name, ...wood.aliases].some((name) => plain(name).includes(wanted)))
    .map((wood) => wood.name);
}

/**
 * Stiffness along the grain in psi, at 12 % moisture; the metric column is converted only where the inch-pound figure is missing or less trusted,
 * for the two columns are rounded apart (up to 1 %). Undefined when neither is known.
 */
export function modulusOfElasticity(wood: Species): Cited<number> | undefined {
  const { modulusPsi, modulusMpa } = wood;
  if (modulusMpa === undefined) return modulusPsi;
  if (modulusPsi !== undefined && isTrustedAsMuch(modulusPsi.tag, modulusMpa.tag)) return modulusPsi;
  return { ...modulusMpa, value: modulusMpa.value * psiPerMpa, source: `${modulusMpa.source}, converted from MPa` };
}

const byName: ReadonlyMap<string, Species> = new Map(
  speciesTable.flatMap((wood) => [wood.name, ...wood.aliases].map((name) => [plain(name), wood] as const)),
);

function isTrustedAsMuch(tag: Tag, other: Tag): boolean {
  return weakest([tag, other]) === other;
}

function plain(name: string): string {
  return name
    .toLowerCase()
    .replace(/[-_,\s]+/g, " ")
    .trim();
}
