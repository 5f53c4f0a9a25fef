import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { readInside } from "./cli/read-files.ts";
import { serve } from "./connection.ts";

// Over standard input and output, a socket or Node's own channel, as the command line says: --stdio, --socket=N, --node-ipc.
serve(createConnection(ProposedFeatures.all), { readDisk: readInside });
