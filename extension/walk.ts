/** What walking needs of a file system; folders and files are addresses in it. */
export interface Tree<Address> {
  /** What lies in a folder; may reject. Links are not followed: they may lead in a ring. */
  entries(folder: Address): Promise<readonly (readonly [name: string, kind: "file" | "folder" | "other"])[]>;
  below(folder: Address, name: string): Address;
  isCancelled(): boolean;
}

/** No more folders than this are looked into: a walk through a folder far away must end. */
export const MOST_FOLDERS = 400;
/** What no one keeps build files in, and many keep thousands of others. */
const PASSED_BY = /^(\..*|node_modules)$/;

/** The files of a folder and those below it whose names end so, nearest first, at most so many. */
export async function filesBelow<Address>(
  root: Address,
  ending: string,
  most: number,
  tree: Tree<Address>,
): Promise<readonly Address[]> {
  const found: Address[] = [];
  const folders = [root];
  for (let next = 0; next < Math.min(folders.length, MOST_FOLDERS); next += 1) {
    if (tree.isCancelled() || most <= found.length) break;
    const folder = folders[next] as Address;
    for (const [name, kind] of await tree.entries(folder).catch(() => [])) {
      if (kind === "file" && name.endsWith(ending)) found.push(tree.below(folder, name));
      if (kind === "folder" && !PASSED_BY.test(name)) folders.push(tree.below(folder, name));
    }
  }
  return found.slice(0, most);
}
