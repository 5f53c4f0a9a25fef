/** Whether a character would move the cursor, change the terminal or turn the reading direction round. */
export function isHarmful(character: string): boolean {
  return (character < " " || "~" < character) && harmful.test(character);
}

/** A text for the terminal: what a file may hold to steer it is shown as a dot; line ends and spaces stay. */
export function harmless(text: string): string {
  // Nearly every text is plain, and seen to be at a glance.
  if (/^[\n\x20-\x7e]*$/.test(text)) return text;
  return text.replaceAll("\t", "  ").replace(/[^\n]/gu, (character) => (isHarmful(character) ? "·" : character));
}

const harmful = /^[\p{Cc}\p{Cs}\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069]$/u;
