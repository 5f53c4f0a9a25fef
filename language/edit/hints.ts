import { showText } from "../core/length.ts";
import { before, behind, placedAt, type Span } from "../core/span.ts";
import { explained, sizeText, threeText } from "./explain.ts";
import { isSpelled } from "./names.ts";
import type { Made } from "./owners.ts";
import { madeIn } from "./owners.ts";
import type { Scene } from "./scene.ts";
import { shareSizes } from "./shares.ts";

/** Which sizes a maker wants to see in the text. */
export interface HintSettings {
  readonly boxSizes: boolean;
  readonly shares: boolean;
  readonly slides: boolean;
  readonly openings: boolean;
}

/** All of them. */
export const hintDefaults: HintSettings = { boxSizes: true, shares: true, slides: true, openings: true };

/** A size shown behind a place, and where it comes from in Markdown. */
export interface Hint {
  readonly at: Span;
  readonly label: string;
  readonly tooltip: string;
}

/** The derived sizes of a file behind the words that they follow from. */
export function hintsOf(scene: Scene, settings: HintSettings): readonly Hint[] {
  const boxes = madeIn(scene).filter((made) => made.kind === "box");
  return [
    ...(settings.boxSizes ? boxes.flatMap((made) => boxHint(scene, made)) : []),
    ...(settings.slides ? boxes.flatMap((made) => slideHint(scene, made)) : []),
    ...(settings.shares ? shareHints(scene) : []),
    ...(settings.openings ? openingHints(scene) : []),
  ].sort((a, b) => a.at.start - b.at.start);
}

type MadeBox = Extract<Made, { kind: "box" }>;

function boxHint(scene: Scene, { block, models }: MadeBox): readonly Hint[] {
  const sizes = new Set(models.map(({ wide, high, deep }) => threeText([wide, high, deep], scene.reading)));
  const [first] = models;
  const last = [...block.openings, block.like].findLast((word) => word !== undefined);
  if (first === undefined || last === undefined) return [];
  const more = sizes.size - 1;
  const { wide, high, deep } = first;
  return [
    {
      at: behind(last.span),
      label: `${[...sizes][0]}${0 < more ? ` and ${more} more` : ""}`,
      tooltip: (
        [
          ["width", wide],
          ["height", high],
          ["depth", deep],
        ] as const
      )
        .map(([name, value]) => explained(name, value, scene))
        .join("\n"),
    },
  ];
}

/** Where the block itself names its slides and leaves the length to be chosen. */
function slideHint(scene: Scene, { block, models }: MadeBox): readonly Hint[] {
  const { slides } = block;
  const lengths = models.flatMap((box) => box.slides.length ?? []);
  const [first] = lengths;
  if (slides === undefined || slides.length !== undefined || first === undefined) return [];
  const texts = [...new Set(lengths.map(({ value }) => showText(value, scene.reading)))];
  return [
    {
      at: behind(slides.name.span),
      label: `${texts.join(", ")} ${unitOf(scene)}`,
      tooltip: explained("slide length", first, scene),
    },
  ];
}

function unitOf({ reading }: Scene): string {
  return reading.units === "inches" ? "in" : "mm";
}

function shareHints(scene: Scene): readonly Hint[] {
  return shareSizes(scene)
    .filter(({ share }) => isWritten(scene, share.span))
    .map(({ share, size, value }) => ({
      at: behind(share.span),
      label: `= ${sizeText(size, scene.reading)}`,
      tooltip:
        value === undefined ? "" : explained(share.kind === "rest" ? "the rest" : "an equal share", value, scene),
    }));
}

/** A share that nothing was said of has the place of its whole line. */
function isWritten({ text }: Scene, span: Span): boolean {
  return ["rest", "equal"].includes(text.slice(span.start, span.end));
}

function openingHints(scene: Scene): readonly Hint[] {
  const shown = new Set<number>();
  return scene.model.openings.flatMap((opening): readonly Hint[] => {
    const { name, wide, high, deep } = opening;
    if (name.span.uri !== scene.uri || !isSpelled({ span: name.span, text: name.text }) || opening.case === undefined)
      return [];
    // Of a range the first says it for all that are alike.
    if (shown.has(name.span.start) || isRangeEnd(scene, name.span)) return [];
    shown.add(name.span.start);
    const chain = [
      ["width", wide],
      ["height", high],
      ...(deep === undefined ? [] : [["depth", deep] as const]),
    ] as const;
    return [
      {
        at: behind(rangeEnd(scene, name.span)),
        label: threeText([wide, high, deep], scene.reading),
        tooltip: chain.map(([label, value]) => explained(label, value, scene)).join("\n"),
      },
    ];
  });
}

function isRangeEnd({ text }: Scene, span: Span): boolean {
  return /\bto\s+$/.test(text.slice(Math.max(0, span.start - 40), span.start));
}

/** `a-1 to a-4`: the place of its end, where the name begins a range. */
function rangeEnd(scene: Scene, span: Span): Span {
  const range = /^\s+to\s+[^\s,{}]+/.exec(scene.text.slice(span.end, span.end + 80));
  if (range === null || range[0].includes("\n")) return span;
  const end = span.end + range[0].length;
  return placedAt(before(span), { start: end, end, endColumn: span.endColumn + range[0].length });
}
