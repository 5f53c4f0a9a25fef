import type { Cited, Tag } from "./cited.ts";
import { inches, type ShopLength } from "./lengths.ts";

/** Work that a caution belongs to. */
export type Hazard =
  | "table saw"
  | "radial arm saw"
  | "router and dado"
  | "jointer"
  | "planer"
  | "any machine"
  | "pneumatic nailer"
  | "dust and finish"
  | "lifting"
  | "tip-over"
  | "wall hanging"
  | "electricity and gas";

/** One caution in plain words, with what it rests on and what it gives way to. */
export type Caution = {
  readonly id: string;
  readonly hazard: Hazard;
  readonly text: string;
  readonly tag: Tag;
  readonly source: string;
  readonly defersTo: string;
};

const manual = "the machine's manual and the rules in force where it stands";
const local = "local codes and licensed practice";
const school = (text: string, id: string, hazard: Hazard): Caution => ({
  ...{
    id,
    hazard,
    text,
    tag: "common practice",
    source: "common practice: school shop rules; no federal figure exists",
  },
  defersTo: manual,
});
const usual = (text: string, id: string, hazard: Hazard, defersTo: string): Caution => ({
  ...{ id, hazard, text, tag: "common practice", source: "common practice, no source", defersTo },
});

/** The usual cautions; none of them replaces the machine's manual, local codes or licensed practice. */
export const cautions: readonly Caution[] = [
  {
    id: "saw-guard",
    hazard: "table saw",
    text: "Keep the hood over the blade, a spreader or riving knife behind it, and kickback fingers on for every rip.",
    tag: "as transcribed",
    source: "29 CFR 1910.213(c)",
    defersTo: manual,
  },
  {
    id: "saw-spreader",
    hazard: "table saw",
    text: "Set the spreader within 1/2 in of the blade, thinner than the kerf.",
    tag: "published",
    source: "California Title 8 section 4296(i), (j)",
    defersTo: manual,
  },
  {
    id: "saw-hood",
    hazard: "table saw",
    text: "Set a hood that does not adjust itself within 1/4 in of the stock.",
    tag: "published",
    source: "WAC 296-806-48012(4)(b)",
    defersTo: manual,
  },
  school(
    "Use a push stick for rips of 6 in or less, and set the blade no more than 1/4 in above the stock.",
    "saw-push-stick",
    "table saw",
  ),
  usual(
    "Hold or catch an offcut that overhangs the table before the cut starts: it tips as soon as it is free.",
    "saw-offcut",
    "table saw",
    manual,
  ),
  {
    id: "dado-guard",
    hazard: "router and dado",
    text: "Where the cut leaves no room for the usual guard, as in grooves, dados and rabbets, use featherboards or a jig.",
    tag: "published",
    source: "California Title 8 section 4296(a)",
    defersTo: manual,
  },
  usual(
    "Feed against the turn of the cutter, in several shallow passes, and work small pieces on long stock.",
    "router-feed",
    "router and dado",
    manual,
  ),
  {
    id: "radial-guard",
    hazard: "radial arm saw",
    text: "Guard the lower teeth so that no more than 3/8 in of the gullets shows.",
    tag: "published",
    source: "WAC 296-155-370(4)",
    defersTo: manual,
  },
  school(
    "Joint nothing shorter than 12 in or thinner than 1/4 in; joint first and cut short after.",
    "jointer-short",
    "jointer",
  ),
  school("Take no more than 1/16 in off a face or 1/8 in off an edge in one pass.", "jointer-depth", "jointer"),
  school(
    "Plane nothing shorter than the distance between the feed rollers, or thinner than 1/4 in.",
    "planer-short",
    "planer",
  ),
  school("Keep hands 3 in from the guard, and be wary of any piece of 12 in or less.", "small-stock", "any machine"),
  {
    id: "machine-fit",
    hazard: "any machine",
    text: "Check vibration, arbor play and fence, and disconnect the power before touching a cutter.",
    tag: "published",
    source: "29 CFR 1910.213(a), from a reproduction",
    defersTo: manual,
  },
  usual(
    "Wear eye and hearing protection, and keep the other hand out of line with the nail.",
    "nailer",
    "pneumatic nailer",
    manual,
  ),
  usual(
    "Collect dust at the machine, wear a respirator, and follow the finish's data sheet.",
    "dust",
    "dust and finish",
    "the maker's data sheet",
  ),
  usual(
    "Get a second person, or cut the sheet down on the floor, before lifting more than you handle alone.",
    "heavy",
    "lifting",
    local,
  ),
  usual(
    "Fix a free-standing chest to the wall at a stud, and open one drawer at a time until it is.",
    "tip-over",
    "tip-over",
    local,
  ),
  usual(
    "Hang wall units from studs through a rail made for it, and prop them until every screw is home.",
    "hanging",
    "wall hanging",
    local,
  ),
  usual(
    "Before cutting or screwing near wires, pipes or a range, have their place and clearances confirmed.",
    "services",
    "electricity and gas",
    local,
  ),
];

/** The smallest stock to put through a machine by itself; a planer's least length is the distance between its rollers, which only the maker knows. */
export const smallestStock = {
  jointerLength: {
    value: inches("12"),
    tag: "common practice",
    source: "common practice: two school shop sheets; another says 14 in; no federal figure exists",
  },
  jointerThickness: { value: inches("1/4"), tag: "common practice", source: "common practice: a school shop rule" },
  planerThickness: { value: inches("1/4"), tag: "common practice", source: "common practice: a shop audit sheet" },
  handClearance: { value: inches("3"), tag: "common practice", source: "common practice: a shop safety article" },
  pushStickRip: { value: inches("6"), tag: "common practice", source: "common practice: two school shop rules" },
} as const satisfies Record<string, Cited<ShopLength>>;

/** The cautions for one kind of work, in the order of the table; empty when there is none. */
export function cautionsFor(hazard: Hazard): readonly Caution[] {
  return cautions.filter((caution) => caution.hazard === hazard);
}
