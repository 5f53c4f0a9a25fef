import type { Length } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { add, over, subtract, sum, zero } from "../core/rational.ts";
import type { CaseModel, Member, Model, Stock } from "../derive/model.ts";
import { type Range, span, spanTo } from "./box.ts";
import { cut, grow, type Home, lay, machined, type Pool, present } from "./lay.ts";
import { joined } from "./mate.ts";
import { backOf, kickOf, nailersOf } from "./place-back.ts";
import { betweenSides, innerEnd, type Laid, type Shell } from "./shell.ts";
import type { Draft } from "./solid.ts";

/** Sides, bottom, top or stretchers, partitions, back, kick and nailers of a case in their places. */
export function placeCase(one: CaseModel, model: Model, pool: Pool): Laid {
  const home: Home = { frame: `case ${one.name}`, assembly: `case ${one.name}`, turn: undefined };
  const [wide, high] = [one.wide.value, one.high.value];
  const front = one.frame?.thickness.value ?? zero;
  const pair = sidesOf(home, pool, model.stocks, wide, front);
  if (pair === undefined) return { drafts: [], mates: [] };
  const thick = pair[0].part.thickness.value;
  const floor = one.kick?.value ?? zero;
  const shell: Shell = { home, pool, stocks: model.stocks, wide, high, front, floor, sides: pair, thick };
  machineSides(shell, one);
  const bottom = lying(shell, "bottom", (t) => span(floor, t));
  const top = lying(shell, "top", (t) => spanTo(high, t));
  const stretchers = topStretchers(shell, one);
  const lyingParts = present([bottom, top, ...stretchers]);
  const partitions = partitionsOf(shell, one, bottom, top);
  const back = backOf(shell, lyingParts);
  const kick = kickOf(shell, bottom);
  const nailers = nailersOf(shell, back.drafts[0], bottom, top ?? stretchers[1]);
  for (const partition of partitions.drafts)
    if (machined(partition.part, "notch", "nailers") !== undefined)
      partition.cuts.push(...nailers.drafts.map(({ outline }) => outline));
  return {
    drafts: [...pair, ...lyingParts, ...partitions.drafts, ...back.drafts, ...kick.drafts, ...nailers.drafts],
    mates: [
      ...lyingParts.flatMap((part) => betweenSides(shell, part)),
      ...partitions.mates,
      ...back.mates,
      ...kick.mates,
      ...nailers.mates,
    ],
  };
}

function sidesOf(
  home: Home,
  pool: Pool,
  stocks: ReadonlyMap<string, Stock>,
  wide: Length,
  front: Length,
): readonly [Draft, Draft] | undefined {
  const side = (xOf: (thick: Length) => Range): Draft | undefined => {
    const piece = pool.take({ name: "side" });
    if (piece === undefined) return undefined;
    const x = xOf(piece.part.thickness.value);
    return banded(home, piece, stocks, x, span(zero, piece.part.length.value), front);
  };
  const left = side((t) => span(zero, t));
  const right = side((t) => spanTo(wide, t));
  return left === undefined || right === undefined ? undefined : [left, right];
}

/** A panel from the front backwards, its front edge banded where it has a band. */
function banded(
  home: Home,
  piece: NonNullable<ReturnType<Pool["take"]>>,
  stocks: ReadonlyMap<string, Stock>,
  x: Range,
  y: Range,
  front: Length,
): Draft | undefined {
  const band = bandOf(piece.part, stocks);
  const draft = lay(home, piece, x, y, span(add(front, band), piece.part.width.value));
  grow(draft, x, y, span(front, band));
  return draft;
}

/** What the bands on a part's front edge measure together. */
export function bandOf(part: Part, stocks: ReadonlyMap<string, Stock>): Length {
  const bands = part.machining.filter((made) => made.kind === "edging" && /front|all/.test(made.where));
  return sum(bands.map((made) => stocks.get(made.note ?? "")?.thickness.value ?? zero));
}

/** Notch for the kick, rabbet or groove for the back, dados for bottom and top. */
function machineSides(shell: Shell, one: CaseModel): void {
  for (const [index, side] of shell.sides.entries()) {
    const { part, outline } = side;
    const inside = (deep: Length): Range => (index === 0 ? spanTo(outline.x.to, deep) : span(outline.x.from, deep));
    const end = outline.z.to;
    const notch = machined(part, "notch", "kick");
    if (notch?.wide !== undefined && notch.deep !== undefined)
      cut(side, outline.x, span(zero, notch.deep.value), span(shell.front, notch.wide.value));
    const rabbet = machined(part, "rabbet", "back edge");
    if (rabbet?.wide !== undefined && rabbet.deep !== undefined)
      cut(side, inside(rabbet.deep.value), outline.y, spanTo(end, rabbet.wide.value));
    const groove = machined(part, "groove", "back edge");
    if (groove?.wide !== undefined && groove.deep !== undefined) {
      const to = subtract(end, groove.from?.value ?? zero);
      cut(side, inside(groove.deep.value), outline.y, spanTo(to, groove.wide.value));
    }
    const dado = machined(part, "dado", "bottom");
    if (dado?.wide === undefined || dado.deep === undefined) continue;
    const all = { from: shell.front, to: end };
    cut(side, inside(dado.deep.value), span(shell.floor, dado.wide.value), all);
    if (one.block.top?.choice !== "none") cut(side, inside(dado.deep.value), spanTo(shell.high, dado.wide.value), all);
  }
}

/** How far bottom and top go into each side. */
function housing({ sides }: Shell): Length {
  return machined(sides[0].part, "dado", "bottom")?.deep?.value ?? zero;
}

/** A panel that lies between the sides, its left end home. */
function lying(shell: Shell, name: string, yOf: (thick: Length) => Range): Draft | undefined {
  const piece = shell.pool.take({ name });
  if (piece === undefined) return undefined;
  const x = span(subtract(shell.thick, housing(shell)), piece.part.length.value);
  return banded(shell.home, piece, shell.stocks, x, yOf(piece.part.thickness.value), shell.front);
}

function topStretchers(shell: Shell, one: CaseModel): readonly (Draft | undefined)[] {
  if (one.block.top?.choice !== "stretchers") return [];
  const length = add(subtract(shell.wide, add(shell.thick, shell.thick)), add(housing(shell), housing(shell)));
  return [0, 1].map((index) => {
    const piece = shell.pool.take({ name: "stretcher", length });
    if (piece === undefined) return undefined;
    const { part } = piece;
    const x = span(subtract(shell.thick, housing(shell)), part.length.value);
    const z = index === 0 ? span(shell.front, part.width.value) : spanTo(innerEnd(shell), part.width.value);
    return lay(shell.home, piece, x, spanTo(shell.high, part.thickness.value), z);
  });
}

function partitionsOf(shell: Shell, one: CaseModel, bottom: Draft | undefined, top: Draft | undefined): Laid {
  const uprights = one.members.filter((member) => member.face === "front" && member.kind !== "rail");
  const inner = uprights.filter((member) => member.kind === "partition" || member.span !== one.block.frame?.span);
  const placed = inner.flatMap((member) => partitionAt(shell, member, bottom, top));
  const stretchers = one.members.filter((member) => one.frame === undefined && member.kind === "rail");
  return {
    drafts: [...placed.flatMap(({ drafts }) => drafts), ...present(stretchers.map((rail) => lyingRail(shell, rail)))],
    mates: placed.flatMap(({ mates }) => mates),
  };
}

/** A stretcher between two openings of a frameless case. */
function lyingRail(shell: Shell, { rect }: Member): Draft | undefined {
  const piece = shell.pool.take({ name: "stretcher", length: rect.wide });
  if (piece === undefined) return undefined;
  const { part } = piece;
  const y = span(rect.y, part.thickness.value);
  return lay(shell.home, piece, span(rect.x, part.length.value), y, span(shell.front, part.width.value));
}

function partitionAt(shell: Shell, member: Member, bottom: Draft | undefined, top: Draft | undefined): readonly Laid[] {
  const piece = shell.pool.take({ name: "partition" });
  if (piece === undefined) return [];
  const { part } = piece;
  const t = part.thickness.value;
  const x = span(add(member.rect.x, over(subtract(member.rect.wide, t), 2)), t);
  const whole = part.cutToFit === undefined;
  const deep = machined(bottom?.part, "dado", "partition")?.deep?.value ?? zero;
  const from = whole && bottom !== undefined ? subtract(bottom.outline.y.to, deep) : member.rect.y;
  const draft = banded(shell.home, piece, shell.stocks, x, span(from, part.length.value), shell.front);
  if (draft === undefined) return [];
  if (!whole) return [{ drafts: [draft], mates: [] }];
  for (const [panel, up] of [
    [bottom, true],
    [top, false],
  ] as const) {
    const dado = machined(panel?.part, "dado", "partition");
    if (panel === undefined || dado?.deep === undefined) continue;
    const { y, z } = panel.outline;
    cut(panel, x, up ? spanTo(y.to, dado.deep.value) : span(y.from, dado.deep.value), { from: shell.front, to: z.to });
  }
  return [{ drafts: [draft], mates: [...joined(draft, bottom, "y", -1), ...joined(draft, top, "y", 1)] }];
}
