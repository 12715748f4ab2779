import { describe, expect, test } from 'vitest';
import type { Source } from '../../forecasting/table.js';
import { shippedTables } from '../../forecasting/tables/index.js';
import { citedIn } from '../../src/words/index.js';

/** Every source of a table, wherever in it it stands. */
function sourcesIn(value: unknown): Source[] {
  if (typeof value !== 'object' || value === null) return [];
  const inside = Object.values(value).flatMap(sourcesIn);
  return isSource(value) ? [value, ...inside] : inside;
}

const isSource = (value: object): value is Source => 'cite' in value && typeof value.cite === 'string';

const ENGLISH =
  /\b(?:the|this|of|at|from|between|taken over|estimate|no source|stocks|eggs|died|above|below)\b/;
const CITATIONS =
  /Journal|Annals of Glaciology|Biology of Fishes|Trout and Salmon Culture|J\. Fish\.? |The early development of brook trout/g;

describe('sources', () => {
  const all = shippedTables.flatMap(sourcesIn);

  test('keep no English note in French', () => {
    expect(all.length).toBeGreaterThan(60);
    const said = new Set(all.map((source) => citedIn('fr', source).replace(CITATIONS, '')));
    expect([...said].filter((text) => ENGLISH.test(text))).toEqual([]);
  });

  test('stay as published where they are a citation alone, and as a group wrote them', () => {
    expect(citedIn('fr', { cite: 'Crisp 1981, Freshwater Biology 11:361-368' })).toBe(
      'Crisp 1981, Freshwater Biology 11:361-368',
    );
    const both = { cite: 'ours: 5%', inFrench: 'de nous : 5 %' };
    expect(citedIn('fr', both)).toBe('de nous\u00a0: 5\u00a0%');
    expect(citedIn('en', both)).toBe('ours: 5%');
  });
});
