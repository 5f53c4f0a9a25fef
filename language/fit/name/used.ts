import type { Finding } from "../../core/finding.ts";
import type { Span, Word } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { wordsIn } from "../../derive/words-in.ts";
import type { Check } from "../check.ts";
import { finding } from "../check.ts";
import { isSettled } from "../stock/used.ts";

/** A name that a build gives should be used by it. The shop's own file may name more. */
export const nameShouldBeUsed: Check = {
  codes: ["name/unused"],
  run: (context, model) => (isSettled(context, model) ? check(context) : []),
};

interface Given {
  readonly name: Word;
  readonly span: Span;
  readonly what: string;
}

function check({ design }: Context): readonly Finding[] {
  const given: readonly Given[] = [
    ...design.lets.map((one) => ({ ...one, what: "length" })),
    ...design.slides.map((one) => ({ name: one.name, span: one.span, what: "slide" })),
    ...design.hinges.map((one) => ({ name: one.name, span: one.span, what: "hinge" })),
    ...design.screws.map((one) => ({ name: one.name, span: one.span, what: "screw" })),
  ].filter(({ span }) => span.uri === design.uri);
  if (given.length === 0) return [];
  const used = wordsUsed(design);
  return given
    .filter(({ name }) => !used.has(name.text))
    .map(({ name, span, what }) =>
      finding({
        code: "name/unused",
        severity: "hint",
        span: name.span,
        message: `nothing uses the ${what} "${name.text}"`,
        reason: "What is described and not used is often meant to be, under another name.",
        remedy: "Take it out, or move it to the shop's own file.",
        fixes: [{ title: "Take it out", edits: [{ span, text: "" }], safe: false }],
      }),
    );
}

/** Every word of a design that stands where a name is used. */
function wordsUsed({ shop, ...lists }: Context["design"]): ReadonlySet<string> {
  const used = new Set<string>();
  for (const [field, value] of [...Object.entries(lists), ...Object.entries(shop)]) {
    if (notNames.has(field) || typeof value !== "object" || value === null) continue;
    for (const block of Array.isArray(value) ? value : [value]) for (const word of wordsIn(block).used) used.add(word);
  }
  return used;
}

const notNames = new Set(["findings", "allows", "uses"]);
