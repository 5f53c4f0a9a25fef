import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { type BenchOrder, createBenchController, REST_MS } from "../../extension/preview/bench-controller.ts";
import type { HostMessage } from "../../extension/preview/messages.ts";
import type { BenchAnswer } from "../../server/protocol.ts";

const JOB = "file:///job.scant";
const ANSWER: BenchAnswer = { sections: [], search: { state: "searching", percent: 0 } };

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function setUp() {
  const asked: (BenchOrder & { readonly uri: string })[] = [];
  const posted: HostMessage[] = [];
  const controller = createBenchController(
    {
      requestBench: async (uri, order) => {
        asked.push({ uri, ...order });
        return ANSWER;
      },
      searchSeconds: () => 10,
    },
    (message) => void posted.push(message),
  );
  const settled = () => vi.advanceTimersByTimeAsync(0);
  return { controller, asked, posted, settled };
}

test("nothing is asked for while nothing is open, and what is opened is pulled at once", async () => {
  const { controller, asked, posted, settled } = setUp();
  controller.source(JOB);
  controller.changed();
  await vi.advanceTimersByTimeAsync(2 * REST_MS);
  expect(asked).toEqual([]);
  controller.opened(["plan"], "");
  await settled();
  expect(asked).toEqual([{ uri: JOB, parts: ["plan"], sheet: "", seconds: 10 }]);
  expect(posted).toEqual([{ type: "bench", answer: ANSWER }]);
});

test("many changes are one request, after a rest", async () => {
  const { controller, asked, settled } = setUp();
  controller.source(JOB);
  controller.opened(["plan"], "");
  await settled();
  for (let count = 0; count < 20; count += 1) {
    controller.changed();
    await vi.advanceTimersByTimeAsync(REST_MS / 2);
  }
  expect(asked).toHaveLength(1);
  await vi.advanceTimersByTimeAsync(REST_MS);
  expect(asked).toHaveLength(2);
});

test("the search is stopped, gone on with where it was, and given more time after its end", async () => {
  const { controller, asked, settled } = setUp();
  controller.source(JOB);
  controller.opened(["plan"], "");
  await settled();
  for (const go of ["stop", "on", "on"] as const) {
    controller.search(go);
    await settled();
  }
  expect(asked.map(({ seconds }) => seconds)).toEqual([10, 0, 10, 20]);
});

test("another scope of the plan is asked for at once, an answer to the one before is dropped, and what is shown is known", async () => {
  const asked: BenchOrder[] = [];
  const posted: HostMessage[] = [];
  const answers: ((answer: BenchAnswer) => void)[] = [];
  const controller = createBenchController(
    {
      requestBench: (_, order) => {
        asked.push(order);
        return new Promise((resolve) => answers.push(resolve));
      },
      searchSeconds: () => 10,
    },
    (message) => void posted.push(message),
  );
  controller.source(JOB);
  controller.opened(["plan"], "");
  await vi.advanceTimersByTimeAsync(0);
  controller.opened(["plan"], "", "whole");
  answers[0]?.({ ...ANSWER, scope: "left" });
  await vi.advanceTimersByTimeAsync(0);
  expect(posted).toEqual([]);
  answers[1]?.({ ...ANSWER, scope: "whole" });
  await vi.advanceTimersByTimeAsync(0);
  expect(asked.map(({ scope }) => scope)).toEqual([undefined, "whole"]);
  expect(posted).toHaveLength(1);
  expect(controller.scope()).toBe("whole");
});

test("word of the search goes to the page, and a better plan is pulled", async () => {
  const { controller, asked, posted, settled } = setUp();
  controller.source(JOB);
  controller.opened(["plan"], "");
  await settled();
  controller.searched({ uri: JOB, state: "searching", percent: 20, better: false });
  controller.searched({ uri: "file:///other.scant", state: "searching", percent: 30, better: true });
  await settled();
  expect(asked).toHaveLength(1);
  expect(posted.at(-1)).toEqual({ type: "searched", search: { state: "searching", percent: 20 } });
  controller.searched({ uri: JOB, state: "searching", percent: 40, better: true });
  await settled();
  expect(asked).toHaveLength(2);
});

test("nothing is asked for behind a page that is hidden, whatever is still to come, until it opens parts again", async () => {
  const { controller, asked, settled } = setUp();
  controller.source(JOB);
  controller.opened(["plan"], "");
  await settled();
  controller.hidden();
  const count = asked.length;
  // An answer and a word of the search that were on their way.
  controller.changed();
  controller.searched({ uri: JOB, state: "searching", percent: 20, better: true });
  await vi.advanceTimersByTimeAsync(2 * REST_MS);
  expect(asked).toHaveLength(count);
  controller.opened(["plan"], "");
  await settled();
  expect(asked.at(-1)?.parts).toEqual(["plan"]);
});

test("a page that is hidden, or closes all, stops the search", async () => {
  const { controller, asked, settled } = setUp();
  controller.source(JOB);
  controller.opened(["plan"], "");
  await settled();
  controller.hidden();
  expect(asked.at(-1)).toEqual({ uri: JOB, parts: [], seconds: 0 });
  controller.opened([], "");
  await settled();
  expect(asked.at(-1)?.parts).toEqual([]);
});
