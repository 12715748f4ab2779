import { crc32, deflateRawSync } from 'node:zlib';

export interface ArchiveFile {
  readonly name: string;
  readonly content: Buffer;
  /** The size the archive states, where it lies about it. */
  readonly stated?: number;
  readonly flags?: number;
}

/** A zip archive (PKWARE APPNOTE 6.3.10, sections 4.3.7, 4.3.12, 4.3.16), written by hand so that it may lie. */
export function zipOf(files: readonly ArchiveFile[]): Uint8Array<ArrayBuffer> {
  const locals: Buffer[] = [];
  const centrals: Buffer[] = [];
  let offset = 0;
  for (const { name, content, stated = content.length, flags = 0x800 } of files) {
    const packed = deflateRawSync(content, { level: 9 });
    const called = Buffer.from(name, 'utf8');
    const shared = Buffer.alloc(26);
    shared.writeUInt16LE(20, 0);
    shared.writeUInt16LE(flags, 2);
    shared.writeUInt16LE(8, 4);
    shared.writeUInt32LE(crc(content), 10);
    shared.writeUInt32LE(packed.length, 14);
    shared.writeUInt32LE(stated, 18);
    shared.writeUInt16LE(called.length, 22);
    const local = Buffer.concat([Buffer.from('PK\u0003\u0004', 'latin1'), shared, called, packed]);
    const rest = Buffer.alloc(14);
    rest.writeUInt32LE(offset, 10);
    centrals.push(Buffer.concat([Buffer.from('PK\u0001\u0002\u0014\u0000', 'latin1'), shared, rest, called]));
    locals.push(local);
    offset += local.length;
  }
  const directory = Buffer.concat(centrals);
  const end = Buffer.alloc(22);
  end.write('PK\u0005\u0006', 'latin1');
  end.writeUInt16LE(files.length, 8);
  end.writeUInt16LE(files.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(offset, 16);
  return new Uint8Array(Buffer.concat([...locals, directory, end]));
}

/** Node has a crc32 of its own from 20.15 on. */
function crc(content: Buffer): number {
  return crc32(content);
}

/** One sheet of a workbook: rows of cells; a cell may carry a formula, which has the value it came to. */
export type Cell =
  | string
  | number
  | { readonly date: number }
  | { readonly formula: string; readonly value: number };

/** A workbook (ECMA-376 part 1), as small as it can be: numbers, inline text, dates by cell style, formulas. */
export function workbookOf(
  sheets: Readonly<Record<string, readonly (readonly Cell[])[]>>,
  extra: readonly ArchiveFile[] = [],
): Uint8Array<ArrayBuffer> {
  const names = Object.keys(sheets);
  const xml = (name: string, body: string): ArchiveFile => ({
    name,
    content: Buffer.from(`<?xml version="1.0" encoding="UTF-8"?>${body}`),
  });
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
  const relation = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const packages = 'http://schemas.openxmlformats.org/package/2006';
  return zipOf([
    xml(
      '[Content_Types].xml',
      `<Types xmlns="${packages}/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>`,
    ),
    xml(
      'xl/workbook.xml',
      `<workbook xmlns="${main}" xmlns:r="${relation}"><sheets>${names
        .map((name, i) => `<sheet name="${name}" sheetId="${i + 1}" r:id="r${i + 1}"/>`)
        .join('')}</sheets></workbook>`,
    ),
    xml(
      'xl/_rels/workbook.xml.rels',
      `<Relationships xmlns="${packages}/relationships">${names
        .map(
          (_, i) =>
            `<Relationship Id="r${i + 1}" Type="${relation}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
        )
        .join('')}</Relationships>`,
    ),
    xml(
      'xl/styles.xml',
      `<styleSheet xmlns="${main}"><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="22" applyNumberFormat="1"/></cellXfs></styleSheet>`,
    ),
    ...names.map((name, i) =>
      xml(
        `xl/worksheets/sheet${i + 1}.xml`,
        `<worksheet xmlns="${main}"><sheetData>${(sheets[name] ?? [])
          .map(
            (row, r) =>
              `<row r="${r + 1}">${row.map((cell, c) => cellXml(cell, `${'ABCDEFGH'[c]}${r + 1}`)).join('')}</row>`,
          )
          .join('')}</sheetData></worksheet>`,
      ),
    ),
    ...extra,
  ]);
}

function cellXml(cell: Cell, place: string): string {
  if (typeof cell === 'number') return `<c r="${place}"><v>${cell}</v></c>`;
  if (typeof cell === 'string') {
    const text = cell.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
    return `<c r="${place}" t="inlineStr"><is><t>${text}</t></is></c>`;
  }
  if ('date' in cell) return `<c r="${place}" s="1"><v>${cell.date}</v></c>`;
  return `<c r="${place}"><f>${cell.formula}</f><v>${cell.value}</v></c>`;
}
