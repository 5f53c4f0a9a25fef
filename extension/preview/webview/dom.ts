type Attributes = Readonly<Record<string, string>>;

/** An element with its attributes and children; text stays text, whatever is in it. */
export function el<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.append(...children);
  return made;
}

/** As `el`, of a drawing. */
export function svg(tag: string, attributes: Attributes = {}, ...children: readonly Node[]): SVGElement {
  const made = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.append(...children);
  return made;
}

/** Sets the text of an element, without touching the page when it has it already. */
export function setText(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

/**
 * The words of a text, so that a line breaks between two of them, and not at the hyphen of a name, before a sign, or
 * between a number and its fraction.
 */
export function unbroken(text: string): readonly (Node | string)[] {
  const words = text.split(/((?<!\d)\s+(?![−+](?:\s|$))|\s+(?!\d+\/\d|[−+](?:\s|$)))/);
  return words.map((word) => (word.trim() === "" ? word : el("span", { class: "word" }, word)));
}

/** One element of a list that is kept in step with data. */
export interface Kept<T> {
  readonly element: HTMLElement;
  update(item: T): void;
}

/**
 * Keeps the children of an element in step with a list: one child for each item, known again by its key, made when it
 * is new, moved when it has to be, updated only when its data have changed. Of two items with one key, the second is
 * known by its place. Where `after` is given, the list stands behind that child.
 */
export function keepChildren<T>(
  parent: HTMLElement,
  keyOf: (item: T) => string,
  make: (item: T) => Kept<T>,
  after?: Element,
): (items: readonly T[]) => void {
  let children = new Map<string, { readonly kept: Kept<T>; data: string }>();
  return (items) => {
    const next: typeof children = new Map();
    items.forEach((item, index) => {
      const key = next.has(keyOf(item)) ? `${index} ${keyOf(item)}` : keyOf(item);
      const data = JSON.stringify(item);
      const child = children.get(key) ?? { kept: make(item), data: "" };
      if (child.data !== data) child.kept.update(item);
      child.data = data;
      next.set(key, child);
    });
    for (const [key, child] of children) if (!next.has(key)) child.kept.element.remove();
    let place = after === undefined ? parent.firstElementChild : after.nextElementSibling;
    for (const { kept } of next.values()) {
      // An element that stands where it should is left alone: moving it would take the focus from it.
      if (kept.element === place) place = place.nextElementSibling;
      else parent.insertBefore(kept.element, place);
    }
    children = next;
  };
}
