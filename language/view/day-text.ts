import { alike } from "../ascut/findings/saved.ts";
import { showText } from "../core/length.ts";
import { cautionsFor } from "../published/safety.ts";
import { type Day, type JobLeft, leftLine, recutLine, savedLine, spareText } from "./day.ts";
import { ownersText } from "./owners.ts";
import { wrapped } from "./text.ts";

const wide = 80;

/** A day's report for a terminal: never wider than 80 columns. */
export function dayText(day: Day): string {
  const several = 1 < day.jobs.length;
  const lines = day.jobs.flatMap((one) => [...jobLines(one), ""]);
  const { saved, waste, recut } = day.rescue;
  const title = (job: { readonly title: string }): string => (several ? ` (${job.title})` : "");
  const sections: readonly (readonly [string, readonly string[]])[] = [
    [
      "Can be saved, one part from each piece",
      alike(saved).map((group) => `${savedLine(group)}${title(group[0]!.job)}`),
    ],
    ["Of no more use", waste.map((spare) => `${spareText(spare)}${title(spare.job)}`)],
    ["To be cut again", recut.map((one) => `${recutLine(one)}${title(one.job)}`)],
  ];
  for (const [head, items] of sections) if (0 < items.length) lines.push(head, ...items.flatMap(item), "");
  if (day.jobs.some(({ left }) => 0 < left)) lines.push("Cautions", ...cautions().flatMap(item), "");
  return `${lines.join("\n").trimEnd()}\n`;
}

function jobLines(one: JobLeft): readonly string[] {
  const { job, made, wanted, spoiled, lost } = one;
  const fates = [
    ...(spoiled === 0 ? [] : [`${spoiled} ${spoiled === 1 ? "was" : "were"} spoiled`]),
    ...(lost === 0 ? [] : [`${lost} cannot be used`]),
  ];
  const counted = `${made} of ${wanted} pieces are made${fates.length === 0 ? "" : `; ${fates.join(", ")}`}.`;
  const right = job.findings.filter(({ code, severity }) => code.startsWith("cut/") && severity !== "hint");
  return [
    ...wrapped(`${job.title}: as cut`, wide),
    ...wrapped(counted, wide),
    ...wrapped(leftLine(one), wide),
    ...(right.length === 0
      ? []
      : [
          "",
          "To be put right",
          ...right.flatMap(({ span, message, remedy }) => item(`line ${span.line + 1}: ${message}. ${remedy}`)),
        ]),
    ...(one.left === 0 ? [] : ["", "Left to cut", ...listLines(one)]),
    ...(one.rack.length === 0 ? [] : ["", "Rack", ...one.rack.flatMap(item)]),
  ];
}

function listLines({ batches, job }: JobLeft): readonly string[] {
  const { reading } = job.context;
  return batches.flatMap(({ stock, rows }) => [
    `  ${stock}`,
    ...rows.flatMap(({ mark, quantity, parts }) => {
      const part = parts[0]!;
      const names = [...new Set(parts.map(({ name }) => name))].join(", ");
      const size = `${showText(part.length.value, reading)} × ${showText(part.width.value, reading)}`;
      const head = `    ${mark.padEnd(4)} ${String(quantity).padStart(3)}  ${size.padEnd(21)}  `;
      const [first = "", ...rest] = wrapped(`${names} · ${ownersText(parts.map(({ of }) => of))}`, wide - head.length);
      return [`${head}${first}`, ...rest.map((line) => `${" ".repeat(head.length)}${line}`)];
    }),
  ]);
}

/** A piece that is cut down is a small piece, and small pieces hurt. */
function cautions(): readonly string[] {
  return [...cautionsFor("table saw"), ...cautionsFor("any machine")].map(({ text }) => text);
}

function item(text: string): readonly string[] {
  return wrapped(text, wide - 6).map((line, index) => (index === 0 ? `  – ${line}` : `    ${line}`));
}
