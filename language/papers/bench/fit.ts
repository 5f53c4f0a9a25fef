import type { Finding } from "../../core/finding.ts";
import { showText } from "../../core/length.ts";
import { sayWeight } from "../../fit/check.ts";
import { poundInKilograms } from "../../published/lifting.ts";
import { cautionsFor } from "../../published/safety.ts";
import type { DryFit } from "../../solid/dry-fit.ts";
import { dryFitChecks } from "../../solid/findings/index.ts";
import { about, nameOf } from "../../solid/findings/names.ts";
import type { BenchSection, BenchTable } from "../../view/bench.ts";
import { targetOf } from "../../view/rod.ts";
import type { PaperDesk } from "../desk.ts";
import { columns, findingTable, section } from "./section.ts";

/** What the dry fit showed: what runs into what, what does not meet, what it weighs, and where its weight lies. */
export function fitPart(desk: PaperDesk): BenchSection {
  const fit = desk.dryFit();
  if (fit === undefined) return section("fit", { notes: ["The dry fit failed; a finding in the text says so."] });
  const told = findingsOf(desk);
  const tables = [
    findingTable("fit-findings", "What it showed", told),
    weights(desk, fit),
    balances(desk, fit),
    gaps(desk, fit),
  ].filter(({ rows }) => 0 < rows.length);
  const stands = 0 < fit.standing.length;
  return section("fit", {
    notes: verdict(fit),
    tables,
    cautions: [
      ...(stands ? cautionsFor("tip-over") : []),
      ...(fit.handling.lifts.some(({ index }) => 1 < index) ? cautionsFor("lifting") : []),
    ].map(({ text }) => text),
  });
}

function verdict({ placement, clashes, gaps }: DryFit): readonly string[] {
  const { solids, unplaced } = placement;
  const pieces = `${solids.length} ${solids.length === 1 ? "piece is" : "pieces are"} put together`;
  const left = unplaced.length === 0 ? "" : `; ${unplaced.length} could not be placed`;
  const meets = clashes.length === 0 ? "none runs into another" : `${clashes.length} times one runs into another`;
  const open = gaps.length === 0 ? "" : `; ${gaps.length} ${gaps.length === 1 ? "joint does" : "joints do"} not meet`;
  return [
    `${pieces}${left}: ${meets}${open}.`,
    "Weights are of the wood alone, without hardware or what is put in. Nothing here certifies that a piece is stable or safe.",
  ];
}

/** Those of the dry fit, and of a case that may tip. */
function findingsOf({ findings }: PaperDesk): readonly Finding[] {
  const codes = new Set(["case/may-tip", ...dryFitChecks.flatMap((check) => check.codes)]);
  return findings.filter(({ code }) => codes.has(code));
}

function weights({ context }: PaperDesk, { assemblies, handling }: DryFit): BenchTable {
  const lifts = new Map(handling.lifts.filter(({ kind }) => kind === "assembly").map((one) => [one.of, one]));
  return {
    id: "fit-weights",
    title: "Weights",
    columns: columns("what", { figures: "pounds" }, { figures: "kilograms" }, "lifted by"),
    rows: [...assemblies]
      .sort((a, b) => b.pounds - a.pounds)
      .map(({ of, pounds }) => ({
        cells: [
          of,
          pounds.toFixed(1),
          (pounds * poundInKilograms).toFixed(1),
          1 < (lifts.get(of)?.index ?? 0) ? "two, or more" : "one",
        ],
        target: undefined,
      })),
    note: `One person lifts ${sayWeight(context, handling.limit)} here${handling.stated === undefined ? ", by the load constant of the lifting equation" : ", as written"}.`,
  };
}

function balances({ context }: PaperDesk, { standing }: DryFit): BenchTable {
  return {
    id: "fit-balance",
    title: "Where the weight lies",
    columns: columns(
      "case",
      "drawers",
      { figures: "pounds" },
      { figures: "behind the feet" },
      { figures: "above the floor" },
    ),
    rows: standing.flatMap(({ one, balances: all }) =>
      all.map(({ drawers, pounds, behind, high }) => ({
        cells: [
          one.name,
          drawers,
          pounds.toFixed(0),
          behind < 0 ? `${about(context, -behind)} before them` : about(context, behind),
          about(context, high),
        ],
        target: targetOf(one.block.name.span),
      })),
    ),
    note: "Weight that lies before the front edge of the feet takes the piece over, unless it is fixed to the wall.",
  };
}

function gaps({ context }: PaperDesk, { gaps: open }: DryFit): BenchTable {
  const say = (size: Parameters<typeof showText>[0] | undefined): string =>
    size === undefined ? "do not face each other" : showText(size, context.reading);
  return {
    id: "fit-gaps",
    title: "Joints that do not meet",
    columns: columns("one", "other", { figures: "apart" }, { figures: "at least" }, { figures: "at most" }),
    rows: open.map(({ a, b, gap, least, most }) => ({
      cells: [nameOf(a), b === undefined ? "" : nameOf(b), say(gap), say(least), say(most)],
      target: targetOf(a.part.source),
    })),
    note: "",
  };
}
