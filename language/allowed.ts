import type { Allow } from "./core/design.ts";
import type { Finding } from "./core/finding.ts";

/** Findings less those that the file allows with a reason, plus one for each `allow` that nothing answers to any more. */
export function allowed(findings: readonly Finding[], allows: readonly Allow[]): readonly Finding[] {
  const used = new Set<Allow>();
  const left = findings.filter((finding) => {
    const match = allows.find((allow) => silences(allow, finding));
    if (match !== undefined) used.add(match);
    return match === undefined;
  });
  return [...left, ...allows.filter((allow) => !used.has(allow) && allow.reason !== undefined).map(unused)];
}

function silences(allow: Allow, finding: Finding): boolean {
  if (allow.reason === undefined || allow.code.text !== finding.code || finding.code.startsWith("syntax/"))
    return false;
  if (allow.span.uri !== finding.span.uri) return false;
  const { scope } = allow;
  return scope === undefined || (scope.start <= finding.span.start && finding.span.end <= scope.end);
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
