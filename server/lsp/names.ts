import type { DocumentHighlight, Location, TextDocumentPositionParams } from "vscode-languageserver";
import { DocumentHighlightKind } from "vscode-languageserver";
import type { Design } from "../../language/core/design.ts";
import type { Occurrence } from "../../language/edit/names.ts";
import { nameIndex } from "../../language/edit/names.ts";
import { buildFilesKnown } from "./build-files.ts";
import type { Feature, Server } from "./feature.ts";
import { rangeOf } from "./places.ts";
import { offsetAt } from "./scene.ts";

/** Goes from a name to where it is given, from an opening to what fills it, and finds where a name is used. */
export const names: Feature = {
  capabilities: {
    definitionProvider: true,
    declarationProvider: true,
    implementationProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
  },
  register(server) {
    const { connection } = server;
    connection.onDefinition((params) => givenPlaces(server, params));
    connection.onDeclaration((params) => givenPlaces(server, params));
    connection.onImplementation((params) => fillings(server, params));
    connection.onReferences((params) => references(server, params, params.context.includeDeclaration));
    connection.onDocumentHighlight((params) => highlights(server, params));
  },
};

/** A name in a file, and what the file's own build says. */
export interface NameAt {
  readonly uri: string;
  readonly name: Occurrence;
  readonly designs: readonly Design[];
}

/** The name that a place is at. */
export async function nameAt({ session }: Server, at: TextDocumentPositionParams): Promise<NameAt | undefined> {
  const current = await session.current(at.textDocument.uri);
  if (current === undefined) return undefined;
  const { uri, text, designs } = current;
  const name = nameIndex(designs).at(uri, offsetAt(text, at.position));
  return name === undefined ? undefined : { uri, name, designs };
}

async function givenPlaces(server: Server, at: TextDocumentPositionParams): Promise<Location[]> {
  const found = await nameAt(server, at);
  if (found === undefined) return [];
  const { kind, text } = found.name;
  const given = nameIndex(found.designs)
    .of(kind, text)
    .filter((one) => one.given);
  // Only the first of several counts; the others are findings.
  return given.slice(0, 1).map((one) => location(server, one));
}

/** What goes into an opening, or over it: its box, its fronts, its shelves. */
async function fillings(server: Server, at: TextDocumentPositionParams): Promise<Location[]> {
  const found = await nameAt(server, at);
  if (found?.name.kind !== "opening") return [];
  const blocks = found.designs.flatMap(({ boxes, fronts, shelves }) => [...boxes, ...fronts, ...shelves]);
  return blocks
    .filter(({ openings }) => openings.some(({ text }) => text === found.name.text))
    .map(({ head }) => location(server, { span: head }));
}

async function references(server: Server, at: TextDocumentPositionParams, withGiven: boolean): Promise<Location[]> {
  const found = await nameAt(server, at);
  if (found === undefined) return [];
  const builds = await buildsWith(server, found);
  const byPlace = new Map<string, Occurrence>();
  for (const designs of builds) {
    for (const one of nameIndex(designs).of(found.name.kind, found.name.text)) {
      if (withGiven || !one.given) byPlace.set(`${one.span.uri} ${one.span.start}`, one);
    }
  }
  return [...byPlace.values()].map((one) => location(server, one));
}

/** Every known build that a name may stand in: those of the file it is in, and of the file that gives it. */
export async function buildsWith(
  server: Server,
  { uri, name, designs }: NameAt,
): Promise<readonly (readonly Design[])[]> {
  const { session } = server;
  await buildFilesKnown(server);
  const given = nameIndex(designs)
    .of(name.kind, name.text)
    .find((one) => one.given)?.span.uri;
  const roots = new Map<string, readonly Design[]>();
  for (const home of new Set([uri, given ?? uri])) {
    for (const family of session.families(home)) roots.set(family[0]!.uri, family);
  }
  return [...roots.values()];
}

async function highlights(server: Server, at: TextDocumentPositionParams): Promise<DocumentHighlight[]> {
  const found = await nameAt(server, at);
  if (found === undefined) return [];
  const { uri, name, designs } = found;
  const own = nameIndex(designs)
    .of(name.kind, name.text)
    .filter((one) => one.span.uri === uri);
  return own.map((one) => ({
    range: rangeOf(one.span),
    kind: one.given ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
  }));
}

function location({ session }: Server, { span }: Pick<Occurrence, "span">): Location {
  return { uri: session.addressOf(span.uri), range: rangeOf(span) };
}
