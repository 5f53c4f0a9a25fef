import type { Length, Reading } from "../core/length.ts";
import { showText } from "../core/length.ts";
import type { Sourced } from "../core/sourced.ts";

/** Where a length comes from, in one line: `15 1/2 (opening width) − 2 × 1/2 (clearance)`. */
export function whyLine(value: Sourced<Length>, reading: Reading): string {
  const { origin } = value;
  switch (origin.kind) {
    case "written":
      return "written";
    case "default":
      return `default, ${origin.tag}: ${origin.because}`;
    case "derived":
      return origin.rule.formula.replace(/\{([^}]+)\}/g, (braced, name: string) => {
        const input = origin.inputs[name];
        return input === undefined ? braced : `${inputText(input, reading)} (${name})`;
      });
  }
}

function inputText(input: Sourced<unknown>, reading: Reading): string {
  const { value } = input;
  return isLength(value) ? showText(value, reading) : String(value);
}

function isLength(value: unknown): value is Length {
  return typeof value === "object" && value !== null && "n" in value && "d" in value;
}

/** One step of a chain: what it is, its size, and where that comes from; deeper steps are inputs of the ones before. */
export interface WhyStep {
  readonly depth: number;
  readonly name: string;
  readonly size: string;
  readonly because: string;
  readonly value: Sourced<unknown>;
}

/** The whole origin of a length as a readable chain, each value once, to a depth that a reader can follow. */
export function whyChain(name: string, value: Sourced<unknown>, reading: Reading, deepest = 6): readonly WhyStep[] {
  const steps: WhyStep[] = [];
  const seen = new Set<Sourced<unknown>>();
  const visit = (label: string, next: Sourced<unknown>, depth: number): void => {
    if (seen.has(next) || deepest < depth) return;
    seen.add(next);
    const because = isLength(next.value) ? whyLine(next as Sourced<Length>, reading) : "";
    steps.push({ depth, name: label, size: inputText(next, reading), because, value: next });
    if (next.origin.kind !== "derived") return;
    for (const [inputName, input] of Object.entries(next.origin.inputs)) visit(inputName, input, depth + 1);
  };
  visit(name, value, 0);
  return steps;
}
