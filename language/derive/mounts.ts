import type { BoxBlock } from "../core/design.ts";
import type { Part } from "../core/part.ts";
import type { Context } from "./context.ts";
import type { Opening, SlideModel, Stock } from "./model.ts";

export function mountsFor(
  _context: Context,
  _whole: BoxBlock,
  _opening: Opening,
  _slides: SlideModel,
  _sides: Stock,
  _stocks: ReadonlyMap<string, Stock>,
  _of: string,
): readonly Part[] {
  return [];
}
