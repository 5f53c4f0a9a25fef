import type { Design } from "./design.ts";

/** One design of several, in their order; what a design has once is the first's, or what is given. */
export function joinDesigns(
  designs: readonly Design[],
  once: Pick<Design, "uri" | "project" | "units" | "reading">,
): Design {
  const every = <T>(pick: (design: Design) => readonly T[]): readonly T[] => designs.flatMap(pick);
  return {
    uri: once.uri,
    project: once.project,
    units: once.units,
    reading: once.reading,
    sheets: every((design) => design.sheets),
    boards: every((design) => design.boards),
    edgings: every((design) => design.edgings),
    offcuts: every((design) => design.offcuts),
    leavings: every((design) => design.leavings),
    slides: every((design) => design.slides),
    hinges: every((design) => design.hinges),
    screws: every((design) => design.screws),
    lets: every((design) => design.lets),
    shop: {
      saw: every((design) => design.shop.saw),
      grooves: every((design) => design.shop.grooves),
      pockets: every((design) => design.shop.pockets),
      places: every((design) => design.shop.places),
      times: every((design) => design.shop.times),
      lifts: every((design) => design.shop.lifts),
    },
    cases: every((design) => design.cases),
    openings: every((design) => design.openings),
    boxes: every((design) => design.boxes),
    fronts: every((design) => design.fronts),
    shelves: every((design) => design.shelves),
    parts: every((design) => design.parts),
    cuts: every((design) => design.cuts),
    brokenDown: every((design) => design.brokenDown),
    usedOffcuts: every((design) => design.usedOffcuts),
    cutBlocks: every((design) => design.cutBlocks),
    allows: every((design) => design.allows),
    uses: every((design) => design.uses),
    findings: every((design) => design.findings),
  };
}
