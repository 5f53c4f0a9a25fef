import { titleOf } from "../core/file-name.ts";
import type { Finding } from "../core/finding.ts";
import type { Length, Reading } from "../core/length.ts";
import { showText, toMillimetres } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { toNumber, toText } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import { notesOf } from "./machining.ts";
import { whyOf } from "./rod.ts";
import type { ListDocument, ListFinding, ListPart, ListSize } from "./types.ts";

/** The cut list for programs: every part of every owner, unmerged, with exact sizes. */
export function listDocument(context: Context, model: Model, findings: readonly Finding[]): ListDocument {
  return {
    schema: "scantling/list/1",
    project: titleOf(context.design),
    units: context.units,
    parts: model.parts.map((part) => listPart(context, part)),
    findings: findings.map(listFinding),
  };
}

function listPart(context: Context, part: Part): ListPart {
  return {
    name: part.name,
    of: part.of,
    quantity: part.quantity,
    stock: part.stock,
    length: listSize(part.length.value, context.reading),
    width: listSize(part.width.value, context.reading),
    thickness: listSize(part.thickness.value, context.reading),
    grain: part.grain,
    ...(part.face === undefined ? {} : { face: part.face }),
    notes: notesOf(part, context.reading),
    why: whyOf(part, context),
    source: { file: part.source.uri, line: part.source.line + 1, column: part.source.column + 1 },
  };
}

/** A length for programs, in full and as the tape shows it. */
export function listSize(length: Length, reading: Reading): ListSize {
  return {
    exact: toText(length),
    inches: tidy(toNumber(length)),
    mm: tidy(toNumber(toMillimetres(length))),
    shop: showText(length, reading),
  };
}

/** Ten decimals: what is left of binary noise is no size. */
function tidy(value: number): number {
  return Math.round(value * 1e10) / 1e10;
}

export function listFinding(finding: Finding): ListFinding {
  const { code, severity, message, reason, remedy, span } = finding;
  return {
    code,
    severity,
    message,
    reason,
    remedy,
    file: span.uri,
    line: span.line + 1,
    column: span.column + 1,
    endLine: span.endLine + 1,
    endColumn: span.endColumn + 1,
  };
}
