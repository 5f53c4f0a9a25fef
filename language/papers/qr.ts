import qrcode from "qrcode-generator";
import type { Item, Point } from "../draw/display-list.ts";
import { corners } from "../draw/display-list.ts";

/** A QR symbol: how many modules it has each way, and its dark ones, those side by side in a row as one bar. */
export interface QrSymbol {
  readonly count: number;
  readonly bars: readonly { readonly row: number; readonly start: number; readonly end: number }[];
}

/** The QR symbol of a text (ISO/IEC 18004, error correction M); `undefined` for more text than one holds. */
export function qrSymbol(words: string): QrSymbol | undefined {
  const code = qrcode(0, "M");
  code.addData(bytesOf(words), "Byte");
  try {
    code.make();
  } catch {
    return undefined;
  }
  const count = code.getModuleCount();
  const bars: { row: number; start: number; end: number }[] = [];
  for (let row = 0; row < count; row++) {
    // Dark modules side by side are one bar, so that no hairline shows between them.
    for (let start = 0; start < count; start++) {
      let end = start;
      while (end < count && code.isDark(row, end)) end++;
      if (start < end) bars.push({ row, start, end });
      start = end;
    }
  }
  return { count, bars };
}

/** A symbol drawn so wide, its quiet zone outside. */
export function qrItems({ count, bars }: QrSymbol, at: Point, wide: number): readonly Item[] {
  const step = wide / count;
  return bars.map(({ row, start, end }) =>
    bar({ x: at.x + start * step, y: at.y + row * step }, (end - start) * step, step),
  );
}

/** The text's UTF-8 bytes, each as a character of its own, which is what the encoder takes. */
function bytesOf(words: string): string {
  const whole = words.replace(/[\ud800-\udfff]/gu, "\ufffd");
  return encodeURIComponent(whole).replace(/%([0-9A-F]{2})/g, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
}

function bar(at: Point, wide: number, high: number): Item {
  const points = corners(at, { x: at.x + wide, y: at.y + high });
  return { kind: "shape", points, closed: true, weight: undefined, stroke: "solid", fill: "ink" };
}
