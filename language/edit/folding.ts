import type { TextToken } from "../syntax/text-tokens.ts";
import type { Outline } from "./outline.ts";
import { blocksOf } from "./outline.ts";

/** Lines, counted from zero, of which all but the first can be hidden. */
export interface Fold {
  readonly from: number;
  readonly to: number;
  readonly kind: "block" | "comment" | "uses" | "region";
}

/** What can be folded: blocks, comments of several lines, runs of `use`, and what stands between region marks. */
export function foldsOf(outline: Outline): readonly Fold[] {
  return [...blockFolds(outline), ...commentFolds(outline), ...useFolds(outline), ...regionFolds(outline)]
    .filter(({ from, to }) => from < to)
    .sort((a, b) => a.from - b.from || b.to - a.to);
}

/** The closing bracket stays in sight where it has a line of its own. */
function blockFolds(outline: Outline): readonly Fold[] {
  const { tokens } = outline;
  return blocksOf(outline).map((block) => {
    const last = tokens[block.close - 1] ?? tokens[block.open]!;
    const close = block.closed ? tokens[block.close]! : last;
    const alone = block.closed && last.endLine < close.line;
    return { from: tokens[block.open]!.line, to: alone ? close.line - 1 : close.line, kind: "block" };
  });
}

function commentFolds({ tokens }: Outline): readonly Fold[] {
  const folds: Fold[] = [];
  let run: { from: number; to: number } | undefined;
  const end = (): void => {
    if (run !== undefined) folds.push({ ...run, kind: "comment" });
    run = undefined;
  };
  tokens.forEach((token, index) => {
    if (!isAlone(tokens, index)) {
      end();
    } else if (run !== undefined && token.line === run.to + 1) {
      run.to = token.endLine;
    } else {
      end();
      run = { from: token.line, to: token.endLine };
    }
  });
  end();
  return folds;
}

/** A comment with nothing before it on its line. */
function isAlone(tokens: readonly TextToken[], index: number): boolean {
  const [token, before] = [tokens[index]!, tokens[index - 1]];
  return token.kind === "comment" && !mark.test(token.text) && (before === undefined || before.endLine < token.line);
}

function useFolds({ tokens, items }: Outline): readonly Fold[] {
  const uses = items.filter((item) => tokens[item.key]!.text === "use").map((item) => tokens[item.key]!.line);
  const [first, last] = [uses[0], uses.at(-1)];
  return first === undefined || last === undefined || last - first + 1 !== uses.length
    ? []
    : [{ from: first, to: last, kind: "uses" }];
}

/** As editors mark them: `// region` and `// endregion`, `#` before the word or not. */
const mark = /^\/\/\s*#?(end)?region\b/;

function regionFolds({ tokens }: Outline): readonly Fold[] {
  const open: number[] = [];
  return tokens.flatMap((token): readonly Fold[] => {
    const found = token.kind === "comment" ? mark.exec(token.text) : null;
    if (found === null) return [];
    if (found[1] === undefined) {
      open.push(token.line);
      return [];
    }
    const from = open.pop();
    return from === undefined ? [] : [{ from, to: token.line, kind: "region" }];
  });
}
