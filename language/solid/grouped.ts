/**
 * Gives the members of a list by a name that each has, in their order. Made once for each list, which must not change
 * afterwards: going through a list of thousands for each of thousands is what makes a large job slow.
 */
export function groupedBy<T>(
  namesOf: (one: T) => readonly string[],
): (list: readonly T[], name: string) => readonly T[] {
  const known = new WeakMap<readonly T[], ReadonlyMap<string, readonly T[]>>();
  return (list, name) => {
    const groups = known.get(list) ?? groupsOf(list, namesOf);
    known.set(list, groups);
    return groups.get(name) ?? none;
  };
}

const none: readonly never[] = [];

function groupsOf<T>(list: readonly T[], namesOf: (one: T) => readonly string[]): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of list) {
    for (const name of new Set(namesOf(one))) {
      const group = groups.get(name);
      if (group === undefined) groups.set(name, [one]);
      else group.push(one);
    }
  }
  return groups;
}
