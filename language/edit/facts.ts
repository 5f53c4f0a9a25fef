import type { DryFit } from "../solid/dry-fit.ts";
import { smallText, weightText } from "./explain.ts";
import type { Scene } from "./scene.ts";

/** What the dry fit says of a thing (`box plan-1`), a sentence each; nothing where it has not been done. */
export function factsOf({ fit, reading }: Scene, of: string): readonly string[] {
  if (fit === undefined) return [];
  return [...weight(fit, of, reading), ...rated(fit, of, reading), ...bending(fit, of, reading)];
}

type Reading = Scene["reading"];

function weight({ assemblies }: DryFit, of: string, reading: Reading): readonly string[] {
  const own = assemblies.find((each) => each.of === of);
  return own === undefined || own.pounds === 0
    ? []
    : [`weighs ${weightText(own.pounds, reading)} without hardware and what it holds`];
}

function rated({ loads }: DryFit, of: string, reading: Reading): readonly string[] {
  return loads.rated
    .filter((each) => each.of === of)
    .flatMap(({ kind, asked, rated: carries }) => {
      if (asked === undefined) return [];
      if (kind === "hinges") return [`asks for ${asked} hinges by its height and weight`];
      const limit = carries === undefined ? "" : `, rated ${weightText(carries, reading)}`;
      return [`its slides carry ${weightText(asked, reading)}${limit}`];
    });
}

function bending({ loads }: DryFit, of: string, reading: Reading): readonly string[] {
  return loads.bending
    .filter(({ part }) => part.of === of)
    .map(({ kind, load, stated, sag, allowed, limit }) => {
      const under = `${weightText(load, reading)}${stated ? "" : ", the load of the standard"}`;
      return `${kind} sags ${smallText(sag, reading)} under ${under}; ${limit} allows ${smallText(allowed, reading)}`;
    });
}
