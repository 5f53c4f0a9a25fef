import type { Cited, Source } from "./cited.ts";

/** An indoor climate that a file can name as its place: the average moisture of wood there in percent, and the driest and wettest piece to expect. */
export type Place = {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly average: Cited<number>;
  readonly driest: Cited<number>;
  readonly wettest: Cited<number>;
};

/** Where Eq. 4-5 was read. */
export const equilibriumSource: Source = {
  tag: "as transcribed",
  source:
    "Wood Handbook Eq. 4-5, FPL-GTR-282 p. 4-3 (two transcriptions agree); checked against Table 4-2 within 0.06 points",
};

/** Celsius from Fahrenheit. */
export function celsius(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9;
}

/**
 * Moisture in percent that wood settles at, from degrees Celsius and relative humidity as a fraction of one: Wood Handbook Eq. 4-5. Undefined for humidity
 * outside 0 to 1, or a temperature outside the -1.2 to 132.3 degrees of Table 4-2 (30 to 270 Fahrenheit).
 */
export function equilibriumMoisture(temperature: number, humidity: number): number | undefined {
  if (!(0 <= humidity && humidity <= 1) || !(-1.2 <= temperature && temperature <= 132.3)) return undefined;
  const square = temperature * temperature;
  const w = 349 + 1.29 * temperature + 0.0135 * square;
  const k = 0.805 + 0.000736 * temperature - 0.00000273 * square;
  const k1 = 6.27 - 0.00938 * temperature - 0.000303 * square;
  const k2 = 1.91 + 0.0407 * temperature - 0.000293 * square;
  const kh = k * humidity;
  const hydrate = k1 * kh;
  const twice = k1 * k2 * kh * kh;
  return (1800 / w) * (kh / (1 - kh) + (hydrate + 2 * twice) / (1 + hydrate + twice));
}

/** Highest moisture in percent for cabinet parts when they are made, ANSI/KCMA A161.1-2012 cl. 2.8. */
export const fabricationMoisture: Cited<number> = {
  value: 10,
  tag: "published",
  source: "ANSI/KCMA A161.1-2012 cl. 2.8",
};

/** Moisture in percent at which kiln-dried hardwood is usually sold. */
export const kilnDried: Cited<{ readonly from: number; readonly to: number }> = {
  value: { from: 6, to: 8 },
  tag: "common practice",
  source: "common practice, a trade glossary",
};

const averages = "Wood Handbook ch. 13, map of interior moisture content, as quoted";
const spreads = "from memory of Wood Handbook Table 13-1, single pieces";

/** The indoor climates of the handbook's map, with the spread of single pieces as remembered. */
export const places: readonly Place[] = [
  place("most of the United States", ["united states", "us", "usa", "temperate"], [8, 6, 10]),
  place("dry southwest", ["southwest", "desert", "arid"], [6, 4, 9]),
  place("damp southern coast", ["southern coast", "gulf coast", "damp coast"], [11, 8, 13]),
];

/** The place of that name or alias, whatever its case; undefined when unknown. */
export function findPlace(name: string): Place | undefined {
  const wanted = name.trim().toLowerCase();
  return places.find((one) => [one.name.toLowerCase(), ...one.aliases].includes(wanted));
}

function place(
  name: string,
  aliases: readonly string[],
  [average, driest, wettest]: readonly [number, number, number],
): Place {
  return {
    name,
    aliases,
    average: { value: average, tag: "as transcribed", source: averages },
    driest: { value: driest, tag: "from memory", source: spreads },
    wettest: { value: wettest, tag: "from memory", source: spreads },
  };
}
