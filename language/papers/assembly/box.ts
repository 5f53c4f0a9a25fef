import { gatheredBy } from "../../core/gather.ts";
import type { BoxModel, Model } from "../../derive/model.ts";
import { ownersText } from "../../view/owners.ts";
import { caseDone } from "./case.ts";
import type { Marks, Task } from "./task.ts";
import { glueTime, partsText, sameMarks } from "./task.ts";

/** Boxes that are made alike are one job; what they hang on comes before them. */
export function boxTasks(model: Model, marks: Marks): readonly Task[] {
  const alike = gatheredBy(
    model.boxes.filter((box) => 0 < box.parts.length),
    (box) => sameMarks(box.parts, marks),
  );
  const groups = [...alike.values()];
  return [
    ...groups.flatMap((boxes) => makingTasks(boxes, marks)),
    ...mountTasks(model, marks),
    ...slideTasks(model),
    ...groups.map(hanging),
  ];
}

export function boxDone(box: BoxModel): string {
  return `${box.of}/hung`;
}

function ids(boxes: readonly BoxModel[], step: string): string {
  return `${boxes[0]!.of}/${step}`;
}

type Held = "in a groove" | "from behind" | "in a rabbet" | "under" | "none";

function heldOf(box: BoxModel): Held {
  if (!box.parts.some((part) => part.name === "bottom")) return "none";
  const words = box.whole.bottom?.fittings.map((one) => one.word) ?? [];
  if (words.includes("groove")) return words.includes("from behind") ? "from behind" : "in a groove";
  return words.includes("rabbet") ? "in a rabbet" : "under";
}

function makingTasks(boxes: readonly BoxModel[], marks: Marks): readonly Task[] {
  const box = boxes[0]!;
  const of = sentenceCase(ownersText(boxes.map((one) => one.of)));
  const named = (...names: readonly string[]): string => partsText(box.parts, names, marks);
  const walls = named("side", "front", "back");
  const bottom = named("bottom");
  const held = heldOf(box);
  const each = boxes.length === 1 ? "" : ` The same for all ${boxes.length}.`;
  const dividers = named("divider");
  const inside = held === "in a groove" ? ` with the ${bottom} in its groove` : "";
  const grooved = held === "in a groove" || held === "from behind" ? "Grooves inside and level all round; o" : "O";
  const tasks: Task[] = [
    {
      id: ids(boxes, "dry"),
      of,
      kind: "dry fit",
      words: `Put ${walls} together dry${inside}. ${grooved}utside faces out. Both diagonals the same.${each}`,
      needs: [],
    },
    {
      id: ids(boxes, "glue"),
      of,
      kind: "glue",
      words:
        held === "in a groove"
          ? `Glue front and back to one side, slide the ${bottom} in dry, then glue the other side on. The bottom stays free in its groove.`
          : cornerWords(box),
      needs: [ids(boxes, "dry")],
    },
    {
      id: ids(boxes, "off"),
      of,
      kind: "clamps off",
      words: `Leave it clamped ${glueTime}. Clamps off.`,
      needs: [ids(boxes, "glue")],
    },
  ];
  if (held === "under" || held === "in a rabbet" || held === "from behind") {
    const how =
      held === "under"
        ? `Fix the ${bottom} under it, flush all round: it holds the box square.`
        : held === "in a rabbet"
          ? `Fix the ${bottom} in its rabbet: it holds the box square.`
          : `Slide the ${bottom} in from behind, under the back, and fix it there.`;
    tasks.push({ id: ids(boxes, "bottom"), of, kind: "fix", words: how, needs: [ids(boxes, "off")] });
  }
  if (dividers !== "") {
    const needs = [ids(boxes, "bottom"), ids(boxes, "off")];
    tasks.push({ id: ids(boxes, "dividers"), of, kind: "fit", words: `Set the ${dividers} in, spaced evenly.`, needs });
  }
  return tasks;
}

function cornerWords(box: BoxModel): string {
  const square = "Square by the diagonals, and flat on the bench.";
  switch (box.whole.corners?.kind) {
    case "pocket screws":
      return `Glue front and back between the sides, each corner clamped flush before its screws go in. ${square}`;
    case "screws":
    case "nails":
    case undefined:
      return `Glue the corners and drive their ${box.whole.corners?.kind ?? "screws"}; bore first so that nothing splits. ${square}`;
    default:
      return `Glue the joints, front and back to one side, then the other side; clamp across the corners. ${square}`;
  }
}

/** Mounts come before slides: a slide needs something flush with the edge of the opening to be screwed to. */
function mountTasks(model: Model, marks: Marks): readonly Task[] {
  const homes = gatheredBy(model.mounts, (mount) => mount.openings[0]?.case ?? "");
  return [...homes].map(([home, mounts]) => {
    const letters = [...new Set(mounts.flatMap((mount) => mount.parts.flatMap((part) => marks.get(part) ?? [])))];
    return {
      id: `mounts ${home}`,
      of: home === "" ? "Slides" : `Slides in case ${home}`,
      kind: "fix",
      words: `Glue up the layers of the mounts (${letters.join(", ")}), shim what is left over, and fix each with its middle on the slide's line of the story stick, level from front to back, flush with the edge of its opening.`,
      needs: home === "" ? [] : [caseDone(home)],
    };
  });
}

function slideTasks(model: Model): readonly Task[] {
  const homes = [...new Set(model.boxes.map((box) => box.opening.case ?? ""))];
  return homes.map((home) => ({
    id: `slides ${home}`,
    of: home === "" ? "Slides" : `Slides in case ${home}`,
    kind: "fix",
    words:
      "Screw the outer members of the slides to their lines, front ends set back as their maker says, two screws each in the slots; the rest when the boxes run true.",
    needs: [`mounts ${home}`, ...(home === "" ? [] : [caseDone(home)])],
  }));
}

function hanging(boxes: readonly BoxModel[]): Task {
  const homes = [...new Set(boxes.map((box) => box.opening.case ?? ""))];
  return {
    id: boxDone(boxes[0]!),
    of: sentenceCase(ownersText(boxes.map((one) => one.of))),
    kind: "fit",
    words: "Screw the inner members to the box, hang it, and run it its whole way: it must not touch, and stay shut.",
    needs: [ids(boxes, "off"), ids(boxes, "bottom"), ids(boxes, "dividers"), ...homes.map((home) => `slides ${home}`)],
  };
}

export function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
