import type { Finding } from "../../core/finding.ts";
import { startOfFile } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import type { Derivation } from "../../derive/derive.ts";
import { type DryFit, dryFit } from "../dry-fit.ts";
import { woodShouldBeFreeAcross } from "./across-grain.ts";
import { partsShouldBeHeld } from "./adrift.ts";
import { caseShouldNotSag } from "./bends.ts";
import { solidBottomShouldMove } from "./bottom-moves.ts";
import type { DryFitCheck } from "./check.ts";
import { partsMustNotClash } from "./clash.ts";
import { facesMustMeet } from "./gap.ts";
import { liftsShouldBeWithinReach } from "./heavy.ts";
import { insetFrontShouldNotBind } from "./inset-binds.ts";
import { doorShouldClearWall } from "./meets-wall.ts";
import { opposedDrawersMustFit } from "./opposed.ts";
import { doorMustOpen } from "./swing.ts";
import { chestMustNotTip } from "./tips.ts";
import { drawerMustComeOut } from "./travel.ts";

/** Every check of the dry fit, in the order in which they are run. */
export const dryFitChecks: readonly DryFitCheck[] = [
  partsMustNotClash,
  facesMustMeet,
  partsShouldBeHeld,
  drawerMustComeOut,
  opposedDrawersMustFit,
  doorMustOpen,
  doorShouldClearWall,
  woodShouldBeFreeAcross,
  solidBottomShouldMove,
  insetFrontShouldNotBind,
  caseShouldNotSag,
  chestMustNotTip,
  liftsShouldBeWithinReach,
];

/** The dry fit and what it shows; without a fit, and with a finding that says so, where the tool fails. */
export function fitted({ context, model, islands }: Derivation): {
  readonly fit: DryFit | undefined;
  readonly findings: readonly Finding[];
} {
  try {
    const fit = dryFit(context, model, islands);
    return { fit, findings: dryFitFindings(context, fit) };
  } catch (error) {
    return {
      fit: undefined,
      findings: [
        failed(
          context,
          dryFitChecks.flatMap(({ codes }) => codes),
          error,
        ),
      ],
    };
  }
}

/** What the dry fit shows. A check that fails says so and takes no other down; what several parts share is said once. */
export function dryFitFindings(context: Context, fit: DryFit): readonly Finding[] {
  const all = dryFitChecks.flatMap((check) => {
    try {
      return check.run(context, fit);
    } catch (error) {
      return [failed(context, check.codes, error)];
    }
  });
  return oncePerPlace(all);
}

/** One finding for each code and pair of places: the first says it, and how many there are. */
function oncePerPlace(findings: readonly Finding[]): readonly Finding[] {
  const places = new Map<string, Finding[]>();
  for (const one of findings) {
    const spans = [one.span, ...one.related.map(({ span }) => span)];
    const key = [one.code, ...spans.map(({ uri, start, end }) => `${uri}:${start}-${end}`)].join(" ");
    const same = places.get(key);
    if (same === undefined) places.set(key, [one]);
    else if (!same.some(({ message }) => message === one.message)) same.push(one);
  }
  return [...places.values()].map(([first, ...others]) =>
    others.length === 0 ? first! : { ...first!, message: `${first!.message}; ${others.length} more like it` },
  );
}

function failed(context: Context, codes: readonly string[], error: unknown): Finding {
  return {
    code: "tool/check-failed",
    severity: "hint",
    span: startOfFile(context.design.uri),
    message: `the dry fit's check for ${codes.join(", ")} could not be made: ${error instanceof Error ? error.message : String(error)}`,
    reason: "This is a fault of the tool, not of the file; all other checks were made.",
    remedy: "Please report it with the file.",
    related: [],
    fixes: [],
  };
}
