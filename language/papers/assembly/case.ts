import type { Part } from "../../core/part.ts";
import type { CaseModel, Model } from "../../derive/model.ts";
import type { Marks, Task } from "./task.ts";
import { glueTime, partsText } from "./task.ts";

/** Frame and case: each by itself, then the one on the other. */
export function caseTasks(model: Model, home: CaseModel, marks: Marks): readonly Task[] {
  const parts = model.parts.filter((part) => part.of === `case ${home.name}`);
  return [...frameTasks(home, parts, marks), ...shellTasks(home, parts, marks), ...joiningTasks(home, parts, marks)];
}

/** The id of the last thing done to a case, which all that goes into it waits for. */
export function caseDone(name: string): string {
  return `case ${name}/whole`;
}

const frameNames = ["stile", "rail", "mid stile", "mid rail"];

function frameTasks(home: CaseModel, parts: readonly Part[], marks: Marks): readonly Task[] {
  const members = partsText(parts, frameNames, marks);
  if (home.frame === undefined || members === "") return [];
  const of = `Face frame of case ${home.name}`;
  const id = `case ${home.name}/frame`;
  const joint = home.block.frame?.joint?.kind ?? "pocket screws";
  const inner = partsText(parts, ["mid stile", "mid rail"], marks);
  const order =
    inner === ""
      ? "the rails between the stiles"
      : `${inner} and the rails to one another first, the outer stiles last`;
  const how =
    joint === "pocket screws" ? "Clamp each joint flush on its face before its screws go in from the back." : "";
  return [
    {
      id: `${id} dry`,
      of,
      kind: "dry fit",
      words: `Lay ${members} face down on a flat bench and put them together dry. The face that shows is down. Both diagonals must measure the same, and every opening its size.`,
      needs: [],
    },
    {
      id: `${id} glue`,
      of,
      kind: "glue",
      words: `Glue ${order}. ${how}`.trim(),
      needs: [`${id} dry`],
    },
    {
      id,
      of,
      kind: "clamps off",
      words: `Measure the diagonals again, then leave it flat and clamped ${glueTime}. Clamps off.`,
      needs: [`${id} glue`],
    },
  ];
}

type Back = "none" | "in grooves" | "in rabbets" | "applied";

function backOf(home: CaseModel, parts: readonly Part[]): Back {
  if (!parts.some((part) => part.name === "back")) return "none";
  const fitting = home.block.back?.fittings.find((one) => one.word === "groove" || one.word === "rabbet");
  return fitting === undefined ? "applied" : fitting.word === "groove" ? "in grooves" : "in rabbets";
}

function shellTasks(home: CaseModel, parts: readonly Part[], marks: Marks): readonly Task[] {
  const named = (...names: readonly string[]): string => partsText(parts, names, marks);
  if (named("side") === "") return [];
  const of = `Case ${home.name}`;
  const id = `case ${home.name}/shell`;
  const back = backOf(home, parts);
  const inside = named("bottom", "partition", "top", "stretcher", "nailer");
  const housed = home.block.joint?.kind === "dado" ? "in their dados" : "between the sides";
  const grooved =
    back === "in grooves" ? ` The ${named("back")} goes into its grooves before the second side closes them.` : "";
  const later: Task[] =
    back === "in rabbets" || back === "applied"
      ? [
          {
            id: `${id} back`,
            of,
            kind: "fix",
            words: `Fix the ${named("back")}, inside face in, ${back === "in rabbets" ? "in its rabbets" : "on the back edges"}: one edge first, then pull the case square to it by the diagonals.`,
            needs: [`${id} glue`],
          },
        ]
      : [];
  return [
    {
      id: `${id} dry`,
      of,
      kind: "dry fit",
      words: `Put up ${named("side")} with ${inside} ${housed}, dry. Inside faces in, front edges flush.${grooved} Both diagonals the same.`,
      needs: [],
    },
    {
      id: `${id} glue`,
      of,
      kind: "glue",
      words: `One side lying on its outside: glue and fix ${inside} to it, then the other side.${grooved} Clamp across the front and the back.`,
      needs: [`${id} dry`],
    },
    ...later,
    {
      id,
      of,
      kind: "clamps off",
      words: `Leave it standing square ${glueTime}. Clamps off.`,
      needs: [`${id} glue`, `${id} back`],
    },
  ];
}

function joiningTasks(home: CaseModel, parts: readonly Part[], marks: Marks): readonly Task[] {
  const id = `case ${home.name}`;
  const of = `Case ${home.name}`;
  const kick = partsText(parts, ["kick"], marks);
  const tasks: Task[] = [];
  if (kick !== "") {
    tasks.push({
      id: `${id}/kick`,
      of,
      kind: "fix",
      words: `Fix the ${kick} across the notches of the sides, its better face out.`,
      needs: [`${id}/shell`],
    });
  }
  if (home.frame !== undefined) {
    tasks.push({
      id: `${id}/framed`,
      of,
      kind: "glue",
      words:
        "Lay the case on its back, glue the face frame on, flush with the outside of both sides, and clamp it all round.",
      needs: [`${id}/shell`, `${id}/frame`],
    });
  }
  tasks.push({
    id: caseDone(home.name),
    of,
    kind: "fit",
    words: "Check every opening against the drawing: width at top and bottom, height at both sides, both diagonals.",
    needs: [`${id}/shell`, `${id}/framed`, `${id}/kick`],
  });
  return tasks;
}
