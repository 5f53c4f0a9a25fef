import { describe, expect, test } from "vitest";
import { mayRead } from "../../extension/used-files.ts";

const shop = { scheme: "file", authority: "", path: "/home/ada/shop" };

function file(path: string, scheme = "file", authority = "") {
  return { scheme, authority, path };
}

describe("the server is given", () => {
  test.each(["/home/ada/shop/rack.scant", "/home/ada/shop/jobs/a b/chest.scant"])("%s", (path) => {
    expect(mayRead(file(path), [shop])).toBe(true);
  });

  test("a file below the root of a virtual folder", () => {
    const root = file("/", "vscode-vfs", "github");
    expect(mayRead(file("/rack.scant", "vscode-vfs", "github"), [shop, root])).toBe(true);
  });
});

describe("the server is not given", () => {
  test.each([
    ["a file outside", file("/home/ada/rack.scant")],
    ["a neighbour whose name begins alike", file("/home/ada/shopping/rack.scant")],
    ["one that climbs out", file("/home/ada/shop/../secret/rack.scant")],
    ["one that climbs out by a backslash", file("/home/ada/shop/..\\..\\rack.scant")],
    ["the folder itself", file("/home/ada/shop")],
    ["anything but a build file", file("/home/ada/shop/.env")],
    ["the same path elsewhere", file("/home/ada/shop/rack.scant", "https")],
    ["the same path on another machine", file("/home/ada/shop/rack.scant", "file", "server")],
  ])("%s", (_, place) => {
    expect(mayRead(place, [shop])).toBe(false);
  });

  test("anything when no folder is open", () => {
    expect(mayRead(file("/home/ada/shop/rack.scant"), [])).toBe(false);
  });
});
