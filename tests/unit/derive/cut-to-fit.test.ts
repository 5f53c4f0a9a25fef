import { describe, expect, test } from "vitest";
import { createWorkspace } from "../../../language/service.ts";

const head = `inches
sheet ply { called 3/4  measures 3/4  size 48 x 96 }
board ash { thick 3/4  wide 5 1/2  long 96 }
case base {
  wide 24  high 30  deep 12  panels ply
  frame ash { stiles 2  rails 2  down { opening cups 12  rail  opening jars rest } }
}
`;

function listed(text: string) {
  const workspace = createWorkspace({ root: undefined });
  workspace.set("file:///a.scant", text);
  return workspace.build("file:///a.scant").list().parts;
}

describe("a size that hangs on work not done yet", () => {
  test("an inset front is planed to its opening; an overlay front is not", () => {
    const parts = listed(`${head}
front for cups { inset  slab ply }
front for jars { overlay 3/8  slab ply }
`);
    const notesOf = (of: string) => parts.find((part) => part.of === of)?.notes.join("; ");
    // 20 by 12 clear, less 1/16 at each edge: what the list expects.
    expect(parts.find((part) => part.of === "front cups")?.length.shop).toBe("19 7/8");
    expect(notesOf("front cups")).toContain("cut to fit: plane it to its opening");
    expect(notesOf("front jars")).not.toContain("cut to fit");
  });

  test("an opening that stands already is measured, and its front is cut to the list", () => {
    const parts = listed(`inches
sheet ply { called 3/4  measures 3/4  size 48 x 96 }
opening bay { wide 20  high 12 }
front for bay { inset  slab ply }
`);
    expect(parts[0]?.notes.join()).not.toContain("cut to fit");
    expect(parts[0]?.face).toBe("outside");
  });
});
