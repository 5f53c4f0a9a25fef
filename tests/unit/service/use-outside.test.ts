import { expect, test } from "vitest";
import { createWorkspace } from "../../../language/service.ts";

/** Every way out of a folder that someone has thought of, and none that is let through. */
const outside = [
  ...[
    "../rack.scant",
    "a/../../rack.scant",
    "./../rack.scant",
    "a/./b/../../../rack.scant",
    "..//rack.scant",
    "../shop-2/rack.scant",
  ],
  ...["/rack.scant", "/etc/rack.scant", "//server/share/rack.scant", "///rack.scant"],
  ...["\\\\server\\share\\rack.scant", "\\rack.scant", "..\\rack.scant", "a\\..\\..\\rack.scant"],
  ...["C:/rack.scant", "C:rack.scant", "c:\\rack.scant", "file:///rack.scant", "file:rack.scant"],
  ...[
    "http://host/rack.scant",
    "https://host/rack.scant",
    "data:text/plain,rack.scant",
    "vscode-remote://host/rack.scant",
    "untitled:rack.scant",
  ],
  ...[
    "%2e%2e/rack.scant",
    "%2e%2e%2frack.scant",
    "a%00.scant",
    "rack.scant?x",
    "rack.scant#x",
    "~/rack.txt",
    "$HOME/rack.txt",
  ],
  ...["rack", "rack.SCANT ", "", " ", "..", ".", "a/..", "rack.scant/..", "nul\0.scant", "bell\u0007.scant"],
];

test.each(outside)("use %j is refused at its place, and nothing is looked for", (path) => {
  const workspace = createWorkspace({ root: "file:///shop" });
  const uri = "file:///shop/job.scant";
  workspace.set(uri, `use "${path}"\n`);
  expect(workspace.missing(uri)).toEqual([]);
  const { findings } = workspace.build(uri);
  expect(findings.map(({ code, span }) => [code, span.start])).toEqual([["use/refused", 4]]);
});

test.each(["rack.scant", "./rack.scant", "a/rack.scant", "a/../rack.scant", "a b/rack.scant", "é.scant"])(
  "use %j lies inside the folder and is looked for there",
  (path) => {
    const workspace = createWorkspace({ root: "file:///shop" });
    workspace.set("file:///shop/job.scant", `use "${path}"\n`);
    const [missing, ...others] = workspace.missing("file:///shop/job.scant");
    expect(others).toEqual([]);
    expect(missing).toMatch(/^file:\/\/\/shop\//);
  },
);
