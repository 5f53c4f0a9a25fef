import type { Model } from "../../derive/model.ts";
import { ownersText } from "../../view/owners.ts";
import { boxTasks, sentenceCase } from "./box.ts";
import { caseDone, caseTasks } from "./case.ts";
import { frontTasks } from "./front.ts";
import type { Marks, Task } from "./task.ts";
import { inWorkingOrder, partsText } from "./task.ts";

/**
 * How a build is put together, in an order derived from what must be in place before what: dry fits before glue, panels
 * before the joint that closes on them, mounts before slides, boxes before their fronts. Common practice, no source.
 */
export function assemblyOrder(model: Model, marks: Marks): readonly Task[] {
  return inWorkingOrder([
    ...model.cases.flatMap((home) => caseTasks(model, home, marks)),
    ...boxTasks(model, marks),
    ...frontTasks(model, marks),
    ...shelfTasks(model, marks),
  ]);
}

function shelfTasks(model: Model, marks: Marks): readonly Task[] {
  return model.shelves
    .filter((shelf) => 0 < shelf.parts.length)
    .map((shelf) => {
      const loose = shelf.whole.adjustable !== undefined;
      const shelves = partsText(shelf.parts, ["shelf"], marks);
      const home = shelf.opening.case;
      return {
        id: `${shelf.of}/in`,
        of: sentenceCase(ownersText([shelf.of])),
        kind: "fit",
        words: loose ? `Set the pins and lay the ${shelves} on them.` : `Fix the ${shelves}, front edge forward.`,
        needs: home === undefined ? [] : [caseDone(home)],
      };
    });
}
