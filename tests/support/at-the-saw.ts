/**
 * Follows the steps of a cutting plan as they are written, with a stack of pieces for each sheet and nothing else: it shares
 * no code with the order of cuts, and reads neither the tree of cuts nor the places of the parts until the end.
 */
import { toNumber } from "../../language/core/rational.ts";
import type { CutPlan } from "../../language/plan/cut-plan.ts";
import type { CutStep } from "../../language/plan/steps.ts";

export interface Saw {
  readonly kerf: number;
  readonly trim: number;
  /** How far the fence goes from the blade, and what one person lifts, in pounds. */
  readonly right: number;
  readonly lift: number;
}

type Piece = readonly [number, number];

const near = 1e-6;
/** Nothing shorter runs along the fence of a table saw; nothing wider goes under a mitre saw (common practice, no source). */
const shortest = 12;
const widestAtMitre = 12;

/** What goes wrong when the steps are followed one by one, a sentence each. */
export function followed(plan: CutPlan, steps: readonly CutStep[], saw: Saw): readonly string[] {
  const wrong: string[] = [];
  const stacks = new Map<string, Piece[]>();
  for (const { stock, sheets } of plan.stocks) {
    for (const { name, width, height, offcut } of sheets) {
      const edge = stock.kind === "sheet" && !offcut ? 2 * saw.trim : 0;
      stacks.set(name, [[toNumber(width) - edge, toNumber(height) - edge]]);
    }
  }
  const boards = plan.stocks.flatMap(({ stock, sheets }) =>
    stock.kind === "board" ? sheets.map(({ name }) => name) : [],
  );
  for (const step of steps) {
    wrong.push(...cutOnce(step, stacks.get(step.sheet), saw), ...safe(step, saw, boards.includes(step.sheet)));
  }
  for (const { sheets } of plan.stocks) {
    for (const { name, placed } of sheets) {
      for (const { mark, width, height } of placed) {
        const stack = stacks.get(name)!;
        const at = stack.findIndex((piece) => isOf(piece, toNumber(width), toNumber(height)));
        if (at < 0) wrong.push(`${name}: no piece of the size of ${mark} is left on the stack`);
        else stack.splice(at, 1);
      }
    }
  }
  return wrong;
}

/** A cut takes its piece from the stack, and puts back what is between fence and blade and, if there is any, the rest. */
function cutOnce(step: CutStep, stack: Piece[] | undefined, { kerf }: Saw): readonly string[] {
  const [width, height, setting] = [step.width, step.height, step.setting].map(toNumber) as [number, number, number];
  const at = stack?.findIndex((piece) => isOf(piece, width, height)) ?? -1;
  if (stack === undefined || at < 0) return [`step ${step.number}: no piece of ${width} x ${height} is on the stack`];
  stack.splice(at, 1);
  const whole = step.kind === "rip" ? width : height;
  if (!(0 < setting) || whole + near < setting) return [`step ${step.number}: ${setting} is more than there is`];
  const rest = whole - setting - kerf;
  for (const length of [setting, rest]) {
    if (near < length) stack.push(step.kind === "rip" ? [length, height] : [width, length]);
  }
  const falls = near < rest ? step.falls !== "waste" || rest < 1 : step.falls === "waste";
  return falls ? [] : [`step ${step.number}: ${rest} falls off, which it calls ${step.falls}`];
}

function safe(step: CutStep, { right, lift }: Saw, isBoard: boolean): readonly string[] {
  const [width, height, setting] = [step.width, step.height, step.setting].map(toNumber) as [number, number, number];
  const [across, along] = step.kind === "rip" ? [width, height] : [height, width];
  const wrong: string[] = [];
  const say = (what: string): number => wrong.push(`step ${step.number}, ${step.tool}, ${width} x ${height}: ${what}`);
  if (step.tool !== "track saw on the floor" && lift < step.pounds) say("too heavy to carry to the saw");
  if (step.tool === "table saw") {
    if (right < setting) say("the fence does not go so far");
    if (along < shortest && step.short === false) say("too short along the fence, and not said to be");
    if (2 * along < across) say("would turn between blade and fence");
  }
  if (step.tool === "mitre saw" && widestAtMitre < along) say("too wide for one pass");
  if (step.tool === "mitre saw" && across < shortest && step.short === false)
    say("too short to hold, and not said to be");
  if (step.tool === "mitre saw" && isBoard && step.kind === "rip") say("a board is ripped at a saw for crosscuts");
  return wrong;
}

function isOf([w, h]: Piece, width: number, height: number): boolean {
  return Math.abs(w - width) < near && Math.abs(h - height) < near;
}
