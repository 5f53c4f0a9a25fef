import { expect, test, vi } from "vitest";
import type { Checked, OpenFile, SessionHost } from "../../server/session.ts";
import { createSession } from "../../server/session.ts";
import { fits, job, rack, tooLong } from "./texts.ts";

const root = "file:///shop";
const stock = "file:///shop/rack.scant";
const drawer = "file:///shop/job.scant";

test("used files are read once, and again when they change on disk or come", async () => {
  const { session, read, disk } = bench();
  session.open(open(drawer, job));
  expect(codes(await session.settled(drawer))).toContain("use/missing");
  session.change(open(drawer, `${job}\n`, 2));
  await session.settled(drawer);
  expect(read).toEqual([stock]);

  disk.set(stock, rack);
  session.changedOnDisk([stock]);
  expect(codes(await session.settled(drawer))).toEqual([]);
  session.change(open(drawer, `${job}\n\n`, 3));
  await session.settled(drawer);
  expect(read).toEqual([stock, stock]);

  disk.delete(stock);
  session.changedOnDisk([stock]);
  expect(codes(await session.settled(drawer))).toContain("use/missing");
});

test("a folder that goes, or comes, takes its files with it, though nothing is said of each", async () => {
  const { session, disk, checked } = bench();
  const deep = "file:///shop/stock/thin/rack.scant";
  disk.set(deep, rack);
  session.open(open(drawer, job.replace("rack.scant", "stock/thin/rack.scant")));
  expect(codes(await session.settled(drawer))).toEqual([]);
  disk.delete(deep);
  session.changedOnDisk(["file:///shop/stock"]);
  expect(codes(await session.settled(drawer))).toContain("use/missing");
  disk.set(deep, rack);
  session.changedOnDisk(["file:///shop/stock/thin/"]);
  expect(codes(await session.settled(drawer))).toEqual([]);

  checked.length = 0;
  session.changedOnDisk(["file:///shop/stoc", "file:///shop/stock/thin/rack", "file:///shop/other"]);
  await session.settled(drawer);
  expect(checked).toEqual([]);
});

test("an open document governs whatever is on disk, until it is closed", async () => {
  const { session, disk } = bench();
  disk.set(stock, rack.replace("sheet ply", "sheet oak"));
  session.open(open(stock, rack));
  session.open(open(drawer, job));
  expect(codes(await session.settled(drawer))).toEqual([]);
  session.changedOnDisk([stock]);
  expect(codes(await session.settled(drawer))).toEqual([]);
  session.close(stock);
  expect(codes(await session.settled(drawer))).toContain("name/unknown-stock");
});

test("only what a change concerns is checked again", async () => {
  const { session, checked } = bench();
  session.open(open(stock, rack));
  session.open(open(drawer, job));
  session.open(open("file:///shop/other.scant", fits));
  await session.settled(drawer);
  checked.length = 0;
  session.change(open("file:///shop/other.scant", tooLong, 2));
  await session.settled(drawer);
  expect(checked).toEqual(["file:///shop/other.scant 2"]);
  checked.length = 0;
  session.change(open(stock, `${rack}\n`, 2));
  await session.settled(drawer);
  expect(checked.sort()).toEqual([`${drawer} 1`, `${stock} 2`]);
});

test("a text that changes while a used file is read is checked once, as it then is", async () => {
  let answer: (text: string) => void = () => undefined;
  const { session, checked } = bench({
    read: () =>
      new Promise((resolve) => {
        answer = resolve;
      }),
  });
  session.open(open(drawer, job));
  const settled = session.settled(drawer);
  await Promise.resolve();
  session.change(open(drawer, job.replace("slides runner", "slides runner 24"), 2));
  answer(rack);
  expect(codes(await settled)).toEqual(["slide/too-long"]);
  expect(checked).toEqual([`${drawer} 2`]);
});

test("a used file that changes on disk while it is read is read once more", async () => {
  const answers: ((text: string) => void)[] = [];
  const { session } = bench({ read: () => new Promise((resolve) => answers.push(resolve)) });
  session.open(open(drawer, job));
  const settled = session.settled(drawer);
  await vi.waitFor(() => expect(answers).toHaveLength(1));
  session.changedOnDisk([stock]);
  answers[0]!(rack.replace("sheet ply", "sheet oak"));
  await vi.waitFor(() => expect(answers).toHaveLength(2));
  answers[1]!(rack);
  expect(codes(await settled)).toEqual([]);
});

test("a file that is not open stays as long as something is made of it, whatever is checked meanwhile", async () => {
  const disk = new Map([[drawer, job.replace("slides runner", "slides runner 24")]]);
  let answer: (text: string) => void = () => undefined;
  const asked = vi.fn();
  const { session } = bench({
    read: (uri) =>
      uri !== stock
        ? Promise.resolve(disk.get(uri))
        : new Promise((resolve) => {
            asked();
            answer = resolve;
          }),
  });
  const read = session.settled(drawer);
  await vi.waitFor(() => expect(asked).toHaveBeenCalled());
  // Another file is opened and checked, which uses none of it.
  session.open(open("file:///shop/other.scant", fits));
  await session.settled("file:///shop/other.scant");
  answer(rack);
  expect(codes(await read)).toEqual(["slide/too-long"]);
});

test("files that are made known are known all of them, though one takes long to read", async () => {
  const late = "file:///shop/late.scant";
  let answer: (text: string) => void = () => undefined;
  const { session, disk } = bench({
    read: (uri) =>
      uri === late
        ? new Promise((resolve) => {
            answer = resolve;
          })
        : Promise.resolve(disk.get(uri)),
  });
  disk.set(stock, rack);
  const learned = session.learn([stock, late]);
  session.open(open(drawer, fits));
  await session.settled(drawer);
  answer(fits);
  await learned;
  // In one order, whichever came first.
  expect(session.known().map(({ uri }) => uri)).toEqual([drawer, late, stock]);
  // They are not kept for good.
  session.change(open(drawer, tooLong, 2));
  await session.settled(drawer);
  expect(session.known().map(({ uri }) => uri)).toEqual([drawer]);
});

test("a file whose folders change while what it uses is read is the file with all that it uses", async () => {
  const asked = vi.fn();
  const { session } = bench({
    read: (uri) => {
      asked(uri);
      return new Promise((resolve) => setTimeout(() => resolve(uri === stock ? rack : undefined), 20));
    },
  });
  session.open(open(drawer, job));
  const current = session.current(drawer);
  await vi.waitFor(() => expect(asked).toHaveBeenCalled());
  session.setFolders([root, "file:///other"]);
  expect(codes((await current)?.build())).toEqual([]);
});

test("hundreds of files that were made known are forgotten in a moment", async () => {
  const { session, disk } = bench();
  const all = Array.from({ length: 800 }, (_, index) => `file:///shop/f${index}.scant`);
  for (const uri of all) disk.set(uri, 'use "rack.scant"');
  disk.set(stock, rack);
  session.open(open(drawer, fits));
  await session.settled(drawer);
  await session.learn(all);
  expect(session.known()).toHaveLength(802);
  session.change(open(drawer, tooLong, 2));
  const before = process.cpuUsage();
  await session.settled(drawer);
  const { user, system } = process.cpuUsage(before);
  expect(session.known().map(({ uri }) => uri)).toEqual([drawer]);
  expect((user + system) / 1000).toBeLessThan(400);
});

test("a reader that fails and a listener that throws stop nothing", async () => {
  const { session, faults, checked } = bench({ read: () => Promise.reject(new Error("gone")) });
  session.onChecked(() => {
    throw new Error("no");
  });
  session.open(open(drawer, job));
  expect(codes(await session.settled(drawer))).toContain("use/missing");
  session.change(open(drawer, `${job}\n`, 2));
  await session.settled(drawer);
  expect(checked).toEqual([`${drawer} 1`, `${drawer} 2`]);
  expect(faults).toHaveLength(2);
});

test("folders that come and go move the border that use may not leave", async () => {
  const { session, disk } = bench({}, []);
  const up = job.replace("rack.scant", "../rack.scant");
  disk.set(stock, rack);
  session.open(open("file:///shop/jobs/a.scant", up));
  expect(codes(await session.settled("file:///shop/jobs/a.scant"))).toContain("use/refused");
  session.setFolders([root]);
  expect(codes(await session.settled("file:///shop/jobs/a.scant"))).toEqual([]);
  session.setFolders([root, "file:///shop/jobs"]);
  expect(codes(await session.settled("file:///shop/jobs/a.scant"))).toContain("use/refused");
});

test("a file of no name yet can use nothing, and is checked all the same", async () => {
  const { session } = bench();
  session.open(open("untitled:Untitled-1", tooLong));
  expect(codes(await session.settled("untitled:Untitled-1"))).toEqual(["slide/too-long"]);
  session.change(open("untitled:Untitled-1", job, 2));
  const used = (await session.settled("untitled:Untitled-1"))?.findings.find(({ code }) => code.startsWith("use/"));
  expect(used?.message).toBe('"rack.scant" cannot be used: this file has not been saved yet');
  session.open(open("untitled:/shop/new.scant", job));
  const named = (await session.settled("untitled:/shop/new.scant"))?.findings.find(
    ({ code }) => code === "use/refused",
  );
  expect(named?.remedy).toBe("Save this file first.");
});

test("without a request the check follows by itself", async () => {
  vi.useFakeTimers();
  try {
    const { session, checked } = bench();
    session.open(open(drawer, fits));
    await vi.advanceTimersByTimeAsync(0);
    expect(checked).toEqual([`${drawer} 1`]);
    session.change(open(drawer, tooLong, 2));
    await vi.advanceTimersByTimeAsync(59);
    expect(checked).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(1);
    expect(checked).toEqual([`${drawer} 1`, `${drawer} 2`]);
  } finally {
    vi.useRealTimers();
  }
});

function bench(host: Partial<SessionHost> = {}, folders: readonly string[] = [root]) {
  const disk = new Map<string, string>();
  const read: string[] = [];
  const checked: string[] = [];
  const faults: string[] = [];
  const session = createSession({
    read: async (uri) => {
      read.push(uri);
      return disk.get(uri);
    },
    fault: (what) => faults.push(what),
    ...host,
  });
  session.setFolders(folders);
  session.onChecked((files: readonly Checked[]) => {
    checked.push(...files.map(({ file }) => `${file.uri} ${file.version}`));
  });
  return { session, disk, read, checked, faults };
}

function open(uri: string, text: string, version = 1): OpenFile {
  return { uri, clientUri: uri, version, text };
}

function codes(build: { readonly findings: readonly { readonly code: string }[] } | undefined): readonly string[] {
  return build?.findings.map((finding) => finding.code) ?? [];
}
