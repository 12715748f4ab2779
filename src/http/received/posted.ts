import { Readable } from 'node:stream';
import busboy from 'busboy';
import type { Limits } from '../../settings/index.js';
import { HttpRefused } from '../refused.js';
import { received, receivedText } from './bytes.js';
import { type Form, form } from './form.js';
import type { Spool, SpooledFile } from './spool.js';
import { unpacked } from './unpack.js';

const MOST_FIELDS = 2000;

/** How a posted form is taken in: `allowed` is asked for the csrf field before any file is taken. */
export interface Posting {
  readonly body: ReadableStream<Uint8Array> | null;
  readonly contentType: string;
  readonly limits: Limits;
  readonly spool: Spool;
  readonly by: string;
  readonly allowed: (csrf: string) => boolean;
}

/**
 * A form as posted, urlencoded or multipart. Files stream into the spool, archives and workbooks come apart; the csrf
 * field must come before them, and so must `sheet`, the sheet of a workbook that is wanted.
 * @throws HttpRefused 403 forged, 413 too large, 415 another type, 400 damaged or broken off, 408 too slow.
 */
export async function postedForm(posting: Posting): Promise<Form> {
  const type = posting.contentType.split(';')[0]?.trim().toLowerCase() ?? '';
  if (type === 'multipart/form-data') return multipart(posting);
  if (type !== 'application/x-www-form-urlencoded' && type !== '')
    throw new HttpRefused(415, {
      code: 'http-not-this-type',
      with: { given: type.slice(0, 80), takes: 'application/x-www-form-urlencoded, multipart/form-data' },
    });
  return urlencoded(posting);
}

async function urlencoded({ body, limits, allowed }: Posting): Promise<Form> {
  const text = await receivedText(body, formLimits(limits));
  const fields = new Map<string, string[]>();
  for (const [name, value] of new URLSearchParams(text)) add(fields, name, value);
  const posted = form(fields);
  if (!allowed(posted.field('csrf'))) throw forged();
  return posted;
}

async function multipart(posting: Posting): Promise<Form> {
  const { body, contentType, limits, spool, by, allowed } = posting;
  if (body === null) throw notAForm();
  const parser = parserFor(contentType, limits);
  const fields = new Map<string, string[]>();
  const files: SpooledFile[] = [];
  let taking: Promise<void> = Promise.resolve();
  let refusal: Error | null = null;
  const refuse = (error: Error) => {
    refusal ??= error;
    parser.destroy(error);
  };
  parser.on('field', (name, value, { valueTruncated }) => {
    if (valueTruncated) refuse(formLimits(limits).tooLarge());
    else if (fieldCount(fields) >= MOST_FIELDS)
      refuse(new HttpRefused(413, { code: 'http-too-many-fields', with: { fields: MOST_FIELDS } }));
    else add(fields, name, value);
  });
  parser.on('file', (_field, stream, { filename }) => {
    // A parser that is given up fails its files too; an error nobody hears would end the service.
    stream.on('error', refuse);
    const csrf = fields.get('csrf')?.[0] ?? '';
    if (refusal !== null || !allowed(csrf)) {
      stream.resume();
      return refuse(forged());
    }
    if (filename === undefined || filename === '') return void stream.resume();
    taking = taking.then(async () => {
      if (refusal !== null) return void stream.resume();
      try {
        const file = await spool.receive(filename, by, whole(stream, limits));
        const sheet = fields.get('sheet')?.[0] || null;
        files.push(...(await unpacked(file, spool, limits, sheet)));
      } catch (error) {
        stream.resume();
        refuse(error instanceof Error ? error : new Error(String(error)));
      }
    });
  });
  parser.on('filesLimit', () =>
    refuse(new HttpRefused(413, { code: 'http-too-many-files', with: { files: limits.filesAtOnce } })),
  );
  const ended = new Promise<void>((resolve, reject) => {
    parser.on('close', resolve);
    parser.on('error', (error) => reject(refusal ?? (error instanceof HttpRefused ? error : notAForm())));
  });
  const source = Readable.from(received(body, wholeFormLimits(limits)));
  source.on('error', refuse);
  source.pipe(parser);
  try {
    await ended;
    await taking;
    if (refusal !== null) throw refusal;
    if (!allowed(fields.get('csrf')?.[0] ?? '')) throw forged();
    return form(fields, files);
  } catch (error) {
    source.destroy();
    await taking.catch(() => undefined);
    for (const { id } of files) await spool.drop(id);
    throw error;
  }
}

function parserFor(contentType: string, limits: Limits): busboy.Busboy {
  try {
    return busboy({
      headers: { 'content-type': contentType },
      defParamCharset: 'utf8',
      limits: {
        fieldSize: limits.formKilobytes * 1000,
        fields: MOST_FIELDS + 1,
        fileSize: limits.uploadMegabytes * 1_000_000,
        files: limits.filesAtOnce,
      },
    });
  } catch {
    throw notAForm();
  }
}

/** A file of the form to its end; busboy only cuts off what is too large. */
async function* whole(
  stream: Readable & { readonly truncated?: boolean },
  limits: Limits,
): AsyncGenerator<Uint8Array> {
  for await (const chunk of stream) yield chunk;
  if (stream.truncated === true) throw fileTooLarge(limits);
}

export function fileTooLarge(limits: Limits): HttpRefused {
  return new HttpRefused(413, { code: 'http-file-too-large', with: { megabytes: limits.uploadMegabytes } });
}

/** Limits of a body that is a few fields or a document. */
export function formLimits(limits: Limits) {
  return {
    bytes: limits.formKilobytes * 1000,
    tooLarge: () =>
      new HttpRefused(413, { code: 'http-body-too-large', with: { kilobytes: limits.formKilobytes } }),
    patienceSeconds: limits.patienceSeconds,
  };
}

/** All files of one form together. */
function wholeFormLimits(limits: Limits) {
  return {
    bytes: limits.uploadMegabytes * 1_000_000 + limits.formKilobytes * 1000,
    tooLarge: () => fileTooLarge(limits),
    patienceSeconds: limits.patienceSeconds,
  };
}

function add(fields: Map<string, string[]>, name: string, value: string): void {
  const before = fields.get(name);
  if (before === undefined) fields.set(name, [value]);
  else before.push(value);
}

function fieldCount(fields: ReadonlyMap<string, readonly string[]>): number {
  return [...fields.values()].reduce((sum, values) => sum + values.length, 0);
}

const forged = () => new HttpRefused(403, { code: 'http-forged', with: {} });
const notAForm = () => new HttpRefused(400, { code: 'http-not-a-form', with: {} });
