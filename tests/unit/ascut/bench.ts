import { readFileSync } from "node:fs";
import type { Finding } from "../../../language/core/finding.ts";
import type { Build } from "../../../language/service.ts";
import { built } from "../../support/built.ts";

const shop = readFileSync(new URL("../../fixtures/findings/shop.scant", import.meta.url), "utf8");

/**
 * A drawer box of 14 by 5 1/2 by 22 in an opening of 15 by 6 by 23: sides of 22 by 5 1/32 in plywood of 23/32, front and
 * back between them of 12 9/16, and a bottom of 22 by 14 under them. Its slides have 1/2 on each side, and forgive 1/32.
 */
export const drawer = `inches
read to 1/64
use "shop.scant"
opening left { wide 15  high 6  deep 23 }
box for left { sides ply  bottom thin under  slides runner 22 }
`;

/** The build of a file with these records at its end. */
export function withCuts(text: string, cuts: string): Build {
  return built(`${text}cut {\n${cuts}\n}\n`, { "shop.scant": shop });
}

/** What is said of the records: `cut/lost: 1 bottom of box left cannot be used ...`. */
export function saidOf(build: Build): readonly string[] {
  return benchFindings(build).map(({ code, message }) => `${code}: ${message}`);
}

export function benchFindings(build: Build): readonly Finding[] {
  return build.findings.filter(({ code }) => code.startsWith("cut/"));
}

/** What is left to cut: `1 back 12 1/2 x 5 1/32`. */
export function leftIn(build: Build): readonly string[] {
  return build
    .left()
    .list()
    .parts.map(({ name, quantity, length, width }) => `${quantity} ${name} ${length.shop} x ${width.shop}`);
}
