import type { FileWords } from './remark.js';

/** The remark codes whose sentence needs no figure. */
export type PlainCode = Exclude<keyof FileWords, 'formats.other-xml'>;

interface Signature {
  readonly code: PlainCode;
  readonly at: number;
  /** Latin-1: one character a byte. */
  readonly bytes: string;
}

/**
 * The bytes by which files that are not text announce themselves. Source: each format's own specification or the
 * `file` command's public magic list (memory). Order matters only where one signature begins another.
 */
const SIGNATURES: readonly Signature[] = [
  { code: 'formats.picture', at: 0, bytes: '\xff\xd8\xff' }, // JPEG
  { code: 'formats.picture', at: 0, bytes: '\x89PNG\r\n\x1a\n' },
  { code: 'formats.picture', at: 0, bytes: 'GIF87a' },
  { code: 'formats.picture', at: 0, bytes: 'GIF89a' },
  { code: 'formats.picture', at: 0, bytes: 'II*\0' }, // TIFF and most raw camera files
  { code: 'formats.picture', at: 0, bytes: 'MM\0*' },
  { code: 'formats.picture', at: 8, bytes: 'WEBP' },
  { code: 'formats.picture', at: 4, bytes: 'ftyphei' }, // HEIC, what phones write
  { code: 'formats.picture', at: 4, bytes: 'ftyphev' },
  { code: 'formats.picture', at: 4, bytes: 'ftypmif1' },
  { code: 'formats.picture', at: 4, bytes: 'ftypavif' },
  { code: 'formats.recording', at: 4, bytes: 'ftyp' }, // MPEG-4 and QuickTime
  { code: 'formats.recording', at: 8, bytes: 'WAVE' },
  { code: 'formats.recording', at: 8, bytes: 'AVI ' },
  { code: 'formats.recording', at: 0, bytes: 'ID3' },
  { code: 'formats.recording', at: 0, bytes: 'OggS' },
  { code: 'formats.recording', at: 0, bytes: '\x1aE\xdf\xa3' }, // Matroska, WebM
  { code: 'formats.pdf', at: 0, bytes: '%PDF-' },
  { code: 'formats.document', at: 0, bytes: '{\\rtf' },
  { code: 'formats.document', at: 0, bytes: '%!PS' },
  { code: 'formats.old-office', at: 0, bytes: '\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1' }, // compound file
  { code: 'formats.workbook', at: 0, bytes: '\x09\x08\x10\0\0\x06' }, // a bare workbook stream
  { code: 'formats.workbook', at: 0, bytes: '\x09\x08\x08\0\0\x05' },
  { code: 'formats.workbook', at: 0, bytes: '\x09\x04\x06\0' },
  { code: 'formats.workbook', at: 0, bytes: '\x09\x02\x06\0' },
  { code: 'formats.database', at: 0, bytes: 'SQLite format 3\0' },
  { code: 'formats.database', at: 8, bytes: 'DUCK' },
  { code: 'formats.database', at: 4, bytes: 'Standard Jet DB' },
  { code: 'formats.database', at: 4, bytes: 'Standard ACE DB' },
  { code: 'formats.scientific', at: 0, bytes: '\x89HDF\r\n\x1a\n' },
  { code: 'formats.scientific', at: 0, bytes: 'CDF\x01' },
  { code: 'formats.scientific', at: 0, bytes: 'CDF\x02' },
  { code: 'formats.scientific', at: 0, bytes: 'CDF\x05' },
  { code: 'formats.scientific', at: 0, bytes: 'PAR1' },
  { code: 'formats.scientific', at: 0, bytes: 'ARROW1\0\0' },
  { code: 'formats.scientific', at: 0, bytes: 'GRIB' },
  { code: 'formats.compressed', at: 0, bytes: '\x1f\x8b' },
  { code: 'formats.compressed', at: 0, bytes: '\x1f\x9d' },
  { code: 'formats.compressed', at: 0, bytes: 'BZh' },
  { code: 'formats.compressed', at: 0, bytes: '\xfd7zXZ\0' },
  { code: 'formats.compressed', at: 0, bytes: '\x28\xb5\x2f\xfd' }, // Zstandard
  { code: 'formats.archive', at: 0, bytes: '7z\xbc\xaf\x27\x1c' },
  { code: 'formats.archive', at: 0, bytes: 'Rar!\x1a\x07' },
  { code: 'formats.archive', at: 257, bytes: 'ustar' },
  { code: 'formats.program', at: 0, bytes: '\x7fELF' },
];

/** A first entry, the end of an empty archive, a part of a split one. */
const ZIP_OPENINGS = ['PK\x03\x04', 'PK\x05\x06', 'PK\x07\x08'];

/** Entry names by which a zip shows that it is really an office file. */
const ZIP_MEMBERS: readonly { readonly code: PlainCode; readonly name: string }[] = [
  { code: 'formats.workbook', name: 'xl/' },
  { code: 'formats.workbook', name: 'opendocument.spreadsheet' },
  { code: 'formats.document', name: 'word/' },
  { code: 'formats.document', name: 'ppt/' },
  { code: 'formats.document', name: 'opendocument.text' },
  // Office files open with this entry; which office file is only known further in.
  { code: 'formats.workbook', name: '[Content_Types].xml' },
];

const zipCode = (head: string): PlainCode =>
  ZIP_MEMBERS.find(({ name }) => head.includes(name))?.code ?? 'formats.archive';

/**
 * What the first bytes announce, or null when no signature fits.
 *
 * @param head the first bytes as Latin-1, one character a byte
 */
export function signatureOf(head: string): PlainCode | null {
  if (ZIP_OPENINGS.some((opening) => head.startsWith(opening))) return zipCode(head);
  const found = SIGNATURES.find(({ at, bytes }) => head.startsWith(bytes, at));
  return found?.code ?? null;
}
