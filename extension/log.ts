import * as vscode from "vscode";
import { createTroubles, type Troubles } from "./troubles.ts";

/** The extension's output channel, and what went wrong of late for a report; nothing of it leaves the window. */
export interface Log extends vscode.Disposable {
  readonly channel: vscode.LogOutputChannel;
  readonly troubles: Troubles;
}

/** Makes the channel "Scantling"; what is written to it as a warning or an error is remembered for a while. */
export function createLog(): Log {
  const channel = vscode.window.createOutputChannel("Scantling", { log: true });
  const troubles = createTroubles(() => new Date());
  return { channel: remembering(channel, troubles), troubles, dispose: () => channel.dispose() };
}

function remembering(channel: vscode.LogOutputChannel, troubles: Troubles): vscode.LogOutputChannel {
  return {
    get name() {
      return channel.name;
    },
    get logLevel() {
      return channel.logLevel;
    },
    onDidChangeLogLevel: (...args) => channel.onDidChangeLogLevel(...args),
    append: (value) => channel.append(value),
    appendLine: (value) => channel.appendLine(value),
    replace: (value) => channel.replace(value),
    clear: () => channel.clear(),
    show: () => channel.show(),
    hide: () => channel.hide(),
    dispose: () => channel.dispose(),
    trace: (message, ...args) => channel.trace(message, ...args),
    debug: (message, ...args) => channel.debug(message, ...args),
    info: (message, ...args) => channel.info(message, ...args),
    warn: (message, ...args) => {
      troubles.note("warning", message);
      channel.warn(message, ...args);
    },
    error: (error, ...args) => {
      troubles.note("error", error);
      channel.error(error, ...args);
    },
  };
}
