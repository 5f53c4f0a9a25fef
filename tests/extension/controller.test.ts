import { describe, expect, test } from "vitest";
import { createRodController, type RodPort } from "../../extension/preview/controller.ts";
import type { HostMessage } from "../../extension/preview/messages.ts";
import type { Target } from "../../language/view/types.ts";
import type { DrawingsAnswer, RodAnswer } from "../../server/protocol.ts";
import { rodOf, row } from "./rods.ts";

const JOB = "file:///job.scant";
const RACK = "file:///rack.scant";
const NEXT = "file:///next.scant";

/** A controller whose requests a test answers, by their number, when it likes. */
function setUp(
  options: {
    readonly drawings?: DrawingsAnswer;
    readonly wantsDrawings?: boolean;
    readonly drawingsTake?: number;
  } = {},
) {
  const drawingsAsked: { readonly uri: string; readonly id: string }[] = [];
  const posted: HostMessage[] = [];
  const revealed: Target[] = [];
  const opened: string[] = [];
  const ticked: unknown[] = [];
  const asked: { readonly uri: string; readonly settle: (answer: RodAnswer | undefined | Error) => void }[] = [];
  const port: RodPort = {
    request: (uri) =>
      new Promise((resolve, reject) => {
        asked.push({ uri, settle: (answer) => (answer instanceof Error ? reject(answer) : resolve(answer)) });
      }),
    requestDrawings: (uri, id) => {
      drawingsAsked.push({ uri, id });
      if (options.drawingsTake === undefined) return Promise.resolve(options.drawings);
      return new Promise((resolve) => setTimeout(() => resolve(options.drawings), options.drawingsTake));
    },
    wantsDrawings: () => options.wantsDrawings ?? true,
    requestBench: () => Promise.resolve(undefined),
    searchSeconds: () => 10,
    keep: () => undefined,
    tick: (uri, tick) => ticked.push({ uri, ...tick }),
    cannotTick: () => ticked.push("cannot"),
    post: (message) => posted.push(message),
    reveal: (target) => revealed.push(target),
    opened: (uri) => opened.push(uri),
  };
  const reply = async (number: number, answer: RodAnswer | undefined | Error) => {
    await settled();
    const request = asked[number];
    if (request === undefined) throw new Error(`There were only ${asked.length} requests.`);
    request.settle(answer);
    await settled();
  };
  return { controller: createRodController(port), posted, revealed, opened, ticked, asked, drawingsAsked, reply };
}

function settled(): Promise<void> {
  return new Promise((wake) => setTimeout(wake, 0));
}

function answer(version: number, title = `v${version}`, pieces = 2, stale = false): RodAnswer {
  const rows = pieces === 0 ? [] : [row("a", { quantity: pieces })];
  return { version, stale, view: rodOf(rows, { title }), broken: [] };
}

function titles(posted: readonly HostMessage[]): readonly string[] {
  return posted.map((message) => (message.type === "show" ? message.view.title : message.type));
}

describe("while the page is not listening", () => {
  test("nothing is asked or posted; once it listens the whole view is pulled", async () => {
    const { controller, posted, asked, reply } = setUp();
    controller.open(JOB);
    controller.changed(JOB, 3);
    await settled();
    expect(asked).toHaveLength(0);
    controller.receive({ type: "ready" });
    await reply(0, answer(3));
    expect(asked.map((each) => each.uri)).toEqual([JOB]);
    expect(titles(posted)).toEqual(["v3"]);
  });

  test("a hidden page gets nothing, and when it comes back what it showed last and then what is new", async () => {
    const { controller, posted, asked, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1));
    controller.hidden();
    controller.changed(JOB, 2);
    controller.changed(JOB, 3);
    await settled();
    expect(asked).toHaveLength(1);
    controller.receive({ type: "ready" });
    await reply(1, answer(3));
    expect(titles(posted)).toEqual(["v1", "v1", "v3"]);
    expect(asked).toHaveLength(2);
  });

  test("an answer that comes after it was hidden is kept for when it comes back", async () => {
    const { controller, posted, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await settled();
    controller.hidden();
    await reply(0, answer(1));
    expect(posted).toEqual([]);
    controller.receive({ type: "ready" });
    expect(titles(posted)).toEqual(["v1"]);
  });
});

describe("while the page is shown", () => {
  test("many changes while one request is out lead to one more request", async () => {
    const { controller, posted, asked, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await settled();
    for (const version of [1, 2, 3, 4]) controller.changed(JOB, version);
    await settled();
    expect(asked).toHaveLength(1);
    await reply(0, answer(1));
    expect(asked).toHaveLength(2);
    await reply(1, answer(4));
    expect(asked).toHaveLength(2);
    expect(titles(posted)).toEqual(["v4"]);
  });

  test("an answer older than the last change told of is dropped", async () => {
    const { controller, posted, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(5));
    controller.changed(JOB, 7);
    await reply(1, answer(6));
    expect(titles(posted)).toEqual(["v5"]);
  });

  test("after a restart the server's versions count from the start", async () => {
    const { controller, posted, reply } = setUp();
    controller.open(JOB);
    controller.changed(JOB, 90);
    controller.receive({ type: "ready" });
    await reply(0, answer(90));
    controller.turned();
    await reply(1, answer(1));
    expect(titles(posted)).toEqual(["v90", "v1"]);
  });

  test("a file the server does not know shows how to begin, unless there is a last good rod", async () => {
    const { controller, posted, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, undefined);
    controller.changed(JOB, 1);
    await reply(1, answer(1));
    controller.changed(JOB, 2);
    await reply(2, undefined);
    expect(titles(posted)).toEqual(["begin", "v1"]);
  });

  test("a server that does not answer is said to, and asked again at the next change", async () => {
    const { controller, posted, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, new Error("gone"));
    controller.changed(JOB, 1);
    await reply(1, answer(1));
    expect(titles(posted)).toEqual(["offline", "v1"]);
  });

  test("whether the view is the last good one is passed on", async () => {
    const { controller, posted, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1, "kept", 2, true));
    expect(posted).toMatchObject([{ type: "show", stale: true }]);
  });
});

describe("which file is on the rod", () => {
  test("another file opened: the answer for the first is dropped", async () => {
    const { controller, posted, opened, asked, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await settled();
    controller.open(NEXT);
    await reply(0, answer(1, "old"));
    await reply(1, answer(2, "new"));
    expect(asked.map((each) => each.uri)).toEqual([JOB, NEXT]);
    expect(titles(posted)).toEqual(["new"]);
    expect(opened).toEqual([JOB, NEXT]);
    expect(controller.source()).toBe(NEXT);
  });

  test("a file of stock that is looked at leaves the job on the rod", async () => {
    const { controller, posted, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1, "job"));
    controller.consider(RACK);
    await reply(1, answer(2, "rack", 0));
    expect(controller.source()).toBe(JOB);
    controller.changed(JOB, 3);
    await reply(2, answer(3, "job, new stock"));
    expect(titles(posted)).toEqual(["job", "job, new stock"]);
  });

  test("it takes the rod as soon as it has parts of its own", async () => {
    const { controller, posted, opened, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1, "job"));
    controller.consider(NEXT);
    await reply(1, answer(2, "next", 0));
    controller.changed(NEXT, 3);
    await reply(2, answer(3, "next", 4));
    expect(controller.source()).toBe(NEXT);
    expect(titles(posted)).toEqual(["job", "next"]);
    expect(opened).toEqual([JOB, NEXT]);
  });

  test("back at the job, the other file is no longer considered", async () => {
    const { controller, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1));
    controller.consider(NEXT);
    await settled();
    controller.consider(JOB);
    await reply(1, answer(2, "next", 4));
    expect(controller.source()).toBe(JOB);
  });

  test("without a file the page shows how to begin, and the first one looked at is taken", async () => {
    const { controller, posted, reply } = setUp();
    controller.receive({ type: "ready" });
    expect(titles(posted)).toEqual(["begin"]);
    controller.consider(RACK);
    await reply(0, answer(1, "rack", 0));
    expect(titles(posted)).toEqual(["begin", "rack"]);
  });
});

describe("a rod that is as it was", () => {
  test("is not sent again, but is after the page was made anew, and to take back that the server is away", async () => {
    const { controller, posted, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1, "same"));
    controller.changed(JOB, 2);
    await reply(1, answer(2, "same"));
    expect(titles(posted)).toEqual(["same"]);
    controller.changed(JOB, 3);
    await reply(2, new Error("away"));
    controller.changed(JOB, 4);
    await reply(3, answer(4, "same"));
    expect(titles(posted)).toEqual(["same", "offline", "same"]);
    controller.receive({ type: "ready" });
    await reply(4, answer(4, "same"));
    expect(titles(posted)).toEqual(["same", "offline", "same", "same"]);
  });
});

describe("from the text to the rows", () => {
  const rows = [row("a"), row("b", { target: { ...row("b").target, line: 8, endLine: 9 } })];
  const placed: RodAnswer = { version: 1, stale: false, view: rodOf(rows), broken: [] };
  const marks = (posted: readonly HostMessage[]) =>
    posted.flatMap((message) => (message.type === "mark" ? [message.rows] : []));

  test("the parts that are written on the line of the cursor are marked, once for each change", async () => {
    const { controller, posted, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, placed);
    for (const line of [3, 3, 9, 8, 20]) controller.cursor({ uri: JOB, line });
    controller.cursor({ uri: NEXT, line: 3 });
    expect(marks(posted)).toEqual([["a"], ["b"], []]);
  });

  test("a rod that comes later is marked too, and each one anew", async () => {
    const { controller, posted, reply } = setUp();
    controller.cursor({ uri: JOB, line: 3 });
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, placed);
    controller.changed(JOB, 2);
    await reply(1, { ...placed, version: 2, view: rodOf(rows, { title: "later" }) });
    expect(posted.map(({ type }) => type)).toEqual(["show", "mark", "show", "mark"]);
    controller.cursor(undefined);
    expect(marks(posted).at(-1)).toEqual([]);
  });
});

describe("drawings", () => {
  const drawing = {
    id: "case chest/front",
    title: "Case chest: front",
    scale: "1 : 10",
    svg: '<svg><g role="img" data-id="side" data-uri="file:///job.scant" data-line="4" data-column="2" data-end-line="4" data-end-column="9"></g></svg>',
    textEquivalent: { columns: ["part"], rows: [["side"]] },
  };
  const drawings: DrawingsAnswer = { titles: [drawing], drawing };

  test("are asked for only while the page looks at one, and again when the rod changes", async () => {
    const { controller, posted, drawingsAsked, reply } = setUp({ drawings });
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1));
    expect(drawingsAsked).toEqual([]);
    controller.receive({ type: "draw", id: "" });
    await settled();
    controller.changed(JOB, 2);
    await reply(1, answer(2));
    expect(drawingsAsked).toEqual([
      { uri: JOB, id: "" },
      { uri: JOB, id: "" },
    ]);
    controller.receive({ type: "draw", id: undefined });
    controller.changed(JOB, 3);
    await reply(2, answer(3));
    expect(drawingsAsked).toHaveLength(2);
    expect(posted.filter(({ type }) => type === "drawings")).toHaveLength(2);
  });

  test("that take long follow once typing has stopped, and only the last is made", async () => {
    const { controller, drawingsAsked, reply } = setUp({ drawings, drawingsTake: 60 });
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1));
    controller.receive({ type: "draw", id: "" });
    await new Promise((wake) => setTimeout(wake, 100));
    expect(drawingsAsked).toHaveLength(1);
    for (const version of [2, 3, 4]) {
      controller.changed(JOB, version);
      await reply(version - 1, answer(version));
    }
    expect(drawingsAsked).toHaveLength(1);
    await new Promise((wake) => setTimeout(wake, 400));
    expect(drawingsAsked).toHaveLength(2);
  });

  test("lead to where their parts are written, and a part that is not drawn leads nowhere", async () => {
    const { controller, revealed, reply } = setUp({ drawings });
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1));
    controller.receive({ type: "draw", id: "" });
    await settled();
    controller.receive({ type: "revealDrawn", part: "lid", on: "drawings" });
    expect(revealed).toEqual([]);
    controller.receive({ type: "revealDrawn", part: "side", on: "drawings" });
    expect(revealed).toEqual([{ uri: JOB, line: 4, column: 2, endLine: 4, endColumn: 9 }]);
  });

  test("are not asked for where they are not wanted, and the page is told so", async () => {
    const { controller, posted, drawingsAsked, reply } = setUp({ drawings, wantsDrawings: false });
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1));
    controller.receive({ type: "draw", id: "" });
    await settled();
    expect(drawingsAsked).toEqual([]);
    expect(posted[0]).toEqual({ type: "undrawn" });
  });
});

describe("from a row to the text", () => {
  test("a row that is shown leads to its place; one that is not leads nowhere", async () => {
    const { controller, revealed, reply } = setUp();
    controller.receive({ type: "reveal", row: "a" });
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1));
    controller.receive({ type: "reveal", row: "z" });
    expect(revealed).toEqual([]);
    controller.receive({ type: "reveal", row: "a" });
    expect(revealed).toEqual([row("a").target]);
  });
});

describe("ticking off what was cut", () => {
  test("goes to the file on the rod, with the row as it was shown", async () => {
    const { controller, ticked, reply } = setUp();
    controller.receive({ type: "tick", mark: "A", row: "a", count: 2 });
    expect(ticked).toEqual([]);
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1));
    controller.receive({ type: "tick", mark: "A", row: "a", count: 2 });
    expect(ticked).toEqual([{ uri: JOB, part: "A", row: "a", count: 2 }]);
  });

  test("is refused while the text is broken, since the rows are those of another", async () => {
    const { controller, ticked, reply } = setUp();
    controller.open(JOB);
    controller.receive({ type: "ready" });
    await reply(0, answer(1, "v1", 2, true));
    controller.receive({ type: "tick", mark: "A", row: "a", count: 2 });
    expect(ticked).toEqual(["cannot"]);
  });
});
