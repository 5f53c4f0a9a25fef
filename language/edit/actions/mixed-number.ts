import type { Edit } from "../../core/finding.ts";
import { mixedText, parseCount } from "../../core/length.ts";
import type { TextToken } from "../../syntax/text-tokens.ts";
import { textTokens } from "../../syntax/text-tokens.ts";
import { edited, spanOfTokens } from "../places.ts";
import type { Scene } from "../scene.ts";
import type { Action, Offer } from "./action.ts";

/** Writes `13-3/4` and `13¾` as `13 3/4`, which no one takes for a subtraction: the one under the cursor, or all. */
export const mixedNumber: Offer = ({ scene, start, end }) => {
  const odd = scene.outline.tokens.filter(isOdd);
  const here = odd.find((token) => token.start <= end && start <= token.end);
  if (here === undefined) return [];
  const one = action(scene, [here], `Write ${textOf(here)}`);
  return [
    one,
    ...(odd.length < 2 ? [] : [action(scene, odd, `Write all ${odd.length} mixed numbers of this file with a space`)]),
  ].flatMap((each) => each ?? []);
};

function isOdd(token: TextToken): boolean {
  return token.kind === "number" && /[-¼½¾⅐-⅞]/.test(token.text) && textOf(token) !== undefined;
}

/** The number with a space; `undefined` for one over nothing. */
function textOf({ text }: TextToken): string | undefined {
  const [, whole, part] = /^(\d+)-(\d+\/\d+)$/.exec(text) ?? [];
  // As it was written: `1-2/4` is not made `1 1/2`.
  if (whole !== undefined) return parseCount(text) === undefined ? undefined : `${whole} ${part}`;
  const value = parseCount(text);
  return value === undefined ? undefined : mixedText(value);
}

function action(scene: Scene, tokens: readonly TextToken[], title: string): Action | undefined {
  const edits = tokens.map((token): Edit => ({ span: spanOfTokens(scene.uri, token, token), text: textOf(token)! }));
  // `2  ¾` are two numbers, and would be one.
  const after = textTokens(edited(scene.text, edits));
  return after.length === scene.outline.tokens.length ? { title, kind: "rewrite", edits } : undefined;
}
