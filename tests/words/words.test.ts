import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

interface Part {
  readonly name: string;
  readonly phrases: Readonly<Record<string, unknown>>;
}

/** Looked up by the part that owns them, never by code: nouns with their articles, and what reads otherwise on a page. */
const APART: readonly string[] = ['season-things.ts things', 'season-page.ts onPage'];

/** Every part's sentences, one part an exported list. */
async function parts(language: string): Promise<Part[]> {
  const folder = new URL(`../../src/words/${language}/`, import.meta.url);
  const found: Part[] = [];
  for (const file of readdirSync(folder)) {
    const exported: Record<string, unknown> = await import(new URL(file, folder).pathname);
    for (const [name, phrases] of Object.entries(exported)) {
      const part = `${file} ${name}`;
      if (typeof phrases === 'object' && phrases !== null && !APART.includes(part))
        found.push({ name: part, phrases: { ...phrases } });
    }
  }
  return found;
}

describe('words', () => {
  it.each(['en', 'fr'])('no two parts of the program share a code (%s)', async (language) => {
    const owner = new Map<string, { readonly part: string; readonly phrase: unknown }>();
    const shared: string[] = [];
    for (const { name, phrases } of await parts(language)) {
      for (const [code, phrase] of Object.entries(phrases)) {
        const before = owner.get(code);
        // A list that gathers others holds their very sentences.
        if (before !== undefined && before.phrase !== phrase)
          shared.push(`${code}: ${before.part} and ${name}`);
        owner.set(code, { part: name, phrase });
      }
    }
    expect(owner.size).toBeGreaterThan(100);
    expect(shared).toEqual([]);
  });

  it('both languages have the same codes', async () => {
    const [en, fr] = [await parts('en'), await parts('fr')];
    const sorted = (all: readonly Part[]) => all.flatMap(({ phrases }) => Object.keys(phrases)).sort();
    expect(sorted(fr)).toEqual(sorted(en));
  });
});
