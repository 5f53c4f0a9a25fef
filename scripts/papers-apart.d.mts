import type { Plugin } from "esbuild";

export declare const papersApart: Plugin;
