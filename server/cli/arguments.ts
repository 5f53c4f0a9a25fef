import type { ParseArgsConfig } from "node:util";
import { parseArgs } from "node:util";

type Options = NonNullable<ParseArgsConfig["options"]>;

export interface Arguments {
  /** Options that were given, by their long names; a flag's value is `true`. */
  readonly options: ReadonlyMap<string, string | true>;
  readonly files: readonly string[];
}

/** Reads the words behind a command's name; what is wrong with them comes back as one sentence. */
export function readArguments(words: readonly string[], options: Options): Arguments | { readonly fault: string } {
  try {
    const { values, positionals } = parseArgs({ args: [...words], options, allowPositionals: true, strict: true });
    const given = Object.entries(values).flatMap(([name, value]): readonly (readonly [string, string | true])[] =>
      typeof value === "string" || value === true ? [[name, value]] : [],
    );
    return { options: new Map(given), files: positionals };
  } catch (error) {
    return { fault: faultOf(error) };
  }
}

/** Node's own sentence is followed by advice that does not fit here. */
function faultOf(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  const [first = message] = message.split(/\. |\n/);
  return first.charAt(0).toLowerCase() + first.slice(1).replace(/\.$/, "");
}
