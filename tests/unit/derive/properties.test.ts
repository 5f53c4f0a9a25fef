import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Units } from "../../../language/core/length.ts";
import type { Part } from "../../../language/core/part.ts";
import { compare, equal, toText } from "../../../language/core/rational.ts";
import type { Sourced } from "../../../language/core/sourced.ts";
import { walk } from "../../../language/core/sourced.ts";
import { createWorkspace } from "../../../language/service.ts";
import { allParts, built } from "../../support/built.ts";
import type { RandomDesign } from "../../support/designs.ts";
import { randomDesign } from "../../support/designs.ts";

const textOf = (design: RandomDesign, units: Units = "inches") => design.statements(units).join("\n");
const some = { numRuns: 60 };

/** All numbers of a part, by what they are. */
function numbersOf(part: Part): readonly Sourced<{ readonly n: bigint; readonly d: bigint }>[] {
  const cut = part.machining.flatMap(({ wide, deep, from }) => [wide, deep, from]);
  return [part.length, part.width, part.thickness, ...cut].filter((size) => size !== undefined);
}

/** A part as one line that holds every size of it exactly. */
function line(part: Part): string {
  const cut = part.machining.map(({ kind, where, count, wide, deep, from }) =>
    [kind, where, count, ...[wide, deep, from].map((size) => (size === undefined ? "-" : toText(size.value)))].join(
      " ",
    ),
  );
  const sizes = [part.length, part.width, part.thickness].map((size) => toText(size.value));
  return [part.id, part.quantity, part.stock, part.grain, ...sizes, ...cut].join(" | ");
}

const lines = (text: string) => allParts(built(text)).map(line);

describe("any design", () => {
  test("gives parts, the same ones every time", () => {
    fc.assert(
      fc.property(randomDesign, (design) => {
        const first = built(textOf(design));
        expect(
          first.findings.filter((finding) => finding.code.startsWith("syntax/") || finding.code.startsWith("tool/")),
        ).toEqual([]);
        expect(allParts(first).length).toBeGreaterThan(5);
        const second = built(textOf(design));
        expect(second.csv()).toBe(first.csv());
        expect(second.findings).toEqual(first.findings);
        expect(JSON.stringify(second.list())).toBe(JSON.stringify(first.list()));
      }),
      some,
    );
  });

  test("gives the same parts in whatever order it is written", () => {
    fc.assert(
      fc.property(randomDesign, fc.infiniteStream(fc.nat()), (design, random) => {
        const keyed = design.statements("inches").map((statement) => ({ statement, key: random.next().value! }));
        const shuffled = keyed.sort((a, b) => a.key - b.key).map(({ statement }) => statement);
        expect(lines(shuffled.join("\n")).sort()).toEqual(lines(textOf(design)).sort());
      }),
      some,
    );
  });

  test("gives the same parts in millimetres as in inches", () => {
    fc.assert(
      fc.property(randomDesign, (design) => {
        expect(lines(textOf(design, "millimetres"))).toEqual(lines(textOf(design, "inches")));
      }),
      some,
    );
  });

  test("has only numbers that come from what is written and from the defaults", () => {
    fc.assert(
      fc.property(randomDesign, (design) => {
        const text = textOf(design);
        for (const number of allParts(built(text)).flatMap(numbersOf)) {
          walk(number, (origin) => {
            if (origin.kind === "derived") {
              expect(Object.keys(origin.inputs), origin.rule.formula).not.toHaveLength(0);
              expect(origin.rule.gives).not.toBe("");
            } else if (origin.kind === "written") {
              expect(origin.span.end - origin.span.start).toBeGreaterThan(0);
              expect(text.slice(origin.span.start, origin.span.end)).toMatch(/\d/);
            } else {
              expect(origin.because).not.toBe("");
            }
          });
        }
      }),
      some,
    );
  });

  test("has rules whose arithmetic, done again over their inputs, gives the same number", () => {
    fc.assert(
      fc.property(randomDesign, (design) => {
        for (const number of allParts(built(textOf(design))).flatMap(numbersOf)) {
          walk(number, (origin, value) => {
            if (origin.kind !== "derived") return;
            const inputs = Object.fromEntries(
              Object.entries(origin.inputs).map(([name, input]) => [name, input.value]),
            );
            const again = (origin.apply as (values: unknown) => unknown)(inputs);
            expect([origin.rule.gives, again]).toEqual([origin.rule.gives, value.value]);
          });
        }
      }),
      some,
    );
  });

  test("has no part of nought or less, and none larger than its sheet without a finding", () => {
    fc.assert(
      fc.property(randomDesign, (design) => {
        const build = built(textOf(design));
        for (const part of allParts(build)) {
          expect(0n < part.length.value.n && 0n < part.width.value.n).toBe(true);
          if (part.stockKind !== "sheet") continue;
          const sheet = { long: { n: 96n, d: 1n }, wide: { n: 48n, d: 1n } };
          const tooLarge =
            0 < compare(part.length.value, sheet.long) ||
            (part.grain !== "none" && 0 < compare(part.width.value, sheet.wide));
          if (tooLarge) expect(build.findings.map((finding) => finding.code)).toContain("part/larger-than-sheet");
        }
      }),
      some,
    );
  });

  test("is framed so that members and openings fill each face", () => {
    fc.assert(
      fc.property(randomDesign, (design) => {
        for (const made of built(textOf(design)).derivation.model.cases) {
          const rest = made.openings.find((opening) => opening.name.text.endsWith("-rest"));
          const first = made.openings.find((opening) => opening.name.text.endsWith("-d-1"));
          if (rest?.rect === undefined || first?.rect === undefined || made.frame === undefined) continue;
          const stiles = made.members.filter((member) => member.kind === "stile").map((member) => member.width.value);
          const total = [...stiles, first.wide.value, rest.wide.value].reduce((sum, width) => ({
            n: sum.n * width.d + width.n * sum.d,
            d: sum.d * width.d,
          }));
          expect(compare(total, made.wide.value)).toBe(0);
          expect(equal(first.rect.wide, first.wide.value)).toBe(true);
        }
      }),
      some,
    );
  });
});

describe("a workspace that is edited", () => {
  test("builds the same as one that was opened cold", () => {
    fc.assert(
      fc.property(
        randomDesign,
        randomDesign,
        fc.array(fc.tuple(fc.nat(), fc.nat({ max: 12 })), { maxLength: 6 }),
        (a, b, edits) => {
          const uri = "file:///job/main.scant";
          const warm = createWorkspace({ root: "file:///job" });
          let text = textOf(a);
          warm.set(uri, text);
          warm.build(uri);
          for (const [at, length] of edits) {
            const start = at % text.length;
            text = text.slice(0, start) + textOf(b).slice(start, start + length) + text.slice(start + length);
            warm.set(uri, text);
            if (at % 2 === 0) warm.build(uri);
          }
          const cold = createWorkspace({ root: "file:///job" });
          cold.set(uri, text);
          expect(warm.build(uri).findings).toEqual(cold.build(uri).findings);
          expect(warm.build(uri).csv()).toBe(cold.build(uri).csv());
        },
      ),
      { numRuns: 25 },
    );
  });
});
