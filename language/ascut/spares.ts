import type { CutRecord, OffcutStatement } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Grain, Part } from "../core/part.ts";
import type { Context } from "../derive/context.ts";
import { size } from "../derive/context.ts";
import type { Model, Stock } from "../derive/model.ts";
import type { AsCut } from "./as-cut.ts";
import { isNeededNoMore } from "./findings/nameless.ts";
import { isOf, type Piece } from "./pieces.ts";
import { heldTogether, nothingHeld, onHand, recordedIn } from "./rack.ts";
import type { Wanted } from "./wanted.ts";

/** One job whose pieces and parts take part: its design, what was derived, and what is on the bench. */
export interface Job {
  readonly title: string;
  readonly context: Context;
  readonly model: Model;
  readonly made: AsCut;
}

/** Something that lies about and may still become a part. */
export interface Spare {
  readonly job: Job;
  readonly kind: "spoiled" | "lost" | "surplus" | "offcut";
  readonly from:
    | { readonly record: CutRecord; readonly wanted: Wanted | undefined }
    | { readonly offcut: OffcutStatement };
  readonly stock: Stock;
  readonly thickness: Length;
  /** Along the grain and across it, in inches. */
  readonly along: Length;
  readonly across: Length;
  readonly grain: Grain;
  /** Whether all of it is known to be good: of a spoiled piece without a size only the outline is known. */
  readonly isSure: boolean;
  /** Machining that it has if it got as far, and that another part may not want. */
  readonly worked: readonly string[];
}

/** All that lies about of one job, each piece by itself; offcuts less what any of the jobs has used up. Alike pieces are one object. */
export function sparesIn(job: Job, jobs: readonly Job[]): readonly Spare[] {
  const { made } = job;
  const lost = made.judged.filter(({ isGood }) => !isGood);
  return [
    ...made.pieces.filter(({ spoiled }) => spoiled).flatMap((piece) => piecesOf(job, "spoiled", piece, piece.count)),
    ...lost.flatMap(({ piece }) => piecesOf(job, "lost", piece, piece.count)),
    ...made.surplus.flatMap(({ piece, count }) => (piece.spoiled ? [] : piecesOf(job, "surplus", piece, count))),
    ...offcutsOf(job, jobs),
  ];
}

function piecesOf(job: Job, kind: Spare["kind"], piece: Piece, count: number): readonly Spare[] {
  const { record, wanted } = piece;
  // A slip of the pen is no piece of wood.
  if (
    wanted === undefined &&
    !isNeededNoMore(
      record,
      job.made.counts.map((one) => one.wanted),
    )
  )
    return [];
  const like = wanted?.part ?? likeIn(job, record);
  const stock = job.model.stocks.get(record.stock?.text ?? like?.stock ?? "");
  const length = piece.length?.value ?? wanted?.part.length.value;
  const width = piece.width?.value ?? wanted?.part.width.value;
  if (stock === undefined || length === undefined || width === undefined) return [];
  const grain = like?.grain ?? "long";
  const [along, across] = grain === "across" ? [width, length] : [length, width];
  const isSure = kind !== "spoiled" || piece.length !== undefined;
  const worked = [...new Set((wanted?.part.machining ?? []).map((made) => made.kind))];
  const thickness = like?.stock === stock.name ? like.thickness.value : stock.thickness.value;
  const spare: Spare = { job, kind, from: { record, wanted }, stock, thickness, along, across, grain, isSure, worked };
  return Array.from({ length: count }, () => spare);
}

/** What a part that is needed no more was most likely made of: as parts of its name still are. */
function likeIn({ made }: Job, record: CutRecord): Part | undefined {
  const named = made.counts.filter(({ wanted }) => wanted.name === record.part?.text);
  const kind = named.find(({ wanted }) => wanted.of.startsWith(`${record.owner.text} `));
  return (named.find(({ wanted }) => isOf(record, wanted.of)) ?? kind)?.wanted.part;
}

/** The face grain of an offcut runs along its second figure. What one job has used up is there for none. */
function offcutsOf(job: Job, jobs: readonly Job[]): readonly Spare[] {
  const held = jobs.filter((other) => other !== job).map((other) => recordedIn(other.context, other.model));
  const { context, model } = onHand(job.context, job.model, held.reduce(heldTogether, nothingHeld));
  return context.design.offcuts.flatMap((offcut): readonly Spare[] => {
    const stock = model.stocks.get(offcut.stock.text);
    const [first, second] = [size(context, offcut.first)?.value, size(context, offcut.second)?.value];
    if (stock === undefined || first === undefined || second === undefined) return [];
    const grain = stock.kind === "sheet" ? (stock.block.grain?.value ?? "long") : "long";
    const [along, across] = grain === "across" ? [first, second] : [second, first];
    const isPlain = grain === "none";
    const base = { job, stock, thickness: stock.thickness.value, along, across, isSure: true, worked: [] };
    return [{ ...base, kind: "offcut", from: { offcut }, grain: isPlain ? "none" : "long" }];
  });
}
