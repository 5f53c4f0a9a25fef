/** The parts of an address that say where a file is, as `vscode.Uri` has them: decoded, with `/` between folders. */
export interface Place {
  readonly scheme: string;
  readonly authority: string;
  readonly path: string;
}

/**
 * Whether the server may be given a file: a build file in one of the folders or below. An address that climbs (`..`) is
 * not looked at any further.
 */
export function mayRead(file: Place, folders: readonly Place[]): boolean {
  const steps = file.path.split("/");
  if (!file.path.endsWith(".scant") || steps.includes("..") || steps.includes(".") || file.path.includes("\\"))
    return false;
  return folders.some(
    (folder) =>
      folder.scheme === file.scheme &&
      folder.authority === file.authority &&
      file.path.startsWith(folder.path.endsWith("/") ? folder.path : `${folder.path}/`),
  );
}
