/** How many lines the file has that speed is measured on. */
export const LINES = 300;

/** A store of five chests, each with a column of drawers and a door, and shelves cut by hand: as many lines as are wanted. */
export function longFile(): string {
  const head = `project "Seed store, long wall"
inches
read to 1/32

saw { kerf 1/8  trim 1/4 }
sheet birch-18 {
  called   3/4
  measures 45/64
  size     48 x 96
}
sheet birch-12 { called 1/2  measures 15/32  size 48 x 96 }
slides runner {
  mount side  extension full
  lengths 10 to 28 by 2
  clearance 1/2
  above 1/4  below 1/4  behind 1/2
}

part ledger { from birch-18  long 30  wide 4  count 2 }
`;
  const chests = ["oats", "barley", "rye", "millet", "flax"].map(chest).join("");
  const lines = `${head}${chests}`.split("\n");
  const rest = Array.from({ length: Math.max(0, LINES - lines.length) }, (_, index) => extra(index));
  return [...lines.slice(0, -1), ...rest, ""].slice(0, LINES).join("\n");
}

/** Where the size stands that is typed over, behind its last figure. */
export const SIZE_LINE = (text: string): readonly [line: number, column: number] => {
  const lines = text.split("\n");
  const line = lines.findIndex((each) => each.startsWith("part ledger"));
  return [line + 1, (lines[line] ?? "").indexOf("long 30") + "long 30".length + 1];
};

function chest(name: string): string {
  const openings = [1, 2, 3, 4, 5].map(
    (number) => `opening ${name}-${number} {
  wide 22
  high 6
  deep 22 1/2
}
`,
  );
  const boxes = [1, 2, 3, 4, 5].map(
    (number) => `box for ${name}-${number} {
  sides birch-12   bottom birch-12 under
  corners rabbet 1/4
  slides runner
}
`,
  );
  return `\n${openings.join("")}${boxes.join("")}`;
}

function extra(index: number): string {
  return `part shelf-${index} { from birch-18  long ${24 + (index % 9)}  wide 11 }`;
}
