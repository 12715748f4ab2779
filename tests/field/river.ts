import { spawnSync } from 'node:child_process';
import { createHash, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createServer as createPlain, type IncomingMessage, request, type ServerResponse } from 'node:http';
import { createServer } from 'node:https';
import { join } from 'node:path';

/** The service's name on the network of these tests: not localhost, so nothing is secure by itself. */
export const NAME = 'river.test';

export interface River {
  /** Over TLS, under a name that is not localhost. */
  readonly address: string;
  /** The same without TLS. */
  readonly plain: string;
  /** What Chromium is started with to find the name here and to take the certificate for good. */
  readonly flags: readonly string[];
  to(port: number): void;
  /** open; cut: nothing gets through; half: requests arrive, their answers are lost; */
  network(state: 'open' | 'cut' | 'half'): void;
  /** From now on the service worker is another one, as after an update of the service. */
  update(): void;
  /** Bytes of every answer since the last call. */
  weighed(): number;
  close(): void;
}

/** The way to the service, with a certificate of its own, that can be cut. */
export async function river(folder: string): Promise<River> {
  const [key, cert] = [join(folder, 'key.pem'), join(folder, 'cert.pem')];
  const subject = ['-subj', `/CN=${NAME}`, '-addext', `subjectAltName=DNS:${NAME}`];
  const made = spawnSync('openssl', [
    ...['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes', '-days', '2'],
    ...['-keyout', key, '-out', cert, ...subject],
  ]);
  if (made.status !== 0)
    throw new Error('The field tests need openssl: install it with "apt-get install openssl".');
  let port = 0;
  let state: 'open' | 'cut' | 'half' = 'open';
  let updated = false;
  let bytes = 0;
  const pass = (asked: IncomingMessage, answer: ServerResponse) => {
    if (state === 'cut') return void asked.socket.destroy();
    const { method, headers, url = '/' } = asked;
    const onward = request({ host: '127.0.0.1', port, method, headers, path: url }, (came) => {
      const chunks: Buffer[] = [];
      came.on('data', (chunk: Buffer) => chunks.push(chunk));
      came.on('end', () => {
        if (state === 'half') return void asked.socket.destroy();
        const newer = updated && url === '/field/worker.js' && came.headers['content-encoding'] === undefined;
        const body = Buffer.concat(newer ? [...chunks, Buffer.from('\n// newer\n')] : chunks);
        bytes += body.length;
        const { 'content-length': _old, 'transfer-encoding': _way, ...rest } = came.headers;
        answer.writeHead(came.statusCode ?? 500, { ...rest, 'content-length': body.length }).end(body);
      });
    });
    onward.on('error', () => asked.socket.destroy());
    asked.pipe(onward);
  };
  const secure = createServer({ key: readFileSync(key), cert: readFileSync(cert) }, pass);
  const plain = createPlain(pass);
  for (const server of [secure, plain])
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', () => resolve()));
  const portOf = (server: typeof secure | typeof plain) => {
    const at = server.address();
    return typeof at === 'object' && at !== null ? at.port : 0;
  };
  const spki = new X509Certificate(readFileSync(cert)).publicKey.export({ type: 'spki', format: 'der' });
  return {
    address: `https://${NAME}:${portOf(secure)}`,
    plain: `http://${NAME}:${portOf(plain)}`,
    flags: [
      `--host-resolver-rules=MAP ${NAME} 127.0.0.1, MAP * ~NOTFOUND`,
      `--ignore-certificate-errors-spki-list=${createHash('sha256').update(spki).digest('base64')}`,
    ],
    to: (given) => {
      port = given;
    },
    network: (given) => {
      state = given;
      if (given === 'cut') for (const server of [secure, plain]) server.closeAllConnections();
    },
    update: () => {
      updated = true;
    },
    weighed: () => {
      const sum = bytes;
      bytes = 0;
      return sum;
    },
    close: () => {
      for (const server of [secure, plain]) {
        server.closeAllConnections();
        server.close();
      }
    },
  };
}
