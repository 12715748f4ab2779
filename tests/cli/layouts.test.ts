import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { LoadAnswer } from '../../src/group/answers.js';
import { json, scratchFolder, underice } from './terminal.js';

const scratch = scratchFolder();
const file = (name: string, text: string): string => {
  const path = join(scratch, name);
  writeFileSync(path, text);
  return path;
};
const year = (date: string): string => `Date;Heure;Valeur\n${date};00:00;4,1\n${date};12:00;4,2\n`;

describe('layouts', () => {
  it('keeps what was answered, uses it next year, lists it and removes it', async () => {
    const here = ['--data', join(scratch, 'group')];
    const first = file('spring.csv', year('03/04/25'));
    const answered = ['--date-order', 'dmy', '--zone', 'UTC-04:00', '--unit', 'C', '--keep-layout', 'Upper'];
    const made = await underice([
      'load',
      first,
      '--station',
      'upper',
      '--create-stations',
      ...answered,
      ...here,
    ]);
    expect(made).toMatchObject({ status: 0, err: '' });
    expect(made.out).toContain('The layout “Upper” is kept');

    const next = file('next.csv', year('05/06/26'));
    const { files } = await json<LoadAnswer>(['load', next, '--station', 'upper', ...here]);
    expect(files[0]).toMatchObject({ stations: [{ first: '2026-06-05T04:00:00Z' }], refused: null });
    expect(files[0]?.assumed[0]).toBe('Read by the group’s saved layout “Upper”.');

    const listed = await json<{ layouts: unknown[] }>(['layouts', ...here]);
    expect(listed.layouts).toEqual([
      {
        name: 'Upper',
        match: { header: ['Date', 'Heure', 'Valeur'] },
        settled: {
          delimiter: ';',
          decimal: ',',
          dateOrder: 'dmy',
          time: ['Date', 'Heure'],
          unit: 'C',
          zone: 'UTC-04:00',
        },
      },
    ]);
    const removed = await underice(['layouts', 'remove', 'upper', '--lang', 'fr', ...here]);
    expect(removed.out).toBe('La disposition «\u00a0upper\u00a0» a été retirée.\n');
    expect((await json<{ layouts: unknown[] }>(['layouts', ...here])).layouts).toEqual([]);
  });

  it('takes one from a file, and says what is wrong with it', async () => {
    const here = ['--data', join(scratch, 'other')];
    const right = { name: 'Lower', match: { fileName: 'lower' }, settled: { temperature: 2 } };
    const kept = await json<{ layouts: unknown[] }>([
      'layouts',
      'keep',
      file('lower.json', JSON.stringify(right)),
      ...here,
    ]);
    expect(kept.layouts).toEqual([right]);
    const wrong = file('wrong.json', JSON.stringify({ ...right, settled: { dateOrder: 'ydm' } }));
    const refused = await underice(['layouts', 'keep', wrong, ...here]);
    expect(refused.status).toBe(2);
    expect(refused.err).toBe('“settled.dateOrder” is "ydm". What would do: ymd, dmy or mdy.\n');
    const unknown = await underice(['layouts', 'remove', 'Upper', ...here]);
    expect(unknown).toMatchObject({ status: 2, out: '' });
    expect(unknown.err).toContain('Lower');
  });
});
