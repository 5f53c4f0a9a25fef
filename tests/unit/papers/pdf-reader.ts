import { inflateSync } from "node:zlib";

/** A straight stretch that a page strokes or fills, in millimetres from its left upper corner. */
export interface Stretch {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly how: "stroke" | "fill";
  /** Line width in millimetres. */
  readonly wide: number;
}

type Matrix = readonly [number, number, number, number, number, number];

/** The content streams of a PDF in the order of its pages, and its text outside streams. */
export function readPdf(bytes: Uint8Array): { readonly contents: readonly string[]; readonly objects: string } {
  const file = Buffer.from(bytes).toString("latin1");
  const contents: string[] = [];
  let objects = "";
  let end = 0;
  for (const found of file.matchAll(/\/Length (\d+)(?:(?!endobj)[\s\S])*?>>\s*stream\r?\n/g)) {
    if (found.index < end) continue;
    const from = found.index + found[0].length;
    objects += file.slice(end, from);
    end = from + Number(found[1]);
    const packed = Buffer.from(file.slice(from, end), "latin1");
    const plain = found[0].includes("/FlateDecode") ? inflateSync(packed) : packed;
    const text = plain.toString("latin1");
    if (/\bBDC\b|\bBMC\b/.test(text)) contents.push(text);
  }
  return { contents, objects: objects + file.slice(end) };
}

/** Everything straight that is drawn on one page, by the operators of ISO 32000-1, 8.5. */
export function stretchesOn(content: string, pageHigh: number): readonly Stretch[] {
  const found: Stretch[] = [];
  const stack: { readonly matrix: Matrix; readonly wide: number }[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let wide = 1;
  let path: [readonly [number, number], readonly [number, number]][] = [];
  let start: readonly [number, number] = [0, 0];
  let at: readonly [number, number] = [0, 0];
  let numbers: number[] = [];
  const place = (x: number, y: number): readonly [number, number] => {
    const [a, b, c, d, e, f] = matrix;
    return [((a * x + c * y + e) * 25.4) / 72, pageHigh - ((b * x + d * y + f) * 25.4) / 72];
  };
  const go = (to: readonly [number, number]): void => {
    path.push([at, to]);
    at = to;
  };
  const paint = (how: Stretch["how"]): void => {
    const scale = Math.hypot(matrix[0], matrix[1]);
    for (const [from, to] of path) found.push({ from, to, how, wide: (wide * scale * 25.4) / 72 });
  };
  for (const word of content.replace(/<[0-9a-fA-F\s]*>|\([^)]*\)/g, " ").split(/\s+/)) {
    if (/^-?\d*\.?\d+$/.test(word)) {
      numbers.push(Number(word));
      continue;
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers;
    switch (word) {
      case "q":
        stack.push({ matrix, wide });
        break;
      case "Q":
        ({ matrix, wide } = stack.pop() ?? { matrix, wide });
        break;
      case "cm":
        matrix = multiplied([a, b, c, d, e, f], matrix);
        break;
      case "w":
        wide = a;
        break;
      case "m":
        start = at = place(a, b);
        break;
      case "l":
        go(place(a, b));
        break;
      case "h":
        go(start);
        break;
      case "re":
        start = at = place(a, b);
        for (const corner of [place(a + c, b), place(a + c, b + d), place(a, b + d), place(a, b)]) go(corner);
        break;
      case "S":
        paint("stroke");
        path = [];
        break;
      case "f":
        paint("fill");
        path = [];
        break;
      case "B":
        paint("stroke");
        paint("fill");
        path = [];
        break;
      case "n":
        path = [];
        break;
    }
    numbers = [];
  }
  return found;
}

function multiplied(m: Matrix, n: Matrix): Matrix {
  return [
    m[0] * n[0] + m[1] * n[2],
    m[0] * n[1] + m[1] * n[3],
    m[2] * n[0] + m[3] * n[2],
    m[2] * n[1] + m[3] * n[3],
    m[4] * n[0] + m[5] * n[2] + n[4],
    m[4] * n[1] + m[5] * n[3] + n[5],
  ];
}
