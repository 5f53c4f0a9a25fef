import type { Allow } from "./core/design.ts";
import type { Finding } from "./core/finding.ts";

/** Findings less those that the file allows with a reason, plus one for each `allow` that nothing answers to any more. */
export function allowed(findings: readonly Finding[], allows: readonly Allow[]): readonly Finding[] {
  const byCode = new Map<string, Allow[]>();
  for (const allow of allows) {
    if (allow.reason === undefined) continue;
    const key = `${allow.code.text} ${allow.span.uri}`;
    const same = byCode.get(key);
    if (same === undefined) byCode.set(key, [allow]);
    else same.push(allow);
  }
  const used = new Set<Allow>();
  const left = findings.filter((finding) => {
    const { code, span } = finding;
    const match = byCode.get(`${code} ${span.uri}`)?.find((allow) => silences(allow, finding));
    if (match !== undefined) used.add(match);
    return match === undefined;
  });
  return [...left, ...allows.filter((allow) => !used.has(allow) && allow.reason !== undefined).map(unused)];
}

/** Whether an allowance of the finding's code holds where the finding is. What cannot be read is never allowed. */
function silences({ scope }: Allow, { code, span }: Finding): boolean {
  if (code.startsWith("syntax/")) return false;
  return scope === undefined || (scope.start <= span.start && span.end <= scope.end);
}

function unused(allow: Allow): Finding {
  return {
    code: "statement/allow-unused",
    severity: "hint",
    span: allow.span,
    message: `nothing here is "${allow.code.text}" any more`,
    reason: "An allowance that outlives its reason hides the next mistake of its kind.",
    remedy: "Take it out.",
    related: [],
    fixes: [{ title: "Take it out", edits: [{ span: allow.span, text: "" }], safe: true }],
  };
}
