/** A job of about so many lines: cases of four drawers, each box and each front in a block of its own. */
export function jobOf(lines: number): string {
  const count = Math.max(1, Math.round((lines - 14) / linesOfCase));
  return shopText + Array.from({ length: count }, (_, index) => caseText(`base-${index + 1}`)).join("");
}

const linesOfCase = 49;

export const shopText = `project "Bench"
inches
sheet ply { called 3/4  measures 45/64  size 48 x 96 }
sheet thin { called 1/4  measures 13/64  size 48 x 96 }
board ash { thick 3/4  wide 5 1/2  long 96 }
slides plain {
  mount side  extension full
  lengths 10 to 28 by 2
  clearance 1/2 +1/32 -0  above 1/4  below 1/4  behind 1/2
  carries 100 lb
}
`;

/** A case with four drawers, and all that goes into and over it; `name` makes the names of its openings too. */
export function caseText(name: string): string {
  return `case ${name} {
  wide 24  high 34 1/2  deep 24
  panels ply  back thin in rabbet 3/8
  kick 4 high 3 deep
  frame ash {
    stiles 1 1/2  rails 1 1/2
    down { openings ${name}-1 to ${name}-4 equal, rails 1 }
  }
}
${[1, 2, 3, 4].map((drawer) => drawerText(`${name}-${drawer}`, 10 + drawer)).join("")}`;
}

function drawerText(opening: string, pounds: number): string {
  return `box for ${opening} {
  sides ply   bottom thin in groove 1/4 up 3/8
  corners rabbet 3/8
  slides plain
  holds ${pounds} lb
}
front for ${opening} {
  overlay 3/8
  slab ply
}
`;
}
