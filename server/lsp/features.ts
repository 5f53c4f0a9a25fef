import { codeActions } from "./code-actions.ts";
import { cutList } from "./cut-list.ts";
import { diagnostics } from "./diagnostics.ts";
import { drawings } from "./drawings.ts";
import type { Feature } from "./feature.ts";
import { list } from "./list.ts";
import { plan } from "./plan.ts";
import { rod } from "./rod.ts";

/** All that the server can do: a new ability is one file and one word here. */
export const features: readonly Feature[] = [diagnostics, codeActions, rod, cutList, list, plan, drawings];
