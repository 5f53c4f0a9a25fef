/**
 * The same text, holding on to nothing of the longer one that it was cut from. Engines keep a whole text alive for the sake
 * of a word in it; what is read of a file outlives many texts of it, and would keep them all.
 */
export function detached(text: string): string {
  return text.length < shared ? text : text.split("").join("");
}

/** Shorter pieces are copied anyway (V8's SlicedString). */
const shared = 13;
