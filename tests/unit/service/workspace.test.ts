import { describe, expect, test } from "vitest";
import type { Workspace } from "../../../language/service.ts";
import { createWorkspace } from "../../../language/service.ts";

const at = (name: string) => `file:///job/${name}`;

function workspaceOf(files: Readonly<Record<string, string>>): Workspace {
  const workspace = createWorkspace({ root: "file:///job" });
  for (const [name, text] of Object.entries(files)) workspace.set(at(name), text);
  return workspace;
}

const codes = (workspace: Workspace, name = "main.scant") =>
  workspace.build(at(name)).findings.map((finding) => finding.code);
const main = 'use "rack.scant"\nopening left { wide 12  high 6 }\nfront for left { slab ply }';

describe("files that use each other", () => {
  test("a missing file is a finding at the use, and is asked for", () => {
    const workspace = workspaceOf({ "main.scant": main });
    expect(workspace.missing(at("main.scant"))).toEqual([at("rack.scant")]);
    const [finding] = workspace.build(at("main.scant")).findings;
    expect(finding).toMatchObject({ code: "use/missing", span: { line: 0, column: 4, endColumn: 16 } });
  });

  test("once it is there the build is made anew, and again when it changes or goes", () => {
    const workspace = workspaceOf({ "main.scant": main });
    const thickness = () => workspace.build(at("main.scant")).list().parts[0]?.thickness.exact;
    expect(thickness()).toBeUndefined();
    workspace.set(at("rack.scant"), "inches\nsheet ply { measures 3/4 }");
    expect([thickness(), workspace.missing(at("main.scant"))]).toEqual(["3/4", []]);
    workspace.set(at("rack.scant"), "inches\nsheet ply { measures 23/32 }");
    expect(thickness()).toBe("23/32");
    workspace.forget(at("rack.scant"));
    expect(thickness()).toBeUndefined();
  });

  test("a build is kept until something that it rests on changes", () => {
    const workspace = workspaceOf({
      "main.scant": main,
      "rack.scant": "sheet ply { measures 3/4 }",
      "other.scant": "",
    });
    const build = workspace.build(at("main.scant"));
    workspace.set(at("other.scant"), "inches");
    workspace.set(at("rack.scant"), "sheet ply { measures 3/4 }");
    expect(workspace.build(at("main.scant"))).toBe(build);
  });

  test("each file speaks in its own units", () => {
    const workspace = workspaceOf({
      "main.scant": `inches\n${main}`,
      "rack.scant": "millimetres\nsheet ply { measures 18 }\nlet gap = 3",
    });
    expect(workspace.build(at("main.scant")).list().parts[0]?.thickness).toMatchObject({ mm: 18 });
    expect(workspace.build(at("main.scant")).list().units).toBe("inches");
  });

  test("what the file says itself holds over what it uses", () => {
    const workspace = workspaceOf({
      "main.scant": `${main}\nsheet ply { measures 1/2 }`,
      "rack.scant": "sheet ply { measures 3/4 }",
    });
    expect(workspace.build(at("main.scant")).list().parts[0]?.thickness.exact).toBe("1/2");
    expect(codes(workspace)).toContain("name/twice");
  });

  test("files in folders below are found from where they stand", () => {
    const workspace = workspaceOf({
      "main.scant": main.replace("rack", "shop/rack"),
      "shop/rack.scant": 'use "sheets/ply.scant"',
      "shop/sheets/ply.scant": 'use "../../deep.scant"',
      "deep.scant": "sheet ply { measures 3/4 }",
    });
    expect(workspace.build(at("main.scant")).list().parts).toHaveLength(1);
    expect(workspace.usersOf(at("deep.scant"))).toEqual([
      at("main.scant"),
      at("shop/rack.scant"),
      at("shop/sheets/ply.scant"),
    ]);
  });

  test.each([
    "../rack.scant",
    "/rack.scant",
    "a/../../rack.scant",
    "file:///rack.scant",
    "c:/rack.scant",
    "a\\rack.scant",
    "rack.txt",
    "",
    "%2e%2e/rack.scant",
    "//host/rack.scant",
  ])("%j is refused", (path) => {
    const workspace = workspaceOf({ "main.scant": `use "${path}"` });
    expect(codes(workspace)).toEqual(["use/refused"]);
    expect(workspace.missing(at("main.scant"))).toEqual([]);
  });

  test("without a root the file's own folder is the limit", () => {
    const workspace = createWorkspace({ root: undefined });
    workspace.set(at("a/main.scant"), 'use "../rack.scant" use "b/rack.scant"');
    expect(workspace.build(at("a/main.scant")).findings.map((finding) => finding.code)).toEqual([
      "use/refused",
      "use/missing",
    ]);
  });

  test("a name that only begins like the root is outside of it", () => {
    const workspace = workspaceOf({ "main.scant": 'use "../job-other/rack.scant"' });
    expect(codes(workspace)).toEqual(["use/refused"]);
  });

  test("circles end, each with its finding", () => {
    const workspace = workspaceOf({
      "main.scant": 'use "a.scant"\nuse "main.scant"',
      "a.scant": 'use "b.scant"',
      "b.scant": 'use "a.scant" use "main.scant"\nsheet ply { measures 3/4 }',
    });
    expect(codes(workspace)).toEqual(["use/circle", "use/circle", "use/circle"]);
    expect(codes(workspace, "b.scant").every((code) => code === "use/circle")).toBe(true);
  });

  test("a file that two others use is read once, without a finding", () => {
    const workspace = workspaceOf({
      "main.scant": `use "a.scant"\n${main}`,
      "a.scant": 'use "rack.scant"',
      "rack.scant": "sheet ply { measures 3/4 }",
    });
    expect(codes(workspace).filter((code) => code.startsWith("use/") || code.startsWith("name/"))).toEqual([]);
  });

  test("there is an end to how many files may be used", () => {
    const files = Object.fromEntries(
      Array.from({ length: 130 }, (_, index) => [`f${index}.scant`, `use "f${index + 1}.scant"`]),
    );
    expect(codes(workspaceOf({ ...files, "main.scant": 'use "f0.scant"' }))).toEqual(["use/too-many"]);
  });
});

describe("a build", () => {
  test("of a file that was never set is an empty one", () => {
    const build = createWorkspace({ root: undefined }).build("file:///none.scant");
    expect([build.findings, build.list().parts, build.whole]).toEqual([[], [], true]);
  });

  test("is whole when its own text can be read to the end", () => {
    const whole = (text: string, rack = "") =>
      workspaceOf({ "main.scant": text, "rack.scant": rack }).build(at("main.scant")).whole;
    expect([whole("inches"), whole("opening left {"), whole('use "rack.scant"', "sheet {")]).toEqual([
      true,
      false,
      true,
    ]);
  });

  test("has its findings by file and place, its own first", () => {
    const workspace = workspaceOf({
      "main.scant": 'use "rack.scant"\nfront for a { slab lost }\nopening a { wide 12  high 6 }\nopening b { }',
      "rack.scant": "sheet bare { }",
    });
    const places = workspace
      .build(at("main.scant"))
      .findings.filter((one) => one.severity === "error")
      .map(({ span, code }) => `${span.uri.slice(12)} ${span.line} ${code}`);
    expect(places).toEqual([
      "main.scant 1 name/unknown-stock",
      "main.scant 3 opening/no-size",
      "rack.scant 0 stock/no-thickness",
    ]);
  });

  test.each([
    ["only the dry fit reads", "", "front for a { slab ply  overlay 1/4  gap lost }"],
    [
      "only a check reads",
      "hinges cup { cup 35 mm  overlay lost }",
      "door for a { slab ply  overlay 1/2  hinged left  hinges cup }",
    ],
  ])(
    "says that there is no such length where %s it, from a cold start and after a change elsewhere",
    (_, hinges, front) => {
      const stock = `inches\nsheet ply { measures 3/4 }\n${hinges}\n`;
      const text = `opening a { wide 15  high 6  deep 20 }\n${front}\n`;
      const other = "opening b { wide 15  high 6  deep 20 }\n";
      const workspace = workspaceOf({ "main.scant": stock + text });
      const unknown = () => codes(workspace).filter((code) => code === "name/unknown-length");
      expect(unknown()).toHaveLength(1);
      for (const changed of [`${stock}${text}${other}`, `${stock}\n${text}${other}`, `${stock}${text}${other}\n// b`]) {
        workspace.set(at("main.scant"), changed);
        expect(unknown()).toHaveLength(1);
        expect(codes(workspace)).toEqual(codes(workspaceOf({ "main.scant": changed })));
      }
    },
  );

  test("an allowance with a reason silences its code in its block only", () => {
    const text = (allow: string) => `inches
      sheet ply { measures 3/4 } slides runner { lengths 10 to 28 by 2 }
      opening a { wide 15  high 6  deep 20 } opening b { wide 15  high 6  deep 20 }
      box for a { sides ply  slides runner 24  ${allow} }
      box for b { sides ply  slides runner 24 }`;
    const tooLong = (allow: string) =>
      codes(workspaceOf({ "main.scant": text(allow) })).filter((code) => code === "slide/too-long").length;
    expect([tooLong(""), tooLong('allow slide/too-long "cut away"'), tooLong("allow slide/too-long")]).toEqual([
      2, 1, 2,
    ]);
    expect(codes(workspaceOf({ "main.scant": `allow slide/too-long "all" ${text("")}` }))).not.toContain(
      "slide/too-long",
    );
    // what the text itself has wrong cannot be allowed
    expect(codes(workspaceOf({ "main.scant": 'allow syntax/unreadable "so be it"\nsheet {' }))).toContain(
      "syntax/unreadable",
    );
  });
});
