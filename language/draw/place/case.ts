import type { Length } from "../../core/length.ts";
import type { Part } from "../../core/part.ts";
import { add, equal, isZero, subtract, zero } from "../../core/rational.ts";
import { size } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { CaseModel, Member } from "../../derive/model.ts";
import type { Tables } from "./scene.ts";
import type { Axis, Place, Solid } from "./solid.ts";
import { from, middled, placed, turnedRound, upTo } from "./solid.ts";

/** The panels of a case and the members of its frames, in their places; parts whose place is not known are left out. */
export function caseSolids(tables: Tables, home: CaseModel): readonly Solid[] {
  const mine = tables.model.parts.filter((part) => part.of === `case ${home.name}`);
  const shell = shellOf(tables, home);
  return [
    ...panelSolids(tables, home, shell, mine),
    ...home.members.flatMap((one) => memberSolid(tables, home, shell, one, mine)),
  ];
}

/** Where the panels stand in the depth. */
interface Shell {
  /** Behind the face frame. */
  readonly start: Length;
  readonly floor: Length;
  readonly thick: Length;
  readonly wide: Length;
  readonly high: Length;
  readonly deep: Length;
  readonly kickDeep: Length | undefined;
  /** Where the sides end at the back: before a back that is put on, and before a frame there. */
  readonly sidesEnd: Length;
  /** Where the inside ends: at the back. */
  readonly innerEnd: Length;
}

function shellOf({ context, stocks }: Tables, home: CaseModel): Shell {
  const panels = home.panels === undefined ? undefined : stocks.get(home.panels.name);
  return {
    start: home.frame?.thickness.value ?? zero,
    floor: home.kick?.value ?? zero,
    thick: panels?.thickness.value ?? zero,
    wide: home.wide.value,
    high: home.high.value,
    deep: home.deep.value,
    kickDeep: size(context, home.block.kick?.deep)?.value,
    ...endsOf(stocks, home),
  };
}

type Maker = (tables: Tables, shell: Shell, part: Part, home: CaseModel) => readonly Solid[];

/** In the order in which they are drawn: what is let in comes after what it is let into. */
const makers: readonly (readonly [name: string, make: Maker])[] = [
  ["side", sides],
  ["bottom", (tables, shell, part) => [lying(tables, shell, part, from(shell.floor, part.thickness.value))]],
  ["top", (tables, shell, part) => [lying(tables, shell, part, upTo(shell.high, part.thickness.value))]],
  ["stretcher", stretchers],
  ["partition", partitions],
  ["back", back],
  ["kick", kick],
  ["nailer", nailers],
];

function panelSolids(tables: Tables, home: CaseModel, shell: Shell, parts: readonly Part[]): readonly Solid[] {
  return makers.flatMap(([name, make]) =>
    parts.filter((part) => part.name === name).flatMap((part) => make(tables, shell, part, home)),
  );
}

function solid({ stocks }: Tables, part: Part, place: Place, along: Axis, thick: Axis): Solid {
  return placed(part, "case", place, along, thick, stocks);
}

function sides(tables: Tables, shell: Shell, part: Part): readonly Solid[] {
  const t = part.thickness.value;
  const z = upTo(shell.sidesEnd, part.width.value);
  const y = from(zero, shell.high);
  const notch = shell.kickDeep === undefined ? {} : { notch: { z: add(shell.start, shell.kickDeep), y: shell.floor } };
  return [from(zero, t), upTo(shell.wide, t)].map((x) => ({ ...solid(tables, part, { x, y, z }, "y", "x"), ...notch }));
}

/** A panel between the sides, or housed in them. */
function lying(tables: Tables, shell: Shell, part: Part, y: Place["y"]): Solid {
  const x = middled(zero, shell.wide, part.length.value);
  return solid(tables, part, { x, y, z: upTo(shell.innerEnd, part.width.value) }, "x", "y");
}

/** Two lie at the top, front and back; one that stands for a rail lies where the rail is. */
function stretchers(tables: Tables, shell: Shell, part: Part, home: CaseModel): readonly Solid[] {
  if (home.block.top?.choice === "stretchers") {
    const y = upTo(shell.high, part.thickness.value);
    const x = middled(zero, shell.wide, part.length.value);
    const end = shell.innerEnd;
    return [from(shell.start, part.width.value), upTo(end, part.width.value)].map((z) =>
      solid(tables, part, { x, y, z }, "x", "y"),
    );
  }
  const rails = home.members.filter(
    (member) => member.kind === "rail" && equal(member.length.value, part.length.value),
  );
  return rails.map(({ rect }) => {
    const place = { x: from(rect.x, rect.wide), y: from(rect.y, rect.high), z: from(shell.start, part.width.value) };
    return solid(tables, part, place, "x", "y");
  });
}

/** Panels are shorter at the front by their edging: their place is told from the back. */
function endsOf(stocks: Tables["stocks"], home: CaseModel): Pick<Shell, "sidesEnd" | "innerEnd"> {
  const thick = (word: { readonly text: string } | undefined): Length =>
    (word === undefined ? undefined : stocks.get(word.text))?.thickness.value ?? zero;
  const faces = subtract(home.deep.value, thick(home.block.rear?.frame?.stock));
  const back = thick(home.block.back?.stocks[0]);
  const words = home.block.back?.fittings.map((one) => one.word) ?? [];
  if (isZero(back)) return { sidesEnd: faces, innerEnd: faces };
  const inner = subtract(faces, back);
  if (words.includes("groove")) return { sidesEnd: faces, innerEnd: subtract(inner, fallback("case.grooveSet").value) };
  return { sidesEnd: words.includes("rabbet") ? faces : inner, innerEnd: inner };
}

/** Behind the middle of the member that it stands for. */
function partitions(tables: Tables, shell: Shell, part: Part, home: CaseModel): readonly Solid[] {
  const uprights = home.members.filter(
    (member) => member.face === "front" && member.kind !== "rail" && !isOuter(member, home),
  );
  const mine = uprights.filter(
    (member) => member.span.start === part.source.start && member.span.uri === part.source.uri,
  );
  return mine.map(({ rect }) => {
    const x = middled(rect.x, add(rect.x, rect.wide), part.thickness.value);
    const full = part.cutToFit === undefined;
    const y = full ? middled(shell.floor, shell.high, part.length.value) : from(rect.y, part.length.value);
    return solid(tables, part, { x, y, z: upTo(shell.innerEnd, part.width.value) }, "y", "x");
  });
}

function isOuter(member: Member, home: CaseModel): boolean {
  return member.kind !== "partition" && member.span === home.block.frame?.span;
}

function back(tables: Tables, shell: Shell, part: Part): readonly Solid[] {
  const x = middled(zero, shell.wide, part.width.value);
  const y = upTo(shell.high, part.length.value);
  return [solid(tables, part, { x, y, z: from(shell.innerEnd, part.thickness.value) }, "y", "z")];
}

/** The board stands before the notch of the sides. */
function kick(tables: Tables, shell: Shell, part: Part): readonly Solid[] {
  const z = upTo(add(shell.start, shell.kickDeep ?? part.thickness.value), part.thickness.value);
  return [solid(tables, part, { x: from(zero, part.length.value), y: from(zero, part.width.value), z }, "x", "z")];
}

function nailers(tables: Tables, shell: Shell, part: Part): readonly Solid[] {
  const z = upTo(shell.innerEnd, part.thickness.value);
  const x = middled(zero, shell.wide, part.length.value);
  const under = subtract(shell.high, shell.thick);
  const places = [upTo(under, part.width.value), from(add(shell.floor, shell.thick), part.width.value)];
  const third = middled(shell.floor, shell.high, part.width.value);
  return [...places, third].slice(0, part.quantity).map((y) => solid(tables, part, { x, y, z }, "x", "z"));
}

function memberSolid(
  tables: Tables,
  home: CaseModel,
  shell: Shell,
  member: Member,
  parts: readonly Part[],
): readonly Solid[] {
  const frame = home.frame;
  if (member.kind === "partition" || frame === undefined) return [];
  const part = parts.find(
    (one) => one.name.endsWith(member.kind) && equal(one.width.value, member.width.value) && isAsLong(one, member),
  );
  if (part === undefined) return [];
  const { rect } = member;
  const place: Place = {
    x: from(rect.x, rect.wide),
    y: from(rect.y, rect.high),
    z: from(zero, part.thickness.value),
  };
  const made = placed(part, "frame", place, member.kind === "stile" ? "y" : "x", "z", tables.stocks);
  return [member.face === "front" ? made : turnedRound(made, shell.wide, shell.deep)];
}

/** A tenoned member is longer than what it spans by its tenons. */
function isAsLong(part: Part, member: Member): boolean {
  const tenons = part.machining.find((one) => one.kind === "tenon");
  const clear =
    tenons?.deep === undefined
      ? part.length.value
      : subtract(part.length.value, add(tenons.deep.value, tenons.deep.value));
  return equal(clear, member.length.value);
}
