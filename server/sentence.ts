/** A text as a sentence: with a capital at its head, and a stop at its end if it has none. */
export function sentence(text: string): string {
  const stopped = /[.!?:]["”)]?$/.test(text) ? text : `${text}.`;
  return stopped.charAt(0).toUpperCase() + stopped.slice(1);
}
