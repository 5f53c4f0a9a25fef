/** What to put behind a text so that the lines stand below it, each on a line of its own. */
export function appended(text: string, lines: readonly string[]): string {
  const end = text.includes("\r\n") ? "\r\n" : "\n";
  const gap = text === "" || text.endsWith("\n") ? "" : end;
  return `${gap}${lines.join(end)}${end}`;
}
