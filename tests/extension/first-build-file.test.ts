import { expect, test } from "vitest";
import { FIRST_BUILD_FILE } from "../../extension/preview/first-build-file.ts";
import { createWorkspace } from "../../language/service.ts";

test("the build file to begin with makes a drawer and is without a finding", () => {
  const workspace = createWorkspace({ root: undefined });
  workspace.set("file:///first.scant", FIRST_BUILD_FILE);
  const build = workspace.build("file:///first.scant");
  expect(build.findings).toEqual([]);
  expect(build.rod().pieces).toBe(5);
});
