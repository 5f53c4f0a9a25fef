import { expect, test } from "vitest";
import type { Stepwise } from "../../language/core/stepwise.ts";
import { drawingSteps } from "../../language/draw/drawings.ts";
import { paperDesk } from "../../language/papers/desk.ts";
import { packetPapers, packetSteps } from "../../language/papers/packet.ts";
import { paperSizes } from "../../language/papers/page.ts";
import { inTurns } from "../../server/in-turns.ts";
import { exampleBuild } from "../unit/draw/example.ts";

/** Work of so many steps of some milliseconds each, which tells of each. */
function* steps(count: number, done: (step: number) => void): Stepwise<string> {
  for (let step = 1; step <= count; step++) {
    const end = performance.now() + 5;
    while (performance.now() < end);
    done(step);
    yield `step ${step}`;
  }
  return "all of it";
}

test("work is done in turns with what else there is, and tells what it is at", async () => {
  const heard: string[] = [];
  let ticks = 0;
  const timer = setInterval(() => ticks++, 1);
  const made = await inTurns(
    steps(30, () => undefined),
    { onStep: (what) => heard.push(what) },
  );
  clearInterval(timer);
  expect(made).toBe("all of it");
  expect(ticks).toBeGreaterThan(2);
  expect(heard.length).toBeGreaterThan(2);
  for (const what of heard) expect(what).toMatch(/^step \d+$/);
});

test("work that is called off from elsewhere ends within a few steps", async () => {
  let [last, isCancelled] = [0, false];
  setTimeout(() => {
    isCancelled = true;
  }, 1);
  const made = await inTurns(
    steps(1_000, (step) => {
      last = step;
    }),
    { isCancelled: () => isCancelled },
  );
  expect(made).toBeUndefined();
  expect(last).toBeLessThan(100);
});

test("the packet comes in as many steps as it has drawings at least, and is the same as at once", () => {
  const build = exampleBuild("print-room.scant");
  const desk = () => paperDesk(build, undefined);
  const said: string[] = [];
  const work = packetSteps(desk(), paperSizes.A4);
  let step = work.next();
  for (; step.done !== true; step = work.next()) said.push(step.value);
  const drawings = drawingSteps(desk());
  let count = 0;
  while (drawings.next().done !== true) count++;
  expect(count).toBeGreaterThan(5);
  expect(said.length).toBeGreaterThan(count);
  const pages = step.value.pages.map((page) => page());
  expect(pages).toEqual(packetPapers(desk(), paperSizes.A4).pages.map((page) => page()));
});
