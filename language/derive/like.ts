import type { FillBlock } from "../core/design.ts";
import type { Context } from "./context.ts";
import { found } from "./context.ts";

/** Fields of a block that say which it is, and are never taken over from another. */
const own = new Set(["span", "head", "open", "allows", "openings", "like", "kind", "spanning"]);

/**
 * A block with everything that it does not say itself taken over from the one that it is like. A chain that leads back
 * to itself, or to nothing, is a finding and ends there.
 */
export function withLike<B extends FillBlock>(context: Context, block: B, all: readonly B[], what: string): B {
  let whole = block;
  const seen = new Set<B>([block]);
  for (let next = block.like; next !== undefined; ) {
    const name = next;
    const model = all.find((other) => other.openings.some((opening) => opening.text === name.text));
    if (model === undefined) {
      unknown(context, name, what);
      return whole;
    }
    if (seen.has(model)) {
      circular(context, name);
      return whole;
    }
    seen.add(model);
    whole = filled(whole, model);
    next = model.like;
  }
  return whole;
}

function filled<B extends FillBlock>(block: B, model: B): B {
  const merged = { ...block } as unknown as Record<string, unknown>;
  for (const [key, value] of Object.entries(model)) {
    if (own.has(key)) continue;
    const said = merged[key];
    if (said === undefined || (Array.isArray(said) && said.length === 0)) merged[key] = value;
  }
  return merged as unknown as B;
}

type Name = NonNullable<FillBlock["like"]>;

function unknown(context: Context, name: Name, what: string): void {
  if (
    context.findings.some((finding) => finding.code === "name/unknown-model" && finding.span.start === name.span.start)
  )
    return;
  found(context, {
    code: "name/unknown-model",
    severity: "error",
    span: name.span,
    message: `there is no ${what} for "${name.text}" to be like`,
    reason: `"like" takes over what is said of the ${what} in that opening.`,
    remedy: `Write the name of an opening that has a ${what}.`,
  });
}

function circular(context: Context, name: Name): void {
  if (context.findings.some((finding) => finding.code === "name/like-circle" && finding.span.start === name.span.start))
    return;
  found(context, {
    code: "name/like-circle",
    severity: "error",
    span: name.span,
    message: "this leads back to where it began",
    reason: "Each is said to be like the other, so nothing says what either is.",
    remedy: "Describe one of them in full.",
  });
}
