import type { GivenList } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import type { Part } from "../../core/part.ts";
import { divide, floor, largest, less } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { size } from "../../derive/context.ts";
import type { BoardStock } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, nameOf, placeOfLargest, say } from "../check.ts";
import { isCutAcross } from "./grain-along.ts";

/** A part must not be longer than the longest board; one wider than the widest is glued up, which is worth knowing. */
export const partMustFitBoard: Check = {
  codes: ["part/longer-than-board", "part/wider-than-board"],
  run: (context, { parts, stocks }) =>
    parts.flatMap((part) => {
      const stock = stocks.get(part.stock);
      return stock?.kind === "board" ? [...tooLong(context, part, stock), ...tooWide(context, part, stock)] : [];
    }),
};

/**
 * The grain of a board runs along it, so a part whose grain runs across lies in it crosswise: its width along the board. Where
 * it does not matter how the grain runs, the longer side does.
 */
function lieOf({ grain, length, width }: Part) {
  const [lengthwise, wide] = [
    { name: "long", size: length },
    { name: "wide", size: width },
  ];
  const crosswise = grain === "across" || (grain === "none" && less(length.value, width.value));
  return crosswise ? { along: wide, across: lengthwise } : { along: lengthwise, across: wide };
}

function tooLong(context: Context, part: Part, stock: BoardStock): readonly Finding[] {
  const most = mostOf(context, stock.block.long);
  const { along } = lieOf(part);
  if (most === undefined || !less(most, along.size.value)) return [];
  return [
    finding({
      code: "part/longer-than-board",
      severity: "error",
      span: placeOfLargest(along.size, part.source),
      message: `${nameOf(part)} is ${say(context, along.size.value)} ${along.name}; the longest board of "${stock.name}" is ${say(context, most)}`,
      reason: "It cannot be cut in one piece from what can be bought.",
      remedy: "Buy longer boards and write their length, or make it of two pieces.",
      related: [{ span: stock.block.long!.key.span, message: "the lengths that can be bought" }],
    }),
  ];
}

/** A panel is glued up as a matter of course. Where the grain runs across a long part, that is what must change. */
function tooWide(context: Context, part: Part, stock: BoardStock): readonly Finding[] {
  const most = mostOf(context, stock.block.wide);
  const { across } = lieOf(part);
  if (part.name === "panel" || (part.grain === "across" && isCutAcross(part))) return [];
  if (most === undefined || !less(most, across.size.value)) return [];
  const boards = floor(divide(across.size.value, most) ?? across.size.value) + 1n;
  return [
    finding({
      code: "part/wider-than-board",
      severity: "hint",
      span: placeOfLargest(across.size, part.source),
      message: `${nameOf(part)} is ${say(context, across.size.value)} ${across.name}; the widest board of "${stock.name}" is ${say(context, most)}`,
      ...(part.name === "back" ? ofLooseBoards(boards) : gluedUp(boards)),
      related: [{ span: stock.block.wide!.key.span, message: "the widths that can be bought" }],
    }),
  ];
}

function gluedUp(boards: bigint): Pick<Finding, "reason" | "remedy"> {
  return {
    reason: "It has to be glued up, which takes clamps, a flat bench and a day.",
    remedy: `Glue it up of ${boards} boards or more, cut long and flattened afterwards.`,
  };
}

/** A back is held all round: in one piece it could not move (common practice, no source). */
function ofLooseBoards(boards: bigint): Pick<Finding, "reason" | "remedy"> {
  return {
    reason: "Glued up in one it would move over its whole width, and a back is held all round.",
    remedy: `Make it of ${boards} boards or more side by side, each lapped or tongued into the next and fixed along one line, so that each moves by itself; laps come on top of this width. Or use a sheet.`,
  };
}

function mostOf(context: Context, list: GivenList | undefined): Length | undefined {
  const [first, ...rest] = (list?.values ?? []).flatMap((one) => size(context, one.measure)?.value ?? []);
  return first === undefined ? undefined : largest(first, ...rest);
}
