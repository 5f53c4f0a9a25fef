import type { Finding } from "../../language/core/finding.ts";
import type { Checked } from "../session.ts";

/**
 * What is wrong in each file, put together from all open files: a build finds things in the files it uses as well, and
 * what two builds find alike is said once.
 */
export interface Problems {
  /** Takes the findings of an open file's build; returns the files in which something may be different now. */
  set(checked: Checked): readonly string[];
  /** Takes away what an open file's build found; returns the files in which something may be different now. */
  remove(uri: string): readonly string[];
  /** What is wrong in a file, those of its own build first. */
  of(uri: string): readonly Finding[];
  /** The version of the text that an open file's own findings are of; `undefined` if it has not been checked. */
  versionOf(uri: string): number | undefined;
}

export function createProblems(): Problems {
  const byRoot = new Map<string, Checked>();

  const touched = (uri: string): readonly string[] => {
    const findings = byRoot.get(uri)?.build.findings ?? [];
    return [uri, ...findings.map((finding) => finding.span.uri)];
  };
  return {
    set(checked) {
      const { uri } = checked.file;
      const before = touched(uri);
      byRoot.set(uri, checked);
      return [...new Set([...before, ...touched(uri)])];
    },
    remove(uri) {
      const before = touched(uri);
      byRoot.delete(uri);
      return [...new Set(before)];
    },
    of(uri) {
      const own = byRoot.get(uri);
      const others = [...byRoot.values()].filter((checked) => checked !== own);
      const all = [...(own === undefined ? [] : [own]), ...others].flatMap(({ build }) => build.findings);
      return onceEach(all.filter((finding) => finding.span.uri === uri));
    },
    versionOf: (uri) => byRoot.get(uri)?.file.version,
  };
}

function onceEach(findings: readonly Finding[]): readonly Finding[] {
  const byKey = new Map<string, Finding>();
  for (const finding of findings) {
    const key = `${finding.code} ${finding.span.start} ${finding.span.end} ${finding.message}`;
    if (!byKey.has(key)) byKey.set(key, finding);
  }
  return [...byKey.values()];
}
