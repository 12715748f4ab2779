import { type ClientRequest, request } from 'node:http';
import { connect } from 'node:net';
import { beforeAll, describe, expect, it } from 'vitest';
import { Accounts } from '../../src/http/sign-in/accounts.js';
import { workbookOf, zipOf } from './archives.js';
import { ask, cookiesOf, json, type Said, sampleFolder, send, service } from './service.js';

/*
 * What the issue's list of bad input asks of uploads: each with its status and sentence, and the service answering
 * afterwards. Limits are set low here, so that passing them needs neither a large disk nor a long time.
 */
let at = '';
let folder = '';
beforeAll(async () => {
  folder = await sampleFolder();
  const flags = { uploadMegabytes: '5', unpackedMegabytes: '20', waitingFiles: '300', patienceSeconds: '1' };
  at = (await service(folder, flags)).address;
}, 60_000);

const put = (name: string, body: Uint8Array<ArrayBuffer> | string, query = ''): Promise<Said> =>
  ask(at, `/api/v1/files/${encodeURIComponent(name)}${query}`, send('PUT', 'application/octet-stream', body));

interface Waiting {
  readonly file: string;
  readonly name: string;
}

function waitingIn(said: Said): Waiting[] {
  expect(said, said.text).toMatchObject({ status: 201 });
  const { files } = said.body;
  return Array.isArray(files) ? files : [];
}

const understand = (file: string | undefined, asked: object = {}): Promise<Said> =>
  ask(at, '/api/v1/loads', json('POST', { files: [{ file }], dryRun: true, ...asked }));

const stillAnswers = async () => expect((await ask(at, '/api/v1/forecast')).status).toBe(200);

/** A request whose body is written piece by piece; what it answers, also while the body is on its way. */
function slowly(
  path: string,
  headers: Record<string, string>,
  write: (request: ClientRequest) => void,
): Promise<Said> {
  return new Promise((resolve, reject) => {
    const asked = request(`${at}${path}`, {
      method: 'PUT',
      headers: { 'Content-Type': 'application/octet-stream', ...headers },
    });
    asked.on('response', (answer) => {
      let text = '';
      answer.setEncoding('utf8').on('data', (chunk: string) => (text += chunk));
      answer.on('end', () => {
        asked.destroy();
        resolve({ status: answer.statusCode ?? 0, headers: new Headers(), text, body: JSON.parse(text) });
      });
      answer.on('error', reject);
    });
    // Once answered, the service may close on what is still being sent.
    asked.on('error', (error) => setTimeout(() => reject(error), 2000));
    write(asked);
  });
}

describe('an upload that is too large', () => {
  it('says so before a byte is sent, where it states its length (2 GB)', async () => {
    const said = await slowly('/api/v1/files/large.csv', { 'Content-Length': '2000000000' }, (asked) =>
      asked.write('time,temperature\n'),
    );
    expect(said).toMatchObject({ status: 413, body: { code: 'http-file-too-large' } });
    expect(said.body.detail).toContain('at most 5 MB');
    await stillAnswers();
  });

  it('is refused while it streams, where it does not', async () => {
    const piece = Buffer.alloc(64 * 1024, 'x');
    let sent = 0;
    const said = await slowly('/api/v1/files/endless.csv', {}, (asked) => {
      const more = () => {
        while (!asked.destroyed && sent < 2e9) {
          sent += piece.length;
          if (!asked.write(piece)) return void asked.once('drain', more);
        }
      };
      more();
    });
    expect(said).toMatchObject({ status: 413, body: { code: 'http-file-too-large' } });
    expect(sent).toBeLessThan(100e6);
    await stillAnswers();
    expect((await ask(at, '/api/v1/files')).text).not.toContain('endless');
  });
});

describe('an upload that does not end', () => {
  it('is given up when nothing comes any more', async () => {
    const said = await slowly('/api/v1/files/slow.csv', {}, (asked) => asked.write('time,'));
    expect(said).toMatchObject({ status: 408, body: { code: 'http-too-slow' } });
    await stillAnswers();
  });

  it('is given up when it comes by drops', async () => {
    const said = await slowly('/api/v1/files/drops.csv', {}, (asked) => {
      const drip = setInterval(() => asked.write('x'), 200);
      asked.on('close', () => clearInterval(drip));
    });
    expect(said).toMatchObject({ status: 408, body: { code: 'http-too-slow' } });
    await stillAnswers();
  });

  it('leaves nothing when it breaks off half-way', async () => {
    const { port, hostname } = new URL(at);
    await new Promise<void>((resolve) => {
      const socket = connect(Number(port), hostname, () => {
        socket.write(
          `PUT /api/v1/files/half.csv HTTP/1.1\r\nHost: ${hostname}\r\nContent-Type: application/octet-stream\r\nContent-Length: 1000000\r\n\r\ntime,temp`,
          () => setTimeout(() => socket.destroy(), 100),
        );
      });
      socket.on('close', () => resolve());
    });
    await stillAnswers();
    expect((await ask(at, '/api/v1/files')).text).not.toContain('half.csv');
  });
});

describe('a name', () => {
  it.each([
    ['../../etc/passwd', 'passwd'],
    ['..\\..\\windows\\system.ini', 'system.ini'],
    ['/etc/shadow', 'shadow'],
    ['a\u0000b.csv', 'ab.csv'],
    ['\u202Evsc.exe', 'vsc.exe'],
    ['a/..', '..'],
    [`${'n'.repeat(500)}.csv`, 'n'.repeat(200)],
  ])('%j is shown as %j and never opened', async (name, shown) => {
    const [file] = waitingIn(await put(name, 'x'));
    expect(file?.name).toBe(shown);
    expect(file?.file).toMatch(/^[0-9a-f]{32}$/);
    await ask(at, `/api/v1/files/${file?.file}`, { method: 'DELETE' });
  });

  it('of markup stays text, in JSON and on a page', async () => {
    const [file] = waitingIn(await put('<img src=x onerror=alert(1)>.csv', 'nothing'));
    const said = await understand(file?.file);
    expect(said.headers.get('Content-Type')).toContain('application/json');
    expect(said.headers.get('X-Content-Type-Options')).toBe('nosniff');
  });

  it.each(['0'.repeat(32), '../../underice.duckdb', 'nothing', '%2e%2e'])(
    '%s as an id finds nothing',
    async (id) => {
      expect(await understand(id.slice(0, 64))).toMatchObject({
        status: 404,
        body: { code: 'http-unknown-file' },
      });
      expect((await ask(at, `/api/v1/files/${encodeURIComponent(id)}`, { method: 'DELETE' })).status).toBe(
        404,
      );
    },
  );
});

const DOWNLOAD = Buffer.from(
  `Time (UTC),Temperature (°C)\n${Array.from({ length: 48 }, (_, hour) => {
    const at = new Date(Date.UTC(2026, 0, 10, hour)).toISOString().slice(0, 16).replace('T', ' ');
    return `${at},0.${hour % 10}`;
  }).join('\n')}\n`,
);

describe('an archive', () => {
  it('comes apart into its files, whatever folders they were in', async () => {
    const files = waitingIn(
      await put(
        'winter.zip',
        zipOf([
          { name: 'river/one.csv', content: DOWNLOAD },
          { name: 'river/', content: Buffer.alloc(0) },
          { name: '__MACOSX/river/._one.csv', content: Buffer.from('x') },
          { name: 'two.csv', content: Buffer.from('no download') },
        ]),
      ),
    );
    expect(files.map(({ name }) => name)).toEqual(['one.csv', 'two.csv']);
    const said = await understand(files[0]?.file, { station: 'upper' });
    expect(said.body).toMatchObject({
      files: [{ stations: [{ station: 'upper', readings: 48 }], refused: null }],
    });
    expect(said.body).toMatchObject({ previews: [{ series: { station: 'upper', step_seconds: 0 } }] });
  });

  it('that would unpack to a thousand times its size is refused unopened', async () => {
    const bomb = zipOf([{ name: 'bomb.csv', content: Buffer.alloc(30e6) }]);
    expect(bomb.length).toBeLessThan(100_000);
    expect(await put('bomb.zip', bomb)).toMatchObject({
      status: 413,
      body: { code: 'http-archive-too-large' },
    });
    await stillAnswers();
  });

  it('that lies about its size is found out while it unpacks', async () => {
    const liar = zipOf([{ name: 'bomb.csv', content: Buffer.alloc(30e6), stated: 1000 }]);
    expect(await put('liar.zip', liar)).toMatchObject({
      status: 422,
      body: { code: 'http-archive-damaged' },
    });
    await stillAnswers();
  });

  it('of ten thousand files is refused', async () => {
    const many = zipOf(
      Array.from({ length: 10_000 }, (_, i) => ({ name: `${i}.csv`, content: Buffer.from('x') })),
    );
    expect(await put('many.zip', many)).toMatchObject({
      status: 413,
      body: { code: 'http-archive-too-many' },
    });
  });

  it.each([
    ['that climbs out', zipOf([{ name: '../../escaped.csv', content: DOWNLOAD }]), 'http-archive-damaged'],
    ['with a password', zipOf([{ name: 'a.csv', content: DOWNLOAD, flags: 0x801 }]), 'http-archive-locked'],
    ['of nothing', zipOf([{ name: 'folder/', content: Buffer.alloc(0) }]), 'http-archive-empty'],
    ['cut short', zipOf([{ name: 'a.csv', content: DOWNLOAD }]).slice(0, 60), 'http-archive-damaged'],
  ])('%s is refused in a sentence', async (_, archive, code) => {
    expect(await put('a.zip', archive)).toMatchObject({ status: 422, body: { code } });
  });
});

describe('a workbook', () => {
  /** Days since 1899-12-30, as a workbook counts (ECMA-376 part 1, 18.17.4.1). */
  const serial = (hour: number) => (Date.UTC(2026, 0, 10, hour) - Date.UTC(1899, 11, 30)) / 86_400_000;
  const rows = [
    ['Time (UTC)', 'Temperature (°C)'],
    ...Array.from({ length: 48 }, (_, hour) => [
      { date: serial(hour) },
      hour === 5 ? { formula: 'CMD|"/c calc"!A1', value: 0.7 } : 0.25,
    ]),
  ];

  it('is read by its first sheet; a formula is the value it came to, and nothing runs', async () => {
    const macro = { name: 'xl/vbaProject.bin', content: Buffer.from('Sub Auto_Open()') };
    const [file] = waitingIn(
      await put('logger.xlsm', workbookOf({ Readings: rows, Notes: [['=1+1']] }, [macro])),
    );
    expect(file?.name).toBe('logger.xlsm (Readings)');
    const said = await understand(file?.file, { station: 'upper' });
    expect(said.body).toMatchObject({
      files: [{ stations: [{ readings: 48, first: '2026-01-10T00:00:00Z', max_c: 0.7 }], refused: null }],
    });
  });

  it('is read by the sheet asked for, or says which there are', async () => {
    const book = workbookOf({ Notes: [['nothing here']], Readings: rows });
    expect(waitingIn(await put('logger.xlsx', book, '?sheet=Readings'))[0]?.name).toBe(
      'logger.xlsx (Readings)',
    );
    const said = await put('logger.xlsx', book, '?sheet=Nowhere');
    expect(said).toMatchObject({ status: 422, body: { code: 'http-no-such-sheet' } });
    expect(said.body.detail).toContain('Notes and Readings');
  });

  it('that is damaged is refused', async () => {
    const broken = zipOf([{ name: 'xl/workbook.xml', content: Buffer.from('<workbook') }]);
    expect(await put('broken.xlsx', broken)).toMatchObject({
      status: 422,
      body: { code: 'http-workbook-damaged' },
    });
    await stillAnswers();
  });
});

describe('a form with files', () => {
  const multipart = (parts: readonly { name: string; file?: string; text: string }[]): string =>
    [
      ...parts.map(
        ({ name, file, text }) =>
          `--edge\r\nContent-Disposition: form-data; name="${name}"${file === undefined ? '' : `; filename="${file}"`}\r\n\r\n${text}\r\n`,
      ),
      '--edge--\r\n',
    ].join('');
  const post = (body: string, headers: Record<string, string> = {}) =>
    ask(at, '/downloads', send('POST', 'multipart/form-data; boundary=edge', body, headers));

  it('forged takes in no file at all', async () => {
    const said = await post(
      multipart([
        { name: 'file', file: 'forged.csv', text: 'x' },
        { name: 'csrf', text: 'no' },
      ]),
    );
    expect(said).toMatchObject({ status: 403, body: { code: 'http-forged' } });
    expect((await ask(at, '/api/v1/files')).text).not.toContain('forged.csv');
  });

  it('brings files, archives apart, and a workbook’s sheet', async () => {
    const visit = '0123456789abcdef';
    const csrf = new Accounts(folder, 1).sign(`form ${visit}`);
    const body = multipart([
      { name: 'csrf', text: csrf },
      { name: 'file', file: 'one.csv', text: DOWNLOAD.toString() },
      { name: 'file', file: '', text: '' },
      { name: 'file', file: '../two.csv', text: 'x' },
    ]);
    const said = await post(body, { Cookie: `underice_visit=${visit}` });
    expect(said.status).toBe(303);
    const { text } = await ask(at, '/api/v1/files');
    expect(text).toContain('"name":"one.csv"');
    expect(text).toContain('"name":"two.csv"');
  });

  it('of ten thousand files at once is refused', async () => {
    const visit = '0123456789abcdef';
    const csrf = new Accounts(folder, 1).sign(`form ${visit}`);
    const files = Array.from({ length: 10_000 }, (_, i) => ({ name: 'file', file: `${i}.many`, text: 'x' }));
    const said = await post(multipart([{ name: 'csrf', text: csrf }, ...files]), {
      Cookie: `underice_visit=${visit}`,
    });
    expect(said).toMatchObject({ status: 413, body: { code: 'http-too-many-files' } });
    expect((await ask(at, '/api/v1/files')).text).not.toContain('.many');
    await stillAnswers();
  });

  it('cut short is refused', async () => {
    expect(await post('--edge\r\nContent-Disposition: form-data; name="a"\r\n\r\nx')).toMatchObject({
      status: 400,
    });
    expect(await ask(at, '/downloads', send('POST', 'multipart/form-data', 'x'))).toMatchObject({
      status: 400,
    });
    await stillAnswers();
  });

  it('of another type is refused', async () => {
    expect(await ask(at, '/downloads', send('POST', 'text/xml', '<a/>'))).toMatchObject({ status: 415 });
  });

  it('whose fields are larger than a form is refused', async () => {
    const said = await ask(
      at,
      '/downloads',
      send('POST', 'application/x-www-form-urlencoded', `a=${'x'.repeat(5e6)}`),
    );
    expect(said).toMatchObject({ status: 413, body: { code: 'http-body-too-large' } });
    expect(cookiesOf(said)).not.toContain('session');
  });
});

describe('a file that waits', () => {
  const rows = 'Date Time (UTC),Temperature (°C)\n2026-02-01 10:00,0.4\n2026-02-01 11:00,0.5\n';

  it('says by itself what is understood of it and what it would bring, and stores nothing', async () => {
    const [one] = waitingIn(await put('alone.csv', rows));
    const before = (await ask(at, '/api/v1/loads')).text;
    const said = await ask(at, `/api/v1/files/${one?.file}?station=ford`);
    expect(said).toMatchObject({
      status: 200,
      body: {
        waiting: { file: one?.file, name: 'alone.csv' },
        understood: { refused: null, load: null, stations: [{ station: 'ford', readings: 2 }] },
        brings: [{ station: 'ford', mean: [0.4, 0.5] }],
      },
    });
    const csv = await ask(at, `/api/v1/files/${one?.file}/readings.csv?station=ford`);
    expect(csv.text.split('\r\n').slice(0, 3)).toEqual([
      'station,quantity,time,value',
      'ford,temperature,2026-02-01T10:00:00Z,0.4',
      'ford,temperature,2026-02-01T11:00:00Z,0.5',
    ]);
    expect((await ask(at, '/api/v1/loads')).text).toBe(before);
  });

  it('asks its question, and is not found once it is left', async () => {
    const [one] = waitingIn(await put('asking.csv', rows.replaceAll('2026-02-01', '03/04/2025')));
    const said = await ask(at, `/api/v1/files/${one?.file}?station=ford`);
    expect(said.body).toMatchObject({
      understood: { refused: { question: expect.any(String) } },
      brings: [],
    });
    await ask(at, `/api/v1/files/${one?.file}`, { method: 'DELETE' });
    expect((await ask(at, `/api/v1/files/${one?.file}`)).status).toBe(404);
  });
});

describe('many files', () => {
  it('more than may wait at once: those that fit are kept, the next is told to wait', async () => {
    let refused: Said | null = null;
    let taken = 0;
    for (; taken < 400 && refused === null; taken++) {
      const said = await put(`file-${taken}.csv`, 'x');
      if (said.status !== 201) refused = said;
    }
    expect(refused).toMatchObject({ status: 429, body: { code: 'http-too-many-waiting' } });
    expect(taken).toBeLessThanOrEqual(301);
    await stillAnswers();
  });
});
