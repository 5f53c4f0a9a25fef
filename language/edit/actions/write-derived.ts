import type { BoxBlock, FrontBlock } from "../../core/design.ts";
import type { Length } from "../../core/length.ts";
import { writtenText } from "../../core/length.ts";
import { equal } from "../../core/rational.ts";
import type { Sourced } from "../../core/sourced.ts";
import { behind, holds } from "../../core/span.ts";
import type { Made } from "../owners.ts";
import { madeIn } from "../owners.ts";
import type { Scene } from "../scene.ts";
import { shareSizes } from "../shares.ts";
import type { Action, Offer } from "./action.ts";
import { insideBlock } from "./inside.ts";

/** Writes down what was derived, where it is to stay as it is: a share, the length of a slide, the size of a box or front. */
export const writeDerived: Offer = ({ scene, start }) => [
  ...share(scene, start),
  ...madeIn(scene).flatMap((made) => (made.kind === "box" || made.kind === "front" ? ofBlock(scene, made, start) : [])),
];

function share(scene: Scene, at: number): readonly Action[] {
  const found = shareSizes(scene).find((one) => holds(one.share.span, scene.uri, at));
  if (found === undefined) return [];
  const written = scene.text.slice(found.share.span.start, found.share.span.end);
  if (written !== "rest" && written !== "equal") return [];
  const text = writtenText(found.size, scene.context.units);
  return [{ title: `Write ${text} for "${written}"`, kind: "rewrite", edits: [{ span: found.share.span, text }] }];
}

type Sized = Extract<Made, { kind: "box" | "front" }>;

function ofBlock(scene: Scene, made: Sized, at: number): readonly Action[] {
  const { block } = made;
  if (holds(block.head, scene.uri, at)) return size(scene, made);
  if (made.kind !== "box") return [];
  const { slides } = made.block;
  if (slides === undefined || slides.length !== undefined) return [];
  if (!holds(slides.key.span, scene.uri, at) && !holds(slides.name.span, scene.uri, at)) return [];
  const length = shared(made.models.map((box) => box.slides.length));
  if (length === undefined) return [];
  const text = writtenText(length, scene.context.units);
  return [
    {
      title: `Write the slide's length: ${text}`,
      kind: "rewrite",
      edits: [{ span: behind(slides.name.span), text: ` ${text}` }],
    },
  ];
}

/** The sizes that all of a block's boxes or fronts have alike and that it does not state. */
function size(scene: Scene, made: Sized): readonly Action[] {
  const said = (key: "wide" | "high" | "deep", values: readonly (Sourced<Length> | undefined)[]): readonly string[] => {
    const value = shared(values);
    const stated = (made.block as Partial<BoxBlock & FrontBlock>)[key] !== undefined;
    return value === undefined || stated ? [] : [`${key} ${writtenText(value, scene.context.units)}`];
  };
  const sizes =
    made.kind === "box"
      ? [
          ...said(
            "wide",
            made.models.map((box) => box.wide),
          ),
          ...said(
            "high",
            made.models.map((box) => box.high),
          ),
          ...said(
            "deep",
            made.models.map((box) => box.deep),
          ),
        ]
      : made.models.some(({ leaves }) => 1 < leaves)
        ? []
        : [
            ...said(
              "wide",
              made.models.map((front) => front.wide),
            ),
            ...said(
              "high",
              made.models.map((front) => front.high),
            ),
          ];
  if (sizes.length === 0) return [];
  const edit = insideBlock(scene, made.block.open, sizes.join("   "));
  return [{ title: `Write down its size: ${sizes.join(", ")}`, kind: "rewrite", edits: [edit] }];
}

/** The length that all have; `undefined` where they differ, or one is not known. */
function shared(values: readonly (Sourced<Length> | undefined)[]): Length | undefined {
  const [first] = values;
  if (first === undefined) return undefined;
  return values.every((value) => value !== undefined && equal(value.value, first.value)) ? first.value : undefined;
}
