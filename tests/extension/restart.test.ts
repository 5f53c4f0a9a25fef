import { expect, test } from "vitest";
import { restart } from "../../extension/commands/restart.ts";

function client(stop: () => Promise<void>, runs: boolean) {
  const done: string[] = [];
  return {
    done,
    needsStop: () => runs,
    stop: () => {
      done.push("stop");
      return stop();
    },
    start: async () => void done.push("start"),
  };
}

test("a server that runs is stopped and started, one that does not is started", async () => {
  for (const [runs, wanted] of [
    [true, ["stop", "start"]],
    [false, ["start"]],
  ] as const) {
    const one = client(async () => undefined, runs);
    await restart(one);
    expect(one.done).toEqual(wanted);
  }
});

test("a server that does not answer when it is to stop is started all the same", async () => {
  const one = client(() => Promise.reject(new Error("Stopping the server timed out")), true);
  await restart(one);
  expect(one.done).toEqual(["stop", "start"]);
});
