import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recognise } from '../../../adapters/formats/recognise.js';
import { formats as en } from '../../../src/words/en/formats.js';
import { formats as fr } from '../../../src/words/fr/formats.js';

const bytes = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'latin1'));
const utf8 = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'utf8'));
const utf16 = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'utf16le'));

const codeOf = (head: Uint8Array): string => {
  const found = recognise(head);
  return found.kind === 'refuse' ? found.remark.code : found.kind;
};

/** Signatures as the formats' own specifications give them (memory). */
const others: readonly (readonly [string, Uint8Array, string])[] = [
  ['nothing', bytes(''), 'formats.empty'],
  ['blank lines', bytes('\r\n  \r\n'), 'formats.empty'],
  ['a byte order mark alone', utf8('\uFEFF'), 'formats.empty'],
  ['a JPEG photograph', bytes('\xff\xd8\xff\xe0\0\x10JFIF\0\x01'), 'formats.picture'],
  ['a PNG', bytes('\x89PNG\r\n\x1a\n\0\0\0\rIHDR'), 'formats.picture'],
  ['a phone’s HEIC', bytes('\0\0\0\x18ftypheic\0\0\0\0mif1'), 'formats.picture'],
  ['a WebP', bytes('RIFF\x24\0\0\0WEBPVP8 '), 'formats.picture'],
  ['a film', bytes('\0\0\0\x18ftypisom\0\0\x02\0'), 'formats.recording'],
  ['a PDF', bytes('%PDF-1.7\n%\xe2\xe3\xcf\xd3\n'), 'formats.pdf'],
  ['a workbook', bytes('PK\x03\x04\x14\0\x06\0\x08\0\0\0!\0[Content_Types].xml'), 'formats.workbook'],
  [
    'an open workbook',
    bytes('PK\x03\x04\x14\0mimetypeapplication/vnd.oasis.opendocument.spreadsheet'),
    'formats.workbook',
  ],
  ['a text document', bytes('PK\x03\x04\x14\0word/document.xml'), 'formats.document'],
  ['a zip', bytes('PK\x03\x04\x14\0\0\0\x08\0box1.csv'), 'formats.archive'],
  ['an old workbook', bytes('\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1\0\0\0\0'), 'formats.old-office'],
  ['SQLite', bytes('SQLite format 3\0\x10\0\x01\x01'), 'formats.database'],
  ['gzip inside gzip', new Uint8Array(gzipSync('time,temp')), 'formats.compressed'],
  ['7-Zip', bytes('7z\xbc\xaf\x27\x1c\0\x04'), 'formats.archive'],
  ['HDF5', bytes('\x89HDF\r\n\x1a\n\0\0\0'), 'formats.scientific'],
  ['a program', bytes('\x7fELF\x02\x01\x01\0'), 'formats.program'],
  [
    'a logger’s own file',
    bytes(Array.from({ length: 400 }, (_, i) => String.fromCharCode((i * 73 + 11) % 256)).join('')),
    'formats.binary',
  ],
  ['zeros', new Uint8Array(4096), 'formats.binary'],
  [
    'a web page',
    utf8('<!DOCTYPE html>\n<html><head><title>Readings</title></head><body>'),
    'formats.web-page',
  ],
  [
    'a sign-in page',
    utf8('<!-- x -->\n<html lang="en"><form><input type="password" name="p"></form></html>'),
    'formats.login-page',
  ],
  [
    'a page that asks to sign in, in French',
    utf8('\uFEFF<html lang="fr"><title>Connexion</title>'),
    'formats.login-page',
  ],
  [
    'a service’s error',
    utf8('<?xml version="1.0"?><ows:ExceptionReport xmlns:ows="http://www.opengis.net/ows/1.1">'),
    'formats.service-error',
  ],
  [
    'WaterML 1',
    utf8('<?xml version="1.0"?><ns1:timeSeriesResponse xmlns:ns1="http://www.cuahsi.org/waterML/1.1/">'),
    'formats.old-waterml',
  ],
  [
    'another XML',
    utf8('<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2">'),
    'formats.other-xml',
  ],
  ['JSON', utf8('{ "station": "weir", "values": [1, 2] }'), 'formats.json'],
  ['JSON rows', utf8('[{"time": "2025-11-20T00:00:00Z", "temp": 1.2}]'), 'formats.json'],
];

describe('what is no download is refused in one sentence', () => {
  it.each(others)('%s', (_, head, code) => {
    expect(codeOf(head)).toBe(code);
  });

  it('in both languages, saying what would do', () => {
    const workbook = recognise(bytes('PK\x03\x04[Content_Types].xml'));
    expect(workbook).toEqual({ kind: 'refuse', remark: { code: 'formats.workbook', with: {} } });
    expect(en['formats.workbook']({})).toContain('CSV UTF-8');
    expect(fr['formats.workbook']({})).toContain('CSV UTF-8');
    expect(en['formats.other-xml']({ root: 'kml' })).toContain('“kml”');
  });
});

const waterMl = '<wml2:Collection xmlns:wml2="http://www.opengis.net/waterml/2.0">';

describe('what may be a download is let through', () => {
  it.each([
    ['UTF-8', utf8('Date;Température (°C)\n2025-11-20;1,2\n')],
    ['Windows-1252', bytes('Date;Temp\xe9rature (\xb0C)\n2025-11-20;1,2\n')],
    ['UTF-16 with its mark', utf16('\uFEFFDate\tTemp\r\n2025-11-20\t1.2\r\n')],
    ['UTF-16 without', utf16('Date,Temp\r\n2025-11-20,1.2\r\n')],
    ['one line', bytes('1763136000,1.2')],
    ['a preamble in brackets', bytes('[Settings]\nserial=70-0042\n')],
    ['the zeros a power cut leaves at the end', bytes(`2025-11-20,1.2\n${'\0'.repeat(3000)}`)],
    ['a comparison sign first', bytes('< 0.5 is below the range\ntime,temp\n')],
    ['a first word a signature resembles', bytes('BM-12 probe,PKG 3\ntime,temp\n')],
  ])('%s', (_, head) => {
    expect(codeOf(head)).toBe('text');
  });

  it.each([
    ['UTF-8', utf8(`<?xml version="1.0" encoding="UTF-8"?>\n<!-- exported -->\n${waterMl}`)],
    ['UTF-16', utf16(`\uFEFF<?xml version="1.0"?>${waterMl}`)],
    [
      'inside a service’s answer',
      utf8(
        `<sos:GetObservationResponse xmlns:sos="http://www.opengis.net/sos/2.0" xmlns:wml2="http://www.opengis.net/waterml/2.0">`,
      ),
    ],
  ])('WaterML 2.0 in %s', (_, head) => {
    expect(codeOf(head)).toBe('waterml');
  });

  it('any table of numbers, in any of the encodings', () => {
    const cell = fc.oneof(
      fc.integer().map(String),
      fc.double({ noNaN: true }).map(String),
      fc.constantFrom('août', '°C', ''),
    );
    const table = fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(table, fc.constantFrom(',', ';', '\t', '|'), (rows, mark) => {
        const text = `time${mark}temp\n${rows.map((cells) => cells.join(mark)).join('\n')}\n`;
        expect([codeOf(utf8(text)), codeOf(bytes(text)), codeOf(utf16(`\uFEFF${text}`))]).toEqual([
          'text',
          'text',
          'text',
        ]);
      }),
      { seed: 7 },
    );
  });

  it('never throws, whatever the bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 600 }), (head) => {
        expect(['text', 'waterml', 'refuse']).toContain(recognise(head).kind);
      }),
      { numRuns: 500, seed: 7 },
    );
  });
});
