/** A text in the user's language, `{0}` and so on standing for what follows; `vscode.l10n.t` in the window. */
export type Translate = (message: string, ...args: (string | number)[]) => string;

/** The text as it is written in the code, for where nothing is translated. */
export const asWritten: Translate = (message, ...args) =>
  message.replace(/\{(\d+)\}/g, (whole, index: string) => String(args[Number(index)] ?? whole));
