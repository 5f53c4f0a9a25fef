import { expect, test } from "vitest";
import { createOneRod } from "../../extension/preview/one-rod.ts";

test("a rod that is opened while a saved one comes back stays, and the saved one goes", async () => {
  const { one, panel, closed } = bench();
  const saved = panel("saved");
  let found: (file: string) => void = () => undefined;
  const revived = one.revive(
    saved,
    () =>
      new Promise((resolve) => {
        found = resolve;
      }),
  );
  one.take(panel("asked for")).open("file:///b.scant");
  found("file:///a.scant");
  await revived;
  expect(closed).toEqual(["saved"]);
  expect(one.current()?.panel.name).toBe("asked for");
  expect(one.current()?.controller.source()).toBe("file:///b.scant");
});

test("a saved rod that is brought to the front takes the place of the one there is", async () => {
  const { one, panel, closed } = bench();
  one.take(panel("first")).open("file:///b.scant");
  await one.revive(panel("saved"), async () => "file:///a.scant");
  expect(closed).toEqual(["first"]);
  expect(one.current()?.panel.name).toBe("saved");
  expect(one.current()?.controller.source()).toBe("file:///a.scant");
});

test("a saved rod comes back though the one there was is closed meanwhile, or its file is gone", async () => {
  const { one, panel } = bench();
  const first = panel("first");
  one.take(first);
  const revived = one.revive(panel("saved"), async () => undefined);
  first.dispose();
  await revived;
  expect(one.current()?.panel.name).toBe("saved");
  expect(one.current()?.controller.source()).toBeUndefined();
});

interface Panel {
  readonly name: string;
  dispose(): void;
}

function bench() {
  const closed: string[] = [];
  const one = createOneRod((_: Panel) => {
    let file: string | undefined;
    const open = (next: string) => {
      file = next;
    };
    return { source: () => file, open };
  });
  const panel = (name: string): Panel => {
    const made: Panel = {
      name,
      dispose: () => {
        closed.push(name);
        one.closed(made);
      },
    };
    return made;
  };
  return { one, panel, closed };
}
