import { allowed } from "./allowed.ts";
import { type CutAction, cutActionsAt } from "./ascut/actions.ts";
import type { AsCut } from "./ascut/as-cut.ts";
import { benched } from "./ascut/findings/index.ts";
import { doneIn } from "./ascut/left.ts";
import { type ReadLine, readCuts } from "./ascut/paste.ts";
import { type Held, nothingHeld, onHand } from "./ascut/rack.ts";
import { type Book, type Recording, type RecordRequest, recordEdits } from "./ascut/record.ts";
import { type Rescue, rescueOf } from "./ascut/rescue.ts";
import type { Allow, Design, UseStatement } from "./core/design.ts";
import { titleOf, writtenTitle } from "./core/file-name.ts";
import type { Finding } from "./core/finding.ts";
import { joinDesigns } from "./core/join-designs.ts";
import type { Stepwise } from "./core/stepwise.ts";
import { type Derivation, type DeriveMemory, derive, deriveMemory } from "./derive/derive.ts";
import type { Drawing } from "./draw/display-list.ts";
import { deskFor } from "./draw/drawing-view.ts";
import { drawingSteps } from "./draw/drawings.ts";
import { runChecks } from "./fit/index.ts";
import { cutList, markedParts } from "./plan/cut-list.ts";
import { type CutPlan, cutPlan, type PlanBudget, type Planning, startPlan } from "./plan/cut-plan.ts";
import type { DryFit } from "./solid/dry-fit.ts";
import { fitted } from "./solid/findings/index.ts";
import { type Lowered, lower, lowerAgain } from "./syntax/lower.ts";
import { circularUse, missingFile, tooManyUses, usedFile } from "./uses.ts";
import { type BuyLine, buyLines } from "./view/buying.ts";
import { csvOf } from "./view/csv.ts";
import { type Day, dayOf, savedNotes } from "./view/day.ts";
import { type DayDocument, dayDocument } from "./view/day-document.ts";
import { dayText } from "./view/day-text.ts";
import type { DayJob } from "./view/jobs.ts";
import { type Left, leftOver } from "./view/left.ts";
import { listDocument } from "./view/list.ts";
import { markdownOf } from "./view/markdown.ts";
import { planDocument, planText } from "./view/plan.ts";
import { rodView } from "./view/rod.ts";
import { textOf } from "./view/text.ts";
import type { ListDocument, PlanDocument, RodView } from "./view/types.ts";

export { catalogue, pageName, pagePath } from "./fit/catalogue.ts";
export { fixAll, safeEdits } from "./fit/fix-all.ts";
export type { Planning } from "./plan/cut-plan.ts";

/** A set of build files in memory. Nothing here reads or writes files: the host says what they hold. */
export interface Workspace {
  /** Sets a file's text; builds that use the file are made anew when next asked for. */
  set(uri: string, text: string): void;
  /** Says that there is no such file (any more). */
  forget(uri: string): void;
  /** The text last set, if any. */
  textOf(uri: string): string | undefined;
  /** The files whose texts are set. */
  uris(): readonly string[];
  /** What a file says by itself; `undefined` if it has not been set. */
  designOf(uri: string): Design | undefined;
  /** What a file and those that it uses, near or far, say: the file's own first. Nothing is derived for it. */
  designsOf(uri: string): readonly Design[];
  /** The files that are used by this one, near or far, that have not been set; the host should read and set them. */
  missing(uri: string): readonly string[];
  /** The files set that use this one, near or far. */
  usersOf(uri: string): readonly string[];
  /** The build of a file; made once and kept until a file it rests on changes. Never throws. */
  build(uri: string): Build;
}

/** All that is known from one build file and the files it uses. */
export interface Build {
  readonly uri: string;
  /** Sorted by file and place; those in used files included. */
  readonly findings: readonly Finding[];
  /** Whether the text of the file itself could be read to its end without trouble. */
  readonly whole: boolean;
  readonly derivation: Derivation;
  /** The file itself and the files that it uses, near or far, as they were read. */
  readonly designs: readonly Design[];
  /** The title that stands behind `from` at the offcuts that this job's plan leaves over. */
  readonly leavesAs: string;
  /** Stocks of which the file records that whole sheets or boards are broken down. */
  readonly brokenDown: ReadonlySet<string>;
  /** The piece put together, moved, loaded and lifted; missing only where the tool failed, which is a finding. */
  dryFit(): DryFit | undefined;
  list(): ListDocument;
  rod(): RodView;
  /** The cut list as RFC 4180 text with CRLF line ends. */
  csv(): string;
  markdown(): string;
  /** The cut list for a terminal, at most 80 columns wide. */
  text(): string;
  /** The cutting plan within a budget of search; the same rounds give the same plan. What other jobs hold in the rack is not there. */
  plan(budget: PlanBudget, held?: Held): CutPlan;
  /** The cutting plan as a search that can be carried on, shown and stopped. */
  startPlan(): Planning;
  planDocument(plan: CutPlan): PlanDocument;
  planText(plan: CutPlan): string;
  /** What the plan and the hardware want from the yard. */
  buying(plan: CutPlan): readonly BuyLine[];
  /** Elevations, sections, boxes, frames and story sticks, some at a time; made once for a build. */
  drawings(): Stepwise<readonly Drawing[]>;
  /** What the `cut` blocks say exists, against what is wanted. */
  asCut(): AsCut;
  /** What is left to cut, as a list and as plans of its own, with the rack less what is broken down and used up. */
  left(): Left;
  /** What spoiled, wrong and surplus pieces and offcuts can still become, in this job and in others that share its rack. */
  rescue(others?: readonly Build[]): Rescue;
  /** The report of a day: what is left of this job, and of others that share its rack. */
  day(budget: PlanBudget, others?: readonly Build[]): Day;
  dayText(day: Day): string;
  dayDocument(day: Day): DayDocument;
  /** The edits that write down what was cut, for a tick beside a row. Several at once are one change. */
  recordEdit(...requests: readonly RecordRequest[]): Recording;
  /** As `recordEdit`, from a line as it is typed on a phone: `2 side plan-1; 1 rail inks 13 11/16; spoiled stile rollers`. */
  readCuts(line: string): ReadLine;
  /** What can be written down about the parts that are stated between two offsets of the text. */
  cutActions(start: number, end: number): readonly CutAction[];
  /** The job as reports over several jobs take it. */
  job(): DayJob;
}

export interface WorkspaceOptions {
  /** The folder that `use` may not leave, as a URI; missing: the build file's own folder. */
  readonly root: string | undefined;
}

/** Files that one build may use, near or far. */
const mostFiles = 100;

export function createWorkspace({ root }: WorkspaceOptions): Workspace {
  const texts = new Map<string, string>();
  const designs = new Map<string, Design>();
  /** Each file as it was last read, for what has not changed in it. */
  const lowered = new Map<string, Lowered>();
  /** What the last build of each file leaves for the next. */
  const memories = new Map<string, DeriveMemory>();
  const builds = new Map<string, { readonly build: Build; readonly rests: readonly string[] }>();

  const designOf = (uri: string): Design | undefined => {
    const text = texts.get(uri);
    if (text === undefined) return undefined;
    const known = designs.get(uri);
    if (known !== undefined) return known;
    const read = lowerAgain(text, uri, lowered.get(uri));
    lowered.set(uri, read);
    designs.set(uri, read.design);
    return read.design;
  };
  const drop = (uri: string): void => {
    designs.delete(uri);
    for (const [of, { rests }] of builds) if (of === uri || rests.includes(uri)) builds.delete(of);
  };
  const gather = (uri: string): Gathered => gathered(uri, designOf, root);

  return {
    set(uri, text) {
      if (texts.get(uri) === text) return;
      texts.set(uri, text);
      drop(uri);
    },
    forget(uri) {
      texts.delete(uri);
      lowered.delete(uri);
      memories.delete(uri);
      drop(uri);
    },
    textOf: (uri) => texts.get(uri),
    uris: () => [...texts.keys()],
    designOf,
    designsOf: (uri) => designsIn(gather(uri)),
    missing: (uri) => gather(uri).missing,
    usersOf: (uri) => [...texts.keys()].filter((other) => other !== uri && gather(other).rests.includes(uri)),
    build(uri) {
      const kept = builds.get(uri);
      if (kept !== undefined) return kept.build;
      const files = gather(uri);
      const memory = memories.get(uri) ?? deriveMemory();
      memories.set(uri, memory);
      const build = buildOf(uri, files, texts.get(uri) ?? "", memory);
      builds.set(uri, { build, rests: files.rests });
      return build;
    },
  };
}

interface Gathered {
  readonly own: Design;
  readonly used: readonly Design[];
  /** Every file that the build rests on, missing ones included. */
  readonly rests: readonly string[];
  readonly missing: readonly string[];
  readonly findings: readonly Finding[];
}

/** The design of a file and of all that it uses, near or far, each once. */
function gathered(uri: string, designOf: (uri: string) => Design | undefined, root: string | undefined): Gathered {
  const own = designOf(uri) ?? lower("", uri);
  const used = new Map<string, Design>();
  const missing = new Set<string>();
  const findings: Finding[] = [];
  const follow = (design: Design, above: readonly string[]): void => {
    for (const use of design.uses) {
      const target = usedFile(use, design.uri, root);
      if ("refused" in target) findings.push(target.refused);
      else if (above.includes(target.uri)) findings.push(circularUse(use));
      else if (!used.has(target.uri)) visit(use, target.uri, above);
    }
  };
  const visit = (use: UseStatement, target: string, above: readonly string[]): void => {
    if (mostFiles <= used.size) {
      findings.push(tooManyUses(use, mostFiles));
      return;
    }
    const design = designOf(target);
    if (design === undefined) {
      missing.add(target);
      findings.push(missingFile(use));
      return;
    }
    used.set(target, design);
    follow(design, [...above, target]);
  };
  follow(own, [uri]);
  return { own, used: [...used.values()], rests: [uri, ...used.keys(), ...missing], missing: [...missing], findings };
}

function buildOf(uri: string, files: Gathered, text: string, memory: DeriveMemory): Build {
  const design = together(files);
  const derivation = derive(design, memory);
  const { context, model } = derivation;
  // The checks cost many times what the derivation does, and what is asked of a place in the text does not need them.
  const checked = once(() => {
    const { fit, findings: shown } = fitted(derivation);
    const said = new Set(context.findings);
    const late = derivation.islands.flatMap((island) => island.context.findings).filter((one) => !said.has(one));
    context.findings.push(...late);
    const { made, rescue, findings: counted } = benched(context, model, fit);
    const judged = runChecks(context, model);
    // Last, since some lengths are read for a check or for the dry fit alone, and may be wrong too.
    const all = [...context.findings, ...judged, ...shown, ...counted];
    return { fit, made, rescue, findings: sorted(allowed(all, allowsOf(design)), uri) };
  });
  const whole = !files.own.findings.some((finding) => finding.code.startsWith("syntax/"));
  const listed = (): RodView => {
    const { made, findings } = checked();
    return rodView(context, model, findings, whole, {
      batches: cutList(model),
      doneIn: made.isBegun ? doneIn(made) : undefined,
    });
  };
  // The list is the whole job's; what lies about beside it is for whoever stands at the bench.
  const rod = (): RodView => {
    const view = listed();
    return { ...view, notes: [...view.notes, ...savedNotes(checked().rescue)] };
  };
  const left = once(() => leftOver(context, model, checked(), whole));
  const job = once((): DayJob => {
    const { made, findings } = checked();
    return { title: titleOf(context.design), context, model, made, findings };
  });
  const book = (): Book => ({ context, model, made: checked().made, own: files.own, text });
  const desk = once(() => deskFor(context, model));
  return {
    uri,
    get findings() {
      return checked().findings;
    },
    whole,
    derivation,
    designs: designsIn(files),
    leavesAs: writtenTitle(files.own),
    brokenDown: new Set(files.own.brokenDown.map(({ stock }) => stock.text)),
    dryFit: () => checked().fit,
    list: () => listDocument(context, model, checked().findings),
    rod,
    csv: () => csvOf(context, cutList(model)),
    markdown: () => markdownOf(listed()),
    text: () => textOf(listed()),
    plan: (budget, held = nothingHeld) => {
      const rack = held === nothingHeld ? { context, model } : onHand(context, model, held);
      return cutPlan(rack.context, rack.model, markedParts(cutList(model)), budget);
    },
    startPlan: () => startPlan(context, model, markedParts(cutList(model))),
    planDocument: (plan) => planDocument(context, plan),
    planText: (plan) => planText(context, plan),
    buying: (plan) => buyLines(context, model, plan),
    drawings: () => drawingSteps(desk()),
    asCut: () => checked().made,
    left,
    rescue: (others = []) => rescueOf([job(), ...others.map((other) => other.job())]),
    day: (budget, others = []) => dayOf([job(), ...others.map((other) => other.job())], budget),
    dayText,
    dayDocument,
    recordEdit: (...requests) => recordEdits(book(), requests),
    readCuts: (line) => readCuts(book(), line),
    cutActions: (start, end) => cutActionsAt(book(), start, end),
    job,
  };
}

function designsIn({ own, used }: Gathered): readonly Design[] {
  return [own, ...used];
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** One design of all files: the file's own first, so that what it says holds over what it uses. */
function together({ own, used, findings }: Gathered): Design {
  const all = [own, ...used];
  const whole = joinDesigns(all, own);
  // What the plan of this job leaves over is not there before it is cut.
  const title = writtenTitle(own);
  const leavings = whole.offcuts.filter(({ from }) => from?.text === title);
  const offcuts = whole.offcuts.filter(({ from }) => from?.text !== title);
  return {
    ...whole,
    offcuts,
    leavings,
    uses: own.uses,
    cutBlocks: own.cutBlocks,
    findings: [...whole.findings, ...findings],
  };
}

function allowsOf(design: Design): readonly Allow[] {
  const blocks = [
    ...design.sheets,
    ...design.boards,
    ...design.edgings,
    ...design.slides,
    ...design.hinges,
    ...design.screws,
    ...design.cases,
    ...design.openings,
    ...design.boxes,
    ...design.fronts,
    ...design.shelves,
    ...design.parts,
    ...design.shop.saw,
    ...design.shop.grooves,
    ...design.shop.pockets,
    ...design.shop.places,
    ...design.shop.times,
  ];
  return [...design.allows, ...blocks.flatMap((block) => block.allows)];
}

/** By file, its own first, then by place; a finding said twice of one place is said once. */
function sorted(findings: readonly Finding[], uri: string): readonly Finding[] {
  const rank = (finding: Finding): string => (finding.span.uri === uri ? "" : finding.span.uri);
  const seen = new Set<string>();
  return [...findings]
    .sort((a, b) =>
      rank(a) < rank(b) ? -1 : rank(b) < rank(a) ? 1 : a.span.start - b.span.start || a.span.end - b.span.end,
    )
    .filter((finding) => {
      const key = `${finding.code} ${finding.span.uri} ${finding.span.start} ${finding.span.end} ${finding.message}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
}
