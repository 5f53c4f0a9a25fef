import type { Area, Circle, Drawing, Group, Item, Line, Point, Shape, Stroke, Text, Weight } from "./display-list.ts";
import { capitalShare, dashes, lineWidths } from "./display-list.ts";
import { hatchLines } from "./hatch.ts";

type Dress = "bare" | "file";

/**
 * A drawing as SVG text. It names classes and no colours: `bare` leaves their style to the page it is put into, `file`
 * brings one of its own that follows light and dark, and says nothing of where on this machine its sources lie. Texts are escaped; there are no scripts, styles on elements,
 * links or fonts.
 */
export function svgOf(drawing: Drawing, dress: Dress = "bare"): string {
  const { wide, high } = drawing;
  const size = dress === "file" ? ` width="${number(wide)}mm" height="${number(high)}mm"` : "";
  const label = drawing.scale === "" ? drawing.title : `${drawing.title}, scale ${drawing.scale}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" viewBox="0 0 ${number(wide)} ${number(high)}"${size}`,
    ` role="${drawing.items.some(isGroup) ? "group" : "img"}" aria-label="${escaped(label)}" data-drawing="${escaped(drawing.id)}">`,
    dress === "file" ? `<style>${fileStyle}</style><rect class="sheet" width="100%" height="100%"/>` : "",
    drawing.items.map((item) => itemSvg(item, dress)).join(""),
    "</svg>",
  ].join("");
}

/** What a file of its own needs: ink on paper, the other way round where the reader prefers dark. */
const fileStyle = [
  ".drawing{--ink:#1b1f22;--faint:#5b656c;--paper:#fff;color:var(--ink);",
  "font-family:'Source Sans 3','Source Sans Pro',system-ui,sans-serif;font-variant-numeric:tabular-nums lining-nums}",
  "@media (prefers-color-scheme:dark){.drawing{--ink:#e7e5e0;--faint:#a3a9ad;--paper:#1c1f21}}",
  ".sheet,.paper{fill:var(--paper)}.ink{fill:var(--ink)}.none{fill:none}",
  ".heavy,.medium,.fine,.hair{stroke:var(--ink);stroke-linejoin:round;stroke-linecap:round}",
  ".hatch,.hair{stroke:var(--faint)}text{fill:var(--ink)}.bold{font-weight:600}",
  ".ground{stroke:var(--paper);stroke-width:1.2;stroke-linejoin:round;paint-order:stroke}",
].join("");

function isGroup(item: Item): item is Group {
  return item.kind === "group";
}

function itemSvg(item: Item, dress: Dress): string {
  switch (item.kind) {
    case "line":
      return lineSvg(item);
    case "shape":
      return shapeSvg(item);
    case "area":
      return areaSvg(item);
    case "circle":
      return circleSvg(item);
    case "text":
      return textSvg(item);
    case "group":
      return groupSvg(item, dress);
  }
}

function lineSvg({ from, to, weight, stroke }: Line): string {
  const ends = `x1="${number(from.x)}" y1="${number(from.y)}" x2="${number(to.x)}" y2="${number(to.y)}"`;
  return `<line class="${weight}" ${ends}${pen(weight, stroke)}/>`;
}

function shapeSvg({ points, closed, weight, stroke, fill }: Shape): string {
  return `<path class="${weight ?? "bare"} ${fill ?? "none"}" d="${pathOf(points, closed)}"${pen(weight, stroke)}/>`;
}

function areaSvg(area: Area): string {
  const { weight, stretches } = hatchLines(area);
  const lines = stretches.map(strokeOf).join("");
  const hatch = lines === "" ? "" : `<path class="${weight} hatch none" d="${lines}"${pen(weight, "solid")}/>`;
  const closed = pathOf(area.points, true);
  return `<path class="bare paper" d="${closed}"/>${hatch}<path class="${area.weight} none" d="${closed}"${pen(area.weight, "solid")}/>`;
}

/** Written from where it starts, which is shorter: hatching is most of a drawing. */
function strokeOf({ from, to }: { readonly from: Point; readonly to: Point }): string {
  const [x, y] = [number(to.x - from.x), number(to.y - from.y)];
  return `M${pair(from)}${y === "0" ? `h${x}` : x === "0" ? `v${y}` : `l${x} ${y}`}`;
}

function circleSvg({ at, radius, weight, stroke, fill }: Circle): string {
  return `<circle class="${weight} ${fill ?? "none"}" cx="${number(at.x)}" cy="${number(at.y)}" r="${number(radius)}"${pen(weight, stroke)}/>`;
}

function textSvg(item: Text): string {
  const { at, size, anchor, face, turn, ground } = item;
  const place = `x="${number(at.x)}" y="${number(at.y)}"`;
  const turned = turn === "up" ? ` transform="rotate(-90 ${number(at.x)} ${number(at.y)})"` : "";
  const classes = ["letters", face, ...(ground === "clear" ? ["ground"] : [])].join(" ");
  return `<text class="${classes}" ${place} font-size="${number(size / capitalShare)}" text-anchor="${anchor}"${turned}>${escaped(item.text)}</text>`;
}

function groupSvg({ id, name, target, items }: Group, dress: Dress): string {
  const role = items.some(isGroup) ? "group" : "img";
  const source =
    target === undefined || dress === "file"
      ? ""
      : ` data-uri="${escaped(target.uri)}" data-line="${target.line}" data-column="${target.column}" data-end-line="${target.endLine}" data-end-column="${target.endColumn}"`;
  return `<g role="${role}" aria-label="${escaped(name)}" data-id="${escaped(id)}"${source}>${items.map((item) => itemSvg(item, dress)).join("")}</g>`;
}

/** Widths and dashes are geometry, not style, so that a drawing is right without a style sheet. */
function pen(weight: Weight | undefined, stroke: Stroke): string {
  if (weight === undefined) return "";
  const dash = dashes[stroke];
  return ` stroke-width="${lineWidths[weight]}"${dash.length === 0 ? "" : ` stroke-dasharray="${dash.join(" ")}"`}`;
}

function pathOf(points: readonly Point[], closed: boolean): string {
  return `${points.map((point, index) => `${index === 0 ? "M" : "L"}${pair(point)}`).join("")}${closed ? "Z" : ""}`;
}

function pair({ x, y }: Point): string {
  return `${number(x)} ${number(y)}`;
}

/** Hundredths of a millimetre: finer than any line. */
function number(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return Object.is(rounded, -0) ? "0" : String(rounded);
}

const marks: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

/** Text for XML: markup made harmless, and what XML does not allow made visible. */
export function escaped(text: string): string {
  return text
    .replace(/[&<>"']/g, (mark) => marks[mark]!)
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, "\ufffd");
}
