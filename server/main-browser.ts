import { BrowserMessageReader, BrowserMessageWriter, createConnection } from "vscode-languageserver/browser";
import { callOff } from "./call-off.ts";
import { serve } from "./connection.ts";

/** The worker's own scope, in a program whose other half has no such thing. */
declare const self: DedicatedWorkerGlobalScope;
type DedicatedWorkerGlobalScope = ConstructorParameters<typeof BrowserMessageReader>[0];

serve(createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self), callOff), {});
