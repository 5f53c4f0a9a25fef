/** What is made from a thing that does not change: made once, and kept as long as the thing is. */
export function oncePer<From extends object, Made>(make: (from: From) => Made): (from: From) => Made {
  const known = new WeakMap<From, { readonly made: Made }>();
  return (from) => {
    const kept = known.get(from) ?? { made: make(from) };
    known.set(from, kept);
    return kept.made;
  };
}
