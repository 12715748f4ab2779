import { describe, expect, test } from 'vitest';
import { paragraph } from '../../src/cli/terminal-table.js';
import { dayAndTime } from '../../src/words/index.js';
import { underice } from './terminal.js';

const FRENCH =
  'Le relevé du 4 mars 2026, 08 h 00 : l’eau de « la passe » était à 4 °C ; la glace couvrait 80 % du site. Faut-il lever ?';

describe('a paragraph on a terminal', () => {
  test('never begins a line with a mark or a unit, whatever the width', () => {
    for (let width = 24; width < 100; width++) {
      const lines = paragraph(FRENCH, width).split('\n');
      expect(lines.filter((line) => /^(?:[;:?!»%]|°C|h |00)|(?:«|\d h)$/.test(line))).toEqual([]);
      expect(lines.join(' ')).toBe(FRENCH);
    }
  });

  test('is what help is told in as well', async () => {
    const help = await underice(['tally', '--help', '--lang', 'fr']);
    expect(help.out).toContain('œufs');
    expect(help.out.split('\n').filter((line) => /^ *[;:?!»%]/.test(line))).toEqual([]);
  });

  test('keeps a time of day together in French, on a page as well', () => {
    expect(dayAndTime('fr', Date.UTC(2026, 2, 4, 8), 'UTC')).toBe('4 mars 2026, 8\u00a0h');
  });
});
