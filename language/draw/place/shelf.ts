import { add, subtract, zero } from "../../core/rational.ts";
import type { ShelfModel } from "../../derive/model.ts";
import { evenly } from "./box.ts";
import type { Tables } from "./scene.ts";
import type { Range, Solid } from "./solid.ts";
import { middled, placed, upTo } from "./solid.ts";

/** Shelves with equal spaces between them; a loose one may go elsewhere. */
export function shelfSolids({ stocks }: Tables, shelf: ShelfModel): readonly Solid[] {
  const { opening, parts } = shelf;
  const [part] = parts;
  if (part === undefined || opening.deep === undefined) return [];
  const floor = opening.rect?.y ?? zero;
  const left = opening.rect?.x ?? zero;
  const { left: one, right: other } = opening.bounds;
  const inside: Range = [
    subtract(left, one.beside?.value ?? zero),
    add(add(left, opening.wide.value), other.beside?.value ?? zero),
  ];
  const x = middled(...inside, part.length.value);
  const z = upTo(opening.deep.value, part.width.value);
  return evenly([floor, add(floor, opening.high.value)], part.thickness.value, part.quantity).map((y) =>
    placed(part, "shelf", { x, y, z }, "x", "y", stocks),
  );
}
