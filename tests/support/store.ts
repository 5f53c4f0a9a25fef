import type { Build } from "../../language/service.ts";
import { built } from "./built.ts";

/** Three sheets that are never as thick as they are called, in inches. */
export const sheets = `inches
sheet ply     { called 3/4  measures 23/32  size 48 x 96 }
sheet thin    { called 1/2  measures 15/32  size 48 x 96 }
sheet quarter { called 1/4  measures 7/32   size 48 x 96 }
`;

/** The sheets, a board that is flat and square, and a band. */
export const stock = `${sheets}board oak     { thick 3/4  wide 5 1/2  long 96 }
edging band   { thick 1/32 }
`;

/** A plain case of the sheet, 36 x 30 x 12, with more said of it. */
export function store(properties: string): Build {
  return built(`${stock}case store { wide 36  high 30  deep 12  panels ply  ${properties} }`);
}
