import type { CaseBlock, LayoutItem } from "../../core/design.ts";
import type { Finding, Fix } from "../../core/finding.ts";
import { before, behind, type Span } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import type { Bound, BoxModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, rewrite } from "../check.ts";
import { isSideMounted } from "./side-mounted.ts";

/** A side-mounted slide must have something behind it to be screwed to. */
export const slideMustHaveSomethingBehind: Check = {
  codes: ["slide/nothing-behind"],
  run: (context, { boxes }) => boxes.filter(isSideMounted).flatMap((box) => check(context, box)),
};

function check(context: Context, box: BoxModel): readonly Finding[] {
  const { opening } = box;
  if (opening.case === undefined || box.parts.length === 0) return [];
  return (["left", "right"] as const).flatMap((side) => {
    const bound = opening.bounds[side];
    return bound.shared || bound.beside !== undefined ? [] : [nothingBehind(context, box, side, bound)];
  });
}

function nothingBehind(context: Context, { opening, block }: BoxModel, side: "left" | "right", bound: Bound): Finding {
  const member = opening.framed ? "stile" : "partition";
  const isOpen = bound.member === undefined;
  const home = context.design.cases.find((one) => one.name.text === opening.case);
  return finding({
    code: "slide/nothing-behind",
    severity: "error",
    span: opening.name.span,
    message: `there is nothing at the ${side} of "${opening.name.text}" for its slide to be screwed to`,
    reason: "A slide at the side of a box hangs on the case; the edge of the next opening holds no screw.",
    remedy: isOpen
      ? `Put a ${member} between this opening and the next, or use under-mounted or centre slides.`
      : "Say what the case's panels are made of: panels STOCK.",
    related: [{ span: block.head, message: "the box that runs here" }],
    fixes: isOpen && home !== undefined ? dividedAt(home, opening.name.text, side, member) : [],
  });
}

/** A member put in where the space beside the opening was divided without one. */
function dividedAt(home: CaseBlock, name: string, side: "left" | "right", member: string): readonly Fix[] {
  const layouts = [home.layout, home.frame?.layout, home.rear?.layout, home.rear?.frame?.layout];
  const found = layouts.flatMap((layout) => columnOf(layout ?? [], name) ?? [])[0];
  if (found === undefined) return [];
  if (found.isRange) return [rewrite(behind(found.span), ` ${member}s`, `Put ${member}s between these openings`)];
  const title = `Put a ${member} at its ${side}`;
  return [
    side === "left"
      ? rewrite(before(found.span), `${member} `, title)
      : rewrite(behind(found.span), ` ${member}`, title),
  ];
}

interface Column {
  readonly span: Span;
  readonly isRange: boolean;
}

/** The item of the innermost division across that holds the opening. */
function columnOf(items: readonly LayoutItem[], name: string, across?: Column): Column | undefined {
  for (const item of items) {
    if (item.kind === "opening" && item.name.text === name) return across;
    if (item.kind !== "split") continue;
    for (const inner of item.items) {
      const own: Column | undefined =
        item.direction === "across" ? { span: spanOf(inner), isRange: isRange(item.items, inner) } : across;
      const found = columnOf([inner], name, own);
      if (found !== undefined) return found;
    }
  }
  return undefined;
}

function spanOf(item: LayoutItem): Span {
  return item.kind === "opening" || item.kind === "split" ? item.span : item.word.span;
}

/** Openings of one range share the place at which they are written. */
function isRange(items: readonly LayoutItem[], item: LayoutItem): boolean {
  return items.some((other) => other !== item && spanOf(other).start === spanOf(item).start);
}
