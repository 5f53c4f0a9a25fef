import { describe, expect, it } from "vitest";
import { toText } from "../../../language/core/rational.ts";
import { scenesOf } from "../../../language/draw/place/scene.ts";
import { place } from "../../../language/solid/place.ts";
import { exampleBuild, examples } from "./example.ts";

/** Drawn as they are seen, not as they are cut: a panel within its frame, a slab with the band round it. */
const asSeen = new Set(["panel", "slab"]);
const axes = ["x", "y", "z"] as const;

describe("pieces as drawn", () => {
  // Two placements written apart from one another: what is drawn, and what the dry fit puts together.
  it.each(examples)("stand exactly where the dry fit puts them: %s", (name) => {
    const { context, model } = exampleBuild(name).derivation;
    const drawn = scenesOf(context, model)
      .flatMap((scene) => scene.solids)
      .flatMap(({ part, place: at }) =>
        part === undefined || asSeen.has(part.name)
          ? []
          : [`${part.id} ${axes.map((axis) => at[axis].map(toText).join(" to ")).join(", ")}`],
      );
    const fitted = place(context, model)
      .solids.filter(({ part }) => !asSeen.has(part.name))
      .map(
        ({ part, outline }) =>
          `${part.id} ${axes.map((axis) => `${toText(outline[axis].from)} to ${toText(outline[axis].to)}`).join(", ")}`,
      );
    expect(drawn.length).toBeGreaterThan(20);
    expect([...drawn].sort()).toEqual([...fitted].sort());
  });
});
