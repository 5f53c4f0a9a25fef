import type { Connection, ProgressToken } from "vscode-languageserver";
import { WorkDoneProgress } from "vscode-languageserver";
import { tell } from "./tell.ts";

/** Tells an editor that asked to be told how far its work is, in whole percent; without a token there is nobody to tell. */
export function progressOn(
  connection: Connection,
  token: ProgressToken | undefined,
): (percent: number, message?: string) => void {
  return (percent, message) => {
    if (token === undefined) return;
    const percentage = Math.round(percent);
    const said = message === undefined ? {} : { message };
    tell(() => connection.sendProgress(WorkDoneProgress.type, token, { kind: "report", percentage, ...said }));
  };
}
