/** What people call a job: what its file says, or else the file's name. */
export function titleOf({
  project,
  uri,
}: {
  readonly project: { readonly text: string } | undefined;
  readonly uri: string;
}): string {
  return project?.text ?? fileName(uri).replace(/\.scant$/, "");
}

/** The same as a build file can write it: a title that comes from a file's name may hold what a text there cannot. */
export function writtenTitle(design: Parameters<typeof titleOf>[0]): string {
  return titleOf(design).replace(/["\r\n]/g, "");
}

/** What people call a file: the last part of its address, decoded where that can be done. */
export function fileName(uri: string): string {
  const last = uri.slice(uri.lastIndexOf("/") + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}
