import { svg } from "./dom.ts";

const ELEMENTS = new Set(["svg", "g", "path", "line", "circle", "text", "rect"]);
const ATTRIBUTES = new Set([
  ...["class", "viewBox", "role", "aria-label", "data-id", "data-uri", "data-drawing", "d", "points", "transform"],
  ...["x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "width", "height"],
  ...["stroke-width", "stroke-dasharray", "font-size", "text-anchor"],
]);

/** The drawing as elements, made one by one of what drawings are made of; `undefined` if the text is no drawing. */
export function drawingElement(text: string): SVGElement | undefined {
  const parsed = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  return parsed.localName === "svg" ? copied(parsed) : undefined;
}

function copied(from: Element): SVGElement | undefined {
  if (!ELEMENTS.has(from.localName)) return undefined;
  const attributes = [...from.attributes].filter(({ name }) => ATTRIBUTES.has(name));
  const made = svg(from.localName, Object.fromEntries(attributes.map(({ name, value }) => [name, value])));
  if (from.localName === "text") {
    made.textContent = from.textContent;
    return made;
  }
  for (const child of from.children) {
    const copy = copied(child);
    if (copy !== undefined) made.append(copy);
  }
  return made;
}
