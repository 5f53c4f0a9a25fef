import { gatheredBy } from "../../core/gather.ts";
import type { FrontModel, Model } from "../../derive/model.ts";
import { ownersText } from "../../view/owners.ts";
import { boxDone, sentenceCase } from "./box.ts";
import { caseDone } from "./case.ts";
import type { Marks, Task } from "./task.ts";
import { glueTime, partsText, sameMarks } from "./task.ts";

/** Fronts that are made alike are one job; a front goes on its box, a door on its case. */
export function frontTasks(model: Model, marks: Marks): readonly Task[] {
  const groups = gatheredBy(
    model.fronts.filter((one) => 0 < one.parts.length),
    (front) => `${front.block.kind} ${sameMarks(front.parts, marks)}`,
  );
  return [...groups.values()].flatMap((fronts) => [...makingTasks(fronts, marks), hanging(model, fronts)]);
}

function makingTasks(fronts: readonly FrontModel[], marks: Marks): readonly Task[] {
  const front = fronts[0]!;
  const of = sentenceCase(ownersText(fronts.map((one) => one.of)));
  const named = (...names: readonly string[]): string => partsText(front.parts, names, marks);
  const id = front.of;
  if (front.parts.some((part) => part.name === "slab")) return slabTasks(front, of, named("slab"));
  const members = named("stile", "rail", "top rail", "bottom rail", "mid rail", "mid stile");
  const panel = named("panel");
  const marked = front.parts.some((part) => part.machining.some((one) => one.where.includes("front face marked")));
  const face = marked
    ? "Every face mark is out: the grooves lie off the middle, and a piece turned over stands proud."
    : "Better faces out.";
  const closing =
    panel === "" ? "" : ` The ${panel} goes in before the last stile closes the groove, dry: it is never glued.`;
  return [
    {
      id: `${id}/dry`,
      of,
      kind: "dry fit",
      words: `Put ${members}${panel === "" ? "" : ` and ${panel}`} together dry. ${face} Joints closed, diagonals the same.`,
      needs: [],
    },
    {
      id: `${id}/glue`,
      of,
      kind: "glue",
      words: `Glue the rails into one stile.${closing} Then the other stile. Clamp across the rails, flat, no more than closes the joints.`,
      needs: [`${id}/dry`],
    },
    {
      id: `${id}/made`,
      of,
      kind: "clamps off",
      words: `Leave it flat and clamped ${glueTime}. Clamps off.${panel === "" ? "" : " The panel must still move when pushed."}`,
      needs: [`${id}/glue`],
    },
  ];
}

function slabTasks(front: FrontModel, of: string, slab: string): readonly Task[] {
  const edged = front.parts.some((part) => part.machining.some((one) => one.kind === "edging"));
  const matched = front.parts.some((part) => part.matched !== undefined);
  return [
    {
      id: `${front.of}/made`,
      of,
      kind: "fix",
      words: `${edged ? `Band the edges of ${slab} and trim them flush` : `Break the edges of ${slab}`}; better face out.${matched ? " Keep them in the order in which they were cut, so that the grain runs on." : ""}`,
      needs: [],
    },
  ];
}

function hanging(model: Model, fronts: readonly FrontModel[]): Task {
  const front = fronts[0]!;
  const openings = fronts.flatMap((one) => one.openings);
  const names = new Set(openings.map((opening) => opening.name.text));
  const boxes = model.boxes.filter((box) => names.has(box.opening.name.text));
  const homes = [...new Set(openings.flatMap((opening) => opening.case ?? []))];
  const isDoor = front.block.kind === "door";
  const cups = front.parts.some((part) => part.machining.some((one) => one.kind === "cup"));
  return {
    id: `${front.of}/hung`,
    of: sentenceCase(ownersText(fronts.map((one) => one.of))),
    kind: "fit",
    words: isDoor
      ? `${cups ? "Press the hinges into their cups, hang" : "Hang"} each door, and set its gaps.`
      : front.block.kind === "false front"
        ? "Fix it over its opening, its overlay even all round."
        : "Put each front on its box from inside, spacers under it for an even overlay, two screws first; the rest when all fronts line up.",
    needs: [`${front.of}/made`, ...homes.map(caseDone), ...(isDoor ? [] : boxes.map(boxDone))],
  };
}
