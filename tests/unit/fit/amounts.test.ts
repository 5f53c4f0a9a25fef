import { describe, expect, test } from "vitest";
import { built } from "../../support/built.ts";

const shop = (units: string) => `${units}
sheet ply  { called 18mm  measures 18mm  size 1220mm x 2440mm }
sheet thin { called 6mm  measures 6mm  size 1220mm x 2440mm }
slides runner { mount side  lengths 250mm to 700mm by 50mm  clearance 12.7mm  above 6mm  below 6mm  behind 12mm  carries 20 kg }
opening wide { wide 600mm  high 200mm  deep 600mm }
`;
const said = (units: string, text: string, code: string) =>
  built(`${shop(units)}${text}`)
    .findings.filter((finding) => finding.code === code)
    .map(({ message, reason, remedy }) => `${message}. ${reason} ${remedy}`);
const box = (words: string) => `box for wide { sides ply  bottom thin under  slides runner  ${words} }`;

describe("amounts are said in the units of the file", () => {
  test("weights in kilograms or pounds, whatever they were written in", () => {
    // 30 kg = 66.1 lb; 20 kg = 44.1 lb
    expect(said("millimetres", box("holds 30 kg"), "slide/overloaded")[0]).toMatch(
      /^30 kg, and .* kg of box .* 20 kg /,
    );
    expect(said("inches", box("holds 30 kg"), "slide/overloaded")[0]).toMatch(/^66 lb, and .* lb of box .* 44 lb /);
    expect(said("millimetres", box("holds 30 kg"), "slide/overloaded")[0]).not.toMatch(/lb/);
  });

  test("test loads too", () => {
    // 15 lb on a square foot: 15 × 0.45359237 kg ÷ 0.09290304 m² = 73.2
    expect(said("millimetres", box(""), "slide/below-test-load")[0]).toMatch(
      /^the test load of 73 kg per square metre is .*holds 10 kg/,
    );
    expect(said("inches", box(""), "slide/below-test-load")[0]).toMatch(
      /^the test load of 15 lb per square foot is .*holds 20 lb/,
    );
  });

  test("volumes in litres and cubic centimetres, or in cubic feet and inches", () => {
    const chest = `case chest { wide 900mm  high 900mm  deep 500mm  panels ply  back thin applied  freestanding  down { openings a to c equal } }
      box for a to c { sides ply  bottom thin under  slides runner }`;
    expect(said("millimetres", chest, "case/may-tip")[0]).toMatch(/^at 900 mm, about \d+(\.\d)? kg and \d+ litres, /);
    expect(said("inches", chest, "case/may-tip")[0]).toMatch(/ lb and \d+(\.\d)? cubic feet, /);
    // The rail is a stretcher of the panels, 18 thick: 3 into the partition over it.
    const clash =
      "case k { wide 900mm  high 600mm  deep 400mm  panels ply  down { across 150mm { opening a  partition  opening b }  rail 15mm  opening c rest } }";
    const volumes = ["millimetres", "inches"].map((units) => said(units, clash, "dryfit/clash").join(" "));
    expect(volumes[0]).toMatch(/ \d+\.\d cubic centimetres of it/);
    expect(volumes[1]).toMatch(/ \d+\.\d\d cubic inches of it/);
  });

  test("a sag and its limit have the decimals that tell them apart", () => {
    const sags = (kilograms: number) => said("inches", box(`holds ${kilograms} kg`), "box/bottom-sags")[0] ?? "";
    const least = Array.from({ length: 400 }, (_, index) => (index + 1) / 10).find((kg) => sags(kg) !== "")!;
    const [, sag, limit] = /sags (\S+) in; (\S+) in is the limit/.exec(sags(least))!;
    expect(Number(limit)).toBeLessThan(Number(sag));
  });
});
