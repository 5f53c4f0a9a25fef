/** Scantling's own messages beside those of the language server protocol: their names and plain types, nothing else. */
import type { DrawingView } from "../language/draw/drawing-view.ts";
import type { BenchPart, BenchSection } from "../language/view/bench.ts";
import type { ListDocument, PlanDocument, RodView } from "../language/view/types.ts";

/** Server to client: the rod of an open file may look different now. Small on purpose: the client pulls when it shows it. */
export const rodChanged = "scantling/rodChanged";
/** Client to server: the rod of a file as it stands. */
export const rod = "scantling/rod";
/** Client to server: the cut list of a file as texts that are ready to be written beside it. */
export const cutList = "scantling/cutList";
/** Client to server: every part and every finding of a file, as data for programs. */
export const list = "scantling/list";
/** Client to server: how the parts of a file are cut from sheets and boards, searched for as long as is asked. */
export const plan = "scantling/plan";
/** Client to server: the names of a file's drawings, and one of them. */
export const drawings = "scantling/drawings";
/** Client to server: parts of the rod that are open beside list and drawings; while the plan is, it is searched for. */
export const bench = "scantling/bench";
/** Server to client: how the search for a plan that the rod shows is getting on. At most a few times a second. */
export const planSearched = "scantling/planSearched";
/** Client to server: the papers of a file, made and ready to be written. */
export const papers = "scantling/papers";
/** Client to server: write down in a file what was cut. The server has the editor change the text before it answers. */
export const recordCut = "scantling/recordCut";
/**
 * Client to server: write the offcuts that a plan leaves over into a file, in place of those of an earlier plan of the same job. The server
 * has the editor change the text before it answers.
 */
export const keepOffcuts = "scantling/keepOffcuts";
/** Server to client: the text of a build file that the server cannot read itself, in a virtual or a browser workspace. */
export const readFile = "scantling/readFile";

/** Server to client: the build files in the open folders, open or not. */
export const buildFiles = "scantling/buildFiles";

export interface RodChangedParams {
  readonly uri: string;
  /** Goes up by one with each change of any rod, from the server's start; no document's version. */
  readonly version: number;
}

export interface FileParams {
  readonly uri: string;
}

/** `null` if there is no such file. */
export type RodResult = RodAnswer | null;

export interface RodAnswer {
  /** That of the last `rodChanged` of this file; an answer below one that has been announced is out of date. */
  readonly version: number;
  readonly view: RodView;
  /** Whether the text is broken so that it would lose parts, and `view` is what it was when last whole. */
  readonly stale: boolean;
  /** Ids of parts that are broken: an error stands in what they were written as, or they were lost with the broken text. */
  readonly broken: readonly string[];
}

/** `null` if there is no such file. */
export type CutListResult = { readonly files: readonly TextFile[] } | null;

/** `null` if there is no such file. */
export type ListResult = ListDocument | null;

/** Of what a plan is: of the whole job, or of what is left to cut by the records of the file. */
export type PlanScope = "whole" | "left";

export interface PlanParams extends FileParams {
  /** Left out: what is left, once something is recorded as cut. */
  readonly scope?: PlanScope;
  /** How long to search, with each stock in turn; less where the plan is proven sooner. */
  readonly seconds: number;
  /** Whether a request that is called off still wants the best plan found until then. */
  readonly keepBest: boolean;
  /** Where progress is to be told; nowhere if missing. */
  readonly workDoneToken?: string | number;
}

/** `null` if there is no such file. */
export type PlanResult = {
  readonly document: PlanDocument;
  /** The same for people, at most 80 columns wide. */
  readonly text: string;
  /** Whether nothing better is left to find, and not only the time was over. */
  readonly finished: boolean;
  /** The file and those that it uses, as addresses: where its offcuts may be kept. */
  readonly uris: readonly string[];
  /** Of what it is; missing where nothing is recorded as cut, so that both are the same. */
  readonly scope?: PlanScope;
} | null;

export interface BenchParams extends FileParams {
  /** What is open; none stops the search. */
  readonly parts: readonly BenchPart[];
  /** The drawing of the plan that is looked at; the first one if it is left out or there is none of the name. */
  readonly sheet?: string;
  /** Of what the plan is to be. Left out: what is left, once something is recorded as cut. */
  readonly scope?: PlanScope;
  /** Seconds that may be spent in all on the search for a plan of these parts from this stock; 0 or nothing stops it. */
  readonly seconds: number;
}

/** `null` if there is no such file. */
export type BenchResult = BenchAnswer | null;

export interface BenchAnswer {
  readonly sections: readonly BenchSection[];
  readonly search: SearchState;
  /** Of what plan and buying list are; missing where nothing is recorded as cut, so that there is nothing to choose. */
  readonly scope?: PlanScope;
}

/** Where the search for a plan stands: at work, at its end with nothing left to find, or halted when its time was over. */
export interface SearchState {
  readonly state: "searching" | "finished" | "halted";
  /** Of the time given, 0 to 100. */
  readonly percent: number;
}

export interface PlanSearchedParams extends FileParams, SearchState {
  /** Whether a better plan was found since the last time. */
  readonly better: boolean;
}

/** What can be written for the bench: PDF where it says so, else what its name says. */
export type PaperKind =
  | "packet"
  | "sticks-a4"
  | "sticks-letter"
  | "labels-a4"
  | "labels-letter"
  | "svg"
  | "dxf"
  | "csv"
  | "markdown"
  | "json";

export interface PapersParams extends FileParams {
  readonly kinds: readonly PaperKind[];
  /** Where progress is to be told; nowhere if missing. */
  readonly workDoneToken?: string | number;
}

/** `null` if there is no such file. */
export type PapersResult = {
  readonly files: readonly PaperContent[];
  /** Kinds that this server cannot make: a browser writes no PDF. */
  readonly refused: readonly PaperKind[];
} | null;

/** A file for the bench: its bytes as base64, or its text. */
export type PaperContent =
  | { readonly name: string; readonly text: string }
  | { readonly name: string; readonly base64: string };

export interface RecordCutParams extends FileParams {
  /** As it is typed on a phone: `2 side plan-1; 1 rail inks 15 11/16; spoiled stile rollers`. */
  readonly line?: string;
  /** Rows that were ticked, all or nothing; not looked at where there is a line. */
  readonly ticks?: readonly CutTick[];
}

/** So many pieces of a row; below nought they are taken off what is written down. */
export interface CutTick {
  /** The mark of the row (`C`), or the key of a part of one owner (`box plan-1/side`). */
  readonly part: string;
  /** The id of the row as it was shown: where the mark is another's by now, nothing is written. */
  readonly row?: string;
  readonly count: number;
  readonly spoiled?: boolean;
}

/** `null` if there is no such file. */
export type RecordCutResult = {
  /** What is written down now, in words; none where the text is as it was. */
  readonly understood: readonly string[];
  /** What could not be read or written, a sentence each. */
  readonly problems: readonly string[];
} | null;

export interface KeepOffcutsParams extends FileParams {
  /** The file that they are written into: the build file, or one that it uses. */
  readonly into: string;
  /** Lines of the plan's `keep`. */
  readonly lines: readonly string[];
}

/** `null` if there is no such file. */
export type KeepOffcutsResult = {
  /** Lines that are new, those of an earlier plan that are gone, and those that stood there already. */
  readonly added: number;
  readonly takenOut: number;
  readonly held: number;
  /** Lines of an earlier plan that stay, since their stock is broken down and the offcuts may lie there by now. */
  readonly stay: number;
  /** Why nothing was written, if it was not. */
  readonly problem?: string;
} | null;

export interface DrawingsParams extends FileParams {
  /** The drawing that is wanted; the first one if it is left out or there is none of the name. */
  readonly id?: string;
}

/** `null` if there is no such file. */
export type DrawingsResult = DrawingsAnswer | null;

export interface DrawingsAnswer {
  readonly titles: readonly DrawingTitle[];
  /** `null` where the file has no drawings. */
  readonly drawing: DrawingView | null;
}

export interface DrawingTitle {
  /** Stays the same while what is drawn keeps its name. */
  readonly id: string;
  readonly title: string;
  /** `1 : 10`, or empty for a drawing to no scale. */
  readonly scale: string;
}

/** A text that belongs beside the build file. */
export interface TextFile {
  /** A bare file name: `chest.cutlist.csv`. */
  readonly name: string;
  readonly text: string;
}

/** `null` if there is no such file, or it is not one that may be read. */
export type ReadFileResult = { readonly text: string } | null;

/** The addresses of all build files in the open folders. */
export interface BuildFilesResult {
  readonly uris: readonly string[];
}

/** What a client may say about itself when it starts the server; all of it may be left out. */
export interface StartOptions {
  /** Where the pages about finding codes lie, ending in "/": the code and ".md" are put behind it. */
  readonly findingPages?: string;
}

export interface OwnMessage {
  readonly name: string;
  readonly kind: "request" | "notification";
  readonly from: "client" | "server";
}

/** Every message of our own. */
export const ownMessages: readonly OwnMessage[] = [
  { name: rodChanged, kind: "notification", from: "server" },
  { name: rod, kind: "request", from: "client" },
  { name: cutList, kind: "request", from: "client" },
  { name: list, kind: "request", from: "client" },
  { name: plan, kind: "request", from: "client" },
  { name: drawings, kind: "request", from: "client" },
  { name: bench, kind: "request", from: "client" },
  { name: planSearched, kind: "notification", from: "server" },
  { name: papers, kind: "request", from: "client" },
  { name: recordCut, kind: "request", from: "client" },
  { name: keepOffcuts, kind: "request", from: "client" },
  { name: readFile, kind: "request", from: "server" },
  { name: buildFiles, kind: "request", from: "server" },
];
