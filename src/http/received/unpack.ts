import type { Limits } from '../../settings/index.js';
import { HttpRefused } from '../refused.js';
import { type Spool, type SpooledFile, shownName } from './spool.js';
import { readSheet } from './workbook.js';
import { isZip, type ZipEntry, zipEntries } from './zip.js';

/** Most megabytes a workbook may unpack to: it is read whole (a sheet of a year every 15 minutes has 3). */
const WORKBOOK_MEGABYTES = 150;

/** What no logger makes: folders, hidden files, and what some computers put beside each file. */
const NOT_FILES = /(^|\/)(__MACOSX\/|\.[^/]*$)|\/$/;

/**
 * What was received, ready to be understood: the files of a zip archive, a workbook's first sheet (or the one asked
 * for) as text; anything else as it is. The archive itself is let go of.
 * @throws HttpRefused where an archive is damaged, locked, empty, or would unpack to more than allowed.
 */
export async function unpacked(
  received: SpooledFile,
  spool: Spool,
  limits: Limits,
  sheet: string | null = null,
): Promise<readonly SpooledFile[]> {
  const { path, name, id, by } = spool.file(received.id);
  if (!(await isZip(path))) return [received];
  try {
    const entries = await within(path, name, limits);
    if (entries.includes('xl/workbook.xml')) return [await sheetOf(path, name, by, spool, sheet)];
    return await filesOf(path, name, by, spool);
  } finally {
    await spool.drop(id);
  }
}

/** Looks through an archive's own list before anything of it is unpacked. */
async function within(path: string, file: string, limits: Limits): Promise<string[]> {
  const names: string[] = [];
  let bytes = 0;
  for await (const entry of sound(path, file)) {
    names.push(entry.name);
    bytes += entry.bytes;
    if (entry.locked) throw new HttpRefused(422, { code: 'http-archive-locked', with: { file } });
    if (names.length > limits.filesAtOnce && !names.includes('xl/workbook.xml'))
      throw new HttpRefused(413, {
        code: 'http-archive-too-many',
        with: { file, files: limits.filesAtOnce },
      });
    if (bytes > limits.unpackedMegabytes * 1_000_000) throw tooLarge(file, limits.unpackedMegabytes);
  }
  if (names.includes('xl/workbook.xml') && bytes > WORKBOOK_MEGABYTES * 1_000_000)
    throw tooLarge(file, WORKBOOK_MEGABYTES);
  if (names.every((one) => NOT_FILES.test(one)))
    throw new HttpRefused(422, { code: 'http-archive-empty', with: { file } });
  return names;
}

async function filesOf(path: string, file: string, by: string, spool: Spool): Promise<SpooledFile[]> {
  const files: SpooledFile[] = [];
  try {
    for await (const entry of sound(path, file)) {
      if (NOT_FILES.test(entry.name)) continue;
      files.push(await spool.receive(shownName(entry.name), by, bytesOf(entry, file)));
    }
    return files;
  } catch (error) {
    for (const { id } of files) await spool.drop(id);
    throw error;
  }
}

async function* bytesOf(entry: ZipEntry, file: string): AsyncGenerator<Uint8Array> {
  try {
    for await (const chunk of await entry.open()) yield chunk;
  } catch (error) {
    throw error instanceof HttpRefused ? error : damaged(file);
  }
}

async function sheetOf(
  path: string,
  file: string,
  by: string,
  spool: Spool,
  sheet: string | null,
): Promise<SpooledFile> {
  const read = await readSheet(path, sheet).catch(() => {
    throw new HttpRefused(422, { code: 'http-workbook-damaged', with: { file } });
  });
  if (read.kind === 'no-sheet')
    throw new HttpRefused(422, {
      code: 'http-no-such-sheet',
      with: { file, sheet: (sheet ?? '').slice(0, 80), sheets: read.sheets },
    });
  const name = read.sheets.length > 1 ? `${file} (${read.sheet})` : file;
  return spool.receive(name, by, textBytes(read.text));
}

async function* textBytes(text: string): AsyncGenerator<Uint8Array> {
  yield new TextEncoder().encode(text);
}

async function* sound(path: string, file: string): AsyncGenerator<ZipEntry> {
  try {
    yield* zipEntries(path);
  } catch {
    throw damaged(file);
  }
}

const damaged = (file: string) => new HttpRefused(422, { code: 'http-archive-damaged', with: { file } });
const tooLarge = (file: string, megabytes: number) =>
  new HttpRefused(413, { code: 'http-archive-too-large', with: { file, megabytes } });
