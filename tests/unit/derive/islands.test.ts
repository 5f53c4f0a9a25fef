import { expect, test } from "vitest";
import type { Finding } from "../../../language/core/finding.ts";
import { plain } from "../../../language/core/span.ts";
import { contextOf } from "../../../language/derive/context.ts";
import { derive, deriveMemory } from "../../../language/derive/derive.ts";
import { islandsOf } from "../../../language/derive/islands.ts";
import { withLikes } from "../../../language/derive/like.ts";
import { made } from "../../../language/derive/stages.ts";
import { lower, lowerAgain } from "../../../language/syntax/lower.ts";
import { buildFiles } from "../../support/build-files.ts";
import { mutated } from "../../support/fuzz/mutate.ts";
import { seeded } from "../../support/fuzz/random.ts";
import { clean, testUri } from "../../support/lowered.ts";

const stock = `inches
sheet ply { called 3/4  measures 45/64  size 48 x 96 }
board ash { thick 3/4  wide 5 1/2  long 96 }
slides plain { mount side  extension full  lengths 10 to 28 by 2  clearance 1/2 }
`;

function chest(name: string, more = ""): string {
  return `case ${name} {
  wide 24  high 34 1/2  deep 24
  panels ply  back ply in rabbet 3/8
  frame ash { stiles 1 1/2  rails 1 1/2  down { openings ${name}-1 to ${name}-3 equal, rails 1 } }
}
box for ${name}-1 to ${name}-3 { sides ply  bottom ply under  corners rabbet 3/8  slides plain ${more} }
`;
}

/** The names of the blocks of each island. */
function islands(text: string): readonly (readonly string[])[] | undefined {
  return islandsOf(withLikes(clean(text)).design)?.map(({ cases, openings, boxes, fronts }) => [
    ...cases.map(({ name }) => name.text),
    ...openings.map(({ name }) => name.text),
    ...boxes.map((block) => `box ${block.openings[0]!.text}`),
    ...fronts.map((block) => `front ${block.openings[0]!.text}`),
  ]);
}

test("a case is one island with all that goes into it and over it", () => {
  const middle = "front for b-2 { overlay 3/8  slab ply }\n";
  expect(islands(stock + chest("a") + chest("b") + middle)).toEqual([
    ["a", "box a-1"],
    ["b", "box b-1", "front b-2"],
  ]);
});

test("one chest is one island, and is derived in one piece", () => {
  expect(islands(stock + chest("a"))).toBeUndefined();
});

test.each([
  ["a size read from another case", `${chest("a")}${chest("b", "wide a-1.width - 1")}`],
  ["a box like another", `${chest("a")}${chest("b").replace("box for b-1 to b-3", "box for b-1 to b-3 like a-2")}`],
  ["a named length that is taken from another case", `let w = a-1.width - 1\n${chest("a")}${chest("b", "wide w")}`],
  ["named lengths one behind the other", `let w = a-1.width\nlet v = w - 1\n${chest("a")}${chest("b", "wide v")}`],
])("%s ties two cases", (_, text) => {
  expect(islands(stock + text)).toBeUndefined();
  expect(islands(`${stock}${text}${chest("c")}`)?.map((island) => island.length)).toEqual([4, 2]);
});

test("a named length that takes its size from nothing ties nothing", () => {
  const text = `let w = 20\n${chest("a", "wide w")}${chest("b", "wide w")}`;
  expect(islands(stock + text)?.length).toBe(2);
});

test("a stock that takes a size from a case makes all one island", () => {
  const text = stock.replace("size 48 x 96", "size 48 x a-1.width * 4") + chest("a") + chest("b");
  expect(islands(text)).toBeUndefined();
});

test("what has nothing to do with the change is the same object afterwards", () => {
  const memory = deriveMemory();
  const text = stock + chest("a") + chest("b") + chest("c");
  const first = lowerAgain(text, testUri, undefined);
  const before = derive(first.design, memory);
  const line = (derived: typeof before) => derived.model.parts.find(({ of }) => of === "case c")!.source.line;
  const lineBefore = line(before);
  const second = lowerAgain(text.replace("case b {\n  wide 24", "case b {\n\n  wide 26"), testUri, first);
  const after = derive(second.design, memory);
  expect(after.islands.map((island, at) => island === before.islands[at])).toEqual([true, false, true]);
  const widths = after.model.cases.map(({ wide }) => wide.value.n);
  expect(widths).toEqual([24n, 26n, 24n]);
  // The last one stands a line lower, and so does where its parts come from.
  expect(line(after)).toBe(lineBefore + 1);
});

test("fronts of one strip are no others' for standing now where those stood when they were derived", () => {
  const matched = (name: string) =>
    `case ${name} { wide 20  high 30  deep 12  panels ply  down { openings ${name}-1, ${name}-2 equal } }
front for ${name}-1, ${name}-2 { overlay 3/8  slab ply  matched }
`;
  const memory = deriveMemory();
  const first = lowerAgain(stock + matched("a") + matched("b"), testUri, undefined);
  derive(first.design, memory);
  // The first is changed, and moves to where the second stood, which is kept and moves on.
  const moved = "\n".repeat(matched("a").length) + matched("a").replace("matched", "matched  pulls 1");
  const { design } = lowerAgain(stock + moved + matched("b"), testUri, first);
  const groups = derive(design, memory).model.parts.flatMap((part) => part.matched?.group ?? []);
  expect(groups).toHaveLength(4);
  expect(new Set(groups).size).toBe(2);
});

test("what the model holds is the same from the memory as without it when all stands a line lower", () => {
  const memory = deriveMemory();
  const text = stock + chest("a") + chest("b");
  const first = lowerAgain(text, testUri, undefined);
  derive(first.design, memory);
  const { design } = lowerAgain(text.replace("board ash", "\nboard ash"), testUri, first);
  expect(asText(derive(design, memory))).toBe(asText(derive(design)));
});

function asText({ model }: ReturnType<typeof derive>): string {
  return JSON.stringify(model, (_, value: unknown) =>
    typeof value === "bigint" ? String(value) : value instanceof Map ? [...value] : value,
  );
}

test("lengths one behind the other, written from the last to the first, take time as there are more of them", () => {
  const time = (count: number) => {
    const lets = Array.from(
      { length: count },
      (_, at) => `let w${at} = ${at + 1 < count ? `w${at + 1}` : "a-1.width"}`,
    );
    const { design } = withLikes(clean(`${stock}${lets.join("\n")}\n${chest("a")}${chest("b")}`));
    islandsOf(design);
    const times = Array.from({ length: 3 }, () => {
      const began = performance.now();
      expect(islandsOf(design)?.length).toBe(2);
      return performance.now() - began;
    });
    return Math.min(...times);
  };
  const [few, many] = [time(500), time(4000)];
  // Eight times as many; sixty-four times would be the square.
  expect(many < 100 || many / few < 24).toBe(true);
});

test.each([
  ["the stock", "measures 45/64", "measures 23/32"],
  ["the slides", "clearance 1/2", "clearance 17/32"],
  ["a name", "case b {", "case bb {"],
])("a change in %s is a change for all", (_, was, is) => {
  const memory = deriveMemory();
  const text = stock + chest("a") + chest("b");
  const first = lowerAgain(text, testUri, undefined);
  const before = derive(first.design, memory);
  const after = derive(lowerAgain(text.replace(was, is), testUri, first).design, memory);
  expect(after.islands.some((island) => before.islands.includes(island))).toBe(false);
});

test("in islands comes out what comes out in one piece, of whole build files and of spoiled ones", () => {
  const random = seeded(7);
  let divided = 0;
  for (const file of buildFiles()) {
    for (const text of [file.text, mutated(random, file.text, [stock + chest("a")])]) {
      const said = lower(text, testUri);
      const { design } = withLikes(said);
      if (islandsOf(design) === undefined) continue;
      divided++;
      const context = contextOf(design);
      const whole = made(context);
      const derived = derive(said);
      const sizes = (parts: typeof derived.model.parts) =>
        parts.map((part) => [part.id, part.quantity, part.length.value, part.width.value, part.source]);
      expect(sizes(derived.model.parts)).toEqual(
        sizes([
          ...design.cases.flatMap(({ name }) => whole.cases.get(name.text)?.parts ?? []),
          ...[...whole.boxes, ...whole.mounts, ...whole.fronts, ...whole.shelves].flatMap(({ parts }) => parts),
          ...design.parts.flatMap((block) => whole.byHand.get(block) ?? []),
        ]),
      );
      expect(derived.model.mounts.map(({ of, side }) => [of, side])).toEqual(
        whole.mounts.map(({ of, side }) => [of, side]),
      );
      for (const finding of context.findings) expect(lines(derived.context.findings)).toContain(line(finding));
    }
  }
  expect(divided).toBeGreaterThan(100);
});

function line({ code, span, message }: Finding): string {
  return JSON.stringify([code, plain(span), message]);
}

function lines(findings: readonly Finding[]): readonly string[] {
  return findings.map(line);
}
