/** What a report says of the program and of where it runs. */
export interface ReportFacts {
  readonly version: string;
  readonly editor: string;
  readonly editorVersion: string;
  /** `desktop`, `web`, … as the editor calls it. */
  readonly host: string;
  readonly platform: string;
  readonly language: string;
  readonly remote: string | undefined;
  readonly server: string;
  readonly openBuildFiles: number;
  /** Settings that are not as they come. */
  readonly settings: readonly string[];
  readonly troubles: readonly string[];
}

/** The report as Markdown that its writer completes; it holds no text and no name of a build file. */
export function reportText(facts: ReportFacts): string {
  const lines = [
    "# A problem with Scantling",
    "",
    "<!-- Nothing has been sent to anyone. Complete this, look it through, and send it the way you like. -->",
    "",
    "## What happened, and what you expected",
    "",
    "",
    "## The smallest build file that shows it",
    "",
    "```scant",
    "",
    "```",
    "",
    "## Where it runs",
    "",
    `- Scantling ${facts.version}, language server ${facts.server}`,
    `- ${facts.editor} ${facts.editorVersion}, ${facts.host}${facts.remote === undefined ? "" : `, remote: ${facts.remote}`}`,
    `- ${facts.platform}, language ${facts.language}`,
    `- build files open: ${facts.openBuildFiles}`,
    ...(facts.settings.length === 0 ? ["- all settings as they come"] : facts.settings.map((each) => `- ${each}`)),
    "",
    "## What went wrong of late",
    "",
    ...(facts.troubles.length === 0 ? ["Nothing was noted."] : ["```text", ...facts.troubles.map(unfenced), "```"]),
  ];
  return `${lines.join("\n")}\n`;
}

/** What is noted must not end the block it stands in. */
function unfenced(text: string): string {
  return text.replaceAll("```", "'''");
}
