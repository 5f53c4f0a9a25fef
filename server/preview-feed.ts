import { fileName } from "../language/core/file-name.ts";
import type { Part } from "../language/core/part.ts";
import type { Span } from "../language/core/span.ts";
import { cutList } from "../language/plan/cut-list.ts";
import type { Build } from "../language/service.ts";
import type { RodBatch, RodView } from "../language/view/types.ts";
import type { RodAnswer } from "./protocol.ts";

/**
 * The rod of each open file: says in a word that it changed, and works it out when it is asked for.
 *
 * While a text is broken its build holds what is whole. If some owner (a box, a front, a case) has fewer pieces in it
 * than when the text was last whole, the rod stays as it was then and says so: a maker in the middle of a word must not
 * see parts vanish. Counted by owner, because a part that comes elsewhere must not hide one that is lost.
 */
export interface PreviewFeed {
  /** There is a new build of an open file. */
  checked(uri: string, build: Build): void;
  /** The file is no longer open: what it shows next is what is on disk. */
  closed(uri: string): void;
  /** The rod of an open file; `undefined` for others. */
  get(uri: string): RodAnswer | undefined;
  /** The last version announced of any file. */
  version(): number;
}

interface Shown {
  readonly version: number;
  readonly now: Build;
  /** The last build of a text that was whole. */
  readonly good: Build | undefined;
}

export function createPreviewFeed(notify: (uri: string, version: number) => void): PreviewFeed {
  const shown = new Map<string, Shown>();
  let version = 0;

  const announce = (uri: string): void => notify(uri, version);

  return {
    checked(uri, build) {
      const before = shown.get(uri);
      if (before?.now === build) return;
      version += 1;
      shown.set(uri, { version, now: build, good: isSound(build) ? build : before?.good });
      announce(uri);
    },
    closed(uri) {
      if (!shown.delete(uri)) return;
      version += 1;
      announce(uri);
    },
    get(uri) {
      const file = shown.get(uri);
      return file === undefined ? undefined : answer(file);
    },
    version: () => version,
  };
}

/** Whether the text and those it uses could be read to their ends: a used file half typed loses parts as well. */
function isSound(build: Build): boolean {
  return build.whole && !build.findings.some((finding) => finding.code.startsWith("syntax/"));
}

function answer({ version, now, good }: Shown): RodAnswer {
  const view = now.rod();
  if (good === undefined || good === now || !losesPieces(good, now))
    return { version, view, stale: false, broken: brokenParts(now) };
  const lost = rowsWith(good, isNotIn(now));
  const broken = [...new Set([...brokenParts(now), ...lost])];
  return { version, view: kept(good.rod(), view, brokenAt(now)), stale: true, broken };
}

/** The ids of the parts on whose statement an error stands, and of the rows of the cut list that hold one. */
export function brokenParts(build: Build): readonly string[] {
  const errors = build.findings.filter(({ severity }) => severity === "error").map(({ span }) => span);
  if (errors.length === 0) return [];
  const { boxes, fronts, shelves } = build.derivation.model;
  const blocks = new Map([...boxes, ...fronts, ...shelves].map(({ of, block }) => [of, block.span] as const));
  // A case holds too much to be broken all of it: its parts are where they are written themselves.
  return rowsWith(build, ({ source, of }) =>
    [source, blocks.get(of) ?? source].some((place) => errors.some((error) => overlap(error, place))),
  );
}

function overlap(a: Span, b: Span): boolean {
  return a.uri === b.uri && a.start <= b.end && b.start <= a.end;
}

/** The ids of parts that are so, each with that of the first part of its row, by which the rod knows it. */
function rowsWith(build: Build, isSo: (part: Part) => boolean): readonly string[] {
  const rows = cutList(build.derivation.model).flatMap((batch) => batch.rows);
  return rows.flatMap(({ parts }) => {
    const found = parts.filter(isSo).map(({ id }) => id);
    return found.length === 0 ? [] : [parts[0]!.id, ...found];
  });
}

function isNotIn(build: Build): (part: Part) => boolean {
  const ids = new Set(build.derivation.model.parts.map(({ id }) => id));
  return ({ id }) => !ids.has(id);
}

function losesPieces(before: Build, after: Build): boolean {
  const left = piecesByOwner(after);
  return [...piecesByOwner(before)].some(([owner, pieces]) => (left.get(owner) ?? 0) < pieces);
}

function piecesByOwner(build: Build): ReadonlyMap<string, number> {
  const pieces = new Map<string, number>();
  for (const { of, quantity } of build.derivation.model.parts) pieces.set(of, (pieces.get(of) ?? 0) + quantity);
  return pieces;
}

/** The view of old with the findings of now, leading to where its parts stand now as far as they are still there. */
function kept(good: RodView, now: RodView, where: string): RodView {
  const targets = new Map(now.batches.flatMap((batch) => batch.rows.map((row) => [row.id, row.target] as const)));
  const batches = good.batches.map(
    (batch): RodBatch => ({
      ...batch,
      rows: batch.rows.map((row) => ({ ...row, target: targets.get(row.id) ?? row.target })),
    }),
  );
  const note = `The text cannot be read to its end${where}: these are the parts as they were before.`;
  return { ...good, whole: false, counts: now.counts, batches, notes: [note, ...good.notes] };
}

function brokenAt(build: Build): string {
  const first = build.findings.find((finding) => finding.code.startsWith("syntax/"));
  if (first === undefined) return "";
  const line = `line ${first.span.line + 1}`;
  return first.span.uri === build.uri ? ` (${line})` : ` (${line} of ${fileName(first.span.uri)})`;
}
