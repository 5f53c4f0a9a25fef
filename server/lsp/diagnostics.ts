import type { Diagnostic } from "vscode-languageserver";
import { DiagnosticSeverity, DiagnosticTag } from "vscode-languageserver";
import type { Finding, Fix, Severity } from "../../language/core/finding.ts";
import { pageName } from "../../language/service.ts";
import { sentence } from "../sentence.ts";
import type { ClientFacts, Feature, Server } from "./feature.ts";
import { rangeOf } from "./places.ts";
import { tell } from "./tell.ts";

/** What stands behind a published finding: the ways to mend it, best first. */
export interface DiagnosticData {
  readonly fixes: readonly Fix[];
}

/** Publishes the findings of the open files and of the files that they use, with the version they are of. */
export const diagnostics: Feature = {
  capabilities: {},
  register(server) {
    const { session, problems } = server;
    const shown = new Map<string, string>();
    session.onChecked((checked) => {
      const touched = new Set(checked.flatMap((each) => problems.set(each)));
      for (const uri of touched) publish(server, uri, shown);
    });
    session.onClosed((file) => {
      for (const uri of problems.remove(file.uri)) publish(server, uri, shown);
    });
  },
};

/** `shown` holds what each file was last said to have, so that nothing is said twice. */
function publish(server: Server, uri: string, shown: Map<string, string>): void {
  const { connection, session, problems } = server;
  const file = session.file(uri);
  const list = problems.of(uri).map((finding) => diagnosticOf(finding, server.client(), session.addressOf));
  const params = {
    uri: session.addressOf(uri),
    diagnostics: list,
    ...(file === undefined ? {} : { version: file.version }),
  };
  const said = JSON.stringify(params);
  const isGone = list.length === 0 && file === undefined;
  if (shown.get(uri) === said || (isGone && !shown.has(uri))) return;
  if (isGone) shown.delete(uri);
  else shown.set(uri, said);
  tell(() => connection.sendDiagnostics(params));
}

/** A finding in the protocol's words. What matters less follows on a line of its own: why it matters. */
export function diagnosticOf(finding: Finding, client: ClientFacts, addressOf: (uri: string) => string): Diagnostic {
  const { code, span, related, fixes } = finding;
  const data: DiagnosticData = { fixes };
  return {
    range: rangeOf(span),
    severity: severities[finding.severity],
    code,
    source: "scantling",
    message: messageOf(finding),
    ...(client.findingPages === undefined
      ? {}
      : { codeDescription: { href: `${client.findingPages}${pageName(code)}` } }),
    ...(/(^|[/-])unused$/.test(code) ? { tags: [DiagnosticTag.Unnecessary] } : {}),
    ...(client.relatedInformation && 0 < related.length
      ? {
          relatedInformation: related.map((one) => ({
            location: { uri: addressOf(one.span.uri), range: rangeOf(one.span) },
            message: one.message,
          })),
        }
      : {}),
    ...(0 < fixes.length ? { data } : {}),
  };
}

/** Hints stand in the list of problems too: an editor keeps its own mildest kind out of it. */
const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  hint: DiagnosticSeverity.Information,
};

function messageOf({ message, remedy, reason }: Finding): string {
  const what = [message, remedy].filter((text) => text !== "").map(sentence);
  return [what.join(" "), ...(reason === "" ? [] : [sentence(reason)])].join("\n");
}
