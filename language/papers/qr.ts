import qrcode from "qrcode-generator";
import type { Item, Point } from "../draw/display-list.ts";
import { corners } from "../draw/display-list.ts";

/** A QR symbol (ISO/IEC 18004, error correction M) so wide, its quiet zone outside; nothing for more text than one holds. */
export function qrItems(words: string, at: Point, wide: number): readonly Item[] {
  const code = qrcode(0, "M");
  code.addData(bytesOf(words), "Byte");
  try {
    code.make();
  } catch {
    return [];
  }
  const count = code.getModuleCount();
  const step = wide / count;
  const items: Item[] = [];
  for (let row = 0; row < count; row++) {
    // Dark modules side by side are one bar, so that no hairline shows between them.
    for (let start = 0; start < count; start++) {
      let end = start;
      while (end < count && code.isDark(row, end)) end++;
      if (start < end) items.push(bar({ x: at.x + start * step, y: at.y + row * step }, (end - start) * step, step));
      start = end;
    }
  }
  return items;
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
