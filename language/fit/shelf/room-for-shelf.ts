import type { Finding } from "../../core/finding.ts";
import { add, less, over, subtract, times } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { givenDistance } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { FrontModel, Model, ShelfModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say, textAbove } from "../check.ts";
import { limits } from "../limits.ts";

/** A shelf must end behind an inset door, and shelves should leave room between them. */
export const shelfMustHaveRoom: Check = {
  codes: ["shelf/meets-door", "shelf/close"],
  run: (context, model) => {
    const insets = new Map(
      model.fronts
        .filter((front) => front.whole.inset !== undefined)
        .flatMap((front) => front.openings.map((opening): [string, FrontModel] => [opening.name.text, front])),
    );
    return model.shelves.flatMap((shelf) => [
      ...meetsDoor(context, shelf, insets.get(shelf.opening.name.text)),
      ...close(context, model, shelf),
    ]);
  },
};

function meetsDoor(
  context: Context,
  { block, opening, parts }: ShelfModel,
  door: FrontModel | undefined,
): readonly Finding[] {
  const part = parts[0];
  if (door?.thickness === undefined || part === undefined || opening.deep === undefined) return [];
  const back = subtract(opening.deep.value, part.width.value);
  if (!less(back, door.thickness.value)) return [];
  const set = givenDistance(context, block.set);
  const text = textAbove(context, add(door.thickness.value, fallback("front.inset").value));
  return [
    finding({
      code: "shelf/meets-door",
      severity: "error",
      span: block.set?.measure.span ?? block.head,
      message: `this shelf stands back by ${say(context, back)}, and the door that closes before it is ${say(context, door.thickness.value)} thick`,
      reason: "An inset door closes into the opening: it would meet the edge of the shelf.",
      remedy: `Set it back by ${text}: set ${text}.`,
      related: [{ span: door.block.head, message: "the door" }],
      fixes: [
        set === undefined || block.set === undefined
          ? rewrite(block.open, ` set ${text} `, `Write set ${text}`)
          : rewrite(block.set.measure.span, text),
      ],
    }),
  ];
}

function close(context: Context, { stocks }: Model, { whole, opening, at, parts }: ShelfModel): readonly Finding[] {
  const part = parts[0];
  const stock = part === undefined ? undefined : stocks.get(part.stock);
  if (part === undefined || stock === undefined || whole.count === undefined || at !== undefined || part.quantity < 1)
    return [];
  const taken = times(stock.thickness.value, part.quantity);
  const each = over(subtract(opening.high.value, taken), part.quantity + 1);
  if (!less(each, limits.shelfSpacing.value)) return [];
  return [
    finding({
      code: "shelf/close",
      severity: "hint",
      span: whole.count.value.span,
      message: `${part.quantity} shelves leave ${say(context, each)} between them`,
      reason: `Shelves usually stand 3 to 12 in apart (${limits.shelfSpacing.source}); a hand wants 3.`,
      remedy: "Use fewer shelves.",
      related: [{ span: opening.name.span, message: `it is ${say(context, opening.high.value)} high` }],
    }),
  ];
}
