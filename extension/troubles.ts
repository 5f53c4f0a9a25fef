/** What went wrong of late, ready to be read by people who must not see whose files it was. */
export interface Troubles {
  note(kind: "warning" | "error", what: string | Error): void;
  /** Oldest first, one line or more each: `12:30:01 error …`. */
  list(): readonly string[];
}

const MOST = 20;
const LONGEST = 2000;

/** Remembers the last twenty. */
export function createTroubles(now: () => Date): Troubles {
  const kept: string[] = [];
  return {
    note: (kind, what) => {
      const text = what instanceof Error ? (what.stack ?? what.message) : what;
      kept.push(`${now().toISOString().slice(11, 19)} ${kind} ${withoutPlaces(text).slice(0, LONGEST)}`);
      if (MOST < kept.length) kept.shift();
    },
    list: () => [...kept],
  };
}

/** The text with every path and address cut down to its last name: folders tell of people and their jobs. */
export function withoutPlaces(text: string): string {
  return text
    .replace(/\b[a-z][a-z0-9+.-]{1,30}:\/\/[^\s"'()<>]*/gi, (address) => `…/${lastName(address)}`)
    .replace(
      /(?<![\w…/\\.])(?:[A-Za-z]:)?[/\\](?:[^\s"'()<>/\\:]+[/\\])+([^\s"'()<>/\\]*)/g,
      (_, last: string) => `…/${last}`,
    );
}

function lastName(address: string): string {
  return address.slice(address.replace(/[/\\]+$/, "").lastIndexOf("/") + 1);
}
