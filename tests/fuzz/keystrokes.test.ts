import { expect, test } from "vitest";
import { toText } from "../../language/core/rational.ts";
import type { Build, Workspace } from "../../language/service.ts";
import { createWorkspace } from "../../language/service.ts";
import { buildFiles } from "../support/build-files.ts";
import { mutated } from "../support/fuzz/mutate.ts";
import { seeded, seedOfRun } from "../support/fuzz/random.ts";

/**
 * Keys between two builds that are compared. Each key is set in the workspace, but comparing after each would take
 * minutes: `SCANTLING_KEYS=1` does that, and `npm run trust` with it.
 */
const keysBetween = Number(process.env["SCANTLING_KEYS"] ?? 5);

const folder = "file:///job/";
const examples = buildFiles().filter(({ name }) => name.startsWith("examples/"));
const others = new Map(examples.map(({ name, text }) => [name.replace("examples/", folder), text]));

function cold(texts: ReadonlyMap<string, string>): Workspace {
  const workspace = createWorkspace({ root: "file:///job" });
  for (const [uri, text] of texts) workspace.set(uri, text);
  return workspace;
}

/** What a maker sees of a build: every finding with its place and fixes, and every part with its exact sizes. */
function seen(build: Build): unknown {
  const parts = build.derivation.model.parts.map(({ of, name, quantity, stock, length, width, thickness }) =>
    [of, name, quantity, stock, ...[length, width, thickness].map((size) => toText(size.value))].join(" "),
  );
  return { findings: build.findings, whole: build.whole, parts, origins: origins(build) };
}

/** Everything that the model holds, with the place of every word that it came from, as text. */
function origins(build: Build): string {
  return JSON.stringify(build.derivation.model, (_, value: unknown) => {
    if (typeof value === "bigint") return String(value);
    return value instanceof Map ? [...value] : value;
  });
}

test.each(examples.map(({ name, text }) => [name, text]))(
  `%s written from nothing in one workspace: after each ${keysBetween} keys as from a cold start`,
  { timeout: 900_000 },
  (name, text) => {
    const uri = name.replace("examples/", folder);
    const texts = new Map(others);
    const workspace = cold(others);
    let compared = 0;
    for (let keys = 0; keys <= text.length; keys++) {
      const typed = text.slice(0, keys);
      workspace.set(uri, typed);
      if (keys % keysBetween !== 0 && keys !== text.length) continue;
      texts.set(uri, typed);
      expect(seen(workspace.build(uri))).toEqual(seen(cold(texts).build(uri)));
      compared++;
    }
    expect(compared).toBeGreaterThan(Math.floor(text.length / keysBetween));
  },
);

const seed = seedOfRun();

test(`a job and the rack that it uses changed in turn, gone and back, as from a cold start; seed ${seed}`, () => {
  const random = seeded(seed);
  const [job, rack] = [`${folder}print-room.scant`, `${folder}rack.scant`];
  const texts = new Map(others);
  const workspace = cold(others);
  for (let step = 0; step < 60; step++) {
    const uri = random.oneIn(2) ? job : rack;
    const text = random.oneIn(3) ? others.get(uri)! : mutated(random, others.get(uri)!, [...others.values()]);
    if (uri === rack && random.oneIn(5)) {
      workspace.forget(uri);
      texts.delete(uri);
    } else {
      workspace.set(uri, text);
      texts.set(uri, text);
    }
    if (random.oneIn(2)) workspace.build(rack);
    expect(seen(workspace.build(job))).toEqual(seen(cold(texts).build(job)));
  }
});
