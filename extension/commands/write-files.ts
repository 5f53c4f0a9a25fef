import type { Translate } from "../translate.ts";

/** A file to write: a bare name, and its text or bytes. */
export interface NewFile {
  readonly name: string;
  readonly text: string | Uint8Array;
}

/** What writing needs of the folder; all names are bare file names in it. */
export interface Folder {
  /** `undefined` if there is no such file; rejects if there is one that can't be read. */
  read(name: string): Promise<string | Uint8Array | undefined>;
  /** Whether the file may be written over: asks the user when it has unsaved edits. */
  mayReplace(name: string): Promise<boolean>;
  write(name: string, text: string | Uint8Array): Promise<void>;
  /** Asked before each file; once it says yes, those that are left are not written. Never, if left out. */
  isCancelled?(): boolean;
}

export interface Outcome {
  readonly written: readonly string[];
  /** Those that already said the same. */
  readonly unchanged: readonly string[];
  /** Those the user did not want written over. */
  readonly kept: readonly string[];
  readonly failed: readonly { readonly name: string; readonly reason: string }[];
}

/** Writes each file that says something new; one that fails does not stop the next. */
export async function writeAll(files: readonly NewFile[], folder: Folder): Promise<Outcome> {
  const outcome = { written: [] as string[], unchanged: [] as string[], kept: [] as string[], failed: [] as Failure[] };
  for (const { name, text } of files) {
    if (folder.isCancelled?.() === true) break;
    try {
      if (!isBareName(name)) throw new Error("not the name of a file in this folder");
      if (isSame(await folder.read(name), text)) {
        outcome.unchanged.push(name);
      } else if (await folder.mayReplace(name)) {
        await folder.write(name, text);
        outcome.written.push(name);
      } else {
        outcome.kept.push(name);
      }
    } catch (error) {
      outcome.failed.push({ name, reason: error instanceof Error ? error.message : String(error) });
    }
  }
  return outcome;
}

type Failure = Outcome["failed"][number];

function isSame(there: string | Uint8Array | undefined, text: string | Uint8Array): boolean {
  if (there === undefined) return false;
  if (typeof there === "string" && typeof text === "string") return there === text;
  const [a, b] = [bytesOf(there), bytesOf(text)];
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}

export function bytesOf(text: string | Uint8Array): Uint8Array {
  return typeof text === "string" ? new TextEncoder().encode(text) : text;
}

export interface Notice {
  readonly text: string;
  readonly failed: boolean;
  /** The files the user may open from it. */
  readonly open: readonly string[];
}

/** What to tell the user, with the number of errors that stand in the build file. */
export function noticeFor(outcome: Outcome, errors: number, t: Translate): Notice {
  const { written, unchanged, kept, failed } = outcome;
  const sentences = [
    ...(0 < written.length ? [t("Wrote {0}.", listed(written, t))] : []),
    ...(0 < unchanged.length
      ? [
          unchanged.length === 1
            ? t("{0} already says the same.", listed(unchanged, t))
            : t("{0} already say the same.", listed(unchanged, t)),
        ]
      : []),
    ...(0 < kept.length
      ? [kept.length === 1 ? t("Left {0} as it was.", listed(kept, t)) : t("Left {0} as they were.", listed(kept, t))]
      : []),
    ...failed.map(({ name, reason }) => t("{0} could not be written: {1}.", name, reason)),
    ...(0 < errors && 0 < written.length + unchanged.length ? [errorSentence(errors, t)] : []),
  ];
  return { text: sentences.join(" "), failed: 0 < failed.length, open: [...written, ...unchanged] };
}

/** The button that opens a file: `Open CSV`. */
export function openLabel(name: string, t: Translate): string {
  const ending = name.slice(name.lastIndexOf(".") + 1).toLowerCase();
  return t("Open {0}", ending === "md" ? "Markdown" : ending.toUpperCase());
}

function errorSentence(errors: number, t: Translate): string {
  return errors === 1
    ? t("1 error stands in the build file: the list holds what could be worked out, so look before you cut.")
    : t("{0} errors stand in the build file: the list holds what could be worked out, so look before you cut.", errors);
}

function listed(names: readonly string[], t: Translate): string {
  const last = names.at(-1) ?? "";
  return names.length < 2 ? last : t("{0} and {1}", names.slice(0, -1).join(", "), last);
}

function isBareName(name: string): boolean {
  return name !== "" && name !== "." && name !== ".." && !/[/\\:\0]/.test(name);
}
