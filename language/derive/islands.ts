import type { Design, LetStatement } from "../core/design.ts";
import { namesInCase } from "./names.ts";
import { wordsIn } from "./words-in.ts";

/** The lists of a design of which each block belongs to one island. */
export const islandLists = ["cases", "openings", "boxes", "fronts", "shelves", "parts"] as const;

/** Blocks that name nothing that another island describes: a case with all that goes into it and over it, most often. */
export type Island = Pick<Design, (typeof islandLists)[number]>;

/**
 * Divides what is built into islands. What a change in one island makes of it concerns no other; `undefined` where there
 * are no two, or where what all share (a stock, the saw) takes a size from what is built.
 */
export function islandsOf(design: Design): readonly Island[] | undefined {
  const blocks: readonly object[] = islandLists.flatMap((list): readonly object[] => design[list]);
  const owners = new Map<string, object[]>();
  const give = (name: string, block: object): void => {
    const known = owners.get(name);
    if (known === undefined) owners.set(name, [block]);
    else known.push(block);
  };
  for (const list of islandLists) for (const block of design[list]) for (const name of given(block)) give(name, block);
  const tied = tiedLengths(design.lets, owners);
  for (const one of tied) give(one.name.text, one);
  if (sharedOf(design).some((block) => [...wordsIn(block).said].some((word) => owners.has(word)))) return undefined;
  const roots = joined([...blocks, ...tied], (block) =>
    [...wordsIn(block).said].flatMap((word) => owners.get(word) ?? []),
  );
  const groups = [...new Set(blocks.map((block) => roots(block)))];
  if (groups.length < 2) return undefined;
  const lists = new Map<object, Island>(
    groups.map((root) => [root, { cases: [], openings: [], boxes: [], fronts: [], shelves: [], parts: [] }]),
  );
  for (const list of islandLists) {
    for (const block of design[list]) (lists.get(roots(block))![list] as object[]).push(block);
  }
  return [...lists.values()];
}

/**
 * The lengths that take a size from what is built, themselves or through others: each ties all that use it to where it
 * takes it from.
 */
function tiedLengths(lets: readonly LetStatement[], built: ReadonlyMap<string, unknown>): ReadonlySet<LetStatement> {
  const said = (one: LetStatement): string[] => [...wordsIn(one).said].filter((word) => word !== one.name.text);
  const sayers = new Map<string, LetStatement[]>();
  for (const one of lets) {
    for (const word of said(one)) {
      const known = sayers.get(word);
      if (known === undefined) sayers.set(word, [one]);
      else known.push(one);
    }
  }
  const tied = new Set(lets.filter((one) => said(one).some((word) => built.has(word))));
  // What is added on the way is come to as well.
  for (const one of tied) for (const user of sayers.get(one.name.text) ?? []) tied.add(user);
  return tied;
}

/** What every island can use: to change any of it is to change all. */
export function sharedOf({ shop, ...design }: Design): readonly object[] {
  return [
    ...[...design.sheets, ...design.boards, ...design.edgings, ...design.offcuts],
    ...[...design.slides, ...design.hinges, ...design.screws],
    ...[...shop.saw, ...shop.grooves, ...shop.pockets, ...shop.places, ...shop.times, ...shop.lifts],
  ];
}

/** The names under which a block, or what it makes, is spoken of. */
function given(block: Island[(typeof islandLists)[number]][number]): readonly string[] {
  if ("openings" in block) return block.openings.map(({ text }) => text);
  if (!("layout" in block)) return [block.name.text];
  return [block.name, ...namesInCase(block)].map(({ text }) => text);
}

/** Tells for each node the one that stands for all that it is tied to, near or far. */
function joined(nodes: readonly object[], tiedTo: (node: object) => readonly object[]): (node: object) => object {
  const above = new Map<object, object>();
  const root = (node: object): object => {
    let top = node;
    for (let next = above.get(top); next !== undefined; next = above.get(top)) top = next;
    // The next to ask finds the way short.
    for (let at = node; at !== top; ) {
      const next = above.get(at)!;
      above.set(at, top);
      at = next;
    }
    return top;
  };
  for (const node of nodes) {
    for (const other of tiedTo(node)) {
      const [a, b] = [root(node), root(other)];
      if (a !== b) above.set(b, a);
    }
  }
  return root;
}
