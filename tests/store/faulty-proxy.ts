import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';

/** What goes wrong with one request on its way to the server, or with its answer. */
export type Fault =
  | 'pass'
  | 'refused'
  | 'reset-before'
  | 'reset-after'
  | 'half-answer'
  | '500'
  | '429'
  | 'error-in-200'
  | 'hung'
  | 'slow'
  | 'disk-full';

const AFTER_SECONDS = 1;

/** A proxy on this machine before a real server: requests to `path` meet the faults in turn, then pass. */
export class FaultyProxy {
  faults: Fault[] = [];
  path = '/write';
  /** Requests to `path`, with the moment each came. */
  readonly seen: { readonly fault: Fault; readonly at: number }[] = [];

  private constructor(
    private readonly server: Server,
    readonly url: string,
  ) {}

  static async before(target: string): Promise<FaultyProxy> {
    const made: { proxy: FaultyProxy | null } = { proxy: null };
    const server = createServer((request, response) => {
      made.proxy?.pass(target, request, response).catch(() => response.destroy());
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const address = server.address();
    if (address === null || typeof address === 'string') throw new Error('no port');
    made.proxy = new FaultyProxy(server, `http://127.0.0.1:${address.port}`);
    return made.proxy;
  }

  meet(path: '/write' | '/query', faults: readonly Fault[]): void {
    this.path = path;
    this.faults = [...faults];
    this.seen.length = 0;
  }

  async close(): Promise<void> {
    this.server.closeAllConnections();
    await new Promise((resolve) => this.server.close(resolve));
  }

  private async pass(target: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
    const concerned = request.url?.startsWith(this.path) === true;
    const fault = concerned ? (this.faults.shift() ?? 'pass') : 'pass';
    if (concerned) this.seen.push({ fault, at: Date.now() });
    if (fault === 'refused') return void request.socket.destroy();
    const parts: Buffer[] = [];
    for await (const part of request) {
      parts.push(part);
      if (fault === 'reset-before') return void request.socket.resetAndDestroy();
    }
    if (fault === 'hung') return;
    const json = { 'Content-Type': 'application/json' };
    if (fault === '500') return void response.writeHead(500, json).end('{"error":"timeout"}');
    if (fault === '429')
      return void response.writeHead(429, { ...json, 'Retry-After': AFTER_SECONDS }).end('{}');
    if (fault === 'disk-full') {
      const why = '{"error":"[shard 2] write /data/wal/_00001.wal: no space left on device"}';
      return void response.writeHead(500, json).end(why);
    }
    if (fault === 'error-in-200')
      return void response
        .writeHead(200, json)
        .end('{"results":[{"statement_id":0,"error":"engine is closed"}]}');
    if (fault === 'slow') await new Promise((resolve) => setTimeout(resolve, 400));
    const { host: _, connection: __, ...headers } = request.headers;
    const sent = new Headers();
    for (const [name, value] of Object.entries(headers)) if (typeof value === 'string') sent.set(name, value);
    const hasBody = request.method !== 'GET' && parts.length > 0;
    if (hasBody) sent.delete('content-length');
    const answer = await fetch(`${target}${request.url}`, {
      method: request.method ?? 'GET',
      headers: sent,
      ...(hasBody ? { body: new Uint8Array(Buffer.concat(parts)) } : {}),
    });
    const body = Buffer.from(await answer.arrayBuffer());
    if (fault === 'reset-after') return void request.socket.resetAndDestroy();
    const back: Record<string, string> = {};
    for (const name of ['content-type', 'x-influxdb-version', 'retry-after']) {
      const value = answer.headers.get(name);
      if (value !== null) back[name] = value;
    }
    response.writeHead(answer.status, back);
    if (fault === 'half-answer') {
      response.write(body.subarray(0, body.length >> 1));
      setTimeout(() => request.socket.resetAndDestroy(), 30);
      return;
    }
    response.end(body);
  }
}
