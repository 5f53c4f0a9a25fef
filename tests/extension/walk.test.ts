import { expect, test } from "vitest";
import { filesBelow, MOST_FOLDERS, type Tree } from "../../extension/walk.ts";

test("files of an ending are found near and far, nearest first, and hidden folders are passed by", async () => {
  const tree = treeOf(["/b/deep/rack.scant", "/a.scant", "/notes.md", "/.git/old.scant", "/node_modules/x/y.scant"]);
  expect(await filesBelow("", ".scant", 10, tree)).toEqual(["/a.scant", "/b/deep/rack.scant"]);
  expect(await filesBelow("", ".scant", 1, tree)).toEqual(["/a.scant"]);
});

test("a folder that cannot be read hides no other, and a link is not followed", async () => {
  const tree = treeOf(["/b/rack.scant", "/closed/one.scant"]);
  const entries: typeof tree.entries = async (folder) => {
    if (folder === "/closed") throw new Error("no permission");
    return [...(await tree.entries(folder)), ["ring", "other"]];
  };
  expect(await filesBelow("", ".scant", 10, { ...tree, entries })).toEqual(["/b/rack.scant"]);
});

test("a walk ends: where folders have no end, when it is called off", async () => {
  const looked: string[] = [];
  const endless: Tree<string> = {
    entries: async (folder) => {
      looked.push(folder);
      return [["deeper", "folder"]];
    },
    below: (folder, name) => `${folder}/${name}`,
    isCancelled: () => false,
  };
  expect(await filesBelow("", ".scant", 10, endless)).toEqual([]);
  expect(looked).toHaveLength(MOST_FOLDERS);
  looked.length = 0;
  await filesBelow("", ".scant", 10, { ...endless, isCancelled: () => 2 < looked.length });
  expect(looked).toHaveLength(3);
});

function treeOf(files: readonly string[]): Tree<string> {
  return {
    entries: async (folder) => {
      const below = files.filter((file) => file.startsWith(`${folder}/`)).map((file) => file.slice(folder.length + 1));
      const names = new Set(below.map((path) => path.split("/")[0] ?? ""));
      return [...names].map((name) => [name, below.includes(name) ? "file" : "folder"] as const);
    },
    below: (folder, name) => `${folder}/${name}`,
    isCancelled: () => false,
  };
}
