/** The name of a file, with that of its folder behind it where another one that is open is called the same. */
export function tellingName(file: string, open: readonly string[]): string {
  const [name, folder] = lastOf(file);
  const isShared = open.some((other) => other !== file && lastOf(other)[0] === name);
  return isShared && folder !== "" ? `${name} (${folder})` : name;
}

/** The last two names of an address, the last first. */
function lastOf(address: string): readonly [name: string, folder: string] {
  const [name = "", folder = ""] = address
    .replace(/^[^:]*:(\/\/[^/]*)?/, "")
    .split("/")
    .reverse()
    .map(decoded);
  return [name, folder];
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
