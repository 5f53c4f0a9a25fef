// Writes two texts over each other into one file until it is killed; says once that it has begun.
import { writeWhole } from "../../server/cli/write-files.ts";
import { twoTexts } from "./two-texts.ts";

const [path] = process.argv.slice(2);
if (path === undefined) throw new Error("write-forever FILE");
for (let round = 0; ; round++) {
  const { outcome } = writeWhole(path, twoTexts[round % 2]!);
  if (outcome !== "written") throw new Error(outcome);
  if (round === 1) process.stdout.write("begun\n");
}
