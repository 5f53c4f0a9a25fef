import type { Block, BoxBlock, CaseBlock, Design, FrontBlock, PartBlock, ShelfBlock } from "../core/design.ts";
import type { Part } from "../core/part.ts";
import type { BoxModel, CaseModel, FrontModel, MountModel, ShelfModel } from "../derive/model.ts";
import type { Scene } from "./scene.ts";

/** What was made of a block that gives parts. */
export type Made =
  | {
      readonly kind: "box";
      readonly block: BoxBlock;
      readonly models: readonly BoxModel[];
      readonly mounts: readonly MountModel[];
    }
  | { readonly kind: "front"; readonly block: FrontBlock; readonly models: readonly FrontModel[] }
  | { readonly kind: "shelf"; readonly block: ShelfBlock; readonly models: readonly ShelfModel[] }
  | { readonly kind: "case"; readonly block: CaseBlock; readonly models: readonly CaseModel[] }
  | { readonly kind: "part"; readonly block: PartBlock; readonly models: readonly [] };

/** Every block of the scene's own file that gives parts, with what was made of it. */
export function madeIn({ uri, designs, model }: Scene): readonly Made[] {
  const own: Design | undefined = designs.find((design) => design.uri === uri);
  if (own === undefined) return [];
  return [
    ...own.cases.map(
      (block): Made => ({ kind: "case", block, models: model.cases.filter((one) => isSame(one.block, block)) }),
    ),
    ...own.boxes.map((block): Made => {
      const models = model.boxes.filter((one) => isSame(one.block, block));
      const names = new Set(models.map(({ opening }) => opening.name.text));
      const mounts = model.mounts.filter(({ openings }) => names.has(openings[0]?.name.text ?? ""));
      return { kind: "box", block, models, mounts };
    }),
    ...own.fronts.map(
      (block): Made => ({ kind: "front", block, models: model.fronts.filter((one) => isSame(one.block, block)) }),
    ),
    ...own.shelves.map(
      (block): Made => ({ kind: "shelf", block, models: model.shelves.filter((one) => isSame(one.block, block)) }),
    ),
    ...own.parts.map((block): Made => ({ kind: "part", block, models: [] })),
  ];
}

/** Blocks that were filled up from another are other objects in the same place. */
function isSame(a: Block, b: Block): boolean {
  return a.span.uri === b.span.uri && a.span.start === b.span.start;
}

/** The parts of a block, those of the strips that its slides are put up on with them. */
export function partsOf({ model }: Scene, made: Made): readonly Part[] {
  switch (made.kind) {
    case "box":
      return [...made.models, ...made.mounts].flatMap(({ parts }) => parts);
    case "front":
    case "shelf":
      return (made.models as readonly { readonly parts: readonly Part[] }[]).flatMap(({ parts }) => parts);
    default: {
      const of = `${made.kind} ${made.block.name.text}`;
      return model.parts.filter((part) => part.of === of);
    }
  }
}
