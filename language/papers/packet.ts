import type { Stepwise } from "../core/stepwise.ts";
import { atOnce } from "../core/stepwise.ts";
import type { Drawing } from "../draw/display-list.ts";
import { drawingSteps, sticksFor } from "../draw/drawings.ts";
import { isExploded } from "../draw/exploded.ts";
import { assemblyOrder } from "./assembly/order.ts";
import type { PaperDesk } from "./desk.ts";
import { layoutOf } from "./desk.ts";
import { dryFitSection } from "./dry-fit-section.ts";
import type { Section } from "./flow.ts";
import { pagesOf, textWide } from "./flow.ts";
import { cutListSection, hardwareSection } from "./lists.ts";
import type { PaperSize, Papers, Piece } from "./page.ts";
import { figures, heading, paragraph, tickLine } from "./pieces.ts";
import { planSection } from "./plan-section.ts";
import { settingsSection } from "./settings.ts";
import { stickSection } from "./stick-pages.ts";
import { cautionSection, titleSection } from "./title.ts";

/** Everything for the bench in one packet: what it is, cautions, drawings, lists, plans, settings, assembly, sticks. */
export function packetPapers(desk: PaperDesk, size: PaperSize): Papers {
  return atOnce(packetSteps(desk, size));
}

/** As `packetPapers`, a section at a time. */
export function* packetSteps(desk: PaperDesk, size: PaperSize): Stepwise<Papers> {
  const wide = textWide(size);
  const drawings = yield* drawingSteps(desk);
  const makers: readonly (() => Section)[] = [
    () => titleSection(desk, drawings, wide),
    () => cautionSection(desk, wide),
    () => drawingSection(drawings, wide),
    () => cutListSection(desk, wide),
    () => planSection(desk, wide),
    () => settingsSection(desk, wide),
    () => hardwareSection(desk, wide),
    () => dryFitSection(desk, wide),
    () => explodedSection(drawings, wide),
    () => assemblySection(desk, wide),
    () => stickSection(desk, sticksFor(desk), wide),
  ];
  const sections: Section[] = [];
  for (const make of makers) {
    const section = make();
    sections.push(section);
    yield section.title;
  }
  return pagesOf(layoutOf(desk, size, "Shop papers"), sections);
}

function drawingSection(drawings: readonly Drawing[], wide: number): Section {
  // The finished face stands on the title page, what is apart before its assembly; sticks have pages of their own.
  const shown = drawings.filter(
    (drawing) => !drawing.id.endsWith("-finished") && !drawing.id.startsWith("stick ") && !isExploded(drawing),
  );
  if (shown.length === 0) return { title: "Drawings", begins: "behind", pieces: [] };
  return { title: "Drawings", begins: "new page", pieces: figures(shown, wide) };
}

/** How it all goes together, looked at before it is read. */
function explodedSection(drawings: readonly Drawing[], wide: number): Section {
  const shown = drawings.filter(isExploded);
  if (shown.length === 0) return { title: "Exploded views", begins: "behind", pieces: [] };
  return {
    title: "Exploded views",
    begins: "new page",
    pieces: [
      heading("Exploded views", wide),
      paragraph(
        "Isometric, each axis to scale, with the letters of the cut list. A chain line leads from a piece to where it goes; corners that are woven are drawn in steps.",
        wide,
      ),
      ...figures(shown, wide),
    ],
  };
}

function assemblySection(desk: PaperDesk, wide: number): Section {
  const tasks = assemblyOrder(desk.model, desk.marks);
  if (tasks.length === 0) return { title: "Assembly", begins: "behind", pieces: [] };
  const pieces = tasks.flatMap((task, index): readonly Piece[] => {
    const same = tasks[index - 1]?.of === task.of;
    const line = tickLine(
      String(index + 1),
      `${task.kind === "dry fit" ? "Dry fit. " : ""}${task.words}`,
      wide,
      `assembly ${task.of}`,
    );
    return same ? [line] : [heading(task.of, wide, "H3"), line];
  });
  return {
    title: "Assembly",
    begins: "new page",
    pieces: [
      heading("Assembly", wide),
      paragraph(
        "In an order in which nothing is in the way of what comes after it. Common practice; your own may be better.",
        wide,
      ),
      ...pieces,
    ],
  };
}
