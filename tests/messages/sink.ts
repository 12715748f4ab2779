import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { Server as NetServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SMTPServer, type SMTPServerOptions } from 'smtp-server';
import { afterEach } from 'vitest';

export interface Mail {
  readonly to: readonly string[];
  readonly secure: boolean;
  readonly raw: string;
  /** A header, unfolded; null where there is none. */
  header(name: string): string | null;
}

const endings: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const end of endings.splice(0)) await end();
});

/** A certificate of this test's own for localhost, that nobody but this test trusts. */
export function certificate(): { readonly key: string; readonly cert: string } {
  const place = mkdtempSync(join(tmpdir(), 'underice-mail-'));
  const [key, cert] = [join(place, 'key.pem'), join(place, 'cert.pem')];
  const made = spawnSync('openssl', [
    ...'req -x509 -newkey ec -pkeyopt ec_paramgen_curve:prime256v1 -nodes -days 2 -subj /CN=localhost'.split(
      ' ',
    ),
    ...['-addext', 'subjectAltName=DNS:localhost,IP:127.0.0.1', '-keyout', key, '-out', cert],
  ]);
  if (made.status !== 0)
    throw new Error(
      `The mail tests need openssl: install it with "apt-get install openssl". ${made.error ?? made.stderr}`,
    );
  const pair = { key: readFileSync(key, 'utf8'), cert: readFileSync(cert, 'utf8') };
  rmSync(place, { recursive: true, force: true });
  return pair;
}

/** A real SMTP server on loopback that keeps what it takes; `options` make it refuse, wait or ask for a name. */
export async function mailSink(
  options: SMTPServerOptions = {},
): Promise<{ readonly port: number; readonly mails: Mail[] }> {
  const mails: Mail[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: options.secure === true || options.key !== undefined ? [] : ['STARTTLS'],
    logger: false,
    onData(stream, session, callback) {
      const chunks: Buffer[] = [];
      stream.on('data', (chunk: Buffer) => chunks.push(chunk));
      stream.on('end', () => {
        mails.push(
          mailOf(
            Buffer.concat(chunks).toString('utf8'),
            session.envelope.rcptTo.map(({ address }) => address),
            session.secure,
          ),
        );
        callback(null, 'kept as 4711');
      });
    },
    ...options,
  });
  server.on('error', () => undefined);
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', () => resolve());
  });
  endings.push(() => new Promise((resolve) => server.close(() => resolve())));
  return { port: portOf(server.server), mails };
}

export function mailOf(raw: string, to: readonly string[], secure: boolean): Mail {
  const head = (raw.split('\r\n\r\n')[0] ?? '').replace(/\r\n[ \t]+/g, ' ');
  return {
    raw,
    to,
    secure,
    header: (name) => new RegExp(`^${name}: (.*)$`, 'im').exec(head)?.[1]?.trim() ?? null,
  };
}

/** An HTTP server on loopback. */
export async function webServer(
  answer: Parameters<typeof createServer>[1],
): Promise<{ readonly url: string; readonly server: Server }> {
  const server = createServer({}, answer);
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', () => resolve());
  });
  endings.push(
    () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  );
  return { url: `http://127.0.0.1:${portOf(server)}`, server };
}

function portOf(server: NetServer): number {
  const at = server.address();
  if (at === null || typeof at === 'string') throw new Error('no port');
  return at.port;
}
