/** Two cut lists of some hundred thousand characters that have no line in common. */
export const twoTexts = ["old", "new"].map((word) =>
  Array.from({ length: 20_000 }, (_, line) => `${word},side,${line}\r\n`).join(""),
);
