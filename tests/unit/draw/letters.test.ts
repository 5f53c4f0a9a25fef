import { createRequire } from "node:module";
import PDFDocument from "pdfkit";
import { describe, expect, it } from "vitest";
import { fitted, textWidth, wrapText } from "../../../language/draw/letters.ts";

const require = createRequire(import.meta.url);
const files = {
  regular: require.resolve("@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf"),
  bold: require.resolve("@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf"),
};

describe("letters", () => {
  it("are as wide as those of the embedded typeface", () => {
    for (const face of ["regular", "bold"] as const) {
      const document = new PDFDocument({ font: files[face] });
      document.fontSize(1000);
      for (let code = 32; code < 127; code++) {
        const letter = String.fromCharCode(code);
        // Capitals so high make the size that the font goes by one.
        expect(textWidth(letter, 0.66, face) * 1000, letter).toBeCloseTo(document.widthOfString(letter), 0);
      }
    }
  });

  it("break at spaces, and a word that is too long in itself", () => {
    const lines = wrapText("a drawer for incomprehensibilities", 12, 2.5);
    expect(lines.join("").replaceAll(" ", "")).toBe("adrawerforincomprehensibilities");
    for (const line of lines) expect(textWidth(line, 2.5)).toBeLessThan(12.01);
  });

  it("never break half a letter, and always come to an end", () => {
    expect(wrapText("𝕒𝕓", 0.1, 2.5)).toEqual(["𝕒", "𝕓"]);
    expect(wrapText("", 10, 2.5)).toEqual([""]);
  });

  it("are cut off with an ellipsis", () => {
    expect(fitted("plan-1", 100, 2.5)).toBe("plan-1");
    const short = fitted("incomprehensibilities", 10, 2.5);
    expect(short.endsWith("…")).toBe(true);
    expect(textWidth(short, 2.5)).toBeLessThan(10.01);
  });
});
