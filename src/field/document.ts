/** The season document as plain values, as `seasonDocument` writes it. */
export type Document = Record<string, unknown>;

export function isThing(value: unknown): value is Document {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export function things(document: Document, list: string): readonly Document[] {
  const found = document[list];
  return Array.isArray(found) ? found.filter(isThing) : [];
}

export function added(document: Document, list: string, thing: Document): Document {
  return { ...document, [list]: [...things(document, list), thing] };
}

/** The document with the one thing of a list that `is` picks put through `change`. */
export function changed(
  document: Document,
  list: string,
  is: (thing: Document) => boolean,
  change: (thing: Document) => Document,
): Document {
  return { ...document, [list]: things(document, list).map((one) => (is(one) ? change(one) : one)) };
}

/** Ids are told apart without regard to capitals, as everywhere in the season. */
export function sameId(one: unknown, other: string): boolean {
  return String(one).toLowerCase() === other.toLowerCase();
}

/** What a site is called by people; its short name where it has no other. */
export function siteCalled(document: Document, site: unknown): string {
  const found = things(document, 'sites').find(({ id }) => sameId(id, String(site)));
  return String(found?.name ?? site);
}

/** Without what was left empty. */
export function stated(thing: Document): Document {
  return Object.fromEntries(
    Object.entries(thing).filter(
      ([, value]) =>
        value !== undefined &&
        value !== null &&
        value !== '' &&
        !(Array.isArray(value) && value.length === 0) &&
        !(isThing(value) && Object.keys(value).length === 0),
    ),
  );
}
