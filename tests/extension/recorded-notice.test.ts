import { expect, test } from "vitest";
import { recordedNotice } from "../../extension/commands/recorded-notice.ts";
import { readPageMessage } from "../../extension/preview/messages.ts";
import { asWritten } from "../../extension/translate.ts";

test("what was recorded and what was not are said together", () => {
  expect(recordedNotice({ understood: ["2 × the side of box a"], problems: [] }, asWritten)).toEqual({
    text: "Recorded: 2 × the side of box a.",
    failed: false,
  });
  expect(recordedNotice({ understood: ["1 × B"], problems: ['"3 wheels" names no part'] }, asWritten)).toEqual({
    text: 'Recorded: 1 × B. Not recorded: "3 wheels" names no part.',
    failed: true,
  });
  expect(recordedNotice(undefined, asWritten).failed).toBe(true);
});

test("a tick is a message only if it is whole", () => {
  const tick = { type: "tick", mark: "A", row: "box a/side", count: 2 };
  expect(readPageMessage({ ...tick, more: 1 })).toEqual(tick);
  for (const wrong of [{ mark: 1 }, { row: undefined }, { count: 1.5 }, { count: "2" }])
    expect(readPageMessage({ ...tick, ...wrong })).toBeUndefined();
});
