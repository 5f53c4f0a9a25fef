// npm run l10n: writes the texts of the extension's code to l10n/bundle.l10n.json, for translators.
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { bundlePath, bundleText } from "./l10n-messages.ts";

mkdirSync(dirname(bundlePath), { recursive: true });
writeFileSync(bundlePath, bundleText());
