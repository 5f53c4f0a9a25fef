import { sized, unitOf } from "../../draw/desk.ts";
import { sticksFor } from "../../draw/drawings.ts";
import type { BenchSection } from "../../view/bench.ts";
import { targetOf } from "../../view/rod.ts";
import type { PaperDesk } from "../desk.ts";
import { columns, section } from "./section.ts";

/** Running sizes from one end for every edge, mount and slide line. */
export function sticksPart(desk: PaperDesk): BenchSection {
  const sticks = sticksFor(desk);
  return section("sticks", {
    notes:
      sticks.length === 0
        ? ["There is nothing to set out on a stick yet."]
        : ["Mark each stick once, and carry its marks to every piece, front to back, without measuring again."],
    tables: sticks.map((stick, index) => ({
      id: `stick-${index}`,
      title: `Stick, ${stick.title}`,
      columns: columns({ figures: `from ${stick.from}` }, "what", "kind"),
      rows: stick.marks.map(({ at, what, kind }) => ({
        cells: [`${sized(desk, at)} ${unitOf(desk)}`, what.join(", "), kind],
        target: targetOf(stick.target),
      })),
      note: "",
    })),
  });
}
