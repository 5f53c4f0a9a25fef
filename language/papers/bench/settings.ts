import { cautionsFor } from "../../published/safety.ts";
import type { BenchSection, BenchTable } from "../../view/bench.ts";
import type { PaperDesk } from "../desk.ts";
import type { SettingLine } from "../settings.ts";
import { cutterLines, cutterWords, sawLines, sawWords } from "../settings.ts";
import { columns, section } from "./section.ts";

/** What fence, stops and cutters are set to, each once for all that is made at it. */
export function settingsPart(desk: PaperDesk): BenchSection {
  const saw: BenchTable = {
    id: "saw",
    title: "Saw: fence and stops",
    columns: columns("stock", "set", { figures: "to" }, { figures: "pieces" }, "parts"),
    rows: sawLines(desk).map(rowOf),
    note: sawWords,
  };
  const cutters: BenchTable = {
    id: "cutters",
    title: "Router and other cutters",
    columns: columns(
      "cut",
      { figures: "wide" },
      { figures: "deep" },
      { figures: "from the edge" },
      "parts",
      "where",
      "note",
    ),
    rows: cutterLines(desk).map(rowOf),
    note: cutterWords(desk).join(" "),
  };
  const tables = [saw, cutters].filter(({ rows }) => 0 < rows.length);
  const cautions = [
    ...(tables.includes(saw) ? cautionsFor("table saw") : []),
    ...(tables.includes(cutters) ? cautionsFor("router and dado") : []),
  ];
  return section("settings", { tables, cautions: cautions.map(({ text }) => text) });
}

function rowOf({ cells, notes }: SettingLine): BenchTable["rows"][number] {
  return { cells: [...cells, ...notes], target: undefined };
}
