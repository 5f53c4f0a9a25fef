import { describe, expect, it } from "vitest";
import {
  celsius,
  equilibriumMoisture,
  fabricationMoisture,
  findPlace,
  kilnDried,
  places,
} from "../../language/published/moisture.ts";

// Wood Handbook FPL-GTR-190 Table 4-2, p. 4-4, by the Fahrenheit label (the Celsius column of the scan is one row off): 5, 10 ... 95 % humidity.
const table: readonly (readonly [fahrenheit: number, cells: readonly number[]])[] = [
  [40, [1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.3, 13.5, 14.9, 16.5, 18.5, 21.0, 24.3]],
  [60, [1.3, 2.5, 3.6, 4.6, 5.4, 6.2, 7.0, 7.8, 8.6, 9.4, 10.2, 11.1, 12.1, 13.3, 14.6, 16.2, 18.2, 20.7, 24.1]],
  [70, [1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11.0, 12.0, 13.1, 14.4, 16.0, 17.9, 20.5, 23.9]],
  [80, [1.3, 2.4, 3.5, 4.4, 5.3, 6.1, 6.8, 7.6, 8.3, 9.1, 9.9, 10.8, 11.7, 12.9, 14.2, 15.7, 17.7, 20.2, 23.6]],
  [100, [1.2, 2.3, 3.3, 4.2, 5.0, 5.8, 6.5, 7.2, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.6, 15.1, 17.0, 19.5, 22.9]],
  [120, [1.1, 2.1, 3.0, 3.9, 4.7, 5.4, 6.1, 6.8, 7.5, 8.2, 8.9, 9.7, 10.6, 11.7, 12.9, 14.4, 16.2, 18.6, 22.0]],
];

describe("equilibrium moisture, Wood Handbook Eq. 4-5", () => {
  it.each(table)("reproduces every cell of Table 4-2 at %i F within 0.06 points", (fahrenheit, cells) => {
    expect(cells).toHaveLength(19);
    cells.forEach((cell, index) => {
      const equation = equilibriumMoisture(celsius(fahrenheit), (index + 1) * 0.05)!;
      expect(Math.abs(equation - cell), `${fahrenheit} F, ${(index + 1) * 5} %`).toBeLessThanOrEqual(0.06);
    });
  });

  it.each([
    [0.25, 5.36],
    [0.3, 6.17],
    [0.35, 6.942],
    [0.4, 7.699],
    [0.5, 9.242],
    [0.65, 11.958],
    [0.8, 15.989],
  ])("at 70 F and %d gives %d unrounded (computed from Eq. 4-5)", (humidity, moisture) => {
    expect(equilibriumMoisture(celsius(70), humidity)).toBeCloseTo(moisture, 3);
  });

  it("at 20 C and a half gives 9.271 (computed from Eq. 4-5)", () => {
    expect(equilibriumMoisture(20, 0.5)).toBeCloseTo(9.271, 3);
  });

  it("gives about 6 % at 30 % humidity and 14 % at 75 % (Purdue FNR-163 pp. 1-2)", () => {
    expect(Math.round(equilibriumMoisture(celsius(70), 0.3)!)).toBe(6);
    expect(Math.round(equilibriumMoisture(celsius(70), 0.75)!)).toBe(14);
  });

  it("is zero when bone dry, and gives nothing for an impossible humidity or temperature", () => {
    expect(equilibriumMoisture(20, 0)).toBe(0);
    for (const humidity of [-0.1, 1.01, 50, Number.NaN]) expect(equilibriumMoisture(20, humidity)).toBeUndefined();
    for (const temperature of [-20, 200, Number.NaN]) expect(equilibriumMoisture(temperature, 0.5)).toBeUndefined();
  });
});

describe("interior moisture", () => {
  it("averages 8, 6 and 11 % by place (Wood Handbook ch. 13 map, as quoted)", () => {
    expect(findPlace("most of the United States")!.average).toMatchObject({ value: 8, tag: "as transcribed" });
    expect(findPlace(" Dry Southwest ")!.average.value).toBe(6);
    expect(findPlace("damp southern coast")!.average.value).toBe(11);
    expect(findPlace("the moon")).toBeUndefined();
  });

  it("remembers the spread round the average, and says so", () => {
    for (const place of places) {
      expect([place.driest.tag, place.wettest.tag]).toEqual(["from memory", "from memory"]);
      expect(place.driest.value).toBeLessThan(place.average.value);
      expect(place.average.value).toBeLessThan(place.wettest.value);
    }
  });

  it("asks for 10 % or less at fabrication (ANSI/KCMA A161.1-2012 cl. 2.8); kiln-dried is 6 to 8 (common practice)", () => {
    expect(fabricationMoisture).toMatchObject({ value: 10, tag: "published" });
    expect(kilnDried).toMatchObject({ value: { from: 6, to: 8 }, tag: "common practice" });
  });
});
