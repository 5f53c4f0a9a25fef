import { alike } from "../ascut/findings/saved.ts";
import type { Spare } from "../ascut/spares.ts";
import { fileName } from "../core/file-name.ts";
import { showText } from "../core/length.ts";
import type { CutRow } from "../plan/cut-list.ts";
import { cautionsFor } from "../published/safety.ts";
import { type Day, givenLine, type JobLeft, leftLine, recutLine, savedIn, spareText, unprovenLine } from "./day.ts";
import { ownersText } from "./owners.ts";
import { wrap } from "./wrap.ts";

const wide = 80;

/** A day's report for a terminal, never wider than 80 columns: how things stand, what to do about it, then the lists. */
export function dayText(day: Day): string {
  const several = 1 < day.jobs.length;
  const title = (job: { readonly title: string }): string => (several ? ` (${job.title})` : "");
  const { waste, recut } = day.rescue;
  const given = day.rescue.given.filter(({ spare }) => spare.kind !== "offcut");
  const lines = [
    ...day.jobs.flatMap((one) => [...standing(one), ""]),
    ...section("To be put right", day.jobs.flatMap(wrong)),
    ...section("Can be saved", [
      ...alike(given).map((group) => givenLine(group, title)),
      ...day.jobs.slice(0, 1).flatMap(({ job }) => unprovenLine(day, job.context) ?? []),
    ]),
    ...section(
      "Of no more use",
      [...new Set(waste)].map((spare) => `${wasteLine(spare, waste)}${title(spare.job)}`),
    ),
    ...section(
      "To be cut again",
      recut.map((one) => `${recutLine(one)}${title(one.job)}`),
    ),
    ...day.jobs.flatMap((one) => [
      ...listLines(day, one, title(one.job)),
      ...section(`Rack${title(one.job)}`, one.rack),
    ]),
    ...(day.jobs.some(({ left }) => 0 < left) ? section("Cautions", cautions()) : []),
  ];
  return `${lines.join("\n").trimEnd()}\n`;
}

/** Spares that are alike, in one line. */
function wasteLine(spare: Spare, waste: readonly Spare[]): string {
  const count = waste.filter((one) => one === spare).length;
  return count === 1 ? spareText(spare) : `${count} × ${spareText(spare)}`;
}

function section(head: string, items: readonly string[]): readonly string[] {
  return items.length === 0 ? [] : [...wrap(head, wide), ...items.flatMap(item), ""];
}

function standing(one: JobLeft): readonly string[] {
  const { job, made, wanted, spoiled, lost } = one;
  const fates = [
    ...(spoiled === 0 ? [] : [`${spoiled} ${spoiled === 1 ? "was" : "were"} spoiled`]),
    ...(lost === 0 ? [] : [`${lost} cannot be used`]),
  ];
  const counted = `${made} of ${wanted} pieces are made${fates.length === 0 ? "" : `; ${fates.join(", ")}`}.`;
  return [`${job.title}: as cut`, counted, leftLine(one)].flatMap((text) => wrap(text, wide));
}

function wrong({ job }: JobLeft): readonly string[] {
  return job.findings
    .filter(({ code, severity }) => code.startsWith("cut/") && severity !== "hint")
    .map(({ span, message, remedy }) => `${fileName(span.uri)}, line ${span.line + 1}: ${message}. ${remedy}`);
}

function listLines(day: Day, one: JobLeft, title: string): readonly string[] {
  if (one.left === 0) return [];
  const rows = one.batches.flatMap(({ stock, rows: own }) => [
    ...wrap(stock, wide - 2).map((line) => `  ${line}`),
    ...own.flatMap((row) => rowLines(row, day, one)),
  ]);
  const note = one.batches.some((batch) => batch.rows.some(({ mark }) => /\d/.test(mark)))
    ? ["  A figure behind a mark: to another size than on the whole list."]
    : [];
  return [...wrap(`Left to cut${title}`, wide), ...rows, ...note, ""];
}

function rowLines({ mark, quantity, parts }: CutRow, day: Day, { job }: JobLeft): readonly string[] {
  const { reading } = job.context;
  const part = parts[0]!;
  const names = [...new Set(parts.map(({ name }) => name))].join(", ");
  const size = `${showText(part.length.value, reading)} × ${showText(part.width.value, reading)}`;
  const saved = savedIn(parts, job, day.rescue);
  const from = saved === 0 ? "" : `; ${saved < quantity ? `${saved} of them ` : ""}saved`;
  const head = `    ${mark.padEnd(4)} ${String(quantity).padStart(3)}  ${size.padEnd(21)}  `;
  const text = `${names} · ${ownersText(parts.map(({ of }) => of))}${from}`;
  const [first = "", ...rest] = wrap(text, wide - head.length);
  return [`${head}${first}`, ...rest.map((line) => `${" ".repeat(head.length)}${line}`)];
}

/** A piece that is cut down is a small piece, and small pieces hurt. */
function cautions(): readonly string[] {
  return [...cautionsFor("table saw"), ...cautionsFor("any machine")].map(({ text }) => text);
}

function item(text: string): readonly string[] {
  return wrap(text, wide - 6).map((line, index) => (index === 0 ? `  – ${line}` : `    ${line}`));
}
