import type { Length } from "../core/length.ts";
import { drawingOf } from "./bounds.ts";
import type { Desk } from "./desk.ts";
import { millimetres, scaleText, sized, unitOf } from "./desk.ts";
import { spread } from "./dimension.ts";
import type { Drawing, Item } from "./display-list.ts";
import { corners, letterHeights, line, outline, text } from "./display-list.ts";
import { fitted } from "./letters.ts";
import type { Stick, StickMark } from "./sticks.ts";

/** Height of the stick as drawn, and how long the marks of each kind are on it. */
const stickHigh = 14;
const markLong: Readonly<Record<StickMark["kind"], number>> = { edge: 14, mount: 9, slide: 14 };
const pitch = 4.2;
/** Longer words are cut off here, and stand whole in the list of marks. */
const longestLabel = 85;

/** A stick laid down, its first end on the left: marks across it, running sizes above. */
export function stickDrawing(desk: Desk, stick: Stick, reduction: number): Drawing | undefined {
  const end = stick.marks.at(-1);
  if (end === undefined) return undefined;
  const long = millimetres(end.at) / reduction;
  return drawingOf(
    {
      id: stick.id,
      title: `Story stick, ${stick.title}`,
      scale: scaleText(reduction),
      equivalent: stickRows(desk, stick),
    },
    [...edges(0, long), ...stickMarks(desk, stick, reduction, { from: 0, to: long })],
  );
}

/** A stretch of the stick, in millimetres from its first end. */
export interface Window {
  readonly from: number;
  readonly to: number;
}

/** The same at full size, only what lies in a window; x counts from the stick's first end. */
export function stickWindow(desk: Desk, stick: Stick, window: Window): readonly Item[] {
  const long = millimetres(stick.marks.at(-1)?.at ?? { n: 0n, d: 1n });
  return [...edges(window.from, Math.min(window.to, long)), ...stickMarks(desk, stick, 1, window)];
}

function edges(from: number, to: number): readonly Item[] {
  return [outline(corners({ x: from, y: 0 }, { x: to, y: stickHigh }), "medium")];
}

function stickMarks(desk: Desk, stick: Stick, reduction: number, window: Window): readonly Item[] {
  const place = (at: Length): number => millimetres(at) / reduction;
  const within = stick.marks.filter(({ at }) => window.from - 0.01 < place(at) && place(at) < window.to + 0.01);
  const places = spread(
    within.map(({ at }) => place(at)),
    pitch,
  );
  const marks = within.map((mark, index): Item => {
    const x = place(mark.at);
    const label = `${sized(desk, mark.at)} ${unitOf(desk)}`;
    return {
      kind: "group",
      id: `${stick.id}/${index}`,
      name: `${label}: ${mark.what.join(", ")}`,
      target: stick.target,
      items: [markLine(mark, x), ...labelOf(mark, x, places[index]!, sized(desk, mark.at))],
    };
  });
  return [...marks, ...(window.from === 0 ? origin() : [])];
}

function markLine(mark: StickMark, x: number): Item {
  const weight = mark.kind === "edge" ? "heavy" : "medium";
  return line({ x, y: 0 }, { x, y: markLong[mark.kind] }, weight, mark.kind === "slide" ? "chain" : "solid");
}

/** The running size in bold, then what is there; led aside where marks crowd. */
function labelOf(mark: StickMark, x: number, place: number, size: string): readonly Item[] {
  const base = place + letterHeights.size / 2;
  return [
    line({ x, y: 0 }, { x: place, y: -4 }, "hair"),
    text({ x: base, y: -5 }, size, { face: "bold", turn: "up" }),
    text({ x: base, y: -25 }, fitted(mark.what.join(", "), longestLabel, letterHeights.size), { turn: "up" }),
  ];
}

/** The ring that says where running sizes start (ISO 129-1). */
function origin(): readonly Item[] {
  return [
    { kind: "circle", at: { x: 0, y: stickHigh + 3 }, radius: 1.5, weight: "medium", stroke: "solid", fill: undefined },
    line({ x: 0, y: stickHigh }, { x: 0, y: stickHigh + 1.5 }, "medium"),
  ];
}

function stickRows(desk: Desk, stick: Stick): Drawing["equivalent"] {
  return {
    columns: [`from ${stick.from}`, "what"],
    rows: stick.marks.map((mark) => [sized(desk, mark.at), mark.what.join(", ")]),
  };
}
