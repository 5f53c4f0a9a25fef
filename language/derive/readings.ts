import type { Length } from "../core/length.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Word } from "../core/span.ts";
import type { Context } from "./context.ts";
import type { LookUp, Trouble } from "./evaluate.ts";
import { isTrouble, lengthOf, nameOf, unknownName } from "./evaluate.ts";
import type { BoxModel, CaseModel, FrontModel, Opening } from "./model.ts";

/** What a file can read by name. Openings and cases are worked out when they are first asked for. */
export interface Readable {
  readonly opening: (name: string) => Opening | undefined;
  readonly case: (name: string) => CaseModel | undefined;
  readonly box: (opening: string) => BoxModel | undefined;
  readonly front: (opening: string) => FrontModel | undefined;
  /** Whether the thing, or its box or front, is being worked out right now: what asks for it then hangs on itself. */
  readonly isUnderWay: (name: string, part: string | undefined) => boolean;
  readonly property: (name: string, property: string) => Sourced<Length> | undefined;
}

/** The words by which sizes are read; both the adjective of the property and the noun are understood. */
export const readWords: Readonly<Record<string, "wide" | "high" | "deep">> = {
  width: "wide",
  wide: "wide",
  height: "high",
  high: "high",
  depth: "deep",
  deep: "deep",
};

/** Looks names up in a design: named lengths, and the readings of things that have sizes. Going round in a circle is caught. */
export function lookUpIn(context: Context, readable: Readable): LookUp {
  const done = new Map<string, Sourced<Length> | Trouble>();
  const under = new Set<string>();
  const lookUp: LookUp = (path) => {
    const key = nameOf(path);
    const known = done.get(key);
    if (known !== undefined)
      return isTrouble(known) ? { ...known, span: staysThere.has(known.code) ? known.span : spanOf(path) } : known;
    if (under.has(key)) return hangsOnItself(path);
    if (farthest <= under.size) return tooFar(path);
    under.add(key);
    const found = path.length === 1 ? namedLength(context, path, lookUp) : reading(path, readable);
    under.delete(key);
    done.set(key, found);
    return found;
  };
  return lookUp;
}

/** Names that one size is taken through: far more than any drawing has, and far less than what the call stack holds. */
const farthest = 100;

/** What is wrong with these is wrong where it was met first, and not where the name is used once more. */
const staysThere: ReadonlySet<Trouble["code"]> = new Set(["length/circular", "length/too-far"]);

function tooFar(path: readonly Word[]): Trouble {
  const message = `a size is taken from "${nameOf(path)}" through more than ${farthest} names`;
  return { code: "length/too-far", span: spanOf(path), message };
}

function hangsOnItself(path: readonly Word[]): Trouble {
  return { code: "length/circular", span: spanOf(path), message: `"${nameOf(path)}" hangs on itself` };
}

function spanOf(path: readonly Word[]): Word["span"] {
  return unknownName(path).span;
}

function namedLength(context: Context, path: readonly Word[], lookUp: LookUp): Sourced<Length> | Trouble {
  const statement = context.design.lets.find((one) => one.name.text === path[0]!.text);
  if (statement === undefined) return unknownName(path);
  if (statement.value === undefined)
    return { code: "length/broken", span: statement.span, message: "this length is not finished" };
  return lengthOf(statement.value, lookUp);
}

function reading(path: readonly Word[], readable: Readable): Sourced<Length> | Trouble {
  const [thing, second, third] = path.map((word) => word.text);
  if (readable.isUnderWay(thing!, third === undefined ? undefined : second)) return hangsOnItself(path);
  const which = readWords[third ?? second ?? ""];
  if (third !== undefined) {
    const owner =
      second === "box"
        ? readable.box(thing!)
        : second === "front" || second === "door"
          ? readable.front(thing!)
          : undefined;
    const value = owner === undefined || which === undefined ? undefined : sizeOf(owner, which);
    return value ?? unknownName(path);
  }
  const sized = readable.opening(thing!) ?? readable.case(thing!);
  const value = sized === undefined || which === undefined ? readable.property(thing!, second!) : sizeOf(sized, which);
  return value ?? unknownName(path);
}

function sizeOf(
  thing: Opening | CaseModel | BoxModel | FrontModel,
  which: "wide" | "high" | "deep",
): Sourced<Length> | undefined {
  if (which === "deep") return "deep" in thing ? thing.deep : undefined;
  return thing[which];
}
