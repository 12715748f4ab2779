import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/** Every part's sentences, by language: { en: { 'cli.ts': [codes] } }. */
async function parts(language: string): Promise<Map<string, string[]>> {
  const folder = new URL(`../../src/words/${language}/`, import.meta.url);
  const codes = new Map<string, string[]>();
  for (const file of readdirSync(folder)) {
    // Only gathers the parts of the pages.
    if (file === 'page-parts.ts') continue;
    const exported: Record<string, unknown> = await import(new URL(file, folder).pathname);
    for (const [name, phrases] of Object.entries(exported)) {
      if (typeof phrases === 'object' && phrases !== null) codes.set(`${file} ${name}`, Object.keys(phrases));
    }
  }
  return codes;
}

describe('words', () => {
  it.each(['en', 'fr'])('no two parts of the program share a code (%s)', async (language) => {
    const owner = new Map<string, string>();
    const shared: string[] = [];
    for (const [part, codes] of await parts(language)) {
      for (const code of codes) {
        if (owner.has(code)) shared.push(`${code}: ${owner.get(code)} and ${part}`);
        owner.set(code, part);
      }
    }
    expect(owner.size).toBeGreaterThan(100);
    expect(shared).toEqual([]);
  });

  it('both languages have the same codes', async () => {
    const [en, fr] = [await parts('en'), await parts('fr')];
    const sorted = (all: Map<string, string[]>) => [...all.values()].flat().sort();
    expect(sorted(fr)).toEqual(sorted(en));
  });
});
