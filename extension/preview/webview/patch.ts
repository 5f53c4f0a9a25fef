/**
 * Makes a drawing that is shown into another one, and touches only what differs: a part that is as it was stays the
 * same element, with the focus if it has that. The view box is left to whoever moves it.
 */
export function patchDrawing(shown: Element, wanted: Element): void {
  for (const { name, value } of wanted.attributes) {
    if (name !== "viewBox" && shown.getAttribute(name) !== value) shown.setAttribute(name, value);
  }
  const old = new Map<string, Element[]>();
  for (const child of shown.children) {
    const same = old.get(keyOf(child));
    if (same === undefined) old.set(keyOf(child), [child]);
    else same.push(child);
  }
  const next = [...wanted.children].map((child) => old.get(keyOf(child))?.shift() ?? child);
  for (const left of old.values()) for (const child of left) child.remove();
  let place = shown.firstElementChild;
  for (const child of next) {
    if (child === place) place = place.nextElementSibling;
    else shown.insertBefore(child, place);
  }
}

/** Everything of it but the mark of what is broken, which is put on afterwards. */
function keyOf(child: Element): string {
  return child.outerHTML.replace(/ data-broken="" aria-description="[^"]*"/g, "");
}
