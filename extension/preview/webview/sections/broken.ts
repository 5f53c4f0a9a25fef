/** Marks what is broken, in the list and in the drawings: by an attribute that the style sheet shows, and in words. */
export function markBroken(root: ParentNode, broken: readonly string[]): void {
  const ids = new Set(broken);
  for (const element of root.querySelectorAll("[data-part], .drawing [data-id]")) {
    const id = element.getAttribute("data-part") ?? (element.getAttribute("data-id") ?? "").replace(/#.*$/, "");
    if (!ids.has(id)) {
      if (!element.hasAttribute("data-broken")) continue;
      element.removeAttribute("data-broken");
      element.removeAttribute("aria-description");
    } else if (!element.hasAttribute("data-broken")) {
      element.setAttribute("data-broken", "");
      element.setAttribute("aria-description", "An error stands where this part is written.");
    }
  }
}
