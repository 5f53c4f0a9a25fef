/** A smaller text that is still wrong in the same way, found by leaving out ever smaller pieces for as long as that helps. */
export function shrunk(text: string, isWrong: (text: string) => boolean): string {
  let now = text;
  let tries = 400;
  for (let piece = Math.ceil(now.length / 2); 1 <= piece && 0 < tries; piece = piece === 1 ? 0 : Math.ceil(piece / 2)) {
    for (let at = 0; at < now.length && 0 < tries; tries--) {
      const less = now.slice(0, at) + now.slice(at + piece);
      if (less !== now && isWrong(less)) now = less;
      else at += piece;
    }
  }
  return now;
}
