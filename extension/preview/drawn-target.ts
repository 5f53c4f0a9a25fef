import type { Target } from "../../language/view/types.ts";

/** Where the part with the id in a drawing is written; `undefined` if there is no such part, or nothing it was written as. */
export function targetOfDrawn(svg: string, part: string): Target | undefined {
  for (const [group] of svg.matchAll(/<g [^>]*>/g)) {
    if (attribute(group, "data-id") !== part) continue;
    const uri = attribute(group, "data-uri");
    const [line, column, endLine, endColumn] = ["line", "column", "end-line", "end-column"].map((name) =>
      Number(attribute(group, `data-${name}`) ?? Number.NaN),
    );
    if (uri === undefined || !isCount(line) || !isCount(column) || !isCount(endLine) || !isCount(endColumn)) continue;
    return { uri, line, column, endLine, endColumn };
  }
  return undefined;
}

function attribute(tag: string, name: string): string | undefined {
  const value = new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1];
  return value?.replace(/&(lt|gt|quot|#39|amp);/g, (_, sign: string) => SIGNS[sign] ?? "");
}

const SIGNS: Readonly<Record<string, string>> = { lt: "<", gt: ">", quot: '"', "#39": "'", amp: "&" };

function isCount(value: number | undefined): value is number {
  return value !== undefined && Number.isInteger(value) && 0 <= value;
}
