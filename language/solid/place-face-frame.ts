import { add, equal, over, subtract, zero } from "../core/rational.ts";
import type { CaseModel, Member, Model } from "../derive/model.ts";
import { type Axis, common, type Range, shared, span } from "./box.ts";
import { grow, type Home, lay, machined, type Pool } from "./lay.ts";
import { joined, type MateDraft } from "./mate.ts";
import type { Laid } from "./shell.ts";
import type { Draft } from "./solid.ts";

/** The members of a case's face frames in their places, tenons in their mortises. */
export function placeFaceFrames(one: CaseModel, model: Model, pool: Pool, shell: readonly Draft[]): Laid {
  const faces = (["front", "rear"] as const).map((face) => faceFrame(one, model, pool, face, shell));
  return { drafts: faces.flatMap(({ drafts }) => drafts), mates: faces.flatMap(({ mates }) => mates) };
}

interface Placed {
  readonly member: Member;
  readonly draft: Draft;
}

function faceFrame(one: CaseModel, model: Model, pool: Pool, face: "front" | "rear", shell: readonly Draft[]): Laid {
  const frame = face === "front" ? one.block.frame : one.block.rear?.frame;
  const stock = frame === undefined ? undefined : model.stocks.get(frame.stock.text);
  if (frame === undefined || stock === undefined) return { drafts: [], mates: [] };
  const home: Home = {
    frame: `case ${one.name}`,
    assembly: `case ${one.name}`,
    turn: face === "front" ? undefined : { wide: one.wide.value, deep: one.deep.value },
  };
  const members = one.members.filter((member) => member.face === face && member.kind !== "partition");
  const placed = members.flatMap((member) => memberAt(home, pool, member, member.span === frame.span, stock.name));
  mortise(placed.map(({ draft }) => draft));
  const onSides = shell.filter(({ part }) => part.name === "side");
  return {
    drafts: placed.map(({ draft }) => draft),
    mates: placed.flatMap(({ member, draft }) => [
      ...matesOf(draft, member, placed),
      ...(member.kind === "stile"
        ? onSides.flatMap((side) =>
            shared(draft.outline.x, side.outline.x) === undefined ? [] : joined(draft, side, "z", 1),
          )
        : []),
    ]),
  };
}

function memberAt(home: Home, pool: Pool, member: Member, outer: boolean, stock: string): readonly Placed[] {
  const name = `${outer ? "" : "mid "}${member.kind}`;
  const upright = member.kind === "stile";
  const clear = upright ? member.rect.high : member.rect.wide;
  const piece = pool.take({ name, length: clear, stock }) ?? pool.take({ name });
  if (piece === undefined) return [];
  const { part } = piece;
  const tenon = machined(part, "tenon")?.deep?.value ?? zero;
  const along = span(upright ? member.rect.y : member.rect.x, subtract(part.length.value, add(tenon, tenon)));
  const across = span(upright ? member.rect.x : member.rect.y, part.width.value);
  const z = span(zero, part.thickness.value);
  const draft = upright ? lay(home, piece, across, along, z) : lay(home, piece, along, across, z);
  if (draft === undefined) return [];
  // A tenon takes the middle third of its stock: common practice, no source.
  const third = over(part.thickness.value, 3);
  const ends: readonly Range[] = [
    { from: subtract(along.from, tenon), to: along.from },
    { from: along.to, to: add(along.to, tenon) },
  ];
  for (const end of ends) {
    if (upright) grow(draft, across, end, span(third, third));
    else grow(draft, end, across, span(third, third));
  }
  return [{ member, draft }];
}

/** Every tenon cuts its own mortise; two that meet in one member still clash with each other. */
function mortise(drafts: readonly Draft[]): void {
  for (const tenoned of drafts)
    for (const tenon of tenoned.added)
      for (const other of drafts)
        if (other !== tenoned && common(other.outline, tenon) !== undefined) other.cuts.push(tenon);
}

/** Each end of a member that ends at another must meet it; stiles of the whole height end at nothing. */
function matesOf(draft: Draft, member: Member, placed: readonly Placed[]): readonly MateDraft[] {
  const axis: Axis = member.kind === "stile" ? "y" : "x";
  const across: Axis = axis === "x" ? "y" : "x";
  const { rect } = member;
  const [from, long] = axis === "x" ? [rect.x, rect.wide] : [rect.y, rect.high];
  const to = add(from, long);
  return placed.flatMap((other): readonly MateDraft[] => {
    if (other.draft === draft || other.member.kind === member.kind) return [];
    const near = other.member.rect;
    const [start, length] = axis === "x" ? [near.x, near.wide] : [near.y, near.high];
    if (!overlaps(rect, near, across)) return [];
    const end = add(start, length);
    if (equal(start, to)) return joined(draft, other.draft, axis, 1);
    return equal(end, from) ? joined(draft, other.draft, axis, -1) : [];
  });
}

function overlaps(a: Member["rect"], b: Member["rect"], axis: Axis): boolean {
  const of = (rect: Member["rect"]): Range => (axis === "x" ? span(rect.x, rect.wide) : span(rect.y, rect.high));
  return shared(of(a), of(b)) !== undefined;
}
