/** Where something lies on the screen. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

export type Direction = "left" | "right" | "up" | "down";

/**
 * The index of the spot to go to from one of them: the nearest that lies more that way than to the side, and by the side
 * counts double. Where none lies that way it is the one to stay at.
 */
export function towards(spots: readonly Spot[], from: number, direction: Direction): number {
  const start = spots[from];
  if (start === undefined) return from;
  let [best, least] = [from, Number.POSITIVE_INFINITY];
  spots.forEach(({ x, y }, index) => {
    const [dx, dy] = [x - start.x, y - start.y];
    const ahead = { left: -dx, right: dx, up: -dy, down: dy }[direction];
    const aside = Math.abs(direction === "left" || direction === "right" ? dy : dx);
    if (index === from || ahead <= 0.5 || ahead < aside) return;
    const far = ahead + 2 * aside;
    if (far < least) [best, least] = [index, far];
  });
  return best;
}
