import type { CaseBlock, Design, FillBlock, NamedBlock } from "../core/design.ts";
import type { Finding } from "../core/finding.ts";
import { oncePer } from "../core/once-per.ts";
import type { Word } from "../core/span.ts";
import type { Context } from "./context.ts";

/** Fields of a block that say which it is, and are never taken over from another. */
const own = new Set([
  "span",
  "head",
  "open",
  "allows",
  "name",
  "openings",
  "like",
  "kind",
  "spanning",
  "layout",
  "rear",
  "meets",
  "walls",
]);

type Likable = FillBlock | NamedBlock;

/**
 * A block with everything that it does not say itself taken over from the one that it is like. A chain that leads back
 * to itself, or to nothing, is a finding and ends there.
 */
export function withLike<B extends FillBlock>(context: Context, block: B, all: readonly B[], what: string): B {
  return filledAlong(block, all, what, context.findings, filled);
}

/** A design in which every block with a name has what it takes over from the one of its kind that it is like. */
export function withLikes(design: Design): { readonly design: Design; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const each = <B extends NamedBlock>(blocks: readonly B[], what: string, fill = filled<B>): readonly B[] =>
    blocks.some((block) => block.like !== undefined)
      ? blocks.map((block) => filledAlong(block, blocks, what, findings, fill))
      : blocks;
  const whole: Design = {
    ...design,
    sheets: each(design.sheets, "sheet"),
    boards: each(design.boards, "board"),
    edgings: each(design.edgings, "edging"),
    slides: each(design.slides, "slides"),
    hinges: each(design.hinges, "hinges"),
    screws: each(design.screws, "screws"),
    cases: each(design.cases, "case", caseLike),
    openings: each(design.openings, "opening"),
  };
  return { design: whole, findings };
}

type Fill<B> = (block: B, model: B) => B;

function filledAlong<B extends Likable>(
  block: B,
  all: readonly B[],
  what: string,
  findings: Finding[],
  fill: Fill<B>,
): B {
  const seen = new Set<B>([block]);
  for (let next = block.like; next !== undefined; ) {
    const name = next;
    const model = byName(all).get(name.text) as B | undefined;
    if (model === undefined) {
      say(findings, unknown(name, what, "openings" in block));
      break;
    }
    if (seen.has(model)) {
      say(findings, circular(name));
      break;
    }
    seen.add(model);
    next = model.like;
  }
  return filledFrom(block, [...seen].slice(1), fill);
}

/** Blocks as they were last filled: from the same model, filled itself, the same block comes out again. */
const lastFilled = new WeakMap<object, { readonly model: object; readonly fill: unknown; readonly whole: object }>();

/** From the last of the chain on, so that each is filled once for all that are like it, near or far. */
function filledFrom<B extends Likable>(block: B, models: readonly B[], fill: Fill<B>): B {
  return [block, ...models].reduceRight((model, one) => {
    const last = lastFilled.get(one);
    if (last?.model === model && last.fill === fill) return last.whole as B;
    const whole = fill(one, model);
    lastFilled.set(one, { model, fill, whole });
    return whole;
  });
}

/** The first block of each name. */
const byName = oncePer(
  (all: readonly Likable[]): ReadonlyMap<string, Likable> =>
    new Map(all.flatMap((block) => namesOf(block).map(({ text }) => [text, block] as const)).reverse()),
);

function namesOf(block: Likable): readonly Word[] {
  return "openings" in block ? block.openings : [block.name];
}

function filled<B extends Likable>(block: B, model: B): B {
  const merged = { ...block } as unknown as Record<string, unknown>;
  for (const [key, value] of Object.entries(model)) {
    if (own.has(key)) continue;
    const said = merged[key];
    if (said === undefined || (Array.isArray(said) && said.length === 0)) merged[key] = value;
  }
  return merged as unknown as B;
}

/** A case takes over all but the openings; those that it has itself stand in the frame that it takes over. */
function caseLike(block: CaseBlock, model: CaseBlock): CaseBlock {
  const { frame } = model;
  if (frame === undefined) return filled(block, model);
  if (block.frame === undefined) {
    return { ...filled(block, model), frame: { ...frame, layout: block.layout }, layout: [] };
  }
  const { stiles = frame.stiles, rails = frame.rails, joint = frame.joint } = block.frame;
  return { ...filled(block, model), frame: { ...block.frame, stiles, rails, joint } };
}

function say(findings: Finding[], finding: Finding): void {
  const { code, span } = finding;
  if (findings.some((one) => one.code === code && one.span.uri === span.uri && one.span.start === span.start)) return;
  findings.push(finding);
}

function unknown(name: Word, what: string, fills: boolean): Finding {
  return {
    code: "name/unknown-model",
    severity: "error",
    span: name.span,
    message: fills
      ? `there is no ${what} for "${name.text}" to be like`
      : `there is no ${what} called "${name.text}" to be like`,
    reason: fills
      ? `"like" takes over what is said of the ${what} in that opening.`
      : `"like" takes over what is said of another ${what}.`,
    remedy: fills ? `Write the name of an opening that has a ${what}.` : "Write the name of one that is described.",
    related: [],
    fixes: [],
  };
}

function circular(name: Word): Finding {
  return {
    code: "name/like-circle",
    severity: "error",
    span: name.span,
    message: "this leads back to where it began",
    reason: "Each is said to be like the other, so nothing says what either is.",
    remedy: "Describe one of them in full.",
    related: [],
    fixes: [],
  };
}
