/// <reference lib="dom" />

type Properties = Readonly<Record<string, string | boolean | EventListener>>;

/** An element with attributes, listeners (`onclick`) and children; text is never markup. */
export function el<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  properties: Properties = {},
  ...children: readonly (Node | string | null)[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(properties)) {
    if (typeof value === 'function') made.addEventListener(name.slice(2), value);
    else if (value === true) made.setAttribute(name, '');
    else if (value !== false) made.setAttribute(name, value);
  }
  for (const child of children) if (child !== null) made.append(child);
  return made;
}
