import type { BoxBlock, Count, EdgedMeasure, FrontBlock, Given, GivenList } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import { type Span, spanFrom } from "../../core/span.ts";
import type { BoxModel, FrontModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, rewriteSafely } from "../check.ts";

/** What is said should make a difference; where it cannot, something else was meant or forgotten. */
export const statementShouldHaveEffect: Check = {
  codes: ["statement/no-effect"],
  run: (_context, { boxes, fronts, shelves }) => [
    ...boxes.flatMap((box) => ofBox(box.block, box.whole, box)),
    ...fronts.flatMap((front) => ofFront(front.block, front.whole, front)),
    ...shelves.flatMap(({ block, whole }) =>
      idle([
        { said: block.count, isIdle: whole.at !== undefined, because: "there are as many shelves as heights are said" },
      ]),
    ),
  ],
};

type Said = Given | GivenList | Count;

interface Idle {
  readonly said: Said | undefined;
  readonly isIdle: boolean;
  readonly because: string;
}

function ofBox(block: BoxBlock, whole: BoxBlock, { slides }: BoxModel): readonly Finding[] {
  const isGrooved = whole.bottom?.fittings.some((one) => one.word === "groove") ?? false;
  const mount = slides.block.mount?.value ?? "side";
  return idle([
    {
      said: block.lap,
      isIdle: whole.corners?.kind !== "half-blind dovetails",
      because: "only half-blind dovetails leave a lap",
    },
    { said: block.play, isIdle: !isGrooved, because: "only a bottom in a groove has play" },
    { said: block.at, isIdle: mount !== "side", because: "only a slide at the side can be set higher or lower" },
  ]);
}

function ofFront(block: FrontBlock, whole: FrontBlock, { openings }: FrontModel): readonly Finding[] {
  const isFull =
    whole.fullOverlay !== undefined ||
    (whole.overlay === undefined && openings.some((opening) => opening.case !== undefined && !opening.framed));
  const isInset = whole.inset !== undefined;
  const isSlab = whole.frame === undefined;
  return idle([
    { said: block.float, isIdle: isSlab || whole.panel === undefined, because: "only a panel in a frame has float" },
    { said: block.stiles, isIdle: isSlab, because: "a slab has no stiles" },
    { said: block.rails, isIdle: isSlab, because: "a slab has no rails" },
    { said: block.reveal, isIdle: isInset || !isFull, because: "only a full overlay leaves a reveal" },
    {
      said: block.gap,
      isIdle: !isInset && !isFull && whole.pair === undefined,
      because: "a gap is left round an inset front, between full overlays and between the two of a pair",
    },
    ...gapsOf(block, isInset, isFull || whole.pair !== undefined),
    { said: block.overlay, isIdle: isInset, because: "an inset front lies over nothing" },
  ]);
}

/** Of several gaps, those whose word says a place that this front does not have. */
function gapsOf({ gap }: FrontBlock, isInset: boolean, meets: boolean): readonly Idle[] {
  if (gap === undefined || (!isInset && !meets)) return [];
  const only = (one: EdgedMeasure): EdgedMeasure & Given => ({ ...one, key: one.edge ?? gap.key });
  return gap.values.flatMap((one): readonly Idle[] => {
    if (one.edge?.text === "round")
      return [{ said: only(one), isIdle: !isInset, because: "only an inset front has a gap round it" }];
    if (one.edge?.text === "between")
      return [{ said: only(one), isIdle: !meets, because: "only a pair, or full overlays, have a gap between them" }];
    return [];
  });
}

function idle(all: readonly Idle[]): readonly Finding[] {
  return all.flatMap(({ said, isIdle, because }) => {
    if (said === undefined || !isIdle) return [];
    return [
      finding({
        code: "statement/no-effect",
        severity: "hint",
        span: said.key.span,
        message: `"${said.key.text}" makes no difference here: ${because}`,
        reason: "Whoever reads the file will think that it does.",
        remedy: "Take it out, or say what gives it a meaning.",
        fixes: startsAt(said) ? [rewriteSafely(spanFrom(said.key.span, endOf(said)), "", "Take it out")] : [],
      }),
    ];
  });
}

/** One of several measures cannot be taken out alone: what is left may mean something else. */
function startsAt(said: Said): boolean {
  return !("measure" in said) || said.key.span.start < said.measure.span.start;
}

function endOf(said: Said): Span {
  if ("measure" in said) return said.measure.span;
  if ("value" in said) return said.value.span;
  const last = said.values.at(-1);
  return last?.edge?.span ?? last?.measure.span ?? said.key.span;
}
