import { withUnit } from "../core/length.ts";
import type { Drawing } from "../draw/display-list.ts";
import type { Caution, Hazard } from "../published/safety.ts";
import { cautions } from "../published/safety.ts";
import type { PaperDesk } from "./desk.ts";
import { projectOf } from "./desk.ts";
import type { Section } from "./flow.ts";
import type { Piece } from "./page.ts";
import { figures, heading, paragraph } from "./pieces.ts";

/** Name, what it comes to, what is wrong with it, and how it will look. */
export function titleSection(desk: PaperDesk, drawings: readonly Drawing[], wide: number): Section {
  const { context, model, findings } = desk;
  const pieces = model.parts.reduce((sum, part) => sum + part.quantity, 0);
  const stocks = desk.batches.map((batch) => batch.stock).join(", ");
  const looks = drawings.filter((drawing) => drawing.id.endsWith("-finished"));
  const elevations = drawings.filter((drawing) => drawing.id.endsWith("/front"));
  return {
    title: "Title",
    begins: "new page",
    pieces: [
      heading(projectOf(desk), wide, "H1"),
      paragraph(`${pieces} pieces to cut, from ${stocks === "" ? "no stock yet" : stocks}.`, wide),
      paragraph(`Sizes in ${context.units}, read to ${withUnit(context.reading.step, context.units)}.`, wide),
      ...warnings(desk, findings, wide),
      ...figures(looks.length === 0 ? elevations : looks, wide),
    ],
  };
}

/** Papers of a build with errors are not to be cut from unread. */
function warnings(desk: PaperDesk, findings: PaperDesk["findings"], wide: number): readonly Piece[] {
  const of = (severity: "error" | "warning") => findings.filter((finding) => finding.severity === severity);
  const [errors, cares] = [of("error"), of("warning")];
  if (errors.length === 0 && cares.length === 0) return [];
  const own = (line: number, uri: string): string => (uri === desk.context.design.uri ? `line ${line + 1}: ` : "");
  const lines = [...errors, ...cares].map((one) =>
    paragraph(`${one.severity} · ${own(one.span.line, one.span.uri)}${one.message}. ${one.remedy}`, wide, {
      indent: 4,
      role: "LI",
      within: "findings",
    }),
  );
  const words =
    errors.length === 0
      ? "Before cutting, look at this:"
      : "Do not cut yet: the build file has errors, and these papers hold only what could be worked out.";
  return [heading(words, wide, "H3"), ...lines];
}

/** The usual cautions for the work that these papers ask for. */
export function cautionSection(desk: PaperDesk, wide: number): Section {
  const hazards = hazardsOf(desk);
  const used = cautions.filter((caution) => hazards.has(caution.hazard));
  return {
    title: "Cautions",
    begins: "behind",
    pieces: [
      heading("Cautions", wide),
      paragraph(
        "These are the usual ones. They do not replace the machine’s manual, local codes or licensed practice, and nothing here certifies anything.",
        wide,
      ),
      ...[...hazards].flatMap((hazard) => hazardPieces(hazard, used, wide)),
    ],
  };
}

function hazardPieces(hazard: Hazard, used: readonly Caution[], wide: number): readonly Piece[] {
  const mine = used.filter((caution) => caution.hazard === hazard);
  if (mine.length === 0) return [];
  const words = mine.map((caution) =>
    paragraph(`${caution.text} (${caution.source})`, wide, { indent: 4, role: "LI", within: `cautions ${hazard}` }),
  );
  return [heading(hazard.charAt(0).toUpperCase() + hazard.slice(1), wide, "H3"), ...words];
}

function hazardsOf({ model, context }: PaperDesk): ReadonlySet<Hazard> {
  const kinds = new Set(model.parts.flatMap((part) => part.machining.map((one) => one.kind)));
  const cutters = ["groove", "rabbet", "dado", "tongue", "tenon"] as const;
  const hazards: Hazard[] = [];
  if (0 < model.parts.length) hazards.push("table saw");
  if (cutters.some((kind) => kinds.has(kind))) hazards.push("router and dado");
  if (model.parts.some((part) => part.stockKind === "board")) hazards.push("jointer", "planer");
  if (0 < model.parts.length) hazards.push("any machine", "dust and finish");
  if (model.boxes.some((box) => box.whole.corners?.kind === "nails")) hazards.push("pneumatic nailer");
  if (model.parts.some((part) => part.stockKind === "sheet")) hazards.push("lifting");
  if (model.cases.some((home) => home.openings.some((opening) => model.boxes.some((box) => box.opening === opening))))
    hazards.push("tip-over");
  if (context.design.cases.some((block) => block.kick === undefined && block.freestanding === undefined))
    hazards.push("wall hanging");
  if (0 < model.openings.length) hazards.push("electricity and gas");
  return new Set(hazards);
}
