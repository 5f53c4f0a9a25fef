import type { Plugin } from "esbuild";

export declare const smallProtocol: Plugin;
