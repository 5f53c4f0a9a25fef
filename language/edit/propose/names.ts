import type { NameKind } from "../../derive/names.ts";
import { speciesNames } from "../../published/species.ts";
import { threeText } from "../explain.ts";
import { aboutName } from "../hover-name.ts";
import { codeProposals } from "./codes.ts";
import { lengthProposals } from "./lengths.ts";
import type { Filling } from "./openings.ts";
import { fillingOf, modelProposals, openingProposals } from "./openings.ts";
import type { Place, Proposal, ProposalKind } from "./proposal.ts";
import { named } from "./proposal.ts";
import { slideLengths } from "./slides.ts";
import { stockProposals } from "./stocks.ts";

/** What can stand for a word in capitals at a place, best first by rank. */
export function blankProposals(
  place: Place,
  blank: string,
  found: Parameters<typeof codeProposals>[0],
): readonly Proposal[] {
  const key = place.spot.key?.text ?? "";
  switch (blank) {
    case "STOCK":
      return stockProposals(place, ["sheet", "board"]);
    case "SHEET":
      return stockProposals(place, ["sheet"]);
    case "BOARD":
      return stockProposals(place, ["board"]);
    case "NAME":
      return key === "edging" ? stockProposals(place, ["edging"]) : hardware(place, key);
    case "OTHER":
      return models(place, key);
    case "OPENINGS":
      return openingProposals(place, fillingOf(key));
    case "OPENING":
      return modelProposals(place, fillingOf(key) ?? "box");
    case "CASE":
      return namesOf(place, "case", "case");
    case "HANDPART":
      return namesOf(place, "part", "part");
    case "PART":
      return parts(place, key);
    case "WORDS":
      return speciesNames.map((name) => named(name, "choice"));
    case "CODE":
      return codeProposals(found);
    case "LENGTH":
      return [...(key === "slides" ? slideLengths(place) : []), ...lengthProposals(place)];
    default:
      return [];
  }
}

function hardware(place: Place, key: string): readonly Proposal[] {
  const kind = (["slides", "hinges", "screws"] as const).find((one) => one === key);
  return kind === undefined ? [] : namesOf(place, kind, "hardware");
}

function namesOf({ scene }: Place, kind: NameKind, as: ProposalKind): readonly Proposal[] {
  return [...scene.context.names.of[kind]].map(([text, { span }]) =>
    named(text, as, { about: () => aboutName(scene, { kind, text, span, given: false }) ?? "" }),
  );
}

/** What a block can be like: one of its kind. */
function models(place: Place, key: string): readonly Proposal[] {
  const filling: Filling | undefined = fillingOf(key);
  if (filling !== undefined) return modelProposals(place, filling);
  const { sheets, boards, edgings, openings } = place.scene.context.design;
  const stocks = { sheet: sheets, board: boards, edging: edgings, opening: openings }[key];
  const own = place.spot.said[0]?.text;
  const all =
    stocks === undefined
      ? namesOf(place, key as NameKind, "hardware")
      : stocks.map(({ name }) => named(name.text, "stock"));
  return all.filter(({ label }) => label !== own);
}

/** The parts of an owner in a record of what was cut, with how many there are to be. */
function parts({ scene, spot }: Place, key: string): readonly Proposal[] {
  const words = spot.said.filter((token) => token.kind === "name").map((token) => token.text);
  const owner = `${key === "false" ? "false front" : key} ${words[0] ?? ""}`;
  const own = scene.model.parts.filter((part) => part.of === owner);
  const names = [...new Set(own.map((part) => part.name))];
  return names.map((name) => {
    const alike = own.filter((part) => part.name === name);
    const [first] = alike;
    const pieces = alike.reduce((sum, part) => sum + part.quantity, 0);
    return named(name, "part", {
      detail: `${pieces} to be cut: ${threeText([first!.length, first!.width], scene.reading)}`,
      snippet: `${name} \${1:${pieces}}`,
    });
  });
}
