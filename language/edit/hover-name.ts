import type { Design, NamedBlock } from "../core/design.ts";
import { fileName } from "../core/file-name.ts";
import { withUnit } from "../core/length.ts";
import { propertiesOf } from "../core/vocabulary.ts";
import { isTrouble } from "../derive/evaluate.ts";
import type { Opening } from "../derive/model.ts";
import { escaped, explained, otherUnits, sizeText, threeText } from "./explain.ts";
import { factsOf } from "./facts.ts";
import type { Occurrence } from "./names.ts";
import type { Scene } from "./scene.ts";

/** What a name stands for, in Markdown: what is written of it, and its sizes with where they come from. */
export function aboutName(scene: Scene, name: Occurrence): string | undefined {
  switch (name.kind) {
    case "length":
      return aboutLength(scene, name);
    case "opening":
      return aboutOpening(scene, name.text);
    case "stock":
      return aboutStock(scene, name);
    case "case":
      return aboutCase(scene, name);
    default:
      return aboutBought(scene, name);
  }
}

function aboutLength(scene: Scene, { text, span }: Occurrence): string | undefined {
  const value = scene.context.lookUp([{ text, span }]);
  if (isTrouble(value)) return undefined;
  const { reading } = scene;
  return `length **${escaped(text)}** ${sizeText(value.value, reading)} (${otherUnits(value.value, reading)})\n\n${explained(text, value, scene)}`;
}

function aboutOpening(scene: Scene, text: string): string | undefined {
  const opening = scene.model.openings.find((one) => one.name.text === text);
  if (opening === undefined) return undefined;
  const { wide, high, deep } = opening;
  const home =
    opening.case === undefined ? "" : ` of case ${escaped(opening.case)}${opening.face === "rear" ? ", rear" : ""}`;
  const chains = [
    explained("width", wide, scene),
    explained("height", high, scene),
    ...(deep === undefined ? [] : [explained("depth", deep, scene)]),
  ];
  return [
    `opening **${escaped(text)}**${home}: ${threeText([wide, high, deep], scene.reading)}`,
    ...fillings(scene, opening),
    chains.join("\n"),
  ].join("\n\n");
}

/** What goes into an opening and over it. */
function fillings(scene: Scene, opening: Opening): readonly string[] {
  const { boxes, fronts, shelves } = scene.model;
  const name = opening.name.text;
  const box = boxes.find((one) => one.opening.name.text === name);
  const front = fronts.find((one) => one.openings.some((each) => each.name.text === name));
  const shelf = shelves.find((one) => one.opening.name.text === name);
  const lines = [
    ...(box === undefined ? [] : [`box ${threeText([box.wide, box.high, box.deep], scene.reading)}`]),
    ...(front === undefined ? [] : [`${front.block.kind} ${threeText([front.wide, front.high], scene.reading)}`]),
    ...(shelf === undefined
      ? []
      : [`shelf ${threeText([shelf.parts[0]?.length, shelf.parts[0]?.width], scene.reading)}`]),
  ];
  const facts = box === undefined ? [] : factsOf(scene, box.of).map((fact) => `box: ${fact}`);
  return lines.length + facts.length === 0 ? [] : [[...lines, ...facts].map((line) => `- ${escaped(line)}`).join("\n")];
}

function aboutStock(scene: Scene, name: Occurrence): string | undefined {
  const stock = scene.model.stocks.get(name.text);
  const block = blockOf(scene.designs, name);
  if (stock === undefined) return block === undefined ? undefined : saidOf(scene, name, block);
  const labelled = stock.kind === "sheet" && !stock.measured ? ", by its label: not measured yet" : "";
  const parts = scene.model.parts.filter((part) => part.stock === name.text);
  const pieces = parts.reduce((sum, part) => sum + part.quantity, 0);
  return [
    `${stock.kind} **${escaped(name.text)}** ${withUnit(stock.thickness.value, scene.reading.units)} thick (${otherUnits(stock.thickness.value, scene.reading)})${labelled}`,
    ...(block === undefined ? [] : [propertiesText(scene, block)]),
    explained("thickness", stock.thickness, scene),
    pieces === 0 ? "No part is made of it yet." : `${pieces} pieces are made of it.`,
  ].join("\n\n");
}

function aboutCase(scene: Scene, name: Occurrence): string | undefined {
  const model = scene.model.cases.find((one) => one.name === name.text);
  if (model === undefined) return undefined;
  const facts = factsOf(scene, `case ${name.text}`).map((fact) => `- ${escaped(fact)}`);
  return [
    `case **${escaped(name.text)}** ${threeText([model.wide, model.high, model.deep], scene.reading)}, outside`,
    `${model.openings.length} openings`,
    ...(facts.length === 0 ? [] : [facts.join("\n")]),
  ].join("\n\n");
}

function aboutBought(scene: Scene, name: Occurrence): string | undefined {
  const block = blockOf(scene.designs, name);
  return block === undefined ? undefined : saidOf(scene, name, block);
}

function saidOf(scene: Scene, name: Occurrence, block: NamedBlock & { readonly kind: string }): string {
  const home = block.span.uri === scene.uri ? "" : ` in ${escaped(fileName(block.span.uri))}`;
  return `${block.kind} **${escaped(name.text)}**${home}\n\n${propertiesText(scene, block)}`;
}

type KindedBlock = NamedBlock & { readonly kind: string };

/** The block that gives the name; the first of several counts. */
function blockOf(designs: readonly Design[], { kind, text }: Occurrence): KindedBlock | undefined {
  for (const design of designs) {
    const { sheets, boards, edgings, slides, hinges, screws, parts } = design;
    const tables: Readonly<Record<string, readonly KindedBlock[]>> = {
      stock: [...sheets, ...boards, ...edgings],
      slides,
      hinges,
      screws,
      part: parts,
    };
    const block = tables[kind]?.find((one) => one.name.text === text);
    if (block !== undefined) return block;
  }
  return undefined;
}

/** What a block says, in the order of the vocabulary, as words and values. */
function propertiesText({ context }: Scene, block: KindedBlock): string {
  const fields = block as unknown as Readonly<Record<string, unknown>>;
  const words = [...propertiesOf(block.kind as Parameters<typeof propertiesOf>[0]).keys()];
  const said = words.flatMap((word) => {
    const text = valueText(fields[word], context.units);
    return text === undefined ? [] : [`- ${word}${text === "" ? "" : ` ${escaped(text)}`}`];
  });
  return said.join("\n");
}

/** A property's value as it was written, as far as it is kept; `undefined` where nothing was. */
function valueText(field: unknown, units: string): string | undefined {
  if (typeof field !== "object" || field === null) return undefined;
  const of = field as Readonly<Record<string, unknown>>;
  const text = (value: unknown): string => String((value as { readonly text?: unknown } | undefined)?.text ?? "");
  if (of["measure"] !== undefined) return text(of["measure"]);
  if (Array.isArray(of["values"]))
    return of["values"].map((value: { readonly measure: unknown }) => text(value.measure)).join(", ");
  if (of["first"] !== undefined && of["second"] !== undefined) return `${text(of["first"])} x ${text(of["second"])}`;
  if (typeof of["value"] === "string") return of["value"];
  if (Array.isArray(of["stocks"])) return of["stocks"].map(text).join(", ");
  if (typeof of["text"] === "string") return of["text"];
  if (of["amount"] !== undefined) return `${numberText(of["amount"])}${amountOf(of)}`;
  if (of["first"] !== undefined) return `${seriesText(of)} ${units === "inches" ? "in" : "mm"}`;
  return of["value"] === undefined ? undefined : numberText(of["value"]);
}

/** What an amount is an amount of: `100 lb`, `7.2 per board foot`, `8 %`. */
function amountOf(of: Readonly<Record<string, unknown>>): string {
  if (typeof of["unit"] === "string") return ` ${of["unit"]}`;
  if ("per" in of) return of["per"] === undefined ? "" : ` per ${of["per"]}`;
  return " %";
}

function seriesText(of: Readonly<Record<string, unknown>>): string {
  const more = Array.isArray(of["more"]) ? of["more"].map(numberText) : [];
  if (of["last"] === undefined) return [numberText(of["first"]), ...more].join(", ");
  return `${numberText(of["first"])} to ${numberText(of["last"])} by ${numberText(of["step"])}`;
}

function numberText(expr: unknown): string {
  const value = (expr as { readonly value?: { readonly n: bigint; readonly d: bigint } } | undefined)?.value;
  if (value === undefined) return "...";
  return value.d === 1n ? String(value.n) : String(Number(value.n) / Number(value.d));
}
