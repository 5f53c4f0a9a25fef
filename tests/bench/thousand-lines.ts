/** A build file of as many lines as a large job has, or a few more: cases in a row, each with four drawers that differ. */
export function longFile(lines: number): string {
  let text = `project "Bench"
inches
read to 1/32
sheet ply { called 3/4  measures 45/64  size 48 x 96 }
sheet thin { called 1/4  measures 13/64  size 48 x 96 }
board ash { thick 3/4  wide 5 1/2  long 96  species white ash }
slides plain {
  mount side  extension full
  lengths 10 to 28 by 2
  clearance 1/2 +1/32 -0  above 1/4  below 1/4  behind 1/2
  carries 100 lb
}
let lip = 3/8
`;
  for (let number = 1; text.split("\n").length <= lines; number++) text += oneCase(number);
  return text;
}

function oneCase(number: number): string {
  const drawers = [1, 2, 3, 4].map((drawer) => fillings(`drawer-${number}-${drawer}`, 10 + drawer));
  return `case base-${number} {
  wide 24  high 34 1/2  deep 24
  panels ply  back thin in rabbet 3/8
  kick 4 high 3 deep
  frame ash {
    stiles 1 1/2  rails 1 1/2
    down { openings drawer-${number}-1 to drawer-${number}-4 equal, rails 1 }
  }
}
${drawers.join("")}`;
}

function fillings(opening: string, pounds: number): string {
  return `box for ${opening} {
  sides ply   bottom thin in groove 1/4 up 3/8
  corners rabbet 3/8
  slides plain
  holds ${pounds} lb
}
front for ${opening} {
  overlay lip
  slab ply
}
`;
}
