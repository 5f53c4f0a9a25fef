import { Window } from "happy-dom";
import { describe, expect, it } from "vitest";
import type { Drawing, Item } from "../../../language/draw/display-list.ts";
import { corners, text } from "../../../language/draw/display-list.ts";
import { drawingsOf } from "../../../language/draw/drawings.ts";
import { escaped, svgOf } from "../../../language/draw/svg.ts";
import { buildOf, deskOf, exampleBuild, examples } from "./example.ts";

const drawing = (items: readonly Item[], title = "A box"): Drawing => ({
  id: "box/plan",
  title,
  scale: "1 : 2",
  wide: 40,
  high: 30,
  items,
  equivalent: { columns: [], rows: [] },
});

function parse(svg: string) {
  return new new Window().DOMParser().parseFromString(svg, "image/svg+xml");
}

describe("a drawing as SVG", () => {
  it("keeps markup in names as text", () => {
    const nasty = `</text><script>alert("1")</script>&amp;'`;
    const svg = svgOf(
      drawing(
        [{ kind: "group", id: nasty, name: nasty, target: undefined, items: [text({ x: 1, y: 2 }, nasty)] }],
        nasty,
      ),
    );
    const document = parse(svg);
    expect(document.querySelectorAll("script")).toHaveLength(0);
    expect(document.querySelector("text")?.textContent).toBe(nasty);
    expect(document.querySelector("g")?.getAttribute("data-id")).toBe(nasty);
    expect(document.querySelector("svg")?.getAttribute("aria-label")).toBe(`${nasty}, scale 1 : 2`);
  });

  it("says nothing of colours, fonts or styles when it is bare", () => {
    for (const name of examples) {
      for (const one of drawingsOf(deskOf(exampleBuild(name)))) {
        const svg = svgOf(one);
        expect(svg).not.toMatch(/style|font-family|url\(|href|fill="|stroke="|#[0-9a-f]{3,6}\b(?![^<]*")/i);
      }
    }
  });

  it("brings its own style as a file, for light and dark", () => {
    const svg = svgOf(drawing([]), "file");
    expect(svg).toContain("prefers-color-scheme:dark");
    expect(svg).toContain('width="40mm" height="30mm" ');
    expect(svg).not.toContain("<script");
  });

  it("names the place in the file that a thing comes from", () => {
    const target = { uri: "file:///a.scant", start: 0, end: 5, line: 3, column: 1, endLine: 3, endColumn: 6 };
    const svg = svgOf(drawing([{ kind: "group", id: "a", name: "A", target, items: [] }]));
    const group = parse(svg).querySelector("g")!;
    expect(group.getAttribute("data-uri")).toBe("file:///a.scant");
    expect(group.getAttribute("data-line")).toBe("3");
    expect(group.getAttribute("data-end-column")).toBe("6");
  });

  it("says nothing of this machine in a file", () => {
    for (const one of drawingsOf(deskOf(exampleBuild("print-room.scant")))) {
      expect(svgOf(one, "file")).not.toMatch(/data-uri|file:/);
    }
  });

  it("draws an outline before its hatching, and the hatching inside it", () => {
    const area: Item = {
      kind: "area",
      points: corners({ x: 2, y: 2 }, { x: 12, y: 8 }),
      hatch: "solid",
      along: { x: 1, y: 0 },
      weight: "heavy",
    };
    const paths = [...parse(svgOf(drawing([area]))).querySelectorAll("path")];
    expect(paths.map((path) => path.getAttribute("class"))).toEqual(["bare paper", "fine hatch none", "heavy none"]);
  });

  it("has only characters that XML allows", () => {
    expect(escaped("a\u0000b\u0007c\ud800d\ufffe")).toBe("a\ufffdb\ufffdc\ufffdd\ufffd");
  });

  it("keeps names of a build file as text in every drawing", () => {
    const build = buildOf(
      'project "<b>&\\"</b>"\ninches\nsheet ply { measures 3/4 size 48 x 96 }\nslides s { mount side lengths 10 to 28 by 2 }\nopening x { wide 18 high 6 deep 20 }\nbox for x { sides ply slides s }\n',
    );
    const drawings = drawingsOf(deskOf(build));
    expect(drawings.length).toBeGreaterThan(0);
    for (const one of drawings) expect(parse(svgOf(one)).querySelector("parsererror, b")).toBeNull();
  });
});
