import { cutsOf } from "../ascut/findings/saved.ts";
import type { Given } from "../ascut/rescue.ts";
import { less, toNumber } from "../core/rational.ts";
import type { CutRow } from "../plan/cut-list.ts";
import { type Day, type JobLeft, savedIn, spareText } from "./day.ts";
import type { DayJob } from "./jobs.ts";
import { listFinding, listSize } from "./list.ts";
import { ownersText } from "./owners.ts";
import type { ListFinding, ListSize } from "./types.ts";

/** A day's report for programs. */
export interface DayDocument {
  readonly schema: "scantling/day/1";
  /** In the order in which they are planned: what one takes from a rack is not there for the next. */
  readonly jobs: readonly DayJobDocument[];
  readonly saved: readonly DaySaved[];
  readonly saving: DaySaving;
  readonly waste: readonly { readonly file: string; readonly piece: string; readonly count: number }[];
  readonly recut: readonly {
    readonly file: string;
    readonly name: string;
    readonly of: string;
    readonly count: number;
  }[];
}

export interface DayJobDocument {
  readonly file: string;
  readonly project: string;
  readonly units: "inches" | "millimetres";
  readonly made: number;
  readonly wanted: number;
  readonly spoiled: number;
  readonly lost: number;
  readonly left: number;
  readonly setups: number;
  /** Only where the file gives times. */
  readonly minutes?: number;
  readonly rows: readonly DayRow[];
  readonly rack: readonly string[];
  /** Those of the `cut` block. */
  readonly findings: readonly ListFinding[];
}

export interface DayRow {
  readonly stock: string;
  readonly mark: string;
  readonly quantity: number;
  /** How many of them come from pieces that are saved. */
  readonly saved: number;
  readonly name: string;
  readonly of: string;
  readonly length: ListSize;
  readonly width: ListSize;
}

/** What need not be cut from stock, offcuts of the rack counted in, and whether another way could save more. */
export interface DaySaving {
  readonly squareInches: number;
  readonly atMost: number;
  readonly proven: boolean;
}

export interface DaySaved {
  readonly file: string;
  readonly piece: string;
  readonly kind: "spoiled" | "lost" | "surplus";
  readonly becomes: {
    readonly file: string;
    readonly name: string;
    readonly of: string;
    readonly length: ListSize;
    readonly width: ListSize;
  };
  readonly provided: readonly string[];
  /** Entries of one number come out of one piece. */
  readonly number: number;
  /** The cuts that free the parts of that piece, in their order. */
  readonly cuts: readonly string[];
}

export function dayDocument(day: Day): DayDocument {
  const { given, waste, recut, area, most } = day.rescue;
  return {
    schema: "scantling/day/1",
    jobs: day.jobs.map((one) => jobDocument(day, one)),
    saved: given.filter(({ spare }) => spare.kind !== "offcut").flatMap((one, at) => savedDocuments(one, at + 1)),
    saving: { squareInches: toNumber(area), atMost: toNumber(most), proven: !less(area, most) },
    waste: [...new Set(waste)].map((spare) => ({
      file: fileOf(spare.job),
      piece: spareText(spare),
      count: waste.filter((one) => one === spare).length,
    })),
    recut: recut.map(({ job, wanted, count }) => ({ file: fileOf(job), name: wanted.name, of: wanted.of, count })),
  };
}

function savedDocuments(given: Given, number: number): readonly DaySaved[] {
  const { spare, parts } = given;
  if (spare.kind === "offcut") return [];
  const { kind } = spare;
  const piece = { file: fileOf(spare.job), piece: spareText(spare), kind };
  const cuts = cutsOf(given);
  return parts.map(({ job, wanted, part, provided }) => {
    const { reading } = job.context;
    const size = { length: listSize(part.length.value, reading), width: listSize(part.width.value, reading) };
    const becomes = { file: fileOf(job), name: wanted.name, of: wanted.of, ...size };
    return { ...piece, becomes, provided, number, cuts };
  });
}

function jobDocument(day: Day, one: JobLeft): DayJobDocument {
  const { job, made, wanted, spoiled, lost, left, setups, minutes, rack } = one;
  return {
    file: fileOf(job),
    project: job.title,
    units: job.context.units,
    ...{ made, wanted, spoiled, lost, left, setups },
    ...(minutes === undefined ? {} : { minutes }),
    rows: one.batches.flatMap(({ stock, rows }) => rows.map((row) => rowDocument(day, job, stock, row))),
    rack,
    findings: job.findings.filter(({ code }) => code.startsWith("cut/")).map(listFinding),
  };
}

function rowDocument(day: Day, job: DayJob, stock: string, { mark, quantity, parts }: CutRow): DayRow {
  const part = parts[0]!;
  const { reading } = job.context;
  return {
    stock,
    mark,
    quantity,
    saved: savedIn(parts, job, day.rescue),
    name: [...new Set(parts.map(({ name }) => name))].join(", "),
    of: ownersText(parts.map(({ of }) => of)),
    length: listSize(part.length.value, reading),
    width: listSize(part.width.value, reading),
  };
}

function fileOf({ context }: Pick<DayJob, "context">): string {
  return context.design.uri;
}
