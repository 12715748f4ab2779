import type { SaxesTagPlain } from 'saxes';

/** A tag's attributes by their local names. */
export type Attributes = Readonly<Record<string, string>>;

/** A name without its prefix: services differ in prefixes. */
export const local = (name: string): string => name.slice(name.indexOf(':') + 1);

export function attributesOf(tag: SaxesTagPlain): Attributes {
  const named: Record<string, string> = {};
  for (const [name, value] of Object.entries(tag.attributes)) named[local(name)] ??= value;
  return named;
}

/** xsi:nil, under whichever prefix. */
export function isNil({ attributes }: SaxesTagPlain): boolean {
  for (const name in attributes) if (local(name) === 'nil') return /^(?:true|1)$/.test(attributes[name]!);
  return false;
}
