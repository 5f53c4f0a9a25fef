import { expect, test } from "vitest";
import { withoutOldVersions } from "../../extension/old-versions.ts";

test.each([
  ["file", true],
  ["untitled", true],
  ["vscode-vfs", true],
  ["git", false],
  ["vscode-local-history", false],
  ["showModifications", false],
])("a document of %s is told of: %s", async (scheme, isTold) => {
  const told: string[] = [];
  const document = { uri: { scheme } };
  const next = (what: string) => async () => void told.push(what);
  const { didOpen, didChange, didClose } = withoutOldVersions((one) =>
    ["file", "vscode-vfs", "git", "vscode-local-history"].includes(one),
  );
  await didOpen?.(document as never, next("open"));
  await didChange?.({ document } as never, next("change"));
  await didClose?.(document as never, next("close"));
  expect(told).toEqual(isTold ? ["open", "change", "close"] : []);
});
