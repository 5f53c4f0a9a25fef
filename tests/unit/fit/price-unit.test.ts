import { expect, test } from "vitest";
import { createWorkspace } from "../../../language/service.ts";

/** What is said of the price of a stock or of hardware. */
function said(block: string): readonly string[] {
  const workspace = createWorkspace({ root: undefined });
  workspace.set("file:///price.scant", `inches\n${block}\n`);
  const { findings } = workspace.build("file:///price.scant");
  return findings.filter(({ code }) => code === "stock/price-unit").map(({ message }) => message);
}

const sheet = "sheet ply { measures 3/4  size 48 x 96  costs 80";
const edging = "edging roll { thick 1/32  wide 7/8  costs 12";
const slides = "slides glide { mount side  lengths 10 to 28 by 2  clearance 1/2  costs 30";
const hinges = "hinges cup { cup 35mm  overlay 1/2  costs 4";
const screws = "screws short { gauge #8  long 1 1/4  costs 9";

test.each([
  [sheet, ["", "per sheet", "per piece"]],
  [edging, ["", "per foot", "per metre", "per 50"]],
  [slides, ["", "per pair", "per piece", "per 10"]],
  [hinges, ["", "per piece", "per pair", "per 50"]],
  [screws, ["", "per piece", "per 100"]],
])("%s: a price for what it is sold by is no trouble", (block, units) => {
  for (const unit of units) expect(said(`${block} ${unit} }`)).toEqual([]);
});

test.each([
  [sheet, "board foot", "a sheet: it is taken for each sheet"],
  [sheet, "10", "a sheet: it is taken for each sheet"],
  [edging, "piece", "edging: it is not counted"],
  [slides, "sheet", "slides: it is taken for each pair"],
  [hinges, "foot", "hinges: it is taken for each piece"],
  [screws, "pair", "screws: it is taken for each piece"],
])("%s per %s: what is taken instead is said", (block, unit, instead) => {
  expect(said(`${block} per ${unit} }`)).toEqual([`a price per ${unit} is none for ${instead}`]);
});
