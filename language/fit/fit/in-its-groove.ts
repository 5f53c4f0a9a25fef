import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import type { Machining, Part } from "../../core/part.ts";
import { ratio, subtract, zero } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";
import type { Context } from "../../derive/context.ts";
import type { Model, Stock } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { fitFinding } from "./judge.ts";

/** What goes into a groove or dado must go in, and must not rattle there, whatever it measures. */
export const pieceMustFitItsGroove: Check = {
  codes: ["fit/panel-in-groove", "fit/bottom-in-groove", "fit/housing"],
  run: (context, model) => {
    const stocks = stocksByThickness(model);
    const seen = new Set<string>();
    return model.parts.flatMap((part) =>
      part.machining.flatMap((made) => {
        const stock = made.wide === undefined ? undefined : stocks.get(made.wide);
        if (stock === undefined || (made.kind !== "groove" && made.kind !== "dado")) return [];
        // Every side and rail of an owner is grooved alike: one is enough to say it.
        const key = `${part.of} ${made.kind} ${stock.name}`;
        if (seen.has(key)) return [];
        seen.add(key);
        return check(context, part, made, stock);
      }),
    );
  },
};

/** A housing is as wide as a stock is thick when it was given that very thickness. */
function stocksByThickness({ stocks }: Model): ReadonlyMap<Sourced<Length>, Stock> {
  return new Map([...stocks.values()].map((stock) => [stock.thickness, stock]));
}

const rule: Rule = { gives: "play in the housing", formula: "the housing as cut − {thickness}", tag: "geometry" };

/** From memory: a glued joint bridges a 32nd, and a loose panel does not rattle in it. */
const mostPlay = ratio(1, 32);

function check(context: Context, part: Part, made: Machining, stock: Stock): readonly Finding[] {
  const name = `thickness of "${stock.name}"`;
  const wide = stock.thickness.value;
  const value = derived(rule, { [name]: stock.thickness }, (of) => subtract(wide, of[name]!));
  const isFrame = /^(front|door|false front) /.test(part.of);
  const code = made.note === "bottom" ? "fit/bottom-in-groove" : isFrame ? "fit/panel-in-groove" : "fit/housing";
  return fitFinding(context, {
    code,
    value,
    bounds: { least: zero, most: mostPlay },
    what: `the play of "${stock.name}" in the ${made.kind} of ${part.of}`,
    reason:
      "A groove is cut once, to one width: what is thicker does not go in, and what is thinner is held by nothing.",
    remedy: `Measure "${stock.name}" before the cutter is set, and try the groove in scrap.`,
    place: part.source,
    related: [],
  });
}
