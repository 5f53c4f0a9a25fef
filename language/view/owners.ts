import { gatheredBy } from "../core/gather.ts";

/** Owners in few words: `box plan-1`, `box plan-2`, `box plan-3` become `box plan-1 to plan-3`. */
export function ownersText(owners: readonly string[]): string {
  const byKind = gatheredBy([...new Set(owners)], (owner) => owner.slice(0, Math.max(0, owner.lastIndexOf(" "))));
  return [...byKind]
    .map(([kind, all]) => `${kind} ${rangesText(all.map((owner) => owner.slice(owner.lastIndexOf(" ") + 1)))}`.trim())
    .join("; ");
}

function rangesText(names: readonly string[]): string {
  const runs: string[][] = [];
  for (const name of names) {
    const last = runs.at(-1);
    if (last !== undefined && follows(last.at(-1)!, name)) last.push(name);
    else runs.push([name]);
  }
  return runs.map((run) => (run.length < 3 ? run.join(", ") : `${run[0]} to ${run.at(-1)}`)).join(", ");
}

function follows(before: string, name: string): boolean {
  const [one, other] = [numbered(before), numbered(name)];
  return one !== undefined && other !== undefined && one.stem === other.stem && one.number + 1 === other.number;
}

function numbered(name: string): { readonly stem: string; readonly number: number } | undefined {
  const match = /^(.*?)(\d{1,9})$/.exec(name);
  return match === null ? undefined : { stem: match[1]!, number: Number(match[2]) };
}
