import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseAst } from 'vitest/node';
import { englishSpacing, frenchSpacing, spacedPage } from '../../src/words/french-spacing.js';

/** Every piece of text in a source: strings, and what stands between the figures of a template. */
function texts(node: unknown): string[] {
  if (Array.isArray(node)) return node.flatMap(texts);
  if (typeof node !== 'object' || node === null) return [];
  const { type, value } = { type: '', value: null, ...node };
  if (type === 'ImportDeclaration') return [];
  const own = type === 'Literal' && typeof value === 'string' ? [value] : [];
  const piece = type === 'TemplateElement' && typeof value === 'object' ? Object.values(value ?? {}) : [];
  const cooked = piece.slice(-1).filter((one): one is string => typeof one === 'string');
  return [...own, ...cooked, ...Object.values(node).flatMap(texts)];
}

const folder = new URL('../../src/words/fr/', import.meta.url);
const all = readdirSync(folder).flatMap((file) =>
  texts(parseAst(readFileSync(new URL(file, folder), 'utf8'), { lang: 'ts' })),
);

/** A colon or guillemet that could begin a line, a guillemet that could end one, a ; ? or ! away from its word. */
const WRONG = /[ \u202f](?:»|:(?:[\s.,)»]|$))|«[ \u202f]|[^\s«(][ \u00a0\u202f][;?!](?:[\s.,)»]|$)/;

describe('French spacing', () => {
  it('is right in every sentence, whoever wrote it', () => {
    expect(all.length).toBeGreaterThan(1500);
    expect(all.filter((text) => WRONG.test(text)).length).toBeGreaterThan(100);
    expect(all.map(frenchSpacing).filter((text) => WRONG.test(text))).toEqual([]);
  });

  it('changes spaces only, and nothing a second time', () => {
    const bare = (text: string) => text.replace(/[ \u00a0\u202f]/g, '');
    for (const text of all) {
      const spaced = frenchSpacing(text);
      expect(bare(spaced)).toBe(bare(text));
      expect(frenchSpacing(spaced)).toBe(spaced);
    }
  });

  // Office québécois de la langue française, "Espacement avant et après les signes de ponctuation" (memory): what is
  // set apart, and by which space.
  it.each([
    ['Jour : le 4 mai', 'Jour\u00a0: le 4 mai'],
    ['« ainsi »', '«\u00a0ainsi\u00a0»'],
    ['Vraiment ? Oui\u00a0! Bien\u202f; voilà.', 'Vraiment? Oui! Bien; voilà.'],
    ['à 4 °C, 80 %, 12 h 30', 'à 4\u00a0°C, 80\u00a0%, 12\u00a0h 30'],
    ['à 12:30, https://a.example/?b=c, « name: »', 'à 12:30, https://a.example/?b=c, «\u00a0name:\u00a0»'],
  ])('%s', (written, spaced) => expect(frenchSpacing(written)).toBe(spaced));

  it('holds for a page, and leaves alone what goes back as it is', () => {
    expect(spacedPage('<h1 title="a : b">Jour : prêt ?</h1><p>Lot « A » ; fin</p>')).toBe(
      '<h1 title="a : b">Jour\u00a0: prêt?</h1><p>Lot «\u00a0A\u00a0»; fin</p>',
    );
    expect(spacedPage('<p>Berg &amp; Moen &#39; fin ;</p>')).toBe('<p>Berg &amp; Moen &#39; fin;</p>');
    for (const kept of [
      '<textarea name="text">a : b ; c ?</textarea>',
      '<script type="application/json">{"a" : "b ; c"}</script>',
      '<pre>GET /api : ok</pre>',
    ])
      expect(spacedPage(`<p>Oui : ${kept}</p>`)).toBe(`<p>Oui\u00a0: ${kept}</p>`);
  });
});

describe('English units', () => {
  it.each([
    ['at most 0.2 °C for 6 h, 12 mm deep', 'at most 0.2\u00a0°C for 6\u00a0h, 12\u00a0mm deep'],
    ['5 holes, 3 million, 2 km', '5 holes, 3 million, 2\u00a0km'],
  ])('%s', (written, spaced) => expect(englishSpacing(written)).toBe(spaced));

  it('stay with their figure on a page', () => {
    expect(spacedPage('<p>0.2 °C</p>', 'en')).toBe('<p>0.2\u00a0°C</p>');
  });
});
