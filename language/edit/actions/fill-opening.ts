import { toNumber } from "../../core/rational.ts";
import { behind } from "../../core/span.ts";
import type { OutlineItem } from "../outline.ts";
import { spanOfItem } from "../places.ts";
import type { Filling } from "../propose/openings.ts";
import { freeOpenings } from "../propose/openings.ts";
import type { Scene } from "../scene.ts";
import type { Action, Offer } from "./action.ts";

/** Adds a box or a front for the opening under the cursor: like another of the file, or of its first stocks and slides. */
export const fillOpening: Offer = ({ scene, start }) => {
  const name = scene.names.at(scene.uri, start);
  if (name?.kind !== "opening") return [];
  return (["box", "front"] as const).flatMap((filling): readonly Action[] => {
    if (!freeOpenings(scene, filling).includes(name.text)) return [];
    const model = modelFor(scene, filling);
    const text =
      model === undefined ? freshText(scene, filling, name.text) : `${filling} for ${name.text} like ${model} { }`;
    const statement = statementAt(scene, start);
    if (text === undefined || statement === undefined) return [];
    const title = `Add a ${filling} for ${name.text}${model === undefined ? "" : ` like that of ${model}`}`;
    const at = behind(spanOfItem(scene.uri, scene.outline, statement));
    return [{ title, kind: "rewrite", edits: [{ span: at, text: `\n${text}` }] }];
  });
};

/** The opening whose box or front was described last in this file. */
function modelFor({ designs, uri }: Scene, filling: Filling): string | undefined {
  const own = designs.find((design) => design.uri === uri);
  const blocks =
    filling === "box" ? own?.boxes : own?.fronts.filter(({ kind, spanning }) => kind === "front" && !spanning);
  return blocks?.at(-1)?.openings[0]?.text;
}

/** `undefined` where the file does not say what it could be made of. */
function freshText({ context, model }: Scene, filling: Filling, name: string): string | undefined {
  const sheets = [...model.stocks.values()].filter(({ kind }) => kind === "sheet");
  const [first] = sheets;
  const slides = context.design.slides[0];
  if (first === undefined) return undefined;
  if (filling === "front")
    return `front for ${name} {\n  overlay ${context.units === "inches" ? "1/2" : "12"}\n  slab ${first.name}\n}`;
  if (slides === undefined) return undefined;
  const [thinnest] = sheets.toSorted((a, b) => toNumber(a.thickness.value) - toNumber(b.thickness.value));
  return `box for ${name} {\n  sides ${first.name}   bottom ${thinnest!.name} under\n  slides ${slides.name.text}\n}`;
}

/** The statement that a place is in, whole, so that what is written behind it stands on its own. */
function statementAt({ outline }: Scene, at: number): OutlineItem | undefined {
  const { tokens, items } = outline;
  return items.find(({ key, end, block }) => {
    const isWhole = block === undefined || block.closed;
    return isWhole && tokens[key]!.start <= at && at <= (tokens[end - 1]?.end ?? 0);
  });
}
