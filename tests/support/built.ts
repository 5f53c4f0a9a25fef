import type { Length } from "../../language/core/length.ts";
import { mixedText, parseCount, toMillimetres } from "../../language/core/length.ts";
import type { Part } from "../../language/core/part.ts";
import { negate } from "../../language/core/rational.ts";
import type { Sourced } from "../../language/core/sourced.ts";
import { startOfFile } from "../../language/core/span.ts";
import type { Opening } from "../../language/derive/model.ts";
import type { Build } from "../../language/service.ts";
import { createWorkspace } from "../../language/service.ts";

const root = "file:///job";

/** The build of a file, with others that it may use. */
export function built(text: string, others: Readonly<Record<string, string>> = {}): Build {
  const workspace = createWorkspace({ root });
  for (const [name, other] of Object.entries(others)) workspace.set(`${root}/${name}`, other);
  workspace.set(`${root}/main.scant`, text);
  return workspace.build(`${root}/main.scant`);
}

/** The codes of the errors of a build, in their order. */
export function errorsOf(build: Build): readonly string[] {
  return build.findings.filter((finding) => finding.severity === "error").map((finding) => finding.code);
}

export function allParts(build: Build): readonly Part[] {
  return build.derivation.model.parts;
}

/** Each part of an owner as `2 side 20 x 5 1/2`, sizes exact, in inches. */
export function partsOf(build: Build, owner: string): readonly string[] {
  const parts = allParts(build).filter((part) => part.of === owner);
  return parts.map(({ quantity, name, length, width }) => `${quantity} ${name} ${exact(length)} x ${exact(width)}`);
}

/** As `partsOf`, in millimetres. */
export function metricPartsOf(build: Build, owner: string): readonly string[] {
  const text = (size: Sourced<Length>) => mixedText(toMillimetres(size.value));
  const parts = allParts(build).filter((part) => part.of === owner);
  return parts.map(({ quantity, name, length, width }) => `${quantity} ${name} ${text(length)} x ${text(width)}`);
}

/** The only part of this owner and name; an error where there is none or several. */
export function partOf(build: Build, owner: string, name: string): Part {
  const parts = allParts(build).filter((part) => part.of === owner && part.name === name);
  if (parts.length !== 1)
    throw new Error(`${parts.length} parts ${owner}/${name} in\n${partsOf(build, owner).join("\n")}`);
  return parts[0]!;
}

export function openingOf(build: Build, name: string): Opening {
  const opening = build.derivation.model.openings.find((one) => one.name.text === name);
  if (opening === undefined) throw new Error(`no opening ${name}`);
  return opening;
}

/** What is cut into a part, as `groove inside face, bottom edge: 15/32 wide, 1/4 deep, 3/8 from; bottom`. */
export function machiningOf(part: Part): readonly string[] {
  return part.machining.map(({ kind, where, wide, deep, from, count }) =>
    [
      `${kind} ${where}`,
      ...(wide === undefined ? [] : [`${exact(wide)} wide`]),
      ...(deep === undefined ? [] : [`${exact(deep)} deep`]),
      ...(from === undefined ? [] : [`${exact(from)} from`]),
      ...(count === undefined ? [] : [`${count} times`]),
    ].join(", "),
  );
}

/** A length exactly, as a mixed number of inches. */
export function exact(length: Sourced<Length>): string {
  return mixedText(length.value);
}

/** A length as if it had been written: `13 3/4`. */
export function inch(text: string): Sourced<Length> {
  const minus = text.startsWith("-");
  const value = parseCount(minus ? text.slice(1) : text);
  if (value === undefined) throw new Error(`${text} is no length`);
  return {
    value: minus ? negate(value) : value,
    origin: { kind: "written", span: startOfFile(`${root}/main.scant`), text },
  };
}
