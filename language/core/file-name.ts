/** What people call a file: the last part of its address, decoded where that can be done. */
export function fileName(uri: string): string {
  const last = uri.slice(uri.lastIndexOf("/") + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}
