import { expect, test } from "vitest";
import { type Lowered, lower, lowerAgain } from "../../../language/syntax/lower.ts";
import { buildFiles } from "../../support/build-files.ts";
import { mutated } from "../../support/fuzz/mutate.ts";
import { seeded } from "../../support/fuzz/random.ts";
import { testUri } from "../../support/lowered.ts";

const text = `inches
sheet ply { called 3/4  measures 45/64  size 48 x 96 }

opening left { wide 12  high 6  deep 20 }
opening right { wide 14  high 6  deep 20 }
`;

function read(...texts: readonly string[]): Lowered {
  return texts.reduce<Lowered | undefined>((before, next) => lowerAgain(next, testUri, before), undefined)!;
}

test("what has not changed is the same object, and stands where it stands now", () => {
  const before = read(text);
  const [left, right] = before.design.openings;
  const after = lowerAgain(text.replace("wide 12", "\n  wide 12 1/2"), testUri, before);
  expect(after.design.openings[0]).not.toBe(left);
  expect(after.design.openings[1]).toBe(right);
  expect(right!.name.span).toMatchObject({ line: 5, column: 8 });
  expect(right!.name.span.start).toBe(after.design.openings[0]!.span.end + "\nopening ".length);
});

test("a piece put between two leaves both as they were", () => {
  const before = read(text);
  const after = lowerAgain(
    text.replace("opening right", "opening middle { wide 9  high 6  deep 20 }\nopening right"),
    testUri,
    before,
  );
  expect(after.design.openings.map(({ name }) => name.text)).toEqual(["left", "middle", "right"]);
  expect(after.design.openings[0]).toBe(before.design.openings[0]);
  expect(after.design.openings[2]).toBe(before.design.openings[1]);
});

test("where bare numbers come to mean another unit, nothing is kept", () => {
  const before = read(text);
  const after = lowerAgain(text.replace("inches", "millimetres"), testUri, before);
  expect(after.design.openings[1]).not.toBe(before.design.openings[1]);
  expect(after.design).toEqual(lower(text.replace("inches", "millimetres"), testUri));
});

test("a name given elsewhere that makes a name of a word makes a piece be read anew", () => {
  // `gap` is a word of the language, and a length once something is called that.
  const uses = "opening left { wide gap  high 6  deep 20 }\n";
  const before = read(`let other = 3\n${text}${uses}`);
  const now = `let gap = 3\n${text}${uses}`;
  expect(lowerAgain(now, testUri, before).design).toEqual(lower(now, testUri));
});

test("two names for units in two pieces are one mistake, wherever they stand", () => {
  const twice = `${text}millimetres\n`;
  const codes = (lowered: Lowered) => lowered.design.findings.map(({ code }) => code);
  expect(codes(read(text, twice))).toEqual(["statement/units-twice"]);
  expect(codes(read(text, twice, text))).toEqual([]);
});

test("build files changed by chance, one after another, are read as from a cold start", () => {
  const random = seeded(2026);
  for (const file of buildFiles().slice(0, 120)) {
    let lowered = read(file.text);
    for (let step = 0; step < 6; step++) {
      const next = random.oneIn(4) ? file.text : mutated(random, file.text, [text]);
      lowered = lowerAgain(next, testUri, lowered);
      expect(lowered.design).toEqual(lower(next, testUri));
    }
  }
});
