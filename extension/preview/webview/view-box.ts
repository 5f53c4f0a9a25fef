/** A part of a drawing, in its own units. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How many times larger than as a whole a drawing can be looked at. */
const CLOSEST = 40;

/** The box of a `viewBox`; a box of one unit for anything else. */
export function fitting(viewBox: string): Box {
  const [x, y, width, height] = viewBox
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const sound = [x, y, width, height].every((each) => each !== undefined && Number.isFinite(each));
  if (!sound || !(0 < width!) || !(0 < height!)) return { x: 0, y: 0, width: 1, height: 1 };
  return { x: x!, y: y!, width: width!, height: height! };
}

/** The view that much closer, with the place that is so far across and down it where it was. */
export function zoomed(view: Box, whole: Box, factor: number, across: number, down: number): Box {
  const width = Math.min(whole.width, Math.max(whole.width / CLOSEST, view.width / factor));
  const height = (width / whole.width) * whole.height;
  const x = view.x + (view.width - width) * across;
  const y = view.y + (view.height - height) * down;
  return within({ x, y, width, height }, whole);
}

/** The view moved, but not off the drawing. */
export function moved(view: Box, whole: Box, dx: number, dy: number): Box {
  return within({ ...view, x: view.x + dx, y: view.y + dy }, whole);
}

function within(view: Box, whole: Box): Box {
  const x = Math.min(Math.max(view.x, whole.x), whole.x + whole.width - view.width);
  const y = Math.min(Math.max(view.y, whole.y), whole.y + whole.height - view.height);
  return { ...view, x, y };
}
