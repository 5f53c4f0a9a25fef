import type { Length } from "../core/length.ts";
import { showText } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { equal } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { escaped, explained, explainedBriefly, sizeText, threeText } from "./explain.ts";
import { factsOf } from "./facts.ts";
import type { OutlineBlock, OutlineItem } from "./outline.ts";
import type { Made } from "./owners.ts";
import { madeIn, partsOf } from "./owners.ts";
import type { Scene } from "./scene.ts";

/** The sizes of what a block makes, each with its whole origin, and what the dry fit says of it. */
export function aboutHead(scene: Scene, start: number): string | undefined {
  const made = madeIn(scene).find(({ block }) => block.span.start === start);
  if (made === undefined) return undefined;
  const sized = sizedOf(made);
  const first = sized[0];
  if (first === undefined) return undefined;
  const facts = factsOf(scene, first.of).map((fact) => `- ${escaped(fact)}`);
  const own = [...(facts.length === 0 ? [] : [facts.join("\n")]), chains(scene, first)];
  // Of several the first stands for the others.
  return [summary(scene, sized), ...(1 < sized.length ? [`${escaped(first.of)}:`] : []), ...own].join("\n\n");
}

interface SizedThing {
  readonly of: string;
  readonly sizes: Readonly<Record<string, Sourced<Length>>>;
}

/** The things of a block that have a size as a whole. */
function sizedOf(made: Made): readonly SizedThing[] {
  switch (made.kind) {
    case "box":
      return made.models.map(({ of, wide, high, deep }) => ({ of, sizes: { width: wide, height: high, depth: deep } }));
    case "case":
      return made.models.map(({ name, wide, high, deep }) => ({
        of: `case ${name}`,
        sizes: { width: wide, height: high, depth: deep },
      }));
    case "front":
      return made.models.map(({ of, wide, high }) => ({ of, sizes: { width: wide, height: high } }));
    case "shelf":
      return made.models.flatMap(({ of, parts }) => {
        const [first] = parts;
        return first === undefined ? [] : [{ of, sizes: { length: first.length, width: first.width } }];
      });
    case "part":
      return [];
  }
}

/** Things of one size share a line. */
function summary({ reading }: Scene, sized: readonly SizedThing[]): string {
  const bySize = new Map<string, string[]>();
  for (const { of, sizes } of sized) {
    const text = threeText(Object.values(sizes), reading);
    bySize.set(text, [...(bySize.get(text) ?? []), of.replace(/^\S+ /, "")]);
  }
  return [...bySize].map(([text, names]) => `**${escaped(text)}** ${escaped(names.join(", "))}`).join("  \n");
}

function chains(scene: Scene, { sizes }: SizedThing): string {
  return Object.entries(sizes)
    .map(([name, value]) => explained(name, value, scene))
    .join("\n");
}

/** What a property decides: the sizes of its block that it states, the slide that was chosen, the parts that are made of its stock. */
export function aboutProperty(scene: Scene, block: OutlineBlock, item: OutlineItem): string | undefined {
  const { tokens } = scene.outline;
  const key = tokens[item.key]!.text;
  const root = rootOf(block);
  const made = madeIn(scene).find((one) => one.block.span.start === tokens[root.head]!.start);
  if (made === undefined) return undefined;
  const stated = statedBy[key];
  const first = sizedOf(made)[0];
  const size = stated === undefined || block !== root ? undefined : first?.sizes[stated];
  if (size !== undefined && stated !== undefined) return explained(stated, size, scene);
  if (made.kind === "box" && key === "slides") return slideText(scene, made);
  if (made.kind === "box" && key === "packing") return mountsText(scene, made);
  if (made.kind === "front" && (key === "overlay" || key === "full-overlay" || key === "reveal"))
    return overlayText(scene, made);
  if (key === "holds") return factsText(scene, first);
  const stocks = tokens.slice(item.key + 1, item.block?.open ?? item.end).filter((token) => token.kind === "name");
  const names = new Set(stocks.map((token) => token.text));
  const found = partsOf(scene, made).filter((part) => names.has(part.stock));
  const own = found.filter((part) => partNames[made.kind]?.[key]?.includes(part.name));
  return partsText(scene, 0 < own.length ? own : found);
}

/** The parts that a property decides, where others of the block may be of the same stock. */
const partNames: Readonly<Partial<Record<Made["kind"], Readonly<Record<string, readonly string[]>>>>> = {
  box: {
    sides: ["side", "front", "back"],
    front: ["front"],
    back: ["back"],
    bottom: ["bottom"],
    dividers: ["divider"],
  },
  front: {
    frame: ["stile", "rail", "top rail", "bottom rail", "mid rail", "mid stile"],
    panel: ["panel"],
    slab: ["slab", "front", "false front", "leaf"],
  },
  case: { back: ["back"], bottom: ["bottom"], partitions: ["partition"], frame: ["stile", "rail"] },
};

const statedBy: Readonly<Record<string, string>> = { wide: "width", high: "height", deep: "depth" };

function rootOf(block: OutlineBlock): OutlineBlock {
  return block.parent === undefined ? block : rootOf(block.parent);
}

function slideText(scene: Scene, made: Extract<Made, { kind: "box" }>): string | undefined {
  const box = made.models[0];
  if (box === undefined) return undefined;
  const { length, room, series } = box.slides;
  const facts = factsOf(scene, box.of)
    .filter((fact) => fact.includes("slides"))
    .map((fact) => `- ${escaped(fact)}`);
  return [
    ...(length === undefined ? ["No length of the series fits."] : [explained("slide length", length, scene)]),
    ...(room === undefined ? [] : [explained("room for the slide", room, scene)]),
    ...facts,
    ...(series.length === 0 ? [] : [`- sold: ${series.map(({ value }) => showText(value, scene.reading)).join(", ")}`]),
  ].join("\n");
}

function mountsText(scene: Scene, made: Extract<Made, { kind: "box" }>): string | undefined {
  const lines = made.mounts.map((mount) =>
    [
      `${escaped(mount.of)}, ${mount.side}: ${escaped(mount.layers.map(({ name }) => name).join(" + ") || "nothing thin enough")}`,
      explained("to be filled", mount.need, scene),
      explained("left to shim", mount.left, scene),
    ].join("\n"),
  );
  return lines.length === 0 ? undefined : lines.join("\n\n");
}

function overlayText(scene: Scene, made: Extract<Made, { kind: "front" }>): string | undefined {
  const front = made.models[0];
  if (front === undefined) return undefined;
  const sides = Object.entries(front.overlays).flatMap(([side, value]) =>
    value === undefined ? [] : [`${side} ${sizeText(value.value, scene.reading)}`],
  );
  return [
    ...(sides.length === 0 ? [] : [`Covers: ${escaped(sides.join(", "))}.`]),
    `${explained("width", front.wide, scene)}\n${explained("height", front.high, scene)}`,
  ].join("\n\n");
}

function factsText(scene: Scene, thing: SizedThing | undefined): string | undefined {
  const facts = thing === undefined ? [] : factsOf(scene, thing.of);
  return facts.length === 0 ? undefined : facts.map((fact) => `- ${escaped(fact)}`).join("\n");
}

/** More parts than these are for the rod. */
const mostParts = 6;

function partsText(scene: Scene, parts: readonly Part[]): string | undefined {
  const kinds = parts.reduce<Part[]>((kept, part) => {
    const known = kept.some(
      (one) =>
        one.name === part.name &&
        equal(one.length.value, part.length.value) &&
        equal(one.width.value, part.width.value),
    );
    if (!known) kept.push(part);
    return kept;
  }, []);
  if (kinds.length === 0) return undefined;
  const shown = kinds.slice(0, mostParts).map((part, index) => {
    const head = `**${escaped(part.name)}** of ${escaped(part.of)}: ${part.quantity} × ${threeText([part.length, part.width, part.thickness], scene.reading)}`;
    // The whole origin of one; of the others what they follow from.
    const tell = index === 0 ? explained : explainedBriefly;
    return `${head}\n${tell("length", part.length, scene)}\n${tell("width", part.width, scene)}`;
  });
  const more = kinds.length - shown.length;
  return [...shown, ...(more <= 0 ? [] : [`and ${more} more on the rod`])].join("\n\n");
}
