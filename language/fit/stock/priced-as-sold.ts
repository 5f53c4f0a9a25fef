import type { Price } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import type { Check } from "../check.ts";
import { finding } from "../check.ts";

/** A price should be for something that the stock or the hardware is counted by; otherwise another is taken, or none. */
export const priceShouldBeForWhatIsSold: Check = {
  codes: ["stock/price-unit"],
  run: ({ design }) => sold.flatMap((kind) => design[kind.list].flatMap(({ costs }) => check(costs, kind))),
};

interface Sold {
  readonly list: "sheets" | "boards" | "edgings" | "slides" | "hinges" | "screws";
  readonly thing: string;
  readonly units: readonly string[];
  /** Whether a price for a number of them, such as `per 100`, can be told from one for a single one. */
  readonly inLots: boolean;
  /** What becomes of a price for anything else. */
  readonly otherwise: string;
}

const sold: readonly Sold[] = [
  {
    list: "sheets",
    thing: "a sheet",
    units: ["sheet", "piece"],
    inLots: false,
    otherwise: "it is taken for each sheet",
  },
  {
    list: "boards",
    thing: "a board",
    units: ["board foot", "foot", "metre", "piece"],
    inLots: false,
    otherwise: "it is taken for each board foot",
  },
  { list: "edgings", thing: "edging", units: ["foot", "metre"], inLots: true, otherwise: "it is not counted" },
  { list: "slides", thing: "slides", units: ["pair", "piece"], inLots: true, otherwise: "it is taken for each pair" },
  { list: "hinges", thing: "hinges", units: ["piece", "pair"], inLots: true, otherwise: "it is taken for each piece" },
  { list: "screws", thing: "screws", units: ["piece"], inLots: true, otherwise: "it is taken for each piece" },
];

function check(costs: Price | undefined, { thing, units, inLots, otherwise }: Sold): readonly Finding[] {
  const per = costs?.per;
  if (costs === undefined || per === undefined || units.includes(per)) return [];
  if (inLots && /^\d+$/.test(per)) return [];
  return [
    finding({
      code: "stock/price-unit",
      severity: "warning",
      span: costs.key.span,
      message: `a price per ${per} is none for ${thing}: ${otherwise}`,
      reason: "The buying list and the plan that costs least go by it.",
      remedy: `Write it per ${units.join(", or per ")}.`,
    }),
  ];
}
