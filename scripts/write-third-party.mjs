/** Run by hand: writes THIRD-PARTY.md. */
import { writeFileSync } from "node:fs";
import { thirdPartyText } from "./third-party.mjs";

writeFileSync(new URL("../THIRD-PARTY.md", import.meta.url), thirdPartyText());
