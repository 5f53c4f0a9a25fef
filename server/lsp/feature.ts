import type { Connection, ServerCapabilities } from "vscode-languageserver";
import type { PaperDesk } from "../../language/papers/desk.ts";
import type { JobPlans } from "../job-plans.ts";
import type { PaperFile } from "../paper-files.ts";
import type { PreviewFeed } from "../preview-feed.ts";
import type { PaperKind } from "../protocol.ts";
import type { Session } from "../session.ts";
import type { Problems } from "./problems.ts";

/** One ability of the server, whole: what it says it can do, and the handlers that do it. */
export interface Feature {
  readonly capabilities: ServerCapabilities;
  /** Called once, before the editor's first message. */
  register(server: Server): void;
}

/** What features have to work with. */
export interface Server {
  readonly connection: Connection;
  readonly session: Session;
  readonly problems: Problems;
  readonly feed: PreviewFeed;
  readonly plans: JobPlans;
  /** Missing where no PDF can be written. */
  readonly pdfPapers: PdfPapers | undefined;
  /** What the editor said of itself; before it did, the least that an editor can. */
  client(): ClientFacts;
}

/** Papers of the kinds that are PDF, one by one; told of each page and step, and asked whether to go on. Ends early if not. */
export type PdfPapers = (
  desk: PaperDesk,
  kinds: readonly PaperKind[],
  watch: {
    readonly onPage: (done: number, of: number) => void;
    readonly onStep: (what: string) => void;
    readonly isCancelled: () => boolean;
  },
) => AsyncIterable<PaperFile>;

export interface ClientFacts {
  /** Whether edits may name the version of the document that they are for. */
  readonly versionedEdits: boolean;
  readonly relatedInformation: boolean;
  /** Whether it tells of folders that come and go. */
  readonly hasFolders: boolean;
  /** Whether it watches files when the server asks it to. */
  readonly watchesOnRequest: boolean;
  /** Whether it answers what its settings are. */
  readonly hasConfiguration: boolean;
  /** What it asks for anew when it is told to. */
  readonly refreshes: { readonly hints: boolean; readonly lenses: boolean; readonly tokens: boolean };
  /** Whether it fills in the gaps of what is completed one after the other. */
  readonly snippets: boolean;
  /** Where the pages about finding codes lie, ending in "/". */
  readonly findingPages: string | undefined;
}
