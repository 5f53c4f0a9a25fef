import type { Finding } from "../core/finding.ts";
import { startOfFile } from "../core/span.ts";
import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import { bottomShouldNotSag } from "./box/bottom-stiff-enough.ts";
import { boxMustNotTouchBack } from "./box/too-deep.ts";
import { boxMustClearAboveAndBelow } from "./box/too-high.ts";
import { boxMustReachSlides } from "./box/too-narrow.ts";
import { boxMustLeaveSlidesRoom } from "./box/too-wide.ts";
import { caseShouldStandSafely } from "./case/stands-safely.ts";
import type { Check } from "./check.ts";
import { cupMustLieInWood } from "./door/cup-in-the-wood.ts";
import { hingeMustSuitDoor } from "./door/hinge-suits.ts";
import { doorShouldBeHungWell } from "./door/hinged-well.ts";
import { doorMustSwingClear } from "./door/swings-clear.ts";
import { bottomMustLetCornersClose } from "./fit/bottom-size.ts";
import { frameShouldBeFlushWithCase } from "./fit/frame-flush.ts";
import { pieceMustFitItsGroove } from "./fit/in-its-groove.ts";
import { insetGapMustStayOpen } from "./fit/inset-gap.ts";
import { boxMustFitSlidesAsMade } from "./fit/slide-clearance.ts";
import { memberShouldBeWiderThanGroove } from "./frame/member-wide-enough.ts";
import { solidPanelShouldMoveInFrame } from "./frame/panel-moves.ts";
import { panelShouldStayInFrame } from "./frame/panel-proud.ts";
import { frameStockShouldBeThickEnough } from "./frame/stock-thick-enough.ts";
import { tenonMustEndInStile } from "./frame/tenon-within-stile.ts";
import { grooveShouldLeaveWood } from "./frame/wood-before-groove.ts";
import { frontMustClearNeighbour } from "./front/clear-of-neighbour.ts";
import { frontMustPassWall } from "./front/clear-of-wall.ts";
import { insetFrontShouldClearEvenly } from "./front/inset-clear.ts";
import { frontMustPassInsideCorner } from "./front/inside-corner.ts";
import { overlayMustStayOnCase } from "./front/within-case.ts";
import { workShouldBeWithinOnePersonsReach } from "./handling/within-one-persons-lift.ts";
import { bottomGrooveShouldBeClear } from "./joint/bottom-groove-clear.ts";
import { lapMustBeThinnerThanFront } from "./joint/lap-within-front.ts";
import { jointMustLeaveWood } from "./joint/leaves-wood.ts";
import { sizeShouldBePlausible } from "./length/plausible.ts";
import { nameShouldBeUsed } from "./name/used.ts";
import { openingMustBeFilledOnce } from "./opening/filled-once.ts";
import { openingShouldBeParallel } from "./opening/parallel.ts";
import { openingShouldBeUsed } from "./opening/used.ts";
import { packingMustFillWithoutStandingProud } from "./packing/thin-enough.ts";
import { grainShouldRunAlong } from "./part/grain-along.ts";
import { partMustFitBoard } from "./part/within-a-board.ts";
import { partMustFitSheet } from "./part/within-its-stock.ts";
import { pieceShouldHaveRoomForPockets } from "./pockets/room-for-pocket.ts";
import { screwMustNotComeThrough } from "./screw/not-through.ts";
import { shelfMustHaveRoom } from "./shelf/room-for-shelf.ts";
import { shelfShouldNotSag } from "./shelf/stiff-enough.ts";
import { slideMustCarryItsLoad } from "./slide/carries-its-load.ts";
import { slideMustNotPassBox } from "./slide/longer-than-box.ts";
import { someSlideMustFit } from "./slide/none-fits.ts";
import { slideMustBeSold } from "./slide/not-sold.ts";
import { boxShouldNotBeWiderThanCommon } from "./slide/not-too-wide-a-box.ts";
import { slideMustLieOnBox } from "./slide/on-the-box.ts";
import { boxShouldHaveRecessForRunner } from "./slide/recess-for-runner.ts";
import { slideMustHaveSomethingBehind } from "./slide/something-behind.ts";
import { underMountedSlideMustTakeSide } from "./slide/takes-the-side.ts";
import { slideTooLong } from "./slide/too-long.ts";
import { slideShouldUseTheDepth } from "./slide/uses-the-depth.ts";
import { statementShouldHaveEffect } from "./statement/has-effect.ts";
import { thicknessShouldBeEven } from "./stock/even.ts";
import { speciesShouldBeKnown } from "./stock/known-species.ts";
import { usedSheetShouldBeMeasured } from "./stock/measured-where-it-decides.ts";
import { thicknessShouldBeNearLabel } from "./stock/near-its-label.ts";
import { offcutShouldFitItsSheet } from "./stock/offcut-within-sheet.ts";
import { priceShouldBeForWhatIsSold } from "./stock/priced-as-sold.ts";
import { stockShouldBeUsed } from "./stock/used-or-left-out.ts";

/** Every check, in the order in which they are run. */
export const checks: readonly Check[] = [
  // stock
  usedSheetShouldBeMeasured,
  thicknessShouldBeNearLabel,
  thicknessShouldBeEven,
  stockShouldBeUsed,
  priceShouldBeForWhatIsSold,
  speciesShouldBeKnown,
  offcutShouldFitItsSheet,
  partMustFitSheet,
  partMustFitBoard,
  grainShouldRunAlong,
  // openings
  openingShouldBeUsed,
  openingShouldBeParallel,
  openingMustBeFilledOnce,
  // slides
  slideTooLong,
  someSlideMustFit,
  slideMustBeSold,
  slideMustNotPassBox,
  slideMustCarryItsLoad,
  boxShouldNotBeWiderThanCommon,
  underMountedSlideMustTakeSide,
  slideMustHaveSomethingBehind,
  slideMustLieOnBox,
  boxShouldHaveRecessForRunner,
  slideShouldUseTheDepth,
  // boxes
  boxMustLeaveSlidesRoom,
  boxMustReachSlides,
  boxMustClearAboveAndBelow,
  boxMustNotTouchBack,
  bottomShouldNotSag,
  // packing
  packingMustFillWithoutStandingProud,
  // joints and screws
  jointMustLeaveWood,
  bottomGrooveShouldBeClear,
  lapMustBeThinnerThanFront,
  pieceShouldHaveRoomForPockets,
  screwMustNotComeThrough,
  // frames
  grooveShouldLeaveWood,
  panelShouldStayInFrame,
  solidPanelShouldMoveInFrame,
  frameStockShouldBeThickEnough,
  tenonMustEndInStile,
  memberShouldBeWiderThanGroove,
  // fronts and doors
  frontMustClearNeighbour,
  frontMustPassInsideCorner,
  frontMustPassWall,
  overlayMustStayOnCase,
  insetFrontShouldClearEvenly,
  doorMustSwingClear,
  hingeMustSuitDoor,
  cupMustLieInWood,
  doorShouldBeHungWell,
  // shelves and cases
  shelfShouldNotSag,
  shelfMustHaveRoom,
  caseShouldStandSafely,
  // handling
  workShouldBeWithinOnePersonsReach,
  // language use
  sizeShouldBePlausible,
  nameShouldBeUsed,
  statementShouldHaveEffect,
  // fits on their worst case
  boxMustFitSlidesAsMade,
  pieceMustFitItsGroove,
  bottomMustLetCornersClose,
  insetGapMustStayOpen,
  frameShouldBeFlushWithCase,
];

/** What all checks find. A check that fails says so and takes no other down. */
export function runChecks(context: Context, model: Model, run: readonly Check[] = checks): readonly Finding[] {
  const findings = run.flatMap((check) => {
    try {
      return check.run(context, model);
    } catch (error) {
      return [failed(context, check, error)];
    }
  });
  return oncePerPlace(findings);
}

/** What several things have in common is wrong once, where it is written: the first says it, and how many there are. */
function oncePerPlace(findings: readonly Finding[]): readonly Finding[] {
  const places = new Map<string, Finding[]>();
  for (const one of findings) {
    const key = `${one.code} ${one.span.uri} ${one.span.start} ${one.span.end}`;
    const same = places.get(key);
    if (same === undefined) places.set(key, [one]);
    else if (!same.some((other) => other.message === one.message)) same.push(one);
  }
  return [...places.values()].map(([first, ...others]) =>
    others.length === 0 ? first! : { ...first!, message: `${first!.message}; ${others.length} more like it` },
  );
}

function failed(context: Context, check: Check, error: unknown): Finding {
  return {
    code: "tool/check-failed",
    severity: "hint",
    span: startOfFile(context.design.uri),
    message: `the check for ${check.codes.join(", ")} could not be made: ${error instanceof Error ? error.message : String(error)}`,
    reason: "This is a fault of the tool, not of the file; all other checks were made.",
    remedy: "Please report it with the file.",
    related: [],
    fixes: [],
  };
}
