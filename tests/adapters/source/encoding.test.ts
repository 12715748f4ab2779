import iconv from 'iconv-lite';
import { describe, expect, it } from 'vitest';
import { encodingOf } from '../../../adapters/source/encoding.js';
import { pairs, take } from '../reading.js';

const french = [
  'Station;Étang à Gué',
  'Numéro de série;A-77',
  'Date;Heure;Température de l’eau (°C)',
  ...Array.from(
    { length: 30 },
    (_, i) => `15 déc. 2025;${String(i % 24).padStart(2, '0')}:${i < 24 ? '00' : '30'};-0,${i}`,
  ),
].join('\r\n');

describe('encodings', () => {
  it.each([
    ['utf8', 'utf-8', false],
    ['utf8', 'utf-8', true],
    ['utf16-le', 'utf-16le', true],
    ['utf16-le', 'utf-16le', false],
    ['utf16-be', 'utf-16be', true],
    ['utf16-be', 'utf-16be', false],
    ['win1252', 'windows-1252', false],
    ['cp850', 'cp850', false],
  ] as const)('%s is read as %s (mark: %s)', async (written, encoding, addBOM) => {
    // Code page 850 has no typographic apostrophe.
    const text = written === 'cp850' ? french.replace('’', "'") : french;
    const bytes = iconv.encode(text, written, { addBOM });
    const { report, taken } = await take(bytes, { zone: 'UTC' }, undefined, 7);
    expect(report.understood.encoding).toBe(encoding);
    expect(report.series[0]?.station).toBe('Étang à Gué');
    expect(report.serial).toBe('A-77');
    expect(report.understood.valueColumn).toBe(
      written === 'cp850' ? "Température de l'eau (°C)" : 'Température de l’eau (°C)',
    );
    expect(taken).toHaveLength(30);
    expect(pairs(taken)[0]).toEqual(['2025-12-15T00:00:00Z', 0]);
  });

  it('reads the 0x80 to 0x9F of windows-1252, which one call of the decoder mistranslates', async () => {
    const bytes = iconv.encode(
      'station,time,temp (°C)\n’œuf € – 1,2025-12-15T10:00Z,3.2\n’œuf € – 1,2025-12-15T11:00Z,3.1\n',
      'win1252',
    );
    const { report } = await take(bytes);
    expect(report.series[0]?.station).toBe('’œuf € – 1');
  });

  it('takes plain ASCII for UTF-8 and forgives a character cut at the end of the head', () => {
    expect(encodingOf(new Uint8Array(Buffer.from('a,b\n1,2\n')))).toEqual({ encoding: 'utf-8', mark: 0 });
    const cut = new Uint8Array(Buffer.from('température é')).subarray(0, -1);
    expect(encodingOf(cut).encoding).toBe('utf-8');
  });
});
